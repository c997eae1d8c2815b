namespace StatueFrame;

/// <summary>
/// A formula as a tree: what was computed, in a form that can be printed as mathematics. A tree comes from the C#
/// expression that computed the value (<see cref="Parse"/>), so that the print and the computation cannot differ.
/// </summary>
/// <remarks>
/// The kinds of node are the nested records; there are no others. Calls of <c>Math</c> carry mathematical names:
/// <c>Math.Sqrt(x)</c> is a <see cref="Call"/> of "sqrt", <c>Math.Pow(a, 2)</c> a <see cref="Binary"/> power, and a cast
/// to a floating type is dropped, for it says nothing to the reader.
/// Immutable and safe to share between threads. Two trees are equal when they are built alike.
/// </remarks>
public abstract record FormulaNode
{
    private FormulaNode() { }

    /// <summary>A number written in the formula, or a constant with a name.</summary>
    /// <param name="Value">The number.</param>
    /// <param name="Name">The constant's name, as in "π"; null for a plain number.</param>
    public sealed record Number(double Value, string? Name = null) : FormulaNode;

    /// <summary>A symbol: a name, or a path of names.</summary>
    /// <param name="Name">As written in the code: <c>sigma</c>, <c>bar.L</c>. <see cref="FormulaSymbol"/> prints it.</param>
    public sealed record Symbol(string Name) : FormulaNode;

    /// <summary>A value that stands where a symbol stood.</summary>
    /// <param name="Value">The value in SI units.</param>
    /// <param name="Dimension">What it measures.</param>
    /// <param name="Of">The symbol, or what else had this value.</param>
    public sealed record Quantity(double Value, Dimension Dimension, FormulaNode Of) : FormulaNode;

    /// <summary>A member of something that is not itself a symbol, as in <c>bars[i].L</c>.</summary>
    /// <param name="Target">What has the member.</param>
    /// <param name="Name">The member.</param>
    public sealed record Member(FormulaNode Target, string Name) : FormulaNode;

    /// <summary>An item of a list, as in <c>bars[i]</c>.</summary>
    /// <param name="Target">The list.</param>
    /// <param name="Arguments">The index, or the indices.</param>
    public sealed record Index(FormulaNode Target, ValueList<FormulaNode> Arguments) : FormulaNode;

    /// <summary>A function of arguments.</summary>
    /// <param name="Function">
    /// Its name: "sqrt", "cbrt", "abs", "min", "max", "floor", "ceil", "trunc", "exp", "ln", "sin" and so on for those of
    /// <c>Math</c>, and the path as written for all others.
    /// </param>
    /// <param name="Arguments">The arguments in order.</param>
    public sealed record Call(string Function, ValueList<FormulaNode> Arguments) : FormulaNode;

    /// <summary>A sign or a logical not.</summary>
    /// <param name="Operator"><see cref="FormulaOperator.Negate"/> or <see cref="FormulaOperator.Not"/>.</param>
    /// <param name="Operand">What it acts on.</param>
    public sealed record Unary(FormulaOperator Operator, FormulaNode Operand) : FormulaNode;

    /// <summary>Two operands joined by arithmetic, a power, a comparison or logic.</summary>
    /// <param name="Operator">Any operator of two operands.</param>
    /// <param name="Left">The left operand; the base of a power.</param>
    /// <param name="Right">The right operand; the exponent of a power.</param>
    public sealed record Binary(FormulaOperator Operator, FormulaNode Left, FormulaNode Right) : FormulaNode;

    /// <summary>One of two values, by a condition.</summary>
    /// <param name="Condition">The condition.</param>
    /// <param name="Then">The value when it holds.</param>
    /// <param name="Else">The value when it does not.</param>
    public sealed record Conditional(FormulaNode Condition, FormulaNode Then, FormulaNode Else) : FormulaNode;

    /// <summary>Code that is more than a formula, kept as it was written.</summary>
    /// <param name="Text">The code on one line.</param>
    public sealed record Verbatim(string Text) : FormulaNode;

    /// <summary>
    /// The tree of a C# expression: arithmetic, comparisons, logic, conditions, calls, members, indices and casts to
    /// numbers. Whatever else is kept as <see cref="Verbatim"/>; nothing is thrown for any text.
    /// </summary>
    /// <param name="code">The expression.</param>
    public static FormulaNode Parse(string code) => FormulaParser.Parse(code);

    /// <summary>The tree with known parts replaced; the outermost known part wins.</summary>
    /// <param name="replacement">The replacement for a node, or null to look inside it.</param>
    public FormulaNode Replace(Func<FormulaNode, FormulaNode?> replacement) =>
        replacement(this) ?? this switch
        {
            Member m => m with { Target = m.Target.Replace(replacement) },
            Index i => new Index(i.Target.Replace(replacement), Replace(i.Arguments, replacement)),
            Call c => c with { Arguments = Replace(c.Arguments, replacement) },
            Unary u => u with { Operand = u.Operand.Replace(replacement) },
            Binary b => b with { Left = b.Left.Replace(replacement), Right = b.Right.Replace(replacement) },
            Conditional c => new Conditional(
                c.Condition.Replace(replacement), c.Then.Replace(replacement), c.Else.Replace(replacement)),
            _ => this,
        };

    /// <summary>The formula as one line of mathematics, as in "|N| / A + √(x² + y²)".</summary>
    /// <param name="units">The units that values are printed in.</param>
    public string ToText(DisplayUnits units = DisplayUnits.Metric) => FormulaText.Of(this, units);

    /// <summary>The formula as one line of mathematics in metric units.</summary>
    public sealed override string ToString() => ToText();

    private static ValueList<FormulaNode> Replace(
        ValueList<FormulaNode> nodes, Func<FormulaNode, FormulaNode?> replacement) =>
        nodes.Select(node => node.Replace(replacement)).ToValueList();
}
