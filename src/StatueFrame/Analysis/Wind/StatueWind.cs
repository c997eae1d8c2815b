using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The wind that a statue meets in one heading: mean and turbulence at the pressure center of each of its parts, which are the bands of
/// skin in their order, then each stretch of bare tower, then fittings. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads; its arrays must not be written to.</remarks>
internal sealed class StatueWind
{
    public StatueWind(StatueModel model, WindAction wind, Angle heading)
    {
        Heading = heading;
        BandCount = model.BandCount;
        Direction = new Vector3D(Math.Cos(heading.Radians), Math.Sin(heading.Radians), 0);
        Across = new Vector3D(-Direction.Y, Direction.X, 0);
        Parts = [.. Enumerable.Range(0, BandCount).Select(i => OfBand(model, wind, i)), .. Bare(model, wind), .. model.FittingsInWind.Select(met => Met(model, wind, met.Place, met.At, met.At.Z, Drag(met.Area)))];
    }

    public Angle Heading { get; }

    /// <summary>The way the wind blows.</summary>
    public Vector3D Direction { get; }

    /// <summary>Horizontal, to the left of the wind.</summary>
    public Vector3D Across { get; }

    /// <summary>Bands, bare tower, fittings.</summary>
    public Part[] Parts { get; }

    /// <summary>How many of the parts, the first ones, are bands.</summary>
    public int BandCount { get; }

    /// <summary>An effect under the peak pressure on all parts at once, from what each part's mean load does.</summary>
    public double AtPeakPressure(ReadOnlySpan<double> effects)
    {
        double sum = 0;
        for (int a = 0; a < Parts.Length; a++)
            sum += effects[a] * Parts[a].PeakOverMean;
        return sum;
    }

    /// <summary>Projected area of the bands.</summary>
    public double Area => Sum(b => b.Area);

    /// <summary>Mean force coefficient of the bands, weighted by area.</summary>
    public double Coefficient => Sum(b => b.Coefficient * b.Area) / Area;

    /// <summary>
    /// A part's motion along the wind at its pressure center in a displacement of the frame, and by how much more its left edge moves than
    /// its right edge.
    /// </summary>
    public (double Along, double Twist) MotionAlong(StatueModel model, int part, ReadOnlySpan<double> displacements)
    {
        Part one = Parts[part];
        if (one.Upper is { } upper)
        {
            (Vector3D Displacement, Vector3D Rotation) below = model.Motion(displacements, one.Place, one.Place.Center), above = model.Motion(displacements, upper, upper.Center);
            return Of((1 - one.T) * below.Displacement + one.T * above.Displacement, (1 - one.T) * below.Rotation + one.T * above.Rotation);
        }
        (Vector3D moved, Vector3D turned) = model.Motion(displacements, one.Place, one.At);
        return Of(moved, turned);

        (double, double) Of(Vector3D moved, Vector3D turned) => (moved.Dot(Direction), turned.Cross(one.SpanAcross).Dot(Direction));
    }

    private Part OfBand(StatueModel model, WindAction wind, int number)
    {
        (BodyModel body, int index) = model.BandAt(number);
        SkinBand band = body.Bands[index];
        Vector3D local = body.Axes.Axes.ToLocal(Direction);
        WindExposure exposure = band.Exposure(local);
        Vector3D at = body.Axes.ToGlobal(exposure.PressureCenter);
        WindAreas areas = wind.AreasOf(band, local, Heading.Radians, exposure.ProjectedArea);
        (double eccentricity, double share) = wind.OffCenter(band, local);
        (Vector3D spanAlong, Vector3D spanAcross) = Spans(body, band, local, exposure.ProjectedArea);
        return Met(model, wind, body.BandPlaces[index], at, body.ReferenceElevation(wind.ProfileTowards(Heading.Radians), index, at), areas) with
        {
            Area = exposure.ProjectedArea,
            Coefficient = exposure.ProjectedArea > 0 ? areas.Along / exposure.ProjectedArea : 0,
            Eccentricity = eccentricity,
            OffCenterShare = share,
            SpanAlong = spanAlong,
            SpanAcross = spanAcross,
        };
    }

    /// <summary>Each stretch of tower that no skin covers, at the middle of its drag, which the levels below and above share.</summary>
    private IEnumerable<Part> Bare(StatueModel model, WindAction wind)
    {
        foreach (IGrouping<(BodyModel Body, int Segment, bool), (BareSlice Slice, double Drag)> stretch in model.BareSlices
            .Where(slice => slice.HasShape)
            .Select(slice => (Slice: slice, Drag: slice.DragArea(wind, Heading, model.Statue.BaseAboveGround.Meters, 0)))
            .GroupBy(met => (met.Slice.Body, met.Slice.Segment, met.Slice.IsAboveSkin)))
        {
            double drag = stretch.Sum(met => met.Drag), length = stretch.Sum(met => met.Slice.Length);
            // A limb end on meets nothing, and is one part of the wind all the same.
            (BareSlice Slice, double Share)[] shares = [.. stretch.Select(met => (met.Slice, drag > 0 ? met.Drag / drag : met.Slice.Length / length))];
            Vector3D at = shares.Aggregate(Vector3D.Zero, (sum, part) => sum + part.Share * part.Slice.At);
            yield return Met(model, wind, stretch.Key.Body.Levels[stretch.Key.Segment], at, at.Z, Drag(drag)) with
            {
                Upper = stretch.Key.Body.Levels[stretch.Key.Segment + 1],
                T = shares.Sum(part => part.Share * part.Slice.T),
                SpanAlong = length * stretch.Key.Body.Axes.Axes.Z,
                SpanAcross = shares.Sum(part => part.Share * part.Slice.WidthAcross(Direction)) * Across,
                Eccentricity = wind.OffCenterOfRest,
            };
        }
    }

    /// <summary>The wind at a height and what it does to areas that have their coefficients in them.</summary>
    private Part Met(StatueModel model, WindAction wind, Place place, Vector3D at, double reference, WindAreas areas)
    {
        WindProfile profile = wind.ProfileTowards(Heading.Radians);
        double z = Math.Max(0, model.Statue.BaseAboveGround.Meters + at.Z), V = profile.MeanSpeedSi(z), pressure = profile.LoadOfMean * 0.5 * profile.Rho * V * V;
        return new Part
        {
            Place = place,
            At = at,
            Speed = V,
            Intensity = profile.TurbulenceIntensitySi(z),
            Scale = profile.TurbulenceLengthScaleSi(z),
            MeanForce = pressure * areas.Along,
            MeanAside = pressure * areas.Across,
            MeanUp = pressure * areas.Up,
            MeanTwist = pressure * areas.Twist,
            PeakOverMean = pressure > 0 ? profile.PeakPressureSi(Math.Max(0, model.Statue.BaseAboveGround.Meters + reference)) / pressure : 0,
            OffCenterShare = WindAction.OffCenterShare,
        };
    }

    private static WindAreas Drag(double area) => new(area, 0, 0, 0, false);

    private double Sum(Func<Part, double> value)
    {
        double sum = 0;
        foreach (Part band in Parts.AsSpan(0, BandCount))
            sum += value(band);
        return sum;
    }

    /// <summary>How far a band reaches along its body's axis and across it, m, in the statue's axes.</summary>
    private static (Vector3D Along, Vector3D Across) Spans(BodyModel body, SkinBand band, Vector3D local, double area)
    {
        const double endOn = 1e-3;
        double s = Math.Sqrt(local.X * local.X + local.Y * local.Y);
        if (s < endOn)
        {
            double side = Math.Sqrt(area);
            return (side * body.Axes.Axes.X, side * body.Axes.Axes.Y);
        }
        double width = band.ProjectedWidth(local);
        return ((band.Top - band.Bottom) * body.Axes.Axes.Z, body.Axes.Axes.ToGlobal(width / s * new Vector3D(-local.Y, local.X, 0)));
    }

    /// <summary>One part in the wind.</summary>
    internal readonly record struct Part
    {
        /// <summary>What it is fixed to; of bare tower, the level below.</summary>
        public required Place Place { get; init; }

        /// <summary>Of bare tower, the level above; null else.</summary>
        public Place? Upper { get; init; }

        /// <summary>The share of the level above.</summary>
        public double T { get; init; }

        /// <summary>Its pressure center, m.</summary>
        public required Vector3D At { get; init; }

        /// <summary>Projected area A of a band, m²; zero of other parts.</summary>
        public double Area { get; init; }

        /// <summary>Force coefficient C_f of a band along the wind; zero of other parts.</summary>
        public double Coefficient { get; init; }

        /// <summary>Mean speed V, m/s.</summary>
        public required double Speed { get; init; }

        /// <summary>Turbulence intensity I.</summary>
        public required double Intensity { get; init; }

        /// <summary>Length scale of turbulence L, m.</summary>
        public required double Scale { get; init; }

        /// <summary>½ρV²·C_f·A along the wind, N.</summary>
        public required double MeanForce { get; init; }

        /// <summary>The same across it, to the left, N.</summary>
        public double MeanAside { get; init; }

        /// <summary>The same up, N.</summary>
        public double MeanUp { get; init; }

        /// <summary>The couple about the vertical, N·m.</summary>
        public double MeanTwist { get; init; }

        /// <summary>The load of the peak pressure over that of the mean wind.</summary>
        public required double PeakOverMean { get; init; }

        /// <summary>How far off its middle the wind may press, as a part of its width.</summary>
        public double Eccentricity { get; init; }

        /// <summary>What part of the wind does.</summary>
        public required double OffCenterShare { get; init; }

        /// <summary>Its reach along the body's axis, m.</summary>
        public Vector3D SpanAlong { get; init; }

        /// <summary>Its reach across, m; zero of fittings.</summary>
        public Vector3D SpanAcross { get; init; }

        /// <summary>A force and a couple on it as its nodes feel them: where it is fixed, at its pressure center; of bare tower, shared by two levels.</summary>
        public IEnumerable<(Place Place, Vector3D At, Vector3D Force, Vector3D Couple)> Shares(Vector3D force, Vector3D couple) => Upper is { } upper
            ? [(Place, Place.Center, (1 - T) * force, (1 - T) * couple), (upper, upper.Center, T * force, T * couple)]
            : [(Place, At, force, couple)];
    }
}
