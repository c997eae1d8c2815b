using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>A slice of a tower segment that stands in the open: no skin of its own body covers it, and it is in no other's.</summary>
/// <param name="Body">The body it belongs to.</param>
/// <param name="Segment">Number of the segment.</param>
/// <param name="T">Middle of the slice along the segment, 0 to 1.</param>
/// <param name="Length">Length along the body's axis, m.</param>
/// <param name="At">Middle of the slice, in the statue's axes, m.</param>
internal sealed record BareSlice(BodyModel Body, int Segment, double T, double Length, Vector3D At)
{
    private const int SlicesPerStretch = 8;
    private const double Slack = 1e-3;

    public TowerLevel Lower => Body.Tower.Levels[Segment];

    public TowerLevel Upper => Body.Tower.Levels[Segment + 1];

    public TowerSegment Part => Body.Tower.Segments[Segment];

    public bool HasShape => BareDrag.HasShape(Part, Lower, Upper);

    /// <summary>Its width across a horizontal direction, m: of the tower's outline, or of the member, block or core; 0 where neither is known.</summary>
    public double WidthAcross(Vector3D direction)
    {
        Vector3D local = Body.Axes.Axes.ToLocal(direction);
        if (Part is not LatticeSegment)
            return BareDrag.Outline(Part, Lower, Upper, T, Math.Atan2(local.Y, local.X)).Across;
        double s = Math.Sqrt(local.X * local.X + local.Y * local.Y);
        return s < 1e-12 ? 0 : (1 - T) * At(Segment) + T * At(Segment + 1);

        double At(int level) => Body.Tower.OutlineAt(level)?.Extent(-local.Y / s, local.X / s) is var (least, greatest) ? greatest - least : 0;
    }

    /// <summary>Whether it stands above the skin of its own body rather than below it.</summary>
    public bool IsAboveSkin => Body.Bands.Length > 0 && double.Lerp(Lower.Elevation.Meters, Upper.Elevation.Meters, T) > Body.Bands[0].Bottom;

    /// <summary>Force coefficient times area along a wind, m²; zero of what has no shape.</summary>
    /// <param name="wind">The wind.</param>
    /// <param name="heading">Its heading.</param>
    /// <param name="baseHeight">Height of the base above ground, m.</param>
    /// <param name="ice">Thickness of ice all round, m.</param>
    public double DragArea(WindAction wind, Angle heading, double baseHeight, double ice)
    {
        (double sin, double cos) = Math.SinCos(heading.Radians);
        WindProfile profile = wind.ProfileTowards(heading.Radians);
        double q = profile.PeakPressureSi(Math.Max(0, baseHeight + At.Z));
        return DragArea(new Vector3D(cos, sin, 0), Math.Sqrt(2 * q / profile.Rho), wind.LatticeRuleInUse, ice);
    }

    /// <summary>The same for air that comes along any direction, at a speed in m/s.</summary>
    public double DragArea(Vector3D direction, double gust, LatticeRule rule, double ice)
    {
        Vector3D local = Body.Axes.Axes.ToLocal(direction);
        double across = Math.Sqrt(local.X * local.X + local.Y * local.Y);
        return HasShape && across >= 1e-12 ? BareDrag.PerLength(Part, Lower, Upper, T, Math.Atan2(local.Y, local.X), gust, rule, ice) * across * Length : 0;
    }

    /// <summary>All bare slices of a statue, bodies and segments in order.</summary>
    public static BareSlice[] Of(BodyModel[] bodies)
    {
        var slices = new List<BareSlice>();
        foreach (BodyModel body in bodies)
        {
            double skinBottom = body.Bands.Length > 0 ? body.Bands[0].Bottom : double.PositiveInfinity;
            double skinTop = body.Bands.Length > 0 ? body.Bands[^1].Top : double.PositiveInfinity;
            for (int i = 0; i < body.Tower.Segments.Count; i++)
            {
                double bottom = body.Tower.Levels[i].Elevation.Meters, top = body.Tower.Levels[i + 1].Elevation.Meters;
                AddStretch(body, i, bottom, Math.Min(top, skinBottom));
                AddStretch(body, i, Math.Max(bottom, skinTop), top);
            }
        }
        return [.. slices];

        void AddStretch(BodyModel body, int segment, double from, double to)
        {
            if (to - from <= Slack)
                return;
            TowerLevel lower = body.Tower.Levels[segment], upper = body.Tower.Levels[segment + 1];
            double height = upper.Elevation.Meters - lower.Elevation.Meters, length = (to - from) / SlicesPerStretch;
            for (int k = 0; k < SlicesPerStretch; k++)
            {
                double t = (from + (k + 0.5) * length - lower.Elevation.Meters) / height;
                Vector3D at = body.Axes.ToGlobal((1 - t) * lower.Center + t * upper.Center);
                if (!bodies.Any(other => other != body && IsInside(other, at)))
                    slices.Add(new BareSlice(body, segment, t, length, at));
            }
        }
    }

    /// <summary>Whether a point lies inside the skin of a body.</summary>
    private static bool IsInside(BodyModel body, Vector3D at)
    {
        Vector3D local = body.Axes.ToLocal(at);
        if (body.Bands.Length == 0 || local.Z < body.Bands[0].Bottom || local.Z > body.Bands[^1].Top)
            return false;
        PlanCurve outline = Array.Find(body.Bands, band => local.Z <= band.Top)!.OutlineAt(local.Z);
        bool inside = false;
        for (int i = 0, j = outline.Count - 1; i < outline.Count; j = i++)
        {
            (double xi, double yi, double xj, double yj) = (outline.X[i], outline.Y[i], outline.X[j], outline.Y[j]);
            if (yi > local.Y != yj > local.Y && local.X < (xj - xi) * (local.Y - yi) / (yj - yi) + xi)
                inside = !inside;
        }
        return inside;
    }
}
