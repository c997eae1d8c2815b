using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Bars;

public class BarBucklingChecksTests
{
    private const string Curves = "EN 1993-1-1:2005, 6.3.1.2";
    private const string Gere = "Timoshenko and Gere, Theory of Elastic Stability, chapter 2";
    private const string Chart = "AISC 360 commentary, alignment charts, G = 1 at both ends";
    private const string Table422 = "AISC Steel Construction Manual, 14th ed., Table 4-22";

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Chi(BucklingCurve.A, 0.924, 0.666, 0.372, 0.223),
        .. Chi(BucklingCurve.B, 0.884, 0.597, 0.342, 0.209),
        .. Chi(BucklingCurve.C, 0.843, 0.540, 0.315, 0.196),
        new("effective length factor, clamped and hinged, held", Gere, 0.699, "-", 5e-4, () => EffectiveLength.Factor(double.PositiveInfinity, 0, false), ValueKind.FromMemory),
        new("effective length factor, clamped both ends, held", Gere, 0.5, "-", 1e-12, () => EffectiveLength.Factor(double.PositiveInfinity, double.PositiveInfinity, false), ValueKind.FromMemory),
        new("effective length factor, hinged both ends, held", Gere, 1, "-", 1e-12, () => EffectiveLength.Factor(0, 0, false), ValueKind.FromMemory),
        new("effective length factor, cantilever", Gere, 2, "-", 1e-12, () => EffectiveLength.Factor(double.PositiveInfinity, 0, true), ValueKind.FromMemory),
        new("effective length factor, clamped both ends, sway", Gere, 1, "-", 1e-12, () => EffectiveLength.Factor(double.PositiveInfinity, double.PositiveInfinity, true), ValueKind.FromMemory),
        new("effective length factor, springs 2EI/L, held", Chart, 0.77, "-", 0.0065, () => EffectiveLength.Factor(2, 2, false), ValueKind.FromMemory),
        new("effective length factor, springs 6EI/L, sway", Chart, 1.32, "-", 0.0038, () => EffectiveLength.Factor(6, 6, true), ValueKind.FromMemory),
        .. new (double Fy, double Slenderness, double Lrfd, double Asd)[] { (36, 20, 31.7, 21.1), (36, 25, 31.4, 20.9), (46, 24, 39.8, 26.5), (50, 10, 44.7, 29.7), (50, 24, 43.1, 28.7) }.SelectMany(r => new PublishedValue[]
        {
            new($"critical stress of a strut, Fy {r.Fy} ksi, KL/r {r.Slenderness}, LRFD", Table422, r.Lrfd, "ksi", 0.051 / r.Lrfd, () => 0.9 * Critical(r.Slenderness, r.Fy)),
            new($"critical stress of a strut, Fy {r.Fy} ksi, KL/r {r.Slenderness}, ASD", Table422, r.Asd, "ksi", 0.051 / r.Asd, () => Critical(r.Slenderness, r.Fy) / 1.67),
        }),
        new("rectangular bar 5 × 3 in, 12 ft, A36, C_b 1.14, LRFD", "AISC Design Examples, v14, example F.11A", 50.6, "kip·ft", 1e-3, () => 0.9 * Rectangular(), ValueKind.FromMemory),
        new("rectangular bar 5 × 3 in, 12 ft, A36, C_b 1.14, ASD", "AISC Design Examples, v14, example F.11A", 33.7, "kip·ft", 1.5e-3, () => Rectangular() / 1.67, ValueKind.FromMemory),
        new("beam-column in uniform bending at half the Euler load: sec(π/2 √½)", "Timoshenko and Gere, Theory of Elastic Stability, chapter 1", 1 / Math.Cos(Math.PI / 2 * Math.Sqrt(0.5)), "-", 1e-12,
            () => SecondOrderBar.EndMomentFactor(0.5, 1), ValueKind.FromMemory),
        .. new (double n, double psi)[] { (0.3, 0.5), (0.6, 0), (0.8, -0.5) }.Select(c => new PublishedValue(
            $"beam-column, N/N_cr {c.n}, end moments 1 and {c.psi}", "the differential equation by finite differences, 4000 steps", ByDifferences(c.n, c.psi), "-", 1e-5,
            () => SecondOrderBar.EndMomentFactor(c.n, c.psi), ValueKind.IndependentComputation)),
        new("effective length, springs 1 and 5 EI/L, held", "lowest root of the discrete column, 400 elements", ByColumn(1, 5, false), "-", 1e-4, () => EffectiveLength.Factor(1, 5, false), ValueKind.IndependentComputation),
        new("effective length, springs 1 and 5 EI/L, sway", "lowest root of the discrete column, 400 elements", ByColumn(1, 5, true), "-", 1e-4, () => EffectiveLength.Factor(1, 5, true), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Chi_is_between_0_and_1_and_falls_with_slenderness_and_imperfection() =>
        Gen.Select(Gen.Double[0, 10], Gen.Double[0, 1]).Sample((lambda, more) =>
        {
            double last = 1;
            foreach (BucklingCurve curve in new[] { BucklingCurve.A0, BucklingCurve.A, BucklingCurve.B, BucklingCurve.C, BucklingCurve.D })
            {
                double chi = curve.Reduction(lambda);
                Assert.InRange(chi, 1e-4, last);
                Assert.True(curve.Reduction(lambda + more) <= chi * (1 + 1e-12));
                Assert.True(chi <= Math.Max(1 / (lambda * lambda), 1e-4) || lambda < 1, "above Euler");
                last = chi;
            }
        });

    [Fact]
    public void Effective_length_is_within_its_limits_and_falls_with_stiffer_springs() =>
        Gen.Select(LoadedBars.Spring, LoadedBars.Spring, Gen.Double[1, 10]).Sample((first, second, by) =>
        {
            double held = EffectiveLength.Factor(first, second, false), sway = EffectiveLength.Factor(first, second, true);
            Assert.InRange(held, 0.5 - 1e-12, 1 + 1e-12);
            Assert.True(sway >= 1 - 1e-12);
            Assert.Equal(held, EffectiveLength.Factor(second, first, false), 1e-9);
            Assert.True(EffectiveLength.Factor(by * first, second, false) <= held + 1e-12);
            Assert.True(EffectiveLength.Factor(by * first, second, true) <= sway + 1e-12 * sway);
        });

    [Fact]
    public void A_cantilever_on_a_hinge_is_a_mechanism()
    {
        Assert.Equal(double.PositiveInfinity, EffectiveLength.Factor(0, 0, true));
        Assert.ThrowsAny<ArgumentException>(() => EffectiveLength.Factor(512, 1.Meters, RotationalStiffness.Zero, RotationalStiffness.Zero, true));
        LoadedBar bar = LoadedBars.Steel(-100) with { TowerFixity = EndFixity.Pinned, SkinFixity = EndFixity.Pinned };
        foreach (Check check in new[] { BarBucklingChecks.Strut(bar, LoadedBars.En), BarBucklingChecks.BeamColumn(bar, LoadedBars.En), BarBucklingChecks.SecondOrder(bar, LoadedBars.En) })
            Assert.Contains("mechanism", check.Reason);
    }

    [Fact]
    public void Axial_force_alone_gives_the_same_load_by_curve_interaction_and_second_order() =>
        Gen.Select(Gen.Double[0.1, 3], Gen.OneOf(Gen.Const(BarRestraint.Held), Gen.Const(BarRestraint.Sway), Gen.Const(BarRestraint.Free))).Sample((L, restraint) =>
        {
            LoadedBar bar = LoadedBars.Steel(-1) with { Length = L.Meters, Restraint = restraint };
            double N = BarBucklingChecks.Strut(bar, LoadedBars.En).Capacity!.Value;
            LoadedBar loaded = LoadedBars.Steel(-N) with { Length = L.Meters, Restraint = restraint };
            Assert.Equal(1, BarBucklingChecks.BeamColumn(loaded, LoadedBars.En).Demand!.Value, 1e-9);
            Check second = BarBucklingChecks.SecondOrder(loaded, LoadedBars.En);
            Assert.Equal(1, second.Utilization!.Value, 1e-9);
        });

    [Fact]
    public void A_longer_bar_is_never_stronger() => Gen.Select(LoadedBars.Any, Gen.Double[1, 2]).Sample((bar, by) =>
    {
        LoadedBar longer = bar with { Length = bar.Length * by };
        foreach (BarDesign design in new[] { LoadedBars.En, LoadedBars.Lrfd, LoadedBars.Asd })
        {
            Assert.True(BarBucklingChecks.Strut(longer, design).Capacity <= BarBucklingChecks.Strut(bar, design).Capacity * (1 + 1e-9));
            Assert.True(BarBucklingChecks.SecondOrder(longer, design).Utilization >= BarBucklingChecks.SecondOrder(bar, design).Utilization * (1 - 1e-9));
            Assert.True(BarBucklingChecks.BeamColumn(bar, design).Utilization is >= 0);
        }
    });

    [Fact]
    public void Moments_without_axial_force_are_not_amplified()
    {
        Check check = BarBucklingChecks.SecondOrder(LoadedBars.Steel(0, 12.8, 96), LoadedBars.En);
        Assert.Equal(40e6, check.Demand!.Value, 1);
    }

    [Fact]
    public void Compression_beyond_the_critical_force_fails()
    {
        foreach (BarDesign design in new[] { LoadedBars.En, LoadedBars.Lrfd, LoadedBars.Asd, LoadedBars.En with { Code = DesignCode.AllowableStress } })
        {
            LoadedBar bar = LoadedBars.Steel(-60e3, 10, 10) with { Length = 2.Meters };
            Assert.Equal(Verdict.Fail, BarBucklingChecks.SecondOrder(bar, design).Verdict);
            Assert.Equal(Verdict.Fail, BarBucklingChecks.Strut(bar, design).Verdict);
            Assert.NotEqual(Verdict.Pass, BarBucklingChecks.BeamColumn(bar, design).Verdict);
        }
    }

    [Fact]
    public void Stainless_steel_has_its_own_interaction()
    {
        LoadedBar bar = LoadedBars.Steel(-500, 20, 50) with { Material = StainlessSteel.Grade316L };
        BarDesign design = BarDesign.For(bar.Material);
        Check stainless = BarBucklingChecks.BeamColumn(bar, design);
        Assert.Contains("EN 1993-1-4", stainless.Source.Document);
        Assert.True(stainless.Utilization > BarBucklingChecks.BeamColumn(bar, design with { Metal = MetalKind.StructuralSteel, Curve = BucklingCurve.StainlessFlat }).Utilization);
        Assert.Equal(1.2, En1993Strut.StainlessFactor(0.3, 0.5), 1e-12);
        Assert.Equal(1, En1993Strut.StainlessFactor(2, 0));
        Assert.Equal(1.6, En1993Strut.StainlessFactor(1.1, 0.5), 1e-12);
        Assert.Equal(2.2, En1993Strut.StainlessFactor(2.5, 0.5), 1e-12);
    }

    [Fact]
    public void Tension_counts_in_the_interaction_of_AISC()
    {
        LoadedBar bar = LoadedBars.Steel(0.9 * 480e-6 * 355e6);
        Assert.Equal(1, BarBucklingChecks.BeamColumn(bar, LoadedBars.Lrfd).Demand!.Value, 1e-9);
    }

    [Fact]
    public void Uniform_bending_is_told_from_double_curvature()
    {
        Assert.Equal(1, SecondOrderBar.MomentRatio(5, -5));
        Assert.Equal(-1, SecondOrderBar.MomentRatio(5, 5));
        Assert.Equal(0, SecondOrderBar.MomentRatio(0, 5));
    }

    [Fact]
    public void Each_check_has_a_working()
    {
        LoadedBar bar = LoadedBars.Steel(-1000, 10, 50);
        foreach (BarDesign design in new[] { LoadedBars.En, LoadedBars.Lrfd, LoadedBars.En with { Code = DesignCode.AllowableStress } })
        {
            Assert.Contains("effective length", BarBucklingChecks.Strut(bar, design).Working().ToText());
            Assert.Contains("Amplification about the weak axis", BarBucklingChecks.SecondOrder(bar, design).Working().ToText());
        }
        Assert.Contains("k_zz", BarBucklingChecks.BeamColumn(bar, LoadedBars.En).Working().ToText());
        Assert.Contains("M_cx", BarBucklingChecks.BeamColumn(bar, LoadedBars.Lrfd).Working().ToText());
    }

    private static IEnumerable<PublishedValue> Chi(BucklingCurve curve, params double[] values) => values.Select((value, i) =>
        new PublishedValue($"flexural buckling χ, curve {curve.Name}, λ̄ = {0.5 * (i + 1)}", Curves, value, "-", 5e-4 / value, () => curve.Reduction(0.5 * (i + 1))));

    private static double Critical(double slenderness, double Fy) => Aisc360.CriticalStress(null, slenderness, 29_000, Fy);

    private static double Rectangular() => Aisc360.StrongMoment(null, 5, 3, 144, 1.14, 29_000, 36) / 12;

    /// <summary>Greatest moment from v'' + u²v = −M₀(ξ), v = 0 at both ends, by central differences.</summary>
    private static double ByDifferences(double n, double psi)
    {
        const int steps = 4000;
        double h = 1.0 / steps, u2 = Math.PI * Math.PI * n;
        double[] c = new double[steps], d = new double[steps], v = new double[steps + 1];
        for (int i = 1; i < steps; i++)
        {
            double rhs = -h * h * (1 + (psi - 1) * i * h), diagonal = -2 + u2 * h * h - (i > 1 ? c[i - 1] : 0);
            c[i] = 1 / diagonal;
            d[i] = (rhs - (i > 1 ? d[i - 1] : 0)) / diagonal;
        }
        double greatest = 1;
        for (int i = steps - 1; i > 0; i--)
        {
            v[i] = d[i] - c[i] * v[i + 1];
            greatest = Math.Max(greatest, Math.Abs(1 + (psi - 1) * i * h + u2 * v[i]));
        }
        return greatest;
    }

    /// <summary>K from the load at which a chain of rigid links with springs between them has no stiffness left, by its pivots.</summary>
    private static double ByColumn(double first, double second, bool sway)
    {
        double low = 0.01, high = 4 * Math.PI * Math.PI;
        for (int i = 0; i < 50; i++)
        {
            double P = 0.5 * (low + high);
            if (IsStable(P))
                low = P;
            else
                high = P;
        }
        return Math.PI / Math.Sqrt(low);

        bool IsStable(double P)
        {
            // Energy of rotations θ of links, EI = L = 1: springs m between links, half springs at the ends, −P h θ²/2.
            const int m = 400;
            double h = 1.0 / m;
            double end1 = 1 / (1 / first + 0.5 * h), end2 = 1 / (1 / second + 0.5 * h);
            double[] pivot = new double[m];
            double[] one = new double[m];
            double quadratic = 0;
            int negative = 0;
            for (int i = 0; i < m; i++)
            {
                double off = i > 0 ? -m / pivot[i - 1] : 0;
                pivot[i] = -P * h + (i == 0 ? end1 : m) + (i == m - 1 ? end2 : m) - off * off * (i > 0 ? pivot[i - 1] : 0);
                one[i] = 1 - (i > 0 ? off * one[i - 1] : 0);
                quadratic += one[i] * one[i] / pivot[i];
                negative += pivot[i] < 0 ? 1 : 0;
            }
            // On the plane 1ᵀθ = 0 the count of negative values is one less when 1ᵀK⁻¹1 is negative.
            return (sway ? negative : negative - (quadratic < 0 ? 1 : 0)) == 0;
        }
    }
}
