using System.Globalization;

namespace StatueFrame;

/// <summary>Writes a <see cref="FormulaNode"/> as one line of mathematics, with only the parentheses that are needed.</summary>
internal static class FormulaText
{
    private enum Rank { Condition, Or, And, Equality, Comparison, Sum, Product, Sign, Power, Atom }

    /// <summary>The line; values keep their unit by a space that must not be broken (U+00A0).</summary>
    public static string Unbroken(FormulaNode node, DisplayUnits units) => Write(node, units).Text;

    /// <summary>The line with plain spaces.</summary>
    public static string Of(FormulaNode node, DisplayUnits units) => Unbroken(node, units).Replace('\u00A0', ' ');

    private static (string Text, Rank Rank) Write(FormulaNode node, DisplayUnits units)
    {
        switch (node)
        {
            case FormulaNode.Number n:
                return WriteNumber(n);
            case FormulaNode.Symbol s:
                return (FormulaSymbol.Print(s.Name), Rank.Atom);
            case FormulaNode.Quantity q:
                return WriteQuantity(q, units);
            case FormulaNode.Member m:
                return ($"{Inside(m.Target, Rank.Atom, units)}.{m.Name}", Rank.Atom);
            case FormulaNode.Index i:
                return ($"{Inside(i.Target, Rank.Atom, units)}[{Join(i.Arguments, units)}]", Rank.Atom);
            case FormulaNode.Call c:
                return (WriteCall(c, units), Rank.Atom);
            case FormulaNode.Unary { Operator: FormulaOperator.Negate } u:
                return ("−" + Unsigned(u.Operand, Rank.Sign, units), Rank.Sign);
            case FormulaNode.Unary u:
                return ("not " + Inside(u.Operand, Rank.Sign, units), Rank.Sign);
            case FormulaNode.Binary { Operator: FormulaOperator.Power } b:
                return (Unsigned(b.Left, Rank.Atom, units) + WriteExponent(b.Right, units), Rank.Power);
            case FormulaNode.Binary b:
                (string sign, Rank rank) = SignOf(b.Operator);
                return ($"{Inside(b.Left, rank, units)} {sign} {Unsigned(b.Right, rank + 1, units)}", rank);
            case FormulaNode.Conditional c:
                return ($"{Inside(c.Then, Rank.Or, units)} if {Inside(c.Condition, Rank.Or, units)}, else {Inside(c.Else, Rank.Condition, units)}",
                    Rank.Condition);
            case FormulaNode.Verbatim v:
                return (v.Text, Rank.Atom);
            default:
                throw new InvalidOperationException($"No text for {node.GetType().Name}.");
        }
    }

    /// <summary>The node's text, in parentheses when it binds less than <paramref name="least"/>.</summary>
    private static string Inside(FormulaNode node, Rank least, DisplayUnits units)
    {
        (string text, Rank rank) = Write(node, units);
        return rank < least ? $"({text})" : text;
    }

    /// <summary>As <see cref="Inside"/>, for a place where a leading sign would follow another operator.</summary>
    private static string Unsigned(FormulaNode node, Rank least, DisplayUnits units)
    {
        (string text, Rank rank) = Write(node, units);
        return rank < least || text.StartsWith('−') ? $"({text})" : text;
    }

    private static (string Text, Rank Rank) WriteNumber(FormulaNode.Number number)
    {
        double value = Math.Abs(number.Value);
        if (number.Name is not null)
            return (number.Name, Rank.Atom);
        if (value == 0 || value is >= 1e-4 and < 1e7)
            return (number.Value.ToString("0.##########", CultureInfo.InvariantCulture), Rank.Atom);
        string[] parts = number.Value.ToString("0.##########E+0", CultureInfo.InvariantCulture).Split('E');
        string power = "10" + Superscript(int.Parse(parts[1], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture));
        return parts[0] == "1" ? (power, Rank.Power) : ($"{parts[0]}·{power}", Rank.Sign);
    }

    private static (string Text, Rank Rank) WriteQuantity(FormulaNode.Quantity quantity, DisplayUnits units)
    {
        string text = TextLayout.Unbroken(TextLayout.Format(quantity.Value, quantity.Dimension, units));
        return (text, text.StartsWith('−') || text.Any(c => c is not ('.' or ',') && !char.IsAsciiDigit(c)) ? Rank.Sign : Rank.Atom);
    }

    private static string WriteCall(FormulaNode.Call call, DisplayUnits units)
    {
        string arguments = Join(call.Arguments, units);
        return call.Function switch
        {
            "sqrt" => $"√({arguments})",
            "cbrt" => $"∛({arguments})",
            "abs" => $"|{arguments}|",
            "floor" => $"⌊{arguments}⌋",
            "ceil" => $"⌈{arguments}⌉",
            _ => $"{FormulaSymbol.Print(call.Function)}({arguments})",
        };
    }

    private static string Join(ValueList<FormulaNode> nodes, DisplayUnits units) =>
        string.Join(", ", nodes.Select(node => Inside(node, nodes.Count > 1 ? Rank.Or : Rank.Condition, units)));

    private static string WriteExponent(FormulaNode exponent, DisplayUnits units) => exponent switch
    {
        FormulaNode.Number { Name: null } n when IsSmallWhole(n.Value) => Superscript((int)n.Value),
        FormulaNode.Unary { Operator: FormulaOperator.Negate, Operand: FormulaNode.Number { Name: null } n } when IsSmallWhole(n.Value) =>
            Superscript(-(int)n.Value),
        _ => "^" + Unsigned(exponent, Rank.Atom, units),
    };

    private static bool IsSmallWhole(double value) => value is >= 0 and < 100 && value == Math.Floor(value);

    private static string Superscript(int value) =>
        string.Concat(value.ToString(CultureInfo.InvariantCulture).Select(c => c == '-' ? '⁻' : "⁰¹²³⁴⁵⁶⁷⁸⁹"[c - '0']));

    private static (string Sign, Rank Rank) SignOf(FormulaOperator op) => op switch
    {
        FormulaOperator.Add => ("+", Rank.Sum),
        FormulaOperator.Subtract => ("−", Rank.Sum),
        FormulaOperator.Multiply => ("·", Rank.Product),
        FormulaOperator.Divide => ("/", Rank.Product),
        FormulaOperator.Remainder => ("mod", Rank.Product),
        FormulaOperator.And => ("and", Rank.And),
        FormulaOperator.Or => ("or", Rank.Or),
        FormulaOperator.Equal => ("=", Rank.Equality),
        FormulaOperator.NotEqual => ("≠", Rank.Equality),
        FormulaOperator.Less => ("<", Rank.Comparison),
        FormulaOperator.LessOrEqual => ("≤", Rank.Comparison),
        FormulaOperator.Greater => (">", Rank.Comparison),
        _ => ("≥", Rank.Comparison),
    };
}
