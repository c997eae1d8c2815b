using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Pressure on a round body: c_pe = c_p0 ψ_λα. It presses with 1 where the surface faces the wind, sucks hardest at the
/// angle α_min off the wind, and sucks evenly behind the separation at α_A. The three anchors depend on the Reynolds
/// number; the end effect weakens the suction of a short body behind α_min.
/// </summary>
/// <remarks>
/// <para>
/// Immutable and safe to share between threads. The standard gives the anchors as numbers and the run between them as a
/// drawing; here the pressure falls as 1 − (1 − c_min) sin²(½π α/α_min), the form of ideal flow, to the greatest suction,
/// and recovers as a half wave to α_A. Anchors run linearly in the logarithm of the Reynolds number.
/// </para>
/// <para>Source: EN 1991-1-4:2005, 7.9.1, Table 7.12, Table 7.16, Figure 7.36.</para>
/// </remarks>
public sealed record CylinderPressure : ExternalPressure
{
    private static readonly (double Reynolds, double AlphaMin, double Least, double AlphaA, double Rear)[] anchors =
    [
        (5e5, 85, -2.2, 135, -0.4),
        (2e6, 80, -1.9, 120, -0.7),
        (1e7, 75, -1.5, 105, -0.8),
    ];

    /// <summary>Diameter b, 0.05 to 100 m.</summary>
    public required Length Diameter { get; init; }

    /// <summary>Length of the body, 0.05 to 1000 m, for the end effect; null takes ψ_λ = 1, the greatest suction.</summary>
    public Length? BodyLength { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant($"round body, {Diameter.Meters:g4} m across");

    /// <inheritdoc/>
    public override Source Source => Source.En1991_1_4("7.9.1 (7.16), Table 7.12");

    /// <inheritdoc/>
    public override IReadOnlyList<Assumption> Assumptions =>
        BodyLength is null
            ? [new Assumption("end effect on the pressure of a round body", "none, ψ_λ = 1", Source.En1991_1_4("7.13"))]
            : [];

    internal override double At(double alpha, double area, double gust) => Around(area, gust)(alpha);

    internal override Func<double, double> Around(double area, double gust)
    {
        (double alphaMin, double least, double alphaA, double rear) = AnchorsAt(CylinderDrag.Reynolds(Diameter.Meters, gust));
        double slenderness = BodyLength is { } l ? EndEffect.CylinderSlenderness(l.Meters, Diameter.Meters) : double.PositiveInfinity;
        double end = EndEffect.Factor(slenderness);
        return alpha => Undisturbed(alpha, alphaMin, least, alphaA, rear) * EndFactor(alpha, alphaMin, alphaA, end);
    }

    /// <summary>c_p0, the coefficient without end effect. Angles in radians.</summary>
    internal static double Undisturbed(double alpha, double alphaMin, double least, double alphaA, double rear)
    {
        if (alpha >= alphaA)
            return rear;
        if (alpha <= alphaMin)
        {
            double s = Math.Sin(0.5 * Math.PI * alpha / alphaMin);
            return 1 - (1 - least) * s * s;
        }
        return least + (rear - least) * 0.5 * (1 - Math.Cos(Math.PI * (alpha - alphaMin) / (alphaA - alphaMin)));
    }

    /// <summary>ψ_λα, (7.17): 1 before α_min, ψ_λ behind α_A, a quarter wave between.</summary>
    internal static double EndFactor(double alpha, double alphaMin, double alphaA, double psi) =>
        alpha <= alphaMin ? 1
        : alpha >= alphaA ? psi
        : psi + (1 - psi) * Math.Cos(0.5 * Math.PI * (alpha - alphaMin) / (alphaA - alphaMin));

    /// <summary>α_min, c_p0,min, α_A and c_p0,h at a Reynolds number; angles in radians.</summary>
    internal static (double AlphaMin, double Least, double AlphaA, double Rear) AnchorsAt(double reynolds)
    {
        double log = Math.Log10(Math.Clamp(reynolds, anchors[0].Reynolds, anchors[^1].Reynolds));
        int i = reynolds < anchors[1].Reynolds ? 0 : 1;
        var (below, above) = (anchors[i], anchors[i + 1]);
        double t = (log - Math.Log10(below.Reynolds)) / Math.Log10(above.Reynolds / below.Reynolds);
        double Mix(double a, double b) => a + t * (b - a);
        return (double.DegreesToRadians(Mix(below.AlphaMin, above.AlphaMin)), Mix(below.Least, above.Least),
            double.DegreesToRadians(Mix(below.AlphaA, above.AlphaA)), Mix(below.Rear, above.Rear));
    }

    internal override IEnumerable<string> RangeWarnings(double gust)
    {
        double reynolds = CylinderDrag.Reynolds(Diameter.Meters, gust);
        if (reynolds < anchors[0].Reynolds)
            yield return Invariant($"EN 1991-1-4, Table 7.12: the Reynolds number is {reynolds:g2}, below 5e5; the values at 5e5 are taken.");
        if (reynolds > anchors[^1].Reynolds)
            yield return Invariant($"EN 1991-1-4, Table 7.12: the Reynolds number is {reynolds:g2}, above 1e7; the values at 1e7 are taken.");
    }

    internal override void Validate(Validator v)
    {
        v.Positive(Diameter, Diameter.Meters, 0.05, 100);
        if (BodyLength is { } l)
            v.Positive(l, l.Meters, 0.05, 1000, nameof(BodyLength));
    }
}
