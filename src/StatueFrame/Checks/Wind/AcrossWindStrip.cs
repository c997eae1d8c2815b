using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>A piece of a body that sheds vortices: a band of skin, or a slice of a tube, box or core that stands bare. SI units.</summary>
/// <remarks>Immutable and safe to share between threads. Lattices shed none as a whole; their members are not looked at.</remarks>
internal sealed record AcrossWindStrip
{
    private readonly Place lower, upper;
    private readonly double t;
    private readonly SkinBand? band;
    private readonly BareSlice? bare;

    private AcrossWindStrip(BodyModel body, int index)
    {
        band = body.Bands[index];
        (lower, upper, Length, Mass) = (body.BandPlaces[index], body.BandPlaces[index], band.Top - band.Bottom, band.Mass);
        Elevation = lower.Center.Z;
    }

    private AcrossWindStrip(BareSlice slice)
    {
        bare = slice;
        SegmentModel segment = slice.Body.Segments[slice.Segment];
        double height = slice.Upper.Elevation.Meters - slice.Lower.Elevation.Meters;
        (lower, upper, t, Length, Mass) = (slice.Body.Levels[slice.Segment], slice.Body.Levels[slice.Segment + 1], slice.T, slice.Length, segment.Mass * slice.Length / height);
        Elevation = slice.At.Z;
        Own = BareDrag.Outline(slice.Part, slice.Lower, slice.Upper, slice.T, 0).IsRound ? BluffSection.Round : null;
    }

    /// <summary>Length along the body's axis.</summary>
    public double Length { get; }

    /// <summary>Mass of the sheet, or of the tower.</summary>
    public double Mass { get; }

    /// <summary>Height of its middle above the base.</summary>
    public double Elevation { get; }

    /// <summary>Whether it is no band of skin.</summary>
    public bool IsBare => bare is not null;

    /// <summary>The cross-section that its own shape tells; null when it is that of the body, or follows from depth and width.</summary>
    public BluffSection? Own { get; }

    /// <summary>The strips of a body, from its base up.</summary>
    public static AcrossWindStrip[] Of(StatueModel model, BodyModel body)
    {
        AcrossWindStrip[] slices = [.. model.BareSlices.Where(slice => slice.Body == body && slice.HasShape && slice.Part is not LatticeSegment).Select(slice => new AcrossWindStrip(slice))];
        return [.. slices.Where(s => !s.bare!.IsAboveSkin), .. Enumerable.Range(0, body.Bands.Length).Select(i => new AcrossWindStrip(body, i)), .. slices.Where(s => s.bare!.IsAboveSkin)];
    }

    /// <summary>How it moves in a mode.</summary>
    public Vector3D MotionIn(StatueModel model, ReadOnlySpan<double> shape) =>
        (1 - t) * model.Motion(shape, lower, lower.Center).Displacement + t * model.Motion(shape, upper, upper.Center).Displacement;

    /// <summary>How it turns in a mode.</summary>
    public Vector3D RotationIn(StatueModel model, ReadOnlySpan<double> shape) =>
        (1 - t) * model.Motion(shape, lower, lower.Center).Rotation + t * model.Motion(shape, upper, upper.Center).Rotation;

    /// <summary>Its width across a wind, in the body's own axes.</summary>
    public double WidthAcross(Vector3D wind) => band?.ProjectedWidth(wind) ?? BareDrag.Outline(bare!.Part, bare.Lower, bare.Upper, bare.T, Math.Atan2(wind.Y, wind.X)).Across;
}
