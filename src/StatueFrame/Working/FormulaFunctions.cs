namespace StatueFrame;

/// <summary>The functions and constants of mathematics: their names in C#, in a formula, and their values.</summary>
internal static class FormulaFunctions
{
    private static readonly Dictionary<string, (string Name, Func<double, double> Of)> ofOne = new(StringComparer.Ordinal)
    {
        ["Sqrt"] = ("sqrt", Math.Sqrt),
        ["Cbrt"] = ("cbrt", Math.Cbrt),
        ["Abs"] = ("abs", Math.Abs),
        ["Sign"] = ("sign", x => Math.Sign(x)),
        ["Floor"] = ("floor", Math.Floor),
        ["Ceiling"] = ("ceil", Math.Ceiling),
        ["Truncate"] = ("trunc", Math.Truncate),
        ["Round"] = ("round", Math.Round),
        ["Exp"] = ("exp", Math.Exp),
        ["Log"] = ("ln", Math.Log),
        ["Log10"] = ("log10", Math.Log10),
        ["Sin"] = ("sin", Math.Sin),
        ["Cos"] = ("cos", Math.Cos),
        ["Tan"] = ("tan", Math.Tan),
        ["Asin"] = ("arcsin", Math.Asin),
        ["Acos"] = ("arccos", Math.Acos),
        ["Atan"] = ("arctan", Math.Atan),
        ["Sinh"] = ("sinh", Math.Sinh),
        ["Cosh"] = ("cosh", Math.Cosh),
        ["Tanh"] = ("tanh", Math.Tanh),
    };

    private static readonly Dictionary<string, (string Name, Func<double, double, double> Of)> ofTwo = new(StringComparer.Ordinal)
    {
        ["Min"] = ("min", Math.Min),
        ["Max"] = ("max", Math.Max),
        ["Atan2"] = ("arctan2", Math.Atan2),
    };

    private static readonly Dictionary<string, Func<double, double>> valueOfOne =
        ofOne.Values.ToDictionary(f => f.Name, f => f.Of, StringComparer.Ordinal);

    private static readonly Dictionary<string, Func<double, double, double>> valueOfTwo =
        ofTwo.Values.ToDictionary(f => f.Name, f => f.Of, StringComparer.Ordinal);

    /// <summary>The node for a call in C#; a function that is not one of mathematics keeps its name.</summary>
    public static FormulaNode Call(string path, ValueList<FormulaNode> arguments)
    {
        string name = MathName(path);
        return (name, arguments.Count) switch
        {
            ("Pow", 2) => new FormulaNode.Binary(FormulaOperator.Power, arguments[0], arguments[1]),
            ("Hypot", 2) => new FormulaNode.Call("sqrt", [new FormulaNode.Binary(FormulaOperator.Add, Square(arguments[0]), Square(arguments[1]))]),
            (_, 1) when ofOne.TryGetValue(name, out var f) => new FormulaNode.Call(f.Name, arguments),
            (_, 2) when ofTwo.TryGetValue(name, out var f) => new FormulaNode.Call(f.Name, arguments),
            ("Clamp", 3) => new FormulaNode.Call("min", [arguments[2], new FormulaNode.Call("max", [arguments[1], arguments[0]])]),
            _ => new FormulaNode.Call(path, arguments),
        };
    }

    /// <summary>π or e for the constants of C#; any other path as it is.</summary>
    public static FormulaNode ConstantOrSymbol(FormulaNode.Symbol path) => path.Name switch
    {
        "Math.PI" or "double.Pi" => new FormulaNode.Number(Math.PI, "π"),
        "Math.E" or "double.E" => new FormulaNode.Number(Math.E, "e"),
        _ => path,
    };

    /// <summary>The value of a function of mathematics; null when it is not one.</summary>
    public static double? Value(string name, ReadOnlySpan<double> x) =>
        x.Length == 1 && valueOfOne.TryGetValue(name, out Func<double, double>? f) ? f(x[0])
        : x.Length == 2 && valueOfTwo.TryGetValue(name, out Func<double, double, double>? g) ? g(x[0], x[1])
        : null;

    private static string MathName(string path)
    {
        int dot = path.LastIndexOf('.');
        return dot < 0 || path[..dot] is "Math" or "System.Math" or "double" ? path[(dot + 1)..] : "";
    }

    private static FormulaNode Square(FormulaNode x) => new FormulaNode.Binary(FormulaOperator.Power, x, new FormulaNode.Number(2));
}
