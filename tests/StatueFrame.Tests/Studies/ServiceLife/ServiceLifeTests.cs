using StatueFrame.Checks;
using StatueFrame.Studies;
using StatueFrame.Tests.Checks.Metals;

namespace StatueFrame.Tests.Studies.Lives;

public class ServiceLifeTests
{
    private static readonly Statue statue = HeronMetals.Statue with
    {
        Standoffs = [.. HeronMetals.Statue.Standoffs.Select(ring => (EvenRing)ring with { Lay = 50.Degrees })],
        Corrosion = HeronMetals.Sea with { AirInside = Atmosphere.Of(Corrosivity.C5, CategoryValue.Upper) },
    };

    private static readonly Criteria criteria = HeronMetals.Criteria;
    private static readonly Situation storm = StormThatFits();
    private static readonly ServiceLifeOptions options = new() { Span = 60.Years365, Steps = 3, Halvings = 3 };
    private static readonly Lazy<ServiceLife> study = new(() => ServiceLife.Of(statue, criteria, [storm], options));

    [Fact]
    public void A_check_passes_at_its_last_pass_and_fails_at_its_first_fail()
    {
        CheckLife life = study.Value.Lives.First(l => l.LastPass > 0 && l.FirstFail is not null);
        Assert.Equal(60.0 / 3 / 8, life.FirstFail!.Value - life.LastPass!.Value, 1e-9);
        Assert.NotEqual(Verdict.Fail, At(life.LastPass.Value, life));
        Assert.Equal(Verdict.Fail, At(life.FirstFail.Value, life));

        Verdict? At(double years, CheckLife l) => statue.Corroded(years.Years365).Check(criteria, storm).Checks
            .FirstOrDefault(c => c.Id == l.Id && c.Situation == l.Situation && c.Where.Split(',')[0] == l.Place)?.Verdict;
    }

    [Fact]
    public void The_first_to_fail_comes_first()
    {
        double?[] years = [.. study.Value.Lives.Select(l => l.FirstFail ?? double.PositiveInfinity)];
        Assert.Equal(years.Order(), years);
        Assert.Equal(study.Value.Lives[0], study.Value.FirstToFail);
        Assert.DoesNotContain(study.Value.Lives, l => l.Id.StartsWith("metals", StringComparison.Ordinal));
    }

    [Fact]
    public void Text_and_table_hold_every_life()
    {
        Assert.Contains("SERVICE LIFE: heron", study.Value.ToText());
        Assert.Equal(study.Value.Lives.Count + 1, Figures.Parse(study.Value.ToCsv()).Length);
        Assert.All(study.Value.ToText().Split('\n'), line => Assert.True(line.Length <= 110));
    }

    [Fact]
    public void What_fails_now_has_never_passed()
    {
        ServiceLife life = ServiceLife.Of(statue, criteria with { BarStressFraction = 0.05 }, [storm], options with { Steps = 1, Halvings = 0 });
        Assert.Null(life.FirstToFail!.LastPass);
        Assert.Equal(0, life.FirstToFail.FirstFail);
    }

    [Fact]
    public void A_statue_worn_through_fails_everything()
    {
        Statue bare = HeronMetals.Statue with { Corrosion = new Corrosion { Air = Atmosphere.Of(Corrosivity.CX) } };
        ServiceLife life = ServiceLife.Of(bare, criteria, [storm], options with { Span = 200.Years365, Steps = 2 });
        Assert.Contains("worn through", life.WornThrough);
        Assert.All(life.Lives, l => Assert.NotNull(l.FirstFail));
        Assert.Contains("worn through", life.ToText());
    }

    [Fact]
    public void Progress_is_told_and_the_study_can_be_stopped()
    {
        var told = new Told();
        ServiceLife.Of(statue, criteria, [storm], options with { Steps = 1, Halvings = 0 }, told);
        Assert.Equal(1, told.Last);
        Assert.ThrowsAny<OperationCanceledException>(() => ServiceLife.Of(statue, criteria, [storm], options, null, new CancellationToken(true)));
        Assert.Throws<InvalidStatueException>(() => ServiceLife.Of(statue with { Corrosion = null }, criteria, [storm]));
        Assert.Throws<InvalidStatueException>(() => ServiceLife.Of(statue, criteria, [], options));
    }

    /// <summary>A storm that uses about 85 % of the worst standoff today.</summary>
    private static Situation StormThatFits()
    {
        double now = StatueFrame.Analysis.StatueModel.Build(statue).Respond(HeronMetals.Storm).WorstBar!.Stress / StructuralSteel.S355.YieldStrength;
        return HeronMetals.Storm with { Actions = [1.35 * new SelfWeight(), 1.5 * 0.85 * 0.9 / now * (HeronMetals.Wind with { Headings = [0.Degrees, 90.Degrees] })] };
    }

    private sealed class Told : IProgress<double>
    {
        public double Last { get; private set; }

        public void Report(double value) => Last = value;
    }
}
