namespace StatueFrame.Tests;

public class WorkingTests
{
    private sealed record Bar(double L, double A, double W);

    private static readonly Bar bar = new(0.6, 480e-6, 640e-9);
    private static readonly Source elastic = Source.CommonPractice;

    private static double Stress(Working? w, double N, double q)
    {
        w.Given(N, Dimension.Force, "axial force");
        w.Given(bar.L, Dimension.Length, "span");
        double A = w.Given("A", bar.A, Dimension.SmallArea);
        double W = w.Given("W", bar.W, Dimension.SectionModulus);
        double M = w.Let("M", q * Math.Pow(bar.L, 2) / 8, Dimension.Moment, elastic);
        return w.Let("sigma", Math.Abs(N) / A + Math.Abs(M) / W, Dimension.Stress, elastic, "greatest fiber stress");
    }

    [Fact]
    public void The_working_shows_formula_numbers_result_and_source()
    {
        Working w = Working.Of(w => Stress(w, -12e3, 900));
        SnapshotText.Match(w.ToText(DisplayUnits.Metric) + "\n" + w.ToText(DisplayUnits.UsCustomary));
    }

    [Fact]
    public void The_value_does_not_depend_on_a_listener()
    {
        double heard = 0;
        Working.Of(w => heard = Stress(w, -12e3, 900));
        Assert.Equal(Stress(null, -12e3, 900), heard);
        Assert.Equal(12e3 / 480e-6 + 900 * 0.36 / 8 / 640e-9, heard, 1);
    }

    [Fact]
    public void Nothing_is_allocated_when_nobody_listens()
    {
        double sum = Stress(null, -12e3, 900);
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
            sum += Stress(null, -12e3, i);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.True(double.IsFinite(sum));
    }

    [Fact]
    public void Known_names_are_replaced_by_their_values_and_unknown_names_stay()
    {
        double F = 2e3, x = 0.5;
        Working w = Working.Of(w => w.Let("M", w.Given(F, Dimension.Force) * x, Dimension.Moment));
        Working v = Working.Of(w =>
        {
            w.Given(F, Dimension.Force);
            w.Let("M", F * x, Dimension.Moment);
        });
        Assert.IsType<FormulaNode.Verbatim>(Last(Working.Of(w => w.Let("a", new[] { 1.0 }[0], Dimension.Number))).Formula);
        Assert.Equal("F · x", Last(v).Formula.ToText());
        Assert.Equal("2 kN · x", Last(v).Substituted!.ToText());
        Assert.Equal("w.Given(F, Dimension.Force) · x", Last(w).Formula.ToText());
    }

    [Fact]
    public void A_negative_value_and_a_value_with_a_unit_get_parentheses_where_they_need_them()
    {
        double a = -2, L = 0.5, n = 4;
        Working w = Working.Of(w =>
        {
            w.Given(a, Dimension.Number);
            w.Given(L, Dimension.Length);
            w.Given(n, Dimension.Number);
            w.Let("x", n - a * Math.Pow(L, 2) + Math.Pow(n, 2) * a, Dimension.Number);
        });
        Assert.Equal("4 − (−2 · (0.5 m)²) + 4² · (−2)", Last(w).Substituted!.ToText());
    }

    [Fact]
    public void Numbers_are_not_shown_where_they_would_not_give_the_result()
    {
        double L = 2;
        Working w = Working.Of(w =>
        {
            w.Given("L", 3, Dimension.Length);
            w.Let("A", L * L, Dimension.SmallArea);
        });
        Assert.Null(Last(w).Substituted);
        Assert.Equal("L · L", Last(w).Formula.ToText());
    }

    [Fact]
    public void A_part_has_names_of_its_own_and_gives_the_old_ones_back()
    {
        Working w = Working.Of(w =>
        {
            double L = w.Given("L", 3, Dimension.Length);
            double k = w.Let("k", Half(w, 5), Dimension.Number);
            w.Let("x", L * k, Dimension.Length);
        });
        Assert.Equal("Half(5)", w.Lines.OfType<WorkingLine.Computed>().Single(line => line.Symbol.ToText() == "k").Formula.ToText());
        Assert.Equal("3 m · 2.5", Last(w).Substituted!.ToText());

        static double Half(Working? w, double L)
        {
            using IDisposable? part = w?.Part("Half of it");
            w.Given(L, Dimension.Number);
            return w.Let("h", L / 2, Dimension.Number);
        }
    }

    [Fact]
    public void Long_formulas_are_broken_into_lines()
    {
        double length = 1, width = 2, height = 3;
        Working w = Working.Of(w => w.Let("V",
            length * width * height + length * width * height + length * width * height + length * width * height + length * width,
            Dimension.Number));
        w.Note("A note.");
        Assert.All(w.ToText().Split('\n'), line => Assert.True(line.Length <= 110, line));
        Assert.EndsWith("A note.\n", w.ToText());
    }

    private static WorkingLine.Computed Last(Working w) => w.Lines.OfType<WorkingLine.Computed>().Last();
}
