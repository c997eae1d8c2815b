using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Shock;

public class ShockChecksTests
{
    private static readonly PressurePulse wave = new() { Name = "wave", Shape = new HalfSinePulse(), Peak = 1.5.Kilopascals, Duration = 0.05.Seconds };

    private static readonly Criteria criteria = new()
    {
        Damping = DampingModel.OfRatio(0.02),
        BarStressFraction = 1,
        Shock = new ShockLimits { BaseWidth = 3.Meters, Clearance = 20.Millimeters },
        Sway = [new SwayLimit("tip", 30.Millimeters)],
    };

    private static CheckSheet Sheet(Criteria criteria, PressurePulse shock, LimitState state = LimitState.Strength) =>
        Figures.Model.Check(criteria, new Situation { Name = "wave", LimitState = state, Actions = [new SelfWeight(), shock] });

    private static Check[] Family(CheckSheet sheet) => [.. sheet.Checks.Where(c => c.Family == "shock")];

    [Fact]
    public void Sheet_holds_a_check_a_ring_and_one_of_the_base_and_the_gap()
    {
        CheckSheet sheet = Sheet(criteria, wave);
        Check[] checks = Family(sheet), bars = [.. sheet.Checks.Where(c => c.Id == "bars.bending")];
        Assert.Equal(3, bars.Length);
        Assert.Single(checks, c => c.Id == "shock.overturning");
        Assert.Single(checks, c => c.Id == "shock.clearance");
        Assert.DoesNotContain(checks, c => c.Verdict == Verdict.NotChecked);
        ShockResponse response = ShockResponse.Of(Figures.Model, new Situation { Name = "wave", Actions = [new SelfWeight(), wave] }, criteria.Damping);
        // Every bound counts, and the peaks of all forces at one time.
        Assert.True(bars.Max(c => c.Demand!.Value) >= response.Bars.Max(b => b.Stress.Value.Pascals) * (1 - 1e-9));
        Assert.All(checks, c => Assert.Contains(c.Demand is { } d && c.Capacity is { } k && d <= k ? "pass" : "FAIL", c.Working().ToString()));
    }

    [Fact]
    public void Stronger_wave_fails_in_this_family()
    {
        Check[] weak = Family(Sheet(criteria, wave)), strong = Family(Sheet(criteria, wave with { Peak = 15.Kilopascals }));
        Assert.Contains(strong, c => c.Verdict == Verdict.Fail);
        Assert.Equal(10 * weak.First(c => c.Id == "shock.clearance").Demand!.Value, strong.First(c => c.Id == "shock.clearance").Demand!.Value, 1e-6);
    }

    [Fact]
    public void Unknown_base_and_gap_are_not_checked_and_say_why()
    {
        Check[] checks = Family(Sheet(criteria with { Shock = null }, wave));
        Assert.Contains("BaseWidth", checks.Single(c => c.Id == "shock.overturning").Reason);
        Assert.Contains("Clearance", checks.Single(c => c.Id == "shock.clearance").Reason);
    }

    [Fact]
    public void Service_situation_checks_the_sway()
    {
        Check sway = Assert.Single(Family(Sheet(criteria, wave, LimitState.Service)));
        Assert.Equal("shock.sway", sway.Id);
        Assert.Equal("tip", sway.Where);
    }

    [Fact]
    public void Sheet_without_a_shock_says_so()
    {
        CheckSheet sheet = Figures.Model.Check(criteria, new Situation { Name = "rest", Actions = [new SelfWeight()] });
        Assert.Equal("no situation has a shock", sheet.Checks.Single(c => c.Id == "shock.response").Reason);
        Assert.DoesNotContain(Sheet(criteria, wave).Checks, c => c.Id == "shock.response");
    }

    [Fact]
    public void Damping_that_nobody_gave_is_an_assumption()
    {
        CheckSheet sheet = Sheet(criteria with { Damping = null, BarStressFraction = null }, wave);
        Check bar = sheet.Checks.First(c => c.Id == "bars.bending");
        Assert.Contains(bar.AssumedInputs, a => a.Contains("damping", StringComparison.Ordinal));
        Assert.Contains(bar.AssumedInputs, a => a.Contains("allowable stress", StringComparison.Ordinal));
        Assert.Contains(sheet.Checks.Single(c => c.Id == "shock.overturning").AssumedInputs, a => a.Contains("damping", StringComparison.Ordinal));
    }

    [Fact]
    public void Bar_that_yields_is_not_judged_by_its_stress()
    {
        ShockResponse response = ShockResponse.Of(Figures.Model, new Situation { Name = "wave", Actions = [wave] }, criteria.Damping, new ShockOptions { Modes = 16, Step = 0.0004.Seconds, Length = 0.1.Seconds, Yielding = new BarYielding { StrengthFactor = 0.1 } });
        Assert.Equal(Verdict.NotChecked, ShockChecks.BarStress(response.Bars.First(b => b.HasYielded), 1, "wave").Verdict);
    }
}
