using StatueFrame.Analysis;
using StatueFrame.Checks;

namespace StatueFrame.Tests.Checks.Bars;

public class WeldChecksTests
{
    private const string Simplified = "EN 1993-1-8:2005, (4.4), second hand";
    private static readonly WeldedFixing weld = new() { Throat = 5.Millimeters, WeldLength = 100.Millimeters, CorrelationFactor = 0.9 };

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new[] { ("S235", 0.8, 360, 208), ("S275", 0.85, 410, 223), ("S355", 0.9, 470, 241), ("S460", 1, 540, 249) }.Select(r => new PublishedValue(
            $"shear strength of a fillet weld, {r.Item1}", Simplified, r.Item4, "MPa", 2.4e-3, () => 1e-6 * Of(weld with { CorrelationFactor = r.Item2, Simplified = true }, 1e6 * r.Item3, new(1, 0, 0, 0, 0, 0)).Capacity)),
        new("strength of a fillet weld of throat 4.2 mm into S275, a length", Simplified + ", worked example, step 2", 935.8, "N/mm", 2e-4, () => 4.2e-6 * Of(weld with { Throat = 4.2.Millimeters, CorrelationFactor = 0.85, Simplified = true }, 410e6, new(1, 0, 0, 0, 0, 0)).Capacity),
        new("transverse fillet weld, directional over simplified strength", "both methods of EN 1993-1-8:2005, 4.5.3, by hand: √(3/2)", Math.Sqrt(1.5), "-", 1e-9, () => Utilization(true, new(1000, 0, 0, 0, 0, 0)) / Utilization(false, new(1000, 0, 0, 0, 0, 0)), ValueKind.IndependentComputation),
        new("longitudinal fillet weld, directional over simplified strength", "both methods of EN 1993-1-8:2005, 4.5.3, by hand", 1, "-", 1e-9, () => Utilization(true, new(0, 0, 0, 0, 0, 1000)) / Utilization(false, new(0, 0, 0, 0, 0, 1000)), ValueKind.IndependentComputation),
    ];

    private static double Utilization(bool simplified, FlatForces f)
    {
        (double demand, double capacity) = Of(weld with { Simplified = simplified }, 470e6, f);
        return demand / capacity;
    }

    private static (double Demand, double Capacity) Of(WeldedFixing fixing, double f_u, FlatForces f) =>
        WeldChecks.Fillets(null, f, 0.01, f_u, fixing, 0.1, LoadedBars.En);

    /// <summary>A filler weaker than what it joins counts in its place, in bars and in tubes; a stronger one adds nothing under EN.</summary>
    [Fact]
    public void A_weak_electrode_weakens_the_weld()
    {
        var pull = new FlatForces(1000, 0, 0, 0, 0, 0);
        double full = Of(weld, 470e6, pull).Capacity;
        Assert.Equal(0.5 * full, Of(weld with { ElectrodeStrength = 235.Megapascals }, 470e6, pull).Capacity, 1e-6 * full);
        Assert.Equal(full, Of(weld with { ElectrodeStrength = 500.Megapascals }, 470e6, pull).Capacity, 1e-6 * full);
        double tube = FilletThroat.Strength(null, 470e6, "", LoadedBars.En, 0.9);
        Assert.Equal(0.5 * tube, FilletThroat.Strength(null, 470e6, "", LoadedBars.En, 0.9, 235.Megapascals), 1e-6 * tube);
    }

    [Fact]
    public void Weak_moment_is_a_couple_of_the_two_welds() =>
        Assert.Equal(Of(weld, 470e6, new(2 * 10 / 0.01, 0, 0, 0, 0, 0)).Demand, Of(weld, 470e6, new(0, 10, 0, 0, 0, 0)).Demand, 1e-3);

    [Fact]
    public void Strong_moment_spreads_linearly_along_the_welds() =>
        Assert.Equal(10 / (2 * 0.1 * 0.1 / 6) * Math.Sqrt(2) / 0.005, Of(weld, 470e6, new(0, 0, 10, 0, 0, 0)).Demand, 1e-3);
}
