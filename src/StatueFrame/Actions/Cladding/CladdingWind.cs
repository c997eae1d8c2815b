using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Local wind pressure on the skin, for sheets, saddles, seams and single standoffs: the net pressure
/// w = q_p (c_pe − c_pi), positive inward, of which the worst over the headings counts.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Folds, wing roots and free edges can see more than any standard's smooth
/// body: there, use a wind tunnel. Source: EN 1991-1-4:2005, 5.2 (5.1), (5.2).
/// </remarks>
public sealed record CladdingWind
{
    /// <summary>Coefficients that differ by less are equal but for rounding: the first heading is named.</summary>
    private const double Rounding = 1e-9;

    // An edge that a strip only touches by rounding is no part of it.
    private const double LeastOverlap = 1e-9;

    private static readonly Source NetPressure = Source.En1991_1_4("5.2 (3)");

    /// <summary>Wind speed and pressure over height.</summary>
    public required WindProfile Profile { get; init; }

    /// <summary>
    /// The outside; null takes a round body of the band's perimeter, which is sucked by more than edges of walls are (EN 1991-1-4, Table 7.1),
    /// and with an <see cref="AsceWind"/> the edge zone of <see cref="AsceWallPressure"/> where that is worse; listed as assumed.
    /// </summary>
    public ExternalPressure? External { get; init; }

    /// <summary>The inside; null takes <see cref="InternalPressure.UnknownOpenings"/>, listed as assumed.</summary>
    public InternalPressure? Internal { get; init; }

    /// <summary>Area whose pressure adds up in the part that is designed, 0.01 to 1000 m²; null takes 1 m², the most severe.</summary>
    public Area? LoadedArea { get; init; }

    /// <summary>The plan angles that the wind blows towards; every degree all round by default.</summary>
    public ValueList<Angle> Headings { get; init; } = StatueFrame.Headings.Evenly(360);

    private InternalPressure Inside => Internal ?? InternalPressure.UnknownOpenings;

    /// <summary>The pressure at a point.</summary>
    /// <param name="heightAboveGround">Height above ground, 0 to 2000 m.</param>
    /// <param name="outwardNormal">Plan angle of the surface's outward normal, anticlockwise from +x.</param>
    /// <exception cref="InvalidStatueException">The description has problems, or <see cref="External"/> is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The height is out of range.</exception>
    public CladdingPressure At(Length heightAboveGround, Angle outwardNormal)
    {
        RequireValid(External is null ? "is missing: a point alone does not tell the body's shape" : null);
        _ = Profile.PeakPressure(heightAboveGround);
        return Over([outwardNormal.Radians], heightAboveGround.Meters, External!, Headings, []);
    }

    /// <summary>The worst pressure anywhere round a band of the trunk's skin, at the height of its upper edge.</summary>
    /// <param name="statue">The statue; it must have a skin.</param>
    /// <param name="band">Number of the band, from 1.</param>
    /// <exception cref="InvalidStatueException">The description has problems.</exception>
    /// <exception cref="ArgumentException">The trunk has no such band.</exception>
    public CladdingPressure OnBand(Statue statue, int band)
    {
        RequireValid(null);
        if (statue.FindProblems() is { Count: > 0 } problems)
            throw new InvalidStatueException(problems);
        if (statue.Skin is not { } skin || band < 1 || band > skin.BandCount)
            throw new ArgumentException($"The trunk of {statue.Name} has no band {band}.", nameof(band));
        SkinBand part = BandBuilder.Bands(skin)[band - 1];
        double length = (skin.Stations[^1].Elevation - skin.Stations[0].Elevation).Meters;
        return OnStrip(part, 0, 1, Math.Max(0, statue.BaseAboveGround.Meters + part.Top), length, Headings);
    }

    /// <summary>The worst pressure on a strip of a band, for winds across the body's axis.</summary>
    /// <param name="band">The band.</param>
    /// <param name="from">Begin, as a fraction of the mid outline's perimeter.</param>
    /// <param name="to">End; when not above <paramref name="from"/>, the strip runs on across vertex 0.</param>
    /// <param name="heightAboveGround">Height above ground, m.</param>
    /// <param name="bodyLength">Length of the body's skin, m, for the end effect.</param>
    /// <param name="headings">Angles the wind blows towards, in the body's own plan.</param>
    internal CladdingPressure OnStrip(SkinBand band, double from, double to, double heightAboveGround, double bodyLength, ValueList<Angle> headings)
    {
        if (External is { } given)
            return Over(Normals(band.MidOutline, from, to), heightAboveGround, given, headings, []);
        var round = new CylinderPressure
        {
            Diameter = Length.FromMeters(Math.Clamp(band.MidOutline.Perimeter / Math.PI, 0.05, 100)),
            BodyLength = Length.FromMeters(Math.Clamp(bodyLength, 0.05, 1000)),
        };
        double[] normals = Normals(band.MidOutline, from, to);
        const string subject = "outside of the skin", perimeter = "round body with the perimeter of the band";
        if (Profile is not AsceWind)
            return Over(normals, heightAboveGround, round, headings, [new Assumption(subject, perimeter, round.Source)]);
        var edges = new AsceWallPressure();
        var assumed = new Assumption(subject, $"{perimeter}, or {edges.Name}, whichever is worse", edges.Source);
        CladdingPressure smooth = Over(normals, heightAboveGround, round, headings, [assumed]), sharp = Over(normals, heightAboveGround, edges, headings, []);
        CladdingPressure inward = sharp.Inward > smooth.Inward ? sharp : smooth, outward = sharp.Suction > smooth.Suction ? sharp : smooth;
        return smooth with
        {
            Inward = inward.Inward,
            InwardHeading = inward.InwardHeading,
            InwardCoefficient = inward.InwardCoefficient,
            Suction = outward.Suction,
            SuctionHeading = outward.SuctionHeading,
            SuctionCoefficient = outward.SuctionCoefficient,
            Sources = [.. smooth.Sources, edges.Source],
            Assumptions = [.. smooth.Assumptions.Concat(sharp.Assumptions).Distinct()],
        };
    }

    /// <summary>The plan angles of the outward normals on a stretch of an outline that runs anticlockwise.</summary>
    internal static double[] Normals(PlanCurve outline, double from, double to)
    {
        double[] starts = outline.Fractions();
        double end = to <= from ? to + 1 : to;
        var normals = new List<double>();
        for (int i = 0; i < starts.Length; i++)
        {
            int j = i + 1 == starts.Length ? 0 : i + 1;
            double stop = j == 0 ? 1 : starts[j];
            bool touched = Overlap(starts[i], stop) || Overlap(starts[i] + 1, stop + 1);
            if (touched)
                normals.Add(Math.Atan2(outline.X[i] - outline.X[j], outline.Y[j] - outline.Y[i]));
        }
        return [.. normals];

        bool Overlap(double start, double stop) => Math.Min(stop, end) - Math.Max(start, from) > LeastOverlap;
    }

    private CladdingPressure Over(double[] normals, double z, ExternalPressure outside, ValueList<Angle> headings, Assumption[] assumed)
    {
        double q = Profile.PeakPressureSi(z), gust = Math.Sqrt(2 * q / Profile.Rho), area = LoadedArea?.SquareMeters ?? 1;
        double most = double.NegativeInfinity, least = double.PositiveInfinity;
        Angle mostAt = default, leastAt = default;
        Func<double, double> around = outside.Around(area, gust);
        foreach (Angle heading in headings.AsSpan())
        {
            double from = heading.Radians + Math.PI;
            foreach (double normal in normals)
            {
                double turn = (normal - from) / (2 * Math.PI), alpha = 2 * Math.PI * Math.Abs(turn - Math.Round(turn));
                double c = around(alpha);
                if (c > most + Rounding)
                    mostAt = heading;
                if (c < least - Rounding)
                    leastAt = heading;
                most = Math.Max(most, c);
                least = Math.Min(least, c);
            }
        }
        return new CladdingPressure
        {
            VelocityPressure = Pressure.FromPascals(q),
            Inward = Pressure.FromPascals(q * (most - Inside.Least)),
            Suction = Pressure.FromPascals(q * (Inside.Greatest - least)),
            InwardHeading = mostAt,
            SuctionHeading = leastAt,
            InwardCoefficient = most,
            SuctionCoefficient = least,
            Sources = [NetPressure, Profile.Source, outside.Source, Inside.Source],
            Assumptions = [.. assumed, .. Defaults(), .. outside.Assumptions, .. Profile.Assumptions],
            Warnings = [.. outside.RangeWarnings(gust), .. Profile.RangeWarnings(z)],
        };
    }

    private IEnumerable<Assumption> Defaults()
    {
        if (Internal is null)
            yield return new Assumption("pressure inside the skin", Invariant($"c_pi +{Inside.Greatest} or {Inside.Least}, leaks all round"), Inside.Source);
        if (LoadedArea is null)
            yield return new Assumption("loaded area of skin", "1 m²", Source.En1991_1_4("7.2.1 (1)"));
    }

    private void RequireValid(string? externalProblem)
    {
        var v = new Validator();
        Validate(v.At(nameof(CladdingWind)));
        if (externalProblem is not null)
            v.At(nameof(CladdingWind)).Add(nameof(External), externalProblem, "Give a CylinderPressure or a WallPressure.");
        v.ThrowIfAny();
    }

    internal void Validate(Validator v)
    {
        Profile.Validate(v.At(nameof(Profile)));
        External?.Validate(v.At(nameof(External)));
        Internal?.Validate(v.At(nameof(Internal)));
        if (LoadedArea is { } area)
            v.Positive(area, area.SquareMeters, 0.01, 1000, nameof(LoadedArea));
        if (Headings.Count == 0)
            v.Add(nameof(Headings), "must not be empty", "Use Headings.Evenly(360) for an envelope over all headings.");
        for (int i = 0; i < Headings.Count; i++)
            v.Within(Headings[i], Headings[i].Degrees, -360, 720, $"{nameof(Headings)}[{i}]");
    }
}
