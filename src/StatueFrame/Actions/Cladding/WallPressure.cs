using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Pressure on the vertical walls of a body with a rectangular plan and sharp edges: by zone, and by the loaded area from
/// c_pe,1 at 1 m² to c_pe,10 at 10 m². A wall within 45° of the wind is windward, one within 45° of the lee leeward, any
/// other a side wall.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The wind may blow on either pair of walls, so the larger side counts as
/// crosswind width b in e = min(b, 2h) and the smaller as depth d in h/d, which is the safe way round for both. Source: EN
/// 1991-1-4:2005, 7.2.1, 7.2.2, Table 7.1; the correlation factor 0.85 of 7.2.2 (3) is not taken.
/// </remarks>
public sealed record WallPressure : ExternalPressure
{
    /// <summary>One side of the plan, 0.05 to 100 m.</summary>
    public required Length SideA { get; init; }

    /// <summary>The other side of the plan, 0.05 to 100 m.</summary>
    public required Length SideB { get; init; }

    /// <summary>Height h of the body, 0.05 to 1000 m.</summary>
    public required Length Height { get; init; }

    /// <summary>Distance of the designed part from the nearest vertical edge; null takes the edge zone A on side walls.</summary>
    public Length? EdgeDistance { get; init; }

    /// <inheritdoc/>
    public override string Name => Invariant($"rectangular body, {SideA.Meters:g4} m × {SideB.Meters:g4} m");

    /// <inheritdoc/>
    public override Source Source => Source.En1991_1_4("7.2.2, Table 7.1");

    /// <inheritdoc/>
    public override IReadOnlyList<Assumption> Assumptions =>
        EdgeDistance is null
            ? [new Assumption("zone of side walls", "A, next to the windward edge", Source.En1991_1_4("Figure 7.5"))]
            : [];

    /// <summary>The zone of a wall.</summary>
    /// <param name="fromWind">Angle between the outward normal and the direction the wind comes from.</param>
    public WallZone ZoneAt(Angle fromWind) => ZoneAt(Math.Abs(Math.IEEERemainder(fromWind.Radians, 2 * Math.PI)));

    /// <summary>The coefficient of a zone.</summary>
    /// <param name="zone">The zone.</param>
    /// <param name="loadedArea">Loaded area.</param>
    /// <exception cref="ArgumentOutOfRangeException">The zone is unknown.</exception>
    /// <exception cref="InvalidStatueException">The body is not valid.</exception>
    public double CoefficientOf(WallZone zone, Area loadedArea)
    {
        var v = new Validator();
        Validate(v);
        v.ThrowIfAny();
        (double one, double ten) = Table(zone, Height.Meters / Math.Min(SideA.Meters, SideB.Meters));
        return ByArea(one, ten, loadedArea.SquareMeters);
    }

    internal override double At(double alpha, double area, double gust)
    {
        (double one, double ten) = Table(ZoneAt(alpha), Height.Meters / Math.Min(SideA.Meters, SideB.Meters));
        return ByArea(one, ten, area);
    }

    /// <summary>c_pe for an area in m², Figure 7.2: linear in the logarithm of the area between 1 and 10 m².</summary>
    internal static double ByArea(double one, double ten, double area) =>
        one - (one - ten) * Math.Log10(Math.Clamp(area, 1, 10));

    /// <summary>c_pe,1 and c_pe,10 of a zone at h/d, Table 7.1, linear between its rows.</summary>
    internal static (double One, double Ten) Table(WallZone zone, double slenderness) => zone switch
    {
        WallZone.A => (-1.4, -1.2),
        WallZone.B => (-1.1, -0.8),
        WallZone.C => (-0.5, -0.5),
        WallZone.D => (1.0, 0.7 + 0.1 * Math.Clamp((slenderness - 0.25) / 0.75, 0, 1)),
        WallZone.E => (Leeward(slenderness), Leeward(slenderness)),
        _ => throw new ArgumentOutOfRangeException(nameof(zone)),
    };

    private static double Leeward(double slenderness) =>
        slenderness <= 1
            ? -0.3 - 0.2 * Math.Clamp((slenderness - 0.25) / 0.75, 0, 1)
            : -0.5 - 0.2 * Math.Clamp((slenderness - 1) / 4, 0, 1);

    private WallZone ZoneAt(double alpha)
    {
        // Rounding must not make a wall at exactly 45° a windward one for one heading and a side wall for its mirror image.
        const double quarter = 0.25 * Math.PI, slack = 1e-9;
        if (alpha < quarter - slack)
            return WallZone.D;
        if (alpha > 3 * quarter + slack)
            return WallZone.E;
        double e = Math.Min(Math.Max(SideA.Meters, SideB.Meters), 2 * Height.Meters);
        return EdgeDistance is not { } distance || distance.Meters < e / 5 ? WallZone.A
            : distance.Meters < e ? WallZone.B
            : WallZone.C;
    }

    internal override IEnumerable<string> RangeWarnings(double gust)
    {
        double slenderness = Height.Meters / Math.Min(SideA.Meters, SideB.Meters);
        if (slenderness > 5)
            yield return Invariant($"EN 1991-1-4, Table 7.1: h/d is {slenderness:g3}, above 5; the values at 5 are taken, which 7.2.2 (1) allows for buildings only with the force coefficients of 7.6 for the whole.");
    }

    internal override void Validate(Validator v)
    {
        v.Positive(SideA, SideA.Meters, 0.05, 100);
        v.Positive(SideB, SideB.Meters, 0.05, 100);
        v.Positive(Height, Height.Meters, 0.05, 1000);
        if (EdgeDistance is { } distance)
            v.NotNegative(distance, distance.Meters, 100, nameof(EdgeDistance));
    }
}
