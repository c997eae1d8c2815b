using System.Runtime.CompilerServices;

namespace StatueFrame.Tests;

public class FormulaNodeTests
{
    [Theory]
    [InlineData("Math.Abs(N) / A + Math.Abs(M) / W", "|N| / A + |M| / W")]
    [InlineData("a * (b + c)", "a · (b + c)")]
    [InlineData("(a * b) + c", "a · b + c")]
    [InlineData("a - (b - c)", "a − (b − c)")]
    [InlineData("a - b - c", "a − b − c")]
    [InlineData("a / (b * c)", "a / (b · c)")]
    [InlineData("a / b * c", "a / b · c")]
    [InlineData("a * -b", "a · (−b)")]
    [InlineData("a + -b * c", "a + (−b · c)")]
    [InlineData("-(a + b)", "−(a + b)")]
    [InlineData("Math.Sqrt(x * x + y * y)", "√(x · x + y · y)")]
    [InlineData("Math.Pow(a + b, 2)", "(a + b)²")]
    [InlineData("Math.Pow(-a, 3)", "(−a)³")]
    [InlineData("-Math.Pow(a, 3)", "−a³")]
    [InlineData("Math.Pow(L, -2)", "L⁻²")]
    [InlineData("Math.Pow(Math.Pow(a, 2), 3)", "(a²)³")]
    [InlineData("Math.Pow(z / z0, 0.16)", "(z / z0)^0.16")]
    [InlineData("Math.Pow(2, n + 1)", "2^(n + 1)")]
    [InlineData("Math.PI * Math.PI * E * I / Math.Pow(K * L, 2)", "π · π · E · I / (K · L)²")]
    [InlineData("Math.Min(a, Math.Max(b, 0))", "min(a, max(b, 0))")]
    [InlineData("Math.Cbrt(V)", "∛(V)")]
    [InlineData("double.Hypot(x, y + 1)", "√(x² + (y + 1)²)")]
    [InlineData("Math.Clamp(x, 0, 1)", "min(1, max(0, x))")]
    [InlineData("(double)n / m", "n / m")]
    [InlineData("(int)Math.Ceiling(L / s)", "trunc(⌈L / s⌉)")]
    [InlineData("sigma_b + tauMax * alpha1", "σ_b + τ_Max · α1")]
    [InlineData("bar.L * this.kappa", "bar.L · κ")]
    [InlineData("bars[i + 1].L / 2.0", "bars[i + 1].L / 2")]
    [InlineData("lambda <= 0.2 ? 1 : 1 / (Phi + Math.Sqrt(Phi * Phi - lambda * lambda))", "1 if λ ≤ 0.2, else 1 / (Φ + √(Φ · Φ − λ · λ))")]
    [InlineData("(a > b ? a : b) * c", "(a if a > b, else b) · c")]
    [InlineData("a > 0 && b != 0 || !c ? 1 : 2", "1 if a > 0 and b ≠ 0 or not c, else 2")]
    [InlineData("210e9 * 1e-3 * 1_000 * 5d", "2.1·10¹¹ · 0.001 · 1000 · 5")]
    [InlineData("1e-6 * x", "10⁻⁶ · x")]
    [InlineData("a\n    // the long term\n    + /* and */ b!", "a + b")]
    [InlineData("Plate.Stress(q, b) * 2", "Plate.Stress(q, b) · 2")]
    public void Code_is_printed_as_mathematics(string code, string expected) =>
        Assert.Equal(expected, FormulaNode.Parse(code).ToText());

    [Theory]
    [InlineData("")]
    [InlineData("a +")]
    [InlineData("(a")]
    [InlineData("a b")]
    [InlineData("x switch { > 0 => 1, _ => 2 }")]
    [InlineData("Sum<int>(x)")]
    [InlineData("items.Max(i => i.L)")]
    [InlineData("new Bar(3).L")]
    [InlineData("a ?? b")]
    [InlineData("a?.L * 2")]
    [InlineData("$\"{a}\"")]
    [InlineData("i++ + 1")]
    [InlineData("--i")]
    [InlineData("a << 2")]
    [InlineData("a = 5")]
    [InlineData("x is null ? 1 : 2")]
    [InlineData("1e")]
    [InlineData("0x1F")]
    [InlineData("f(n: 2)")]
    public void Code_that_is_no_formula_is_kept_as_it_is(string code)
    {
        FormulaNode node = FormulaNode.Parse(code);
        Assert.IsType<FormulaNode.Verbatim>(node);
        Assert.Equal(code, node.ToText());
    }

    [Fact]
    public void Deep_or_long_code_is_kept_as_it_is()
    {
        Assert.IsType<FormulaNode.Verbatim>(FormulaNode.Parse(new string('(', 1500) + "a" + new string(')', 1500)));
        Assert.IsType<FormulaNode.Verbatim>(FormulaNode.Parse(string.Concat(Enumerable.Repeat("- ", 1500)) + "a"));
        Assert.IsType<FormulaNode.Verbatim>(FormulaNode.Parse(string.Join(" + ", Enumerable.Repeat("a", 5000))));
    }

    [Fact]
    public void Equal_code_gives_equal_trees_whatever_the_spacing()
    {
        Assert.Equal(FormulaNode.Parse("Math.Min(a,b)*bars[ i ].L"), FormulaNode.Parse("Math.Min( a, b ) * bars[i].L"));
        Assert.NotEqual(FormulaNode.Parse("a - b"), FormulaNode.Parse("b - a"));
    }

    /// <summary>The compiler itself computes the value here, so that our reading of C# is held against its own.</summary>
    [Fact]
    public void A_captured_expression_has_the_value_the_compiler_gives()
    {
        double a = 2.5, b = -1.25, c = 7, n = 3;
        var values = new Dictionary<string, double> { ["a"] = a, ["b"] = b, ["c"] = c, ["n"] = n };
        Same(a - b - c * a / b * c);
        Same(-a * -b + -(c - a));
        Same(a / (b / c) / n - -a);
        Same(c % n * a - c % (n * a));
        Same(Math.Sqrt(Math.Abs(b)) + Math.Pow(a, 2) * Math.Pow(c, -0.5));
        Same(a < b ? c : b < c ? n : a);
        Same(a > b && b > c || n >= 3 ? a + 1 : a - 1);
        Same((a > b) == (b > c) ? 1 : 2);
        Same(Math.Min(a, b) - Math.Max(c, n) + Math.Atan2(a, c) * Math.Cbrt(c));
        Same((int)(a * 3) + (double)n / 2.0e0 - .5 + 1_000.25);
        Same(Math.PI * Math.Exp(-a) * Math.Log(c) / Math.Sin(a) + double.Hypot(a, b));
        Same(Math.Clamp(c, a, n) * 1e-3 + Math.Floor(a) + Math.Ceiling(a) + Math.Truncate(b) + Math.Sign(b));

        void Same(double value, [CallerArgumentExpression(nameof(value))] string code = "")
        {
            FormulaNode substituted = FormulaNode.Parse(code).Replace(node =>
                node is FormulaNode.Symbol s ? new FormulaNode.Quantity(values[s.Name], Dimension.Number, s) : null);
            Assert.Equal(value, FormulaValue.Of(substituted)!.Value, 1e-14 * Math.Abs(value));
        }
    }
}
