using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Wind on the skin and on tower that no skin covers: on every band the force q·G·C_f·A along the wind, at the band's
/// pressure center, for each heading. q is the profile's peak velocity pressure at the height of the pressure center above
/// ground, or with an <see cref="En1991Wind"/> at that of the band's highest point, A the band's area projected on the plane across the wind. On bare tower, A is the area of its members, and C_f
/// follows from their shape, the lattice's solidity and the wind's angle to its faces; the force is shared by the levels
/// below and above. Force coefficients that vary with the heading may have a part across the wind.
/// </summary>
/// <remarks>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Sources: EN 1991-1-4:2005, 5.3 (5.4); ASCE/SEI 7-22, 29.4 (29.4-1).</para>
/// </remarks>
public sealed record WindAction : StatueAction
{
    private const double SquareCoefficient = 1.4, PlateCoefficient = 1.8, AscePlateCoefficient = 1.95;
    private const double UsualEccentricity = 0.15, PlateEccentricity = 0.25, AscePlateEccentricity = 0.2;

    private static readonly Source DefaultForceCoefficientSource = new(
        "ASCE/SEI 7-22 and EN 1991-1-4:2005", "Figure 29.4-1, square plan, wind on a face, height 7 widths; plates clear of the ground: 7.4.3 (7.7), or Figure 29.3-1, from memory");

    private static readonly Source offCenter = new("ASCE/SEI 7-22 and EN 1991-1-4:2005", "Figure 27.3-8, case 2, and Figure 29.3-1, case B; 7.4.3 (2) of signs; from memory");

    private static readonly Source lift = new("Hoerner, Fluid-Dynamic Drag and Fluid-Dynamic Lift", "flat plates aslant to the wind: normal force up to 1.2, lift about 0.8 near 40°; from memory");

    /// <summary>
    /// Wind speed and pressure over height: of all headings that no sector has, and of all that is looked at without a heading, as local
    /// pressures, vortices, galloping and the pedestal.
    /// </summary>
    public required WindProfile Profile { get; init; }

    /// <summary>Headings with a milder wind, as by their own directional factor, ground and hills; none overlaps another. Empty for none.</summary>
    public ValueList<WindSector> Sectors { get; init; } = [];

    /// <summary>The plan angles that the wind blows towards, anticlockwise from +x, −360° to 720°; sixteen all round by default.</summary>
    public ValueList<Angle> Headings { get; init; } = StatueFrame.Headings.AllRound;

    /// <summary>
    /// Force coefficient C_f of every band whose skin gives none of its own, 0.05 to 5; null takes the library's, which the sheet
    /// lists as assumed: 1.4 of bands at least as deep along the wind as they are wide, growing to 1.8 (1.95 with an <see cref="AsceWind"/>) of those half as
    /// deep or less, as of plates.
    /// </summary>
    public double? ForceCoefficient { get; init; }

    /// <summary>
    /// Force coefficients by heading, along and across the wind, of every band whose skin gives none of its own; in place
    /// of <see cref="ForceCoefficient"/>.
    /// </summary>
    public ForceCoefficientTable? HeadingCoefficients { get; init; }

    /// <summary>
    /// Gust-effect factor G (ASCE 7) or structural factor c_s c_d (EN 1991-1-4), 0.5 to 5; null takes the value for a rigid
    /// structure in the profile's own standard, which the sheet lists as assumed.
    /// </summary>
    public double? GustEffectFactor { get; init; }

    /// <summary>
    /// Gust factors of every band of the statue, trunk first and then limb by limb, 0.3 to 5, in place of
    /// <see cref="GustEffectFactor"/>, which bare tower keeps. A factor that is enough for overturning is too small higher up and
    /// for limbs: <see cref="Analysis.GustFactors.ByBand"/> finds the factors that are enough for every part. Empty for none.
    /// </summary>
    public ValueList<double> GustByBand { get; init; } = [];

    /// <summary>
    /// How far off the middle of the figure the wind may press, as a part of its width across the wind, 0 to 0.5: up to eight
    /// headings are also run with three quarters of the wind so far to either side, which twists; of the wind on bands half as deep as
    /// wide or less, as signs are, all of it, and in between accordingly. Null takes 0.15, growing to 0.25 of flat bands (0.20 with an
    /// <see cref="AsceWind"/>), which the sheet lists as assumed; 0 leaves it out. Source: ASCE/SEI 7-22, Figure 27.3-8, case 2, and
    /// Figure 29.3-1, case B; EN 1991-1-4:2005, 7.4.3 (2).
    /// </summary>
    public double? Eccentricity { get; init; }

    /// <summary>
    /// Coefficient C_L of the force on limbs, but bands whose table has a force up, that is square to the wind and to the limb's axis, 0 to 3, on the area seen that way: up to
    /// eight headings are also run with it, up and down. Null takes 0.8, which the sheet lists as assumed; 0 leaves it out. It turns with the limb: on one held out level against the wind's side it lifts.
    /// </summary>
    public double? LiftCoefficient { get; init; }

    /// <summary>
    /// Whose force coefficients hold for lattices that no skin covers; null takes ASCE 7 for an <see cref="AsceWind"/> and
    /// EN 1993-3-1 for all others.
    /// </summary>
    public LatticeRule? LatticeRule { get; init; }

    /// <inheritdoc/>
    public override string Title => "wind";

    /// <summary>The part of the wind that presses off the middle; of flat bands more.</summary>
    internal const double OffCenterShare = 0.75;

    /// <summary>1 to press off the middle to the left of the wind, −1 to its right, 0 amid.</summary>
    internal int Side { get; init; }

    internal bool PressesOffCenter => Eccentricity is not 0;

    /// <summary>1 to lift limbs, −1 to press them down, 0 for neither.</summary>
    internal int LiftWay { get; init; }

    internal double LiftCoefficientInUse => LiftCoefficient ?? 0.8;

    /// <summary>The wind towards a heading, rad.</summary>
    internal WindProfile ProfileTowards(double heading)
    {
        foreach (WindSector sector in Sectors.AsSpan())
        {
            if (sector.Has(heading))
                return sector.Profile;
        }
        return Profile;
    }

    internal LatticeRule LatticeRuleInUse =>
        LatticeRule ?? Profile.LatticeRule;

    /// <summary>The gust factor of a band, by its number in the statue.</summary>
    internal double GustFactorOf(int band) => GustByBand.Count > 0 ? GustByBand[band] : GustFactorInUse;

    /// <summary>The gust factor of what no skin covers: that of the statue, or of the band that needs most.</summary>
    internal double GustFactorOfRest => GustByBand.Count > 0 ? Math.Max(GustFactorInUse, GustByBand.Max()) : GustFactorInUse;

    internal double GustFactorInUse => GustEffectFactor ?? Profile.RigidGustFactor.Value;

    /// <summary>What the pressure of the wind makes of a band.</summary>
    /// <param name="band">The band.</param>
    /// <param name="wind">The way the wind blows, in the axes of the band's body.</param>
    /// <param name="heading">Its heading in the statue's axes, rad.</param>
    /// <param name="area">Its area projected on the plane across that wind, m².</param>
    internal WindAreas AreasOf(SkinBand band, Vector3D wind, double heading, double area)
    {
        ForceCoefficientTable? table = band.HeadingCoefficients ?? (band.ForceCoefficient is null ? HeadingCoefficients : null);
        if (table is null)
            return new WindAreas((band.ForceCoefficient ?? ForceCoefficient ?? DefaultFor(band, wind)) * area, 0, 0, 0, false);
        return table.At(heading, area, band.MeetsWind(wind, out double width) ? width : 0);
    }

    /// <summary>How far off the middle of a band the wind may press, as a part of its width, and what part of it does.</summary>
    /// <param name="band">The band.</param>
    /// <param name="wind">The way the wind blows, in the axes of the band's body.</param>
    internal (double Eccentricity, double Share) OffCenter(SkinBand band, Vector3D wind)
    {
        double flatness = Flatness(band, wind);
        return (Eccentricity ?? double.Lerp(UsualEccentricity, PlateEccentricityInUse, flatness), double.Lerp(OffCenterShare, 1, flatness));
    }

    /// <summary>By how much more than <see cref="OffCenterShare"/>, which is in the situation's factor, of the wind presses on a band where it is off the middle; 1 amid.</summary>
    internal double MoreOffCenter(SkinBand band, Vector3D wind) => Side == 0 ? 1 : OffCenter(band, wind).Share / OffCenterShare;

    /// <summary>How far off the middle of bare tower the wind may press, as a part of its width.</summary>
    internal double OffCenterOfRest => Eccentricity ?? UsualEccentricity;

    private double DefaultFor(SkinBand band, Vector3D wind) => double.Lerp(SquareCoefficient, PlateCoefficientInUse, Flatness(band, wind));

    /// <summary>How flat a band lies before a wind: 0 when at least as deep as wide, 1 when half as deep or less, as a plate.</summary>
    private static double Flatness(SkinBand band, Vector3D wind) =>
        band.MeetsWind(wind, out double width) ? Math.Clamp(2 * (1 - band.ProjectedWidth(new Vector3D(-wind.Y, wind.X, 0)) / width), 0, 1) : 0;

    private double PlateCoefficientInUse => Profile is AsceWind ? AscePlateCoefficient : PlateCoefficient;

    private double PlateEccentricityInUse => Profile is AsceWind ? AscePlateEccentricity : PlateEccentricity;

    /// <summary>What the library took for the user: the profile's assumptions, the force coefficient, the gust factor.</summary>
    /// <param name="allBandsHaveCoefficient">True when no band needs the action's force coefficient.</param>
    /// <param name="hasLimbs">True when it may lift limbs.</param>
    internal IEnumerable<Assumption> Assumptions(bool allBandsHaveCoefficient, bool hasLimbs)
    {
        foreach (Assumption assumption in Sectors.Select(sector => sector.Profile).Prepend(Profile).SelectMany(profile => profile.Assumptions).Distinct())
            yield return assumption;
        if (Profile is not En1991Wind)
            yield return new Assumption("surroundings", "those of the profile all round, no building near that turns the wind down or sheds a wake", Source.Assumed("wind"));
        if (CoefficientAssumption(allBandsHaveCoefficient) is { } coefficient)
            yield return coefficient;
        if (Eccentricity is null)
            yield return new Assumption("wind off the middle of the figure", Invariant($"0.75 of it {UsualEccentricity} of the width to either side, from up to eight headings; on flat bands all of it, {PlateEccentricityInUse} off"), offCenter);
        if (hasLimbs && LiftCoefficient is null)
            yield return new Assumption("lift on limbs", Invariant($"C_L {LiftCoefficientInUse}, up and down, from up to eight headings"), lift);
        if (GustEffectFactor is null && GustByBand.Count == 0)
            yield return new Assumption("gust factor", Invariant($"{Profile.RigidGustFactor.Value}, a statue that is rigid for gusts"), Profile.RigidGustFactor.Source);
    }

    /// <summary>The force coefficient that is taken for bands that give none; null when all is given.</summary>
    internal Assumption? CoefficientAssumption(bool allBandsHaveCoefficient) =>
        ForceCoefficient is null && HeadingCoefficients is null && !allBandsHaveCoefficient
            ? new Assumption("force coefficient of bands that give none", Invariant($"{SquareCoefficient}, growing to {PlateCoefficientInUse} of those half as deep as wide"), DefaultForceCoefficientSource)
            : null;

    internal override void Validate(Validator v)
    {
        v.Required(Profile)?.Validate(v.At(nameof(Profile)));
        foreach ((int i, WindSector sector, Validator at) in v.Items(Sectors, 360))
        {
            sector.Validate(at, Profile);
            if (Sectors.Take(i).Any(other => other.Has(sector.From.Radians) || sector.Has(other.From.Radians)))
                at.Add("", "must not overlap a sector before it", "A heading has one wind.");
        }
        if (Headings?.Count == 0)
            v.Add(nameof(Headings), "must not be empty", "Use Headings.AllRound for an envelope over all headings.");
        foreach ((_, Angle heading, Validator at) in v.Items(Headings, StatueSize.Headings))
            at.Within(heading, heading.Degrees, -360, 720, "");
        if (ForceCoefficient is { } cf)
            v.InRange(cf, 0.05, 5, "Force coefficients of bluff bodies lie near 0.5 to 2.", nameof(ForceCoefficient));
        HeadingCoefficients?.Validate(v.At(nameof(HeadingCoefficients)));
        if (ForceCoefficient is not null && HeadingCoefficients is not null)
            v.Add(nameof(HeadingCoefficients), "must not be given together with ForceCoefficient", "Leave out one of them.");
        if (GustEffectFactor is { } g)
            v.InRange(g, 0.5, 5, "Gust-effect factors lie near 0.85 to 1.5.", nameof(GustEffectFactor));
        foreach ((int i, double factor) in (GustByBand ?? []).Index())
            v.At(nameof(GustByBand), i).InRange(factor, 0.3, 5, "Gust factors lie near 0.85 to 1.5.", "");
        if (Eccentricity is { } e)
            v.InRange(e, 0, 0.5, "0.15 is usual; 0 is the middle.", nameof(Eccentricity));
        if (LiftCoefficient is { } c)
            v.InRange(c, 0, 3, "Plates aslant to the wind reach about 0.8; 0 leaves lift out.", nameof(LiftCoefficient));
        if (LatticeRule is { } rule)
            v.Defined(rule, nameof(LatticeRule));
    }
}
