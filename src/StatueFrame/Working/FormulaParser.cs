using System.Globalization;
using System.Text.RegularExpressions;

namespace StatueFrame;

/// <summary>
/// Reads the arithmetic part of C# by recursive descent, one method a level of precedence. A method that meets what it
/// does not know returns null, and then the whole text is kept as it is.
/// </summary>
internal ref struct FormulaParser
{
    // Longer or deeper text than this is a program, not a formula.
    private const int MaxLength = 4000, MaxDepth = 100;

    private static readonly (string Token, FormulaOperator Operator)[][] levels =
    [
        [("||", FormulaOperator.Or)],
        [("&&", FormulaOperator.And)],
        [("==", FormulaOperator.Equal), ("!=", FormulaOperator.NotEqual)],
        [
            ("<=", FormulaOperator.LessOrEqual), (">=", FormulaOperator.GreaterOrEqual),
            ("<", FormulaOperator.Less), (">", FormulaOperator.Greater),
        ],
        [("+", FormulaOperator.Add), ("-", FormulaOperator.Subtract)],
        [("*", FormulaOperator.Multiply), ("/", FormulaOperator.Divide), ("%", FormulaOperator.Remainder)],
    ];

    private readonly ReadOnlySpan<char> code;
    private int at;
    private int depth;

    private FormulaParser(ReadOnlySpan<char> code) => this.code = code;

    public static FormulaNode Parse(string code)
    {
        if (code.Length <= MaxLength)
        {
            var parser = new FormulaParser(code);
            if (parser.Expression() is { } node && parser.AtEnd())
                return node;
        }
        return new FormulaNode.Verbatim(Regex.Replace(code, @"\s+", " ").Trim());
    }

    private FormulaNode? Expression()
    {
        if (++depth > MaxDepth)
            return null;
        FormulaNode? node = Operators(0);
        if (node is not null && Take("?"))
        {
            FormulaNode? then = Expression();
            FormulaNode? otherwise = then is not null && Take(":") ? Expression() : null;
            node = otherwise is null ? null : new FormulaNode.Conditional(node, then!, otherwise);
        }
        depth--;
        return node;
    }

    private FormulaNode? Operators(int level)
    {
        if (level == levels.Length)
            return Prefixed();
        FormulaNode? left = Operators(level + 1);
        bool compared = false;
        while (left is not null && TakeOperator(level) is { } op)
        {
            // In C#, a comparison of a comparison can only be a generic call such as F<int>(x).
            if (compared || Operators(level + 1) is not { } right)
                return null;
            compared = op is >= FormulaOperator.Less and <= FormulaOperator.GreaterOrEqual;
            left = new FormulaNode.Binary(op, left, right);
        }
        return left;
    }

    private FormulaNode? Prefixed()
    {
        if (++depth > MaxDepth || Starts("--") || Starts("++"))
            return null;
        FormulaNode? node =
            Take("-") ? Sign(FormulaOperator.Negate)
            : Take("+") ? Prefixed()
            : Take("!") ? Sign(FormulaOperator.Not)
            : TakeCast() is { } type ? Cast(type)
            : Postfixed();
        depth--;
        return node;
    }

    private FormulaNode? Sign(FormulaOperator op) => Prefixed() is { } operand ? new FormulaNode.Unary(op, operand) : null;

    private FormulaNode? Cast(string type) =>
        Prefixed() is not { } operand ? null
        : type is "double" or "float" or "decimal" ? operand
        : new FormulaNode.Call("trunc", [operand]);

    private FormulaNode? Postfixed()
    {
        FormulaNode? node = Primary();
        while (node is not null)
        {
            if (Take("."))
            {
                string name = Name();
                node = name.Length == 0 ? null
                    : node is FormulaNode.Symbol path ? new FormulaNode.Symbol(path.Name == "this" ? name : $"{path.Name}.{name}")
                    : new FormulaNode.Member(node, name);
            }
            else if (Take("("))
            {
                node = node is FormulaNode.Symbol f && List(")") is { } arguments ? FormulaFunctions.Call(f.Name, arguments) : null;
            }
            else if (Take("["))
            {
                node = List("]") is { Count: > 0 } arguments ? new FormulaNode.Index(node, arguments) : null;
            }
            else if (!TakeNullForgiveness())
            {
                return node is FormulaNode.Symbol s ? FormulaFunctions.ConstantOrSymbol(s) : node;
            }
        }
        return null;
    }

    private ValueList<FormulaNode>? List(string close)
    {
        var items = new List<FormulaNode>();
        if (Take(close))
            return [];
        do
        {
            if (Expression() is not { } item)
                return null;
            items.Add(item);
        }
        while (Take(","));
        return Take(close) ? items.ToValueList() : null;
    }

    private FormulaNode? Primary()
    {
        if (Take("("))
            return Expression() is { } inner && Take(")") ? inner : null;
        char next = Peek();
        if (char.IsAsciiDigit(next) || (next == '.' && at + 1 < code.Length && char.IsAsciiDigit(code[at + 1])))
            return NumberLiteral();
        string name = Name();
        return name.Length == 0 ? null : new FormulaNode.Symbol(name);
    }

    private FormulaNode? NumberLiteral()
    {
        int start = at;
        Digits();
        if (at + 1 < code.Length && code[at] == '.' && char.IsAsciiDigit(code[at + 1]))
        {
            at++;
            Digits();
        }
        if (at < code.Length && code[at] is 'e' or 'E')
        {
            at++;
            if (at < code.Length && code[at] is '+' or '-')
                at++;
            Digits();
        }
        string text = code[start..at].ToString().Replace("_", "");
        if (at < code.Length && "dDfFmMuUlL".Contains(code[at]))
            at++;
        bool ended = at == code.Length || !IsNamePart(code[at]);
        return ended && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? new FormulaNode.Number(value)
            : null;
    }

    private void Digits()
    {
        while (at < code.Length && (char.IsAsciiDigit(code[at]) || code[at] == '_'))
            at++;
    }

    private string Name()
    {
        if (Peek() == '@')
            at++;
        int start = at;
        while (at < code.Length && (at == start ? char.IsLetter(code[at]) || code[at] == '_' : IsNamePart(code[at])))
            at++;
        return code[start..at].ToString();
    }

    private static bool IsNamePart(char c) => char.IsLetterOrDigit(c) || c == '_';

    private FormulaOperator? TakeOperator(int level)
    {
        foreach ((string token, FormulaOperator op) in levels[level])
        {
            if (!Starts(token))
                continue;
            char after = at + token.Length < code.Length ? code[at + token.Length] : ' ';
            bool isOther = after == '=' || (after == token[0] && token is "+" or "-" or "<" or ">");
            if (isOther)
                return null;
            at += token.Length;
            return op;
        }
        return null;
    }

    private string? TakeCast()
    {
        int start = at;
        if (Take("("))
        {
            string type = Name();
            bool isNumber = type is "double" or "float" or "decimal" or "int" or "long" or "uint" or "ulong" or "short" or "byte";
            if (isNumber && Take(")"))
                return type;
        }
        at = start;
        return null;
    }

    private bool TakeNullForgiveness() => Peek() == '!' && !Starts("!=") && Take("!");

    private bool Take(string token)
    {
        if (!Starts(token))
            return false;
        at += token.Length;
        return true;
    }

    private bool Starts(string token)
    {
        SkipSpace();
        return code[at..].StartsWith(token, StringComparison.Ordinal);
    }

    private char Peek()
    {
        SkipSpace();
        return at < code.Length ? code[at] : '\0';
    }

    private bool AtEnd() => Peek() == '\0' && at == code.Length;

    private void SkipSpace()
    {
        while (at < code.Length)
        {
            ReadOnlySpan<char> rest = code[at..];
            if (char.IsWhiteSpace(rest[0]))
                at++;
            else if (rest.StartsWith("//"))
                at += rest.IndexOf('\n') is >= 0 and int line ? line : rest.Length;
            else if (rest.StartsWith("/*"))
                at += rest.IndexOf("*/") is >= 0 and int end ? end + 2 : rest.Length;
            else
                return;
        }
    }
}
