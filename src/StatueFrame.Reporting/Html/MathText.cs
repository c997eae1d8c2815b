using System.Globalization;

namespace StatueFrame.Reporting;

/// <summary>
/// Writes a <see cref="FormulaNode"/> as presentation MathML, with only the parentheses that are needed. A sum or a
/// product at the outside becomes several formulas side by side, so that a long one breaks at the end of the line.
/// </summary>
/// <remarks>Source of the elements: MathML Core, W3C.</remarks>
internal sealed class MathText(HtmlText html, DisplayUnits units)
{
    private enum Rank { Condition, Or, And, Equality, Comparison, Sum, Product, Sign, Power, Atom }

    /// <summary>A symbol with an equals sign.</summary>
    public void Equation(FormulaNode symbol)
    {
        using var math = html.Element("math");
        Write(symbol);
        html.Element("mo", "=");
    }

    /// <summary>A symbol alone.</summary>
    public void Symbol(FormulaNode symbol)
    {
        using var math = html.Element("math");
        Write(symbol);
    }

    /// <summary>A formula; several pieces when it is a long sum or product.</summary>
    public void Formula(FormulaNode node, string before = "")
    {
        var pieces = new List<(string Sign, FormulaNode Node, Rank Least)>();
        Break(node, before, Rank.Condition, pieces);
        foreach ((string sign, FormulaNode piece, Rank least) in pieces)
        {
            using (html.Element("math"))
            using (html.Element("mrow"))
            {
                if (sign.Length > 0)
                    html.Element("mo", sign);
                Inside(piece, least);
            }
            html.Text(" ");
        }
    }

    /// <summary>A value with its unit, after an equals sign.</summary>
    public void Value(double value, Dimension dimension, string before = "=")
    {
        using var math = html.Element("math");
        using var row = html.Element("mrow");
        if (before.Length > 0)
            html.Element("mo", before);
        Quantity(value, dimension);
    }

    /// <summary>Length of a formula, in characters of its plain text, above which it is broken.</summary>
    private const int LongFormula = 60;

    private void Break(FormulaNode node, string sign, Rank least, List<(string, FormulaNode, Rank)> pieces)
    {
        bool breaks = node is FormulaNode.Binary { Operator: FormulaOperator.Add or FormulaOperator.Subtract or FormulaOperator.Multiply }
            && RankOf(node) >= least && node.ToText(units).Length > LongFormula;
        if (!breaks)
        {
            pieces.Add((sign, node, least));
            return;
        }
        var b = (FormulaNode.Binary)node;
        (string middle, Rank rank) = SignOf(b.Operator);
        Break(b.Left, sign, rank, pieces);
        Break(b.Right, middle, rank + 1, pieces);
    }

    private void Write(FormulaNode node)
    {
        switch (node)
        {
            case FormulaNode.Number n:
                Number(n);
                break;
            case FormulaNode.Symbol s:
                Symbol(s.Name);
                break;
            case FormulaNode.Quantity q:
                Quantity(q.Value, q.Dimension);
                break;
            case FormulaNode.Member m:
                using (html.Element("msub"))
                {
                    Symbol(m.Name);
                    Inside(m.Target, Rank.Atom);
                }
                break;
            case FormulaNode.Index i:
                using (html.Element("msub"))
                {
                    Inside(i.Target, Rank.Atom);
                    List(i.Arguments);
                }
                break;
            case FormulaNode.Call c:
                Call(c);
                break;
            case FormulaNode.Unary u:
                using (html.Element("mrow"))
                {
                    html.Element("mo", u.Operator == FormulaOperator.Negate ? "−" : "¬");
                    Inside(u.Operand, Rank.Power);
                }
                break;
            case FormulaNode.Binary { Operator: FormulaOperator.Power } b:
                using (html.Element("msup"))
                {
                    Inside(b.Left, Rank.Atom);
                    Row(b.Right);
                }
                break;
            case FormulaNode.Binary { Operator: FormulaOperator.Divide } b:
                using (html.Element("mfrac"))
                {
                    Row(b.Left);
                    Row(b.Right);
                }
                break;
            case FormulaNode.Binary b:
                (string sign, Rank rank) = SignOf(b.Operator);
                using (html.Element("mrow"))
                {
                    Inside(b.Left, rank);
                    html.Element("mo", sign);
                    Inside(b.Right, rank + 1);
                }
                break;
            case FormulaNode.Conditional c:
                Conditional(c);
                break;
            case FormulaNode.Verbatim v:
                html.Element("mtext", v.Text);
                break;
            default:
                throw new InvalidOperationException($"No mathematics for {node.GetType().Name}.");
        }
    }

    private void Row(FormulaNode node)
    {
        using var row = html.Element("mrow");
        Write(node);
    }

    private void Inside(FormulaNode node, Rank least)
    {
        Rank rank = RankOf(node);
        bool hasSign = least > Rank.Sum && node is FormulaNode.Quantity { Value: < 0 } or FormulaNode.Number { Value: < 0 };
        if (rank >= least && !hasSign)
        {
            Row(node);
            return;
        }
        using var row = html.Element("mrow");
        html.Element("mo", "(");
        Write(node);
        html.Element("mo", ")");
    }

    private void List(ValueList<FormulaNode> nodes)
    {
        using var row = html.Element("mrow");
        foreach ((int i, FormulaNode node) in nodes.Index())
        {
            if (i > 0)
                html.Element("mo", ",");
            Write(node);
        }
    }

    private void Number(FormulaNode.Number number)
    {
        double size = Math.Abs(number.Value);
        if (number.Name is not null)
        {
            html.Element("mi", number.Name);
        }
        else if (size == 0 || size is >= 1e-4 and < 1e7)
        {
            html.Element("mn", number.Value.ToString("0.##########", CultureInfo.InvariantCulture));
        }
        else
        {
            string[] parts = number.Value.ToString("0.##########E+0", CultureInfo.InvariantCulture).Split('E');
            using var row = html.Element("mrow");
            if (parts[0] != "1")
                html.Element("mn", parts[0]).Element("mo", "·");
            using var power = html.Element("msup");
            html.Element("mn", "10").Element("mn", parts[1].TrimStart('+').Replace('-', '−'));
        }
    }

    /// <summary>A name; the names of a path before the last are an index, as is the index of the name itself.</summary>
    private void Symbol(string path)
    {
        int dot = path.LastIndexOf('.');
        (string letter, string index) = FormulaSymbol.Split(path[(dot + 1)..]);
        string owner = dot < 0 ? "" : path[..dot].Replace('.', ' ');
        string[] under = [.. new[] { index.Replace('_', ','), owner }.Where(part => part.Length > 0)];
        if (under.Length == 0)
        {
            html.Element("mi", letter);
            return;
        }
        using var sub = html.Element("msub");
        html.Element("mi", letter).Element("mtext", string.Join(", ", under));
    }

    private void Quantity(double value, Dimension dimension)
    {
        string number = dimension.FormatNumber(value, units), unit = dimension.Unit(units);
        using var row = html.Element("mrow");
        if (number.StartsWith('-'))
            html.Element("mo", "−", ("form", "prefix"));
        html.Element("mn", number.TrimStart('-'));
        if (unit.Length > 0 && !double.IsNaN(value))
            html.Element("mtext", unit == "°" ? unit : "\u202F" + unit);
    }

    private void Call(FormulaNode.Call call)
    {
        switch (call.Function)
        {
            case "sqrt":
                using (html.Element("msqrt"))
                    List(call.Arguments);
                break;
            case "cbrt":
                using (html.Element("mroot"))
                {
                    List(call.Arguments);
                    html.Element("mn", "3");
                }
                break;
            case "abs":
                Fenced("|", "|");
                break;
            case "floor":
                Fenced("⌊", "⌋");
                break;
            case "ceil":
                Fenced("⌈", "⌉");
                break;
            default:
                using (html.Element("mrow"))
                {
                    Symbol(call.Function);
                    Fenced("(", ")");
                }
                break;
        }

        void Fenced(string left, string right)
        {
            using var row = html.Element("mrow");
            html.Element("mo", left, ("form", "prefix"));
            List(call.Arguments);
            html.Element("mo", right, ("form", "postfix"));
        }
    }

    private void Conditional(FormulaNode.Conditional conditional)
    {
        using var row = html.Element("mrow");
        html.Element("mo", "{", ("form", "prefix"));
        using var table = html.Element("mtable");
        FormulaNode rest = conditional;
        while (rest is FormulaNode.Conditional c)
        {
            Case(c.Then, c.Condition);
            rest = c.Else;
        }
        Case(rest, null);

        void Case(FormulaNode value, FormulaNode? condition)
        {
            using var line = html.Element("mtr");
            using (html.Element("mtd"))
                Write(value);
            using var when = html.Element("mtd");
            html.Element("mtext", condition is null ? "else" : "if ");
            if (condition is not null)
                Write(condition);
        }
    }

    private static Rank RankOf(FormulaNode node) => node switch
    {
        FormulaNode.Number { Name: null, Value: not 0 } n when Math.Abs(n.Value) is < 1e-4 or >= 1e7 => Rank.Sign,
        FormulaNode.Quantity q => q.Dimension.Unit(DisplayUnits.Metric).Length > 0 ? Rank.Product : Rank.Atom,
        FormulaNode.Unary => Rank.Sign,
        FormulaNode.Binary { Operator: FormulaOperator.Divide or FormulaOperator.Power } => Rank.Power,
        FormulaNode.Binary b => SignOf(b.Operator).Rank,
        FormulaNode.Conditional => Rank.Condition,
        _ => Rank.Atom,
    };

    private static (string Sign, Rank Rank) SignOf(FormulaOperator op) => op switch
    {
        FormulaOperator.Add => ("+", Rank.Sum),
        FormulaOperator.Subtract => ("−", Rank.Sum),
        FormulaOperator.Multiply => ("·", Rank.Product),
        FormulaOperator.Remainder => ("mod", Rank.Product),
        FormulaOperator.And => ("∧", Rank.And),
        FormulaOperator.Or => ("∨", Rank.Or),
        FormulaOperator.Equal => ("=", Rank.Equality),
        FormulaOperator.NotEqual => ("≠", Rank.Equality),
        FormulaOperator.Less => ("<", Rank.Comparison),
        FormulaOperator.LessOrEqual => ("≤", Rank.Comparison),
        FormulaOperator.Greater => (">", Rank.Comparison),
        _ => ("≥", Rank.Comparison),
    };
}
