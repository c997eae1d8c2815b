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
        Assert.DoesNotContain(study.Value.Lives, l => l.Id is "metals.loss" or "life.end");
        Assert.Contains(study.Value.Lives, l => l.Id == "metals.galvanic");
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

    [Fact]
    public void New_bars_lose_as_much_as_the_first_ones_did()
    {
        Statue renewed = new BarRenewal { After = 25.Years365 }.Of(statue);
        Assert.Equal(Thickness(statue.Corroded(10.Years365)), Thickness(renewed.Corroded(35.Years365)), 1e-12);
        Assert.Equal(Thickness(statue), Thickness(renewed.Corroded(25.Years365)), 1e-12);
        Assert.Equal(statue.Corroded(35.Years365).Skin, renewed.Corroded(35.Years365).Skin);
        // In one go or in two.
        Assert.Equal(Thickness(renewed.Corroded(50.Years365)), Thickness(renewed.Corroded(35.Years365).Corroded(15.Years365)), 1e-12);
        Assert.Equal(Thickness(renewed.Corroded(20.Years365)), Thickness(statue), 1e-12);

        static double Thickness(Statue s) => ((EvenRing)s.Standoffs[0]).Standoff.Section.Thickness.Meters;
    }

    [Fact]
    public void A_check_that_fails_of_thin_bars_passes_again_with_new_ones()
    {
        CheckLife without = study.Value.Lives.First(l => l.Now.Family == "bars" && l.LastPass > 0 && l.FirstFail < 50);
        double renewal = without.FirstFail!.Value + 3.3;
        ServiceLife life = ServiceLife.Of(statue, criteria, [storm], options with { Renewals = [new BarRenewal { After = renewal.Years365 }] });
        CheckLife with = life.Lives.Single(l => l.Id == without.Id && l.Place == without.Place && l.Situation == without.Situation);
        Assert.InRange(with.FirstFail!.Value, without.LastPass!.Value, without.FirstFail.Value);
        Assert.Equal(renewal, with.Failing[0].To!.Value, 1e-9);
        Assert.Contains("passes again", with.ToString());
        // The new bars live as long as the first ones, if the span lasts and the others have not moved on too far.
        if (with.Failing.Count > 1)
            Assert.InRange(with.Failing[1].From - renewal, 0, without.FirstFail.Value + 60.0 / 3 / 8);
        Assert.Contains("Renewed: all bars after", life.ToText());
    }

    [Fact]
    public void Renewals_in_time_keep_the_bars_passing()
    {
        Statue painted = statue with { Corrosion = statue.Corrosion! with { TowerCoating = 100.Years365 } };
        Situation breeze = storm with { Actions = [1.35 * new SelfWeight(), 0.6 * storm.Actions[1].Factor * storm.Actions[1].Action] };
        CheckLife without = ServiceLife.Of(painted, criteria, [breeze], options).Lives.First(l => l.Now.Family == "bars" && l.LastPass is > 5 and < 55);
        double often = without.LastPass!.Value / 2;
        BarRenewal[] renewals = [.. Enumerable.Range(1, (int)(60 / often)).Select(i => new BarRenewal { After = (often * i).Years365 })];
        ServiceLife kept = ServiceLife.Of(painted, criteria, [breeze], options with { Renewals = [.. renewals] });
        Assert.Null(kept.Lives.Single(l => l.Id == without.Id && l.Place == without.Place && l.Situation == without.Situation).FirstFail);
    }

    [Fact]
    public void Bars_of_a_metal_that_does_not_corrode_stay_as_they_are()
    {
        Statue duplex = new BarRenewal { After = 10.Years365, Levels = [statue.Standoffs[0].Level], Material = StainlessSteel.Duplex2205 }.Of(statue).Corroded(60.Years365);
        Assert.Equal(((EvenRing)statue.Standoffs[0]).Standoff.Section, ((EvenRing)duplex.Standoffs[0]).Standoff.Section);
        Assert.Equal(StainlessSteel.Duplex2205, ((EvenRing)duplex.Standoffs[0]).Standoff.Material);
        Assert.Equal(statue.Corroded(60.Years365).Standoffs[1], duplex.Standoffs[1]);
    }

    [Fact]
    public void A_renewal_of_unknown_levels_is_refused()
    {
        var e = Assert.Throws<InvalidStatueException>(() => ServiceLife.Of(statue, criteria, [storm], options with { Renewals = [new BarRenewal { After = 10.Years365, Levels = ["attic"] }, new BarRenewal { After = 0.Years365 }] }));
        Assert.Contains("attic", e.Message);
        Assert.Contains("Renewals[1].After", e.Message);
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
