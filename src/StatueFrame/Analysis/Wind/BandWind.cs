using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The wind that the bands of a statue meet in one heading: mean and turbulence at each band's pressure center. SI units.</summary>
/// <remarks>Immutable and safe to share between threads; its arrays must not be written to.</remarks>
internal sealed class BandWind
{
    public BandWind(StatueModel model, WindAction wind, Angle heading)
    {
        Heading = heading;
        Direction = new Vector3D(Math.Cos(heading.Radians), Math.Sin(heading.Radians), 0);
        Across = new Vector3D(-Direction.Y, Direction.X, 0);
        Bands = new Band[model.BandCount];
        double load = wind.Profile.LoadOfMean;
        for (int i = 0; i < Bands.Length; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            SkinBand band = body.Bands[index];
            Vector3D local = body.Axes.Axes.ToLocal(Direction);
            WindExposure exposure = band.Exposure(local);
            Vector3D at = body.Axes.ToGlobal(exposure.PressureCenter);
            double z = Math.Max(0, model.Statue.BaseAboveGround.Meters + at.Z);
            double V = wind.Profile.MeanSpeedSi(z), C = wind.CoefficientFor(band, local, heading.Radians).Along;
            (Vector3D along, Vector3D across) = Spans(body, band, local, exposure.ProjectedArea);
            Bands[i] = new Band(
                body.BandPlaces[index], at, exposure.ProjectedArea, C, V, wind.Profile.TurbulenceIntensitySi(z),
                wind.Profile.TurbulenceLengthScaleSi(z), load * 0.5 * wind.Profile.Rho * V * V * C * exposure.ProjectedArea,
                C * exposure.ProjectedArea * wind.Profile.PeakPressureSi(z), along, across);
        }
    }

    public Angle Heading { get; }

    /// <summary>The way the wind blows.</summary>
    public Vector3D Direction { get; }

    /// <summary>Horizontal, to the left of the wind.</summary>
    public Vector3D Across { get; }

    public Band[] Bands { get; }

    /// <summary>Band by band the load of the peak pressure over that of the mean wind.</summary>
    public double PeakOverMean(int band) => Bands[band].MeanForce > 0 ? Bands[band].PeakForce / Bands[band].MeanForce : 0;

    /// <summary>An effect under the peak pressure on all bands at once, from what each band's mean load does.</summary>
    public double AtPeakPressure(ReadOnlySpan<double> effects)
    {
        double sum = 0;
        for (int a = 0; a < Bands.Length; a++)
            sum += effects[a] * PeakOverMean(a);
        return sum;
    }

    public double Area => Sum(b => b.Area);

    /// <summary>Mean force coefficient, weighted by area.</summary>
    public double Coefficient => Sum(b => b.Coefficient * b.Area) / Area;

    /// <summary>
    /// A band's motion along the wind at its pressure center in a displacement of the frame, and by how much more its left edge moves than
    /// its right edge.
    /// </summary>
    public (double Along, double Twist) MotionAlong(StatueModel model, int band, ReadOnlySpan<double> displacements)
    {
        (Vector3D moved, Vector3D turned) = model.Motion(displacements, Bands[band].Place, Bands[band].At);
        return (moved.Dot(Direction), turned.Cross(Bands[band].SpanAcross).Dot(Direction));
    }

    private double Sum(Func<Band, double> value)
    {
        double sum = 0;
        foreach (Band band in Bands)
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

    /// <summary>One band in the wind.</summary>
    /// <param name="Place">Its node.</param>
    /// <param name="At">Its pressure center, m.</param>
    /// <param name="Area">Projected area A, m².</param>
    /// <param name="Coefficient">Force coefficient C_f.</param>
    /// <param name="Speed">Mean speed V, m/s.</param>
    /// <param name="Intensity">Turbulence intensity I.</param>
    /// <param name="Scale">Length scale of turbulence L, m.</param>
    /// <param name="MeanForce">½ρV²·C_f·A, N.</param>
    /// <param name="PeakForce">q_p·C_f·A, N.</param>
    /// <param name="SpanAlong">Its reach along the body's axis, m.</param>
    /// <param name="SpanAcross">Its reach across, m.</param>
    internal readonly record struct Band(
        Place Place, Vector3D At, double Area, double Coefficient, double Speed, double Intensity, double Scale,
        double MeanForce, double PeakForce, Vector3D SpanAlong, Vector3D SpanAcross);
}
