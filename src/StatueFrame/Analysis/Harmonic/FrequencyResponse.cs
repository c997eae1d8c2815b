using System.Globalization;
using System.Numerics;
using System.Text;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// How the points of a statue swing, in amplitude and phase, under a force at one point or a motion of the base that swings
/// steadily: machinery, a rhythm of people, or a shaker of a test.
/// </summary>
/// <remarks>
/// Linear, with modal damping; modes beyond those taken follow statically. Immutable and safe to share between threads.
/// </remarks>
public sealed class FrequencyResponse
{
    private readonly StatueModel model;
    private readonly HarmonicResponse response;
    private readonly Vector3D ground;

    private FrequencyResponse(StatueModel model, ModalResponse modes, double damping, double[] loads, Vector3D ground, string load)
    {
        (this.model, this.ground, Load) = (model, ground, load);
        response = new HarmonicResponse(model.Statics, modes.Set, damping, loads);
    }

    /// <summary>What swings, in words.</summary>
    public string Load { get; }

    /// <summary>The response to a force.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="point">The named point the force acts at.</param>
    /// <param name="direction">Its direction.</param>
    /// <param name="amplitude">Its amplitude.</param>
    /// <param name="dampingRatio">Damping ratio of all modes, above 0 to 0.5.</param>
    /// <param name="modes">Modes of the model; null takes enough.</param>
    /// <exception cref="ArgumentException">The statue has no such point, or an argument is out of range.</exception>
    public static FrequencyResponse OfForce(
        StatueModel model, string point, Direction3 direction, Force amplitude, double dampingRatio, ModalResponse? modes = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (!double.IsFinite(amplitude.Newtons))
            throw new ArgumentOutOfRangeException(nameof(amplitude), "An amplitude must be finite.");
        (Place place, Vector3D at) = Find(model, point);
        var loads = new double[model.Frame.FreedomCount];
        Vector3D force = amplitude.Newtons * direction.Unit, moment = (at - place.NodeAt).Cross(force);
        Span<double> node = loads.AsSpan(place.Node * Frame.NodeSize, Frame.NodeSize);
        (node[0], node[1], node[2], node[3], node[4], node[5]) = (force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z);
        return Make(model, modes, dampingRatio, loads, Vector3D.Zero, string.Create(CultureInfo.InvariantCulture, $"{amplitude.Newtons:0.###} N at {point} along {direction}"));
    }

    /// <summary>The response to a motion of the base.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="direction">The direction of the motion.</param>
    /// <param name="amplitude">Amplitude of the base's acceleration.</param>
    /// <param name="dampingRatio">Damping ratio of all modes, above 0 to 0.5.</param>
    /// <param name="modes">Modes of the model; null takes enough.</param>
    /// <exception cref="ArgumentException">An argument is out of range.</exception>
    public static FrequencyResponse OfBaseMotion(
        StatueModel model, Direction3 direction, Acceleration amplitude, double dampingRatio, ModalResponse? modes = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (!double.IsFinite(amplitude.MetersPerSecondSquared))
            throw new ArgumentOutOfRangeException(nameof(amplitude), "An amplitude must be finite.");
        Vector3D ground = amplitude.MetersPerSecondSquared * direction.Unit;
        var motion = new double[model.Frame.FreedomCount];
        for (int node = 0; node < motion.Length; node += Frame.NodeSize)
            (motion[node], motion[node + 1], motion[node + 2]) = (-ground.X, -ground.Y, -ground.Z);
        return Make(model, modes, dampingRatio, model.Frame.InertiaForces(motion), ground, string.Create(CultureInfo.InvariantCulture, $"base with {amplitude.MetersPerSecondSquared:0.###} m/s² along {direction}"));
    }

    /// <summary>The swing of a named point.</summary>
    /// <param name="point">The point.</param>
    /// <param name="direction">The direction in which it is looked at.</param>
    /// <param name="frequency">Frequency of the load, above zero.</param>
    /// <exception cref="ArgumentException">The statue has no such point, or the frequency is out of range.</exception>
    public HarmonicMotion At(string point, Direction3 direction, Frequency frequency)
    {
        (Place place, Vector3D at) = Find(model, point);
        double f = frequency.Hertz, w = 2 * Math.PI * f;
        if (!(f > 0 && double.IsFinite(f)))
            throw new ArgumentOutOfRangeException(nameof(frequency), FormattableString.Invariant($"A frequency must be above zero, is {f} Hz."));
        int first = place.Node * Frame.NodeSize;
        Span<Complex> u = stackalloc Complex[Frame.NodeSize];
        for (int i = 0; i < u.Length; i++)
            u[i] = response.Of(first + i, f);
        Vector3D e = direction.Unit, turned = (at - place.NodeAt).Cross(e);
        // e·(u + θ×r) = e·u + θ·(r×e)
        Complex moved = e.X * u[0] + e.Y * u[1] + e.Z * u[2] + turned.X * u[3] + turned.Y * u[4] + turned.Z * u[5];
        Complex absolute = -w * w * moved + ground.Dot(e);
        return new HarmonicMotion(
            frequency, Length.FromMeters(moved.Magnitude), Angle.FromRadians(moved.Phase), Acceleration.FromMetersPerSecondSquared(absolute.Magnitude));
    }

    /// <summary>The swing of a point at many frequencies, even on a logarithmic scale.</summary>
    /// <param name="point">The point.</param>
    /// <param name="direction">The direction in which it is looked at.</param>
    /// <param name="from">The lowest frequency, above zero.</param>
    /// <param name="to">The highest frequency.</param>
    /// <param name="count">How many, 2 to 100 000.</param>
    /// <exception cref="ArgumentException">The statue has no such point, or an argument is out of range.</exception>
    public IReadOnlyList<HarmonicMotion> Sweep(string point, Direction3 direction, Frequency from, Frequency to, int count = 200)
    {
        if (!(from.Hertz > 0 && to.Hertz > from.Hertz && double.IsFinite(to.Hertz)))
            throw new ArgumentOutOfRangeException(nameof(to), FormattableString.Invariant($"Frequencies must ascend from above zero, are {from.Hertz} and {to.Hertz} Hz."));
        if (count is < 2 or > 100_000)
            throw new ArgumentOutOfRangeException(nameof(count), $"Must be from 2 to 100 000, is {count}.");
        var all = new HarmonicMotion[count];
        for (int i = 0; i < count; i++)
            all[i] = At(point, direction, Frequency.FromHertz(from.Hertz * Math.Pow(to.Hertz / from.Hertz, (double)i / (count - 1))));
        return all;
    }

    /// <summary>A sweep as comma-separated values (RFC 4180): Hz, m, degrees, m/s².</summary>
    public static string ToCsv(IEnumerable<HarmonicMotion> sweep)
    {
        ArgumentNullException.ThrowIfNull(sweep);
        var text = new StringBuilder("frequency [Hz],displacement [m],phase [°],acceleration [m/s²]\r\n");
        foreach (HarmonicMotion m in sweep)
            text.Append(CultureInfo.InvariantCulture, $"{m.Frequency.Hertz:R},{m.Displacement.Meters:R},{m.Phase.Degrees:R},{m.Acceleration.MetersPerSecondSquared:R}\r\n");
        return text.ToString();
    }

    private static FrequencyResponse Make(StatueModel model, ModalResponse? modes, double damping, double[] loads, Vector3D ground, string load)
    {
        if (!(damping is > 0 and <= 0.5))
            throw new ArgumentOutOfRangeException(nameof(damping), FormattableString.Invariant($"A damping ratio must be above 0 and at most 0.5, is {damping}."));
        modes ??= BaseMotionModes.Enough(model);
        if (modes.Set.Frame != model.Frame)
            throw new ArgumentException("The modes are of another model.", nameof(modes));
        return new FrequencyResponse(model, modes, damping, loads, ground, load);
    }

    private static (Place Place, Vector3D At) Find(StatueModel model, string point)
    {
        NamedPoint named = model.Statue.Points.FirstOrDefault(p => p.Name == point)
            ?? throw new ArgumentException($"The statue has no point \"{point}\". {NearNames.Closest(point, model.Statue.Points.Select(p => p.Name))}", nameof(point));
        return (model.PlaceOf(named.On), model.PositionOf(named));
    }
}
