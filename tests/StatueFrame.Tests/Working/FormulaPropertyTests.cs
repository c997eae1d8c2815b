using System.Globalization;
using CsCheck;

namespace StatueFrame.Tests;

public class FormulaPropertyTests
{
    private sealed record Case(string Code, int Rank, double Value);

    private static readonly (string Name, double Value)[] symbols = [("a", 1.7), ("b", -0.6), ("c", 3.1), ("d_1", 0.9)];

    private static readonly Gen<Case> leaf = Gen.OneOf(
        Gen.Int[0, symbols.Length - 1].Select(i => new Case(symbols[i].Name, 9, symbols[i].Value)),
        Gen.Int[0, 400].Select(i => new Case((i / 4.0).ToString(CultureInfo.InvariantCulture), 9, i / 4.0)));

    // C# text is written here with the fewest parentheses its grammar allows, by rules of the test's own.
    private static readonly Gen<Case> arithmetic = Nested(6, x => Gen.OneOf(
        leaf,
        Gen.Select(Gen.OneOf('+', '-', '*', '/'), x, x, Binary),
        x.Select(a => new Case("- " + Inside(a, 7), 7, -a.Value))));

    private static readonly Gen<Case> everything = Nested(4, x => Gen.OneOf(
        Gen.Select(Gen.OneOf('+', '-', '*', '/'), x, x, Binary),
        x.Select(a => new Case("-" + Inside(a, 8), 7, -a.Value)),
        x.Select(a => new Case($"Math.Sqrt(Math.Abs({a.Code}))", 9, Math.Sqrt(Math.Abs(a.Value)))),
        Gen.Select(x, Gen.Int[0, 3], (a, n) => new Case($"Math.Pow({a.Code}, {n})", 9, Math.Pow(a.Value, n))),
        Gen.Select(x, x, (a, b) => new Case($"Math.Min({a.Code},{b.Code})", 9, Math.Min(a.Value, b.Value))),
        Gen.Select(x, x, x, (a, b, c) =>
            new Case($"{Inside(a, 1)} <= {Inside(b, 1)} ? {c.Code} : {a.Code}", 0, a.Value <= b.Value ? c.Value : a.Value))));

    private static Gen<Case> Nested(int depth, Func<Gen<Case>, Gen<Case>> around)
    {
        Gen<Case> nested = leaf;
        for (int i = 0; i < depth; i++)
            nested = around(nested);
        return nested;
    }

    private static Case Binary(char op, Case x, Case y)
    {
        int rank = op is '+' or '-' ? 5 : 6;
        double value = op switch { '+' => x.Value + y.Value, '-' => x.Value - y.Value, '*' => x.Value * y.Value, _ => x.Value / y.Value };
        return new Case($"{Inside(x, rank)} {op} {Inside(y, rank + 1)}", rank, value);
    }

    private static string Inside(Case x, int least) => x.Rank < least ? $"({x.Code})" : x.Code;

    [Fact]
    public void Parsed_code_has_the_value_of_the_code() =>
        everything.Sample(x => Assert.Equal(x.Value, ValueOf(FormulaNode.Parse(x.Code))), iter: 2000);

    [Fact]
    public void Printed_mathematics_keeps_every_parenthesis_that_matters() =>
        arithmetic.Sample(x =>
        {
            string text = FormulaNode.Parse(x.Code).ToText();
            string back = text.Replace('·', '*').Replace('−', '-');
            Assert.Equal(x.Value, ValueOf(FormulaNode.Parse(back)));
        }, iter: 2000);

    [Fact]
    public void Any_text_is_read_without_an_exception() =>
        Gen.String[Gen.Char["ab1.e()[]+-*/%!?:<>=&|,\" _@'{}\n$#σ"], 0, 30].Sample(text => FormulaNode.Parse(text).ToText() is not null, iter: 5000);

    private static double ValueOf(FormulaNode node) => FormulaValue.Of(node.Replace(part =>
        part is FormulaNode.Symbol s ? new FormulaNode.Quantity(symbols.Single(x => x.Name == s.Name).Value, Dimension.Number, s) : null))!.Value;
}
