using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// One body of a statue across the wind. A wind that blows towards h makes lift along e × h, across the body's axis e;
/// only its part across the axis counts, and the modal motion along the lift.
/// </summary>
/// <param name="model">The model.</param>
/// <param name="body">The body.</param>
/// <param name="section">The cross-section of its skin; null when it has none.</param>
/// <param name="wind">The wind.</param>
/// <param name="input">Damping and the rest.</param>
/// <param name="lowest">Frequency of the statue's lowest mode, Hz.</param>
/// <remarks>For one thread. Lengths in m, mode shapes mass-normalized.</remarks>
internal sealed class AcrossWindBody(StatueModel model, BodyModel body, BodySection? section, WindProfile wind, AcrossWindInput input, double lowest)
{
    /// <summary>A wind nearer to the body's axis than 30° is left to other headings: its part across the axis no longer tells.</summary>
    private const double LeastAcross = 0.5;

    /// <summary>A body that moves less than this part of the greatest motion of any, twist included, is not in the mode.</summary>
    private const double StandsStill = 1e-3;

    private const double LeastSpeed = 0.1;

    /// <summary>Strouhal number of sharp edges where only a bound is asked for.</summary>
    private const double SharpStrouhal = 0.15;

    /// <summary>
    /// What feeds on its own motion is looked at in the wind square to it, which is always among those looked at: aslant its limit would
    /// hold for a part of the motion only.
    /// </summary>
    private const double Square = 0.99;

    /// <summary>A mode whose critical speed is so many times beyond the range of speeds with vortices at every band is left out.</summary>
    private const double FarBeyond = 20;

    /// <summary>Headings that differ by rounding alone are the same; the first of them counts.</summary>
    private const double MoreThan = 1 + 1e-9;

    private readonly AcrossWindStrip[] strips = AcrossWindStrip.Of(model, body);

    /// <summary>The first depth to width that the standard's figure does not have; null when none was met.</summary>
    public double? RatioOutside { get; private set; }

    public BodyModel Body => body;

    /// <summary>The body in a mode; null when the mode does not move it across any wind, or no wind is near its critical speed.</summary>
    public AcrossWindCase? In(ModeResult mode, ReadOnlySpan<double> shape, ReadOnlySpan<Angle> headings)
    {
        double frequency = mode.Frequency.Hertz;
        if (frequency > VortexInput.GreatestFrequency || LeastSpeedRatio(frequency) > FarBeyond)
            return null;
        var motion = new Vector3D[strips.Length];
        for (int i = 0; i < motion.Length; i++)
            motion[i] = strips[i].MotionIn(model, shape);
        (double greatest, double surface) = GreatestMotion(model, shape);
        AcrossWindCase? worst = null;
        foreach (Angle heading in (ReadOnlySpan<Angle>)[.. Broadside(motion), .. headings])
        {
            if (InHeading(mode, heading, motion, greatest, surface) is not { } found)
                continue;
            worst = worst is null ? found : Worse(worst, found);
        }
        return worst;
    }

    /// <summary>The lowest critical speed, over 1.25 times the mean speed, that vortices of any strip have at a frequency.</summary>
    public double LeastSpeedRatio(double frequency)
    {
        double least = double.PositiveInfinity;
        foreach (AcrossWindStrip strip in strips)
        {
            double St = strip.IsBare ? strip.Own?.StrouhalNumber ?? SharpStrouhal
                : section!.Section?.StrouhalNumber ?? (section.Shape == BluffShape.SharpEdged ? SharpStrouhal : BluffSection.Round.StrouhalNumber);
            double width = Math.Min(strip.WidthAcross(Vector3D.UnitX), strip.WidthAcross(Vector3D.UnitY));
            least = Math.Min(least, width * frequency / St / (VortexShedding.RangeFactor * SpeedAt(strip.Elevation)));
        }
        return least;
    }

    /// <summary>Mean wind at an elevation above the base, m/s.</summary>
    public double SpeedAt(double elevation) => Math.Max(LeastSpeed, wind.MeanSpeedSi(Math.Max(0, model.Statue.BaseAboveGround.Meters + elevation)));

    /// <summary>
    /// The greatest motion in a mode of the middle of any strip of the statue, and of any surface: in a mode that twists it, middles stand still.
    /// </summary>
    public static (double Middle, double Surface) GreatestMotion(StatueModel model, ReadOnlySpan<double> shape)
    {
        double greatest = 0, surface = 0;
        foreach (AcrossWindStrip strip in model.Bodies.SelectMany(other => AcrossWindStrip.Of(model, other)))
        {
            double moved = strip.MotionIn(model, shape).Length, radius = 0.5 * Math.Max(strip.WidthAcross(Vector3D.UnitX), strip.WidthAcross(Vector3D.UnitY));
            (greatest, surface) = (Math.Max(greatest, moved), Math.Max(surface, moved + radius * strip.RotationIn(model, shape).Length));
        }
        return (greatest, surface);
    }

    /// <summary>The heading across the axis and across the main direction of the motion, where a horizontal wind has one.</summary>
    private Angle[] Broadside(Vector3D[] motion)
    {
        double xx = 0, yy = 0, xy = 0;
        for (int i = 0; i < motion.Length; i++)
        {
            Vector3D u = body.Axes.Axes.ToLocal(motion[i]);
            double length = strips[i].Length;
            (xx, yy, xy) = (xx + length * u.X * u.X, yy + length * u.Y * u.Y, xy + length * u.X * u.Y);
        }
        (double sin, double cos) = Math.SinCos(0.5 * Math.Atan2(2 * xy, xx - yy));
        Vector3D across = body.Axes.Axes.ToGlobal(new Vector3D(sin, -cos, 0));
        return Math.Sqrt(across.X * across.X + across.Y * across.Y) > LeastAcross ? [Angle.FromRadians(Math.Atan2(across.Y, across.X)).ToUnit(UnitsNet.Units.AngleUnit.Degree)] : [];
    }

    private AcrossWindCase? InHeading(ModeResult mode, Angle heading, Vector3D[] motion, double greatest, double surface)
    {
        (double sin, double cos) = Math.SinCos(heading.Radians);
        Vector3D local = body.Axes.Axes.ToLocal(new Vector3D(cos, sin, 0));
        double across = Math.Sqrt(local.X * local.X + local.Y * local.Y);
        if (across < LeastAcross)
            return null;
        Vector3D lift = body.Axes.Axes.ToGlobal(new Vector3D(-local.Y, local.X, 0) / across);
        var all = new VortexStrip[motion.Length];
        double square = 0, most = 0, whole = 0;
        for (int i = 0; i < all.Length; i++)
        {
            AcrossWindStrip strip = strips[i];
            double length = strip.Length, width = strip.WidthAcross(local), phi = motion[i].Dot(lift);
            if (SectionOf(strip, width, strip.WidthAcross(new Vector3D(-local.Y, local.X, 0))) is not { } shape)
                return null;
            square += length * phi * phi;
            Vector3D moved = body.Axes.Axes.ToLocal(motion[i]);
            whole += length * (moved.X * moved.X + moved.Y * moved.Y);
            most = Math.Max(most, Math.Abs(phi));
            all[i] = new VortexStrip(
                Length.FromMeters(length), Length.FromMeters(width), phi, Speed.FromMetersPerSecond(across * SpeedAt(strip.Elevation)), shape,
                LinearDensity.FromKilogramsPerMeter(strip.Mass / length));
        }
        if (most <= StandsStill * surface || !(square > 0))
            return null;
        var vortexInput = new VortexInput
        {
            Strips = all.ToValueList(),
            Frequency = mode.Frequency,
            EquivalentMass = LinearDensity.FromKilogramsPerMeter(1 / square),
            LogDecrement = input.Damping!.DecrementAt(mode.Frequency.Hertz, lowest),
            AirDensity = wind.AirDensityInUse,
            LifeYears = input.LifeYearsInUse,
            BandwidthFactor = input.BandwidthFactorInUse,
            Approach = square >= Square * whole ? input.Approach : VortexApproach.VortexResonance,
            TurbulenceReduction = input.TurbulenceReduction ?? 1,
        };
        VortexResult vortex = VortexShedding.Evaluate(vortexInput);
        return new AcrossWindCase
        {
            Body = body.Name,
            Mode = mode,
            Input = vortexInput,
            VortexHeading = heading,
            Vortex = vortex,
            GreatestDisplacement = vortex.Amplitude * (greatest / most),
            GallopingHeading = heading,
            Galloping = Galloping.Evaluate(vortexInput),
        };
    }

    private BluffSection? SectionOf(AcrossWindStrip strip, double width, double depth)
    {
        BluffSection? known = strip.IsBare ? strip.Own
            : section!.Section ?? section.Shape switch { BluffShape.Round => BluffSection.Round, BluffShape.RoundWithIce => BluffSection.RoundWithIce, _ => null };
        if (known is not null)
            return known;
        if (BluffSection.HasRectangle(depth / width))
            return BluffSection.Rectangle(depth / width);
        RatioOutside ??= depth / width;
        return null;
    }

    /// <summary>The worse vortices of the two with the worse galloping of the two.</summary>
    private static AcrossWindCase Worse(AcrossWindCase a, AcrossWindCase b)
    {
        bool vortexOfB = a.Vortex.IsBeyondRange != b.Vortex.IsBeyondRange ? a.Vortex.IsBeyondRange
            : a.Vortex.IsBeyondRange ? MoreThan * (b.Vortex.CriticalSpeed / b.Vortex.MeanSpeed) < a.Vortex.CriticalSpeed / a.Vortex.MeanSpeed
            : b.GreatestDisplacement > MoreThan * a.GreatestDisplacement;
        AcrossWindCase vortex = vortexOfB ? b : a, galloping = Reach(b.Galloping) > MoreThan * Reach(a.Galloping) ? b : a;
        return vortex with { GallopingHeading = galloping.GallopingHeading, Galloping = galloping.Galloping };

        static double Reach(GallopingResult r) => r.OnsetSpeed is { } onset ? r.MeanSpeed / onset : 0;
    }
}
