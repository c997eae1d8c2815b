using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Works.Tests.Moving;

public class LashingTests
{
    private static readonly LashedLoad Crate = new()
    {
        Name = "crate 1",
        Mass = 1000.Kilograms,
        Length = 2.Meters,
        Width = 1.5.Meters,
        CenterHeight = 0.5.Meters,
        Straps = 2,
        StrapTension = Force.FromNewtons(4000),
        StrapAngle = 90.Degrees,
        Friction = 0.4,
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("1 t on the road, μ 0.4, straps of 4 kN upright: straps against sliding forward", "EN 12195-1:2010, 6.2: (0.8 − 0.4) m g 1.25/(2 · 0.4 · 4 kN)", 0.4 * 9806.65 * 1.25 / 3200, "-", 1e-9, () => Demand("lashing.sliding", "forward"), ValueKind.FromMemory),
        new("the same to the side", "EN 12195-1:2010, 6.2: (0.5 − 0.4) m g 1.1/(2 · 0.4 · 4 kN)", 0.1 * 9806.65 * 1.1 / 3200, "-", 1e-9, () => Demand("lashing.sliding", "to the side"), ValueKind.FromMemory),
    ];

    private static double Demand(string id, string direction) => Lashing.Checks(Crate, Journey.Road).Single(c => c.Id == id && c.Where.EndsWith(direction, StringComparison.Ordinal)).Demand!.Value;

    /// <summary>With exactly the straps that are asked for, friction and weight hold the jolt, by equilibrium.</summary>
    [Fact]
    public void The_straps_asked_for_are_those_that_equilibrium_needs() => Gen.Select(Gen.Double[0.15, 0.6], Gen.Double[20, 90], Gen.Double[0.2, 3]).Sample((mu, angle, h) =>
    {
        LashedLoad load = Crate with { Friction = mu, StrapAngle = angle.Degrees, CenterHeight = h.Meters };
        double W = 1000 * 9.80665, sin = Math.Sin(angle * Math.PI / 180);
        foreach ((Jolt jolt, int i) in Journey.SeaC.Jolts.Select((j, i) => (j, i)))
        {
            double slide = Lashing.Checks(load, Journey.SeaC)[2 * i].Demand!.Value, tip = Lashing.Checks(load, Journey.SeaC)[2 * i + 1].Demand!.Value;
            double pressed = jolt.Down * W + 2 * slide * 4000 * sin / jolt.Safety;
            Assert.True(mu * pressed >= jolt.Level * W * (1 - 1e-9));
            double b = jolt.Direction == "to the side" ? 1.5 : 2;
            Assert.True(jolt.Down * W * b / 2 + tip * 4000 * sin * b / jolt.Safety >= jolt.Level * W * h * (1 - 1e-9));
        }
    }, iter: 200);

    [Fact]
    public void Without_straps_a_load_that_would_slide_fails_and_a_working_is_told()
    {
        Checks.Check check = Lashing.Checks(Crate with { Straps = 0 }, Journey.Road)[0];
        Assert.Equal(Verdict.Fail, check.Verdict);
        Assert.Contains("sin", Lashing.Checks(Crate, Journey.Road)[0].Working().ToText());
    }

    [Fact]
    public void Inputs_out_of_range_are_refused_together() =>
        Assert.Equal(2, Assert.Throws<InvalidStatueException>(() => Lashing.Checks(Crate with { Friction = 3, Straps = -1 }, Journey.Rail)).Problems.Count);
}
