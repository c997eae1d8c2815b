using CsCheck;
using StatueFrame.Studies;
using StatueFrame.Tests.Actions;

namespace StatueFrame.Tests.Studies.Stock;

public class StockSearchTests
{
    private static readonly StudyOptions options = new();

    [Fact]
    public void The_best_is_that_of_trying_them_all() =>
        Gen.Select(Gen.Int[1, 6], Gen.Int[1, 6], Gen.Int[1, 6], Gen.Int[0, 7], Gen.ULong).Sample((a, b, c, declared, seed) =>
        {
            int[] sizes = [a, b, c];
            bool[] strengthens = [(declared & 1) > 0, (declared & 2) > 0, (declared & 4) > 0];
            double[][] cost = [.. sizes.Select((n, axis) => Steps(n, axis))], strength = [.. sizes.Select((n, axis) => Steps(n, axis + 10))];
            double need = 2.5 * RandomStream.Uniform(seed, 0, 60) * (a + b + c) / 3;
            double Cost(int[] p) => p.Select((i, axis) => cost[axis][i]).Sum();
            // Along axes that are not declared, a hash decides; along the others strength adds up.
            bool Good(int[] p) => p.Select((i, axis) => strengthens[axis] ? strength[axis][i] : 3 * RandomStream.Uniform(seed, i, 70 + axis)).Sum() >= need;
            LatticeSearch.Found found = LatticeSearch.Run(sizes, strengthens, Cost, Good, 10_000, 5, options);
            int[]? brute = All(sizes).Where(Good).MinBy(Cost);
            return found.IsProven && found.Contradiction.Length == 0 && (brute is null ? found.Best is null : found.Best is not null && Math.Abs(Cost(brute) - found.Cost) < 1e-12 && Good(found.Best));

            double[] Steps(int n, int axis)
            {
                double sum = 0;
                return [.. Enumerable.Range(0, n).Select(i => sum += RandomStream.Uniform(seed, i, axis))];
            }
        }, iter: 300);

    [Fact]
    public void Declared_strength_saves_checks_and_finds_the_same()
    {
        int[] sizes = [8, 8, 8];
        double Cost(int[] p) => p[0] + 1.1 * p[1] + 1.3 * p[2];
        int checks = 0;
        bool Good(int[] p)
        {
            Interlocked.Increment(ref checks);
            return p.Min() >= 4 && p.Sum() >= 15;
        }
        LatticeSearch.Found blind = LatticeSearch.Run(sizes, [false, false, false], Cost, Good, 10_000, 0, options);
        int without = checks;
        checks = 0;
        LatticeSearch.Found knowing = LatticeSearch.Run(sizes, [true, true, true], Cost, Good, 10_000, 0, options);
        Assert.Equal(blind.Best, knowing.Best);
        Assert.Equal(checks, knowing.Checked);
        Assert.True(checks < without / 3, $"{checks} of {without}");
    }

    [Fact]
    public void A_false_claim_is_found_out()
    {
        // The second axis weakens, though it was declared to strengthen.
        LatticeSearch.Found found = LatticeSearch.Run([4, 6], [true, true], p => p.Sum(), p => p[0] >= 2 && p[1] <= 3, 1000, 50, options);
        Assert.False(found.IsProven);
        Assert.NotEmpty(found.Contradiction);
        LatticeSearch.Found falling = LatticeSearch.Run([4, 6], [false, false], p => p[0] - p[1], p => p[0] == 3, 1000, 0, options);
        Assert.Contains("objective falls", falling.Contradiction);
    }

    [Fact]
    public void A_search_that_is_cut_short_proves_nothing()
    {
        LatticeSearch.Found found = LatticeSearch.Run([9, 9], [false, false], p => p.Sum(), p => p.Sum() > 12, 20, 0, options);
        Assert.Null(found.Best);
        Assert.False(found.IsProven);
        Assert.InRange(found.Checked, 1, 20);
    }

    [Fact]
    public void Threads_do_not_change_what_is_looked_at()
    {
        LatticeSearch.Found Run(int threads) => LatticeSearch.Run([7, 7, 7], [true, false, true], p => p.Sum(), p => p[0] + p[2] > 6 && p[1] % 3 == 1, 1000, 3, new StudyOptions { Threads = threads });
        (LatticeSearch.Found one, LatticeSearch.Found many) = (Run(1), Run(7));
        Assert.Equal(one.Best, many.Best);
        Assert.Equal((one.Checked, one.RuledOut), (many.Checked, many.RuledOut));
    }

    [Fact]
    public void The_lightest_statue_that_passes_is_that_of_all_variants()
    {
        var criteria = new Criteria { BarStressFraction = 1 / 1.1, Modes = 2 };
        Situation[] situations = [new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 0.3 * Stages.Wind(0, 90)] }];
        FlatBar[] flats = [.. new[] { 4.0, 6, 8, 10, 12, 16, 20 }.Select(t => new FlatBar(60.Millimeters, t.Millimeters))];
        double[] sheets = [1.5, 2, 2.5];
        Statue Bars(Statue s, FlatBar flat) => s with { Standoffs = [.. s.Standoffs.Select(r => (EvenRing)r with { Standoff = ((EvenRing)r).Standoff with { Section = flat } })] };
        Statue Sheet(Statue s, double t) => s with { Skin = s.Skin! with { Thickness = t.Millimeters } };
        double Worst(CheckSheet sheet) => sheet.Checks.Where(c => c.Family == "bars").Max(c => c.Utilization) ?? double.PositiveInfinity;
        var study = VariantStudy.Of(
            Stages.Statue, Variant.Grid(Variant.List("bars", flats, Bars), Variant.List("sheet", sheets, Sheet)), criteria, situations);
        Assert.All(study.Rows, r => Assert.Equal("", r.Error));
        double need = study.Rows.Select(r => Worst(r.Sheet!)).Order().ElementAt(7);
        bool Enough(CheckSheet sheet) => Worst(sheet) <= need;
        StockResult result = StockSearch.Of(Stages.Statue, [StockInput.Of("bars", flats, Bars), StockInput.Of("sheet, mm", sheets, Sheet)], criteria, situations, Enough);
        VariantRow best = study.Best(r => r.Mass!.Value.Kilograms, r => Enough(r.Sheet!))!;
        Assert.True(result.IsProven);
        Assert.Equal(best.Statue, result.Statue);
        Assert.Equal(best.Mass!.Value.Kilograms, result.Objective!.Value, 1e-9);
        Assert.Contains("proven", result.ToString());
        Assert.Equal(21, result.Combinations);
        Assert.NotNull(result.Sheet);
    }

    private static IEnumerable<int[]> All(int[] sizes) =>
        Enumerable.Range(0, sizes[0]).SelectMany(i => Enumerable.Range(0, sizes[1]).SelectMany(j => Enumerable.Range(0, sizes[2]).Select(k => new[] { i, j, k })));
}
