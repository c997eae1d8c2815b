namespace StatueFrame;

/// <summary>The strips of a body as plain numbers along its axis, with their mode shape. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class VortexBody
{
    // The standard has a band of speeds of 0.3 v_crit in all; this is twice that, and not cut by rounding.
    private const double Band = 0.3 + 1e-9;

    private readonly double[] middles;
    private readonly double[] speeds;
    private readonly double[] criticalSpeeds;

    public VortexBody(VortexInput input)
    {
        int count = input.Strips.Count;
        Edges = new double[count + 1];
        middles = new double[count];
        speeds = new double[count];
        criticalSpeeds = new double[count];
        var lengths = new double[count];
        var amplitudes = new double[count];
        for (int i = 0; i < count; i++)
        {
            VortexStrip strip = input.Strips[i];
            lengths[i] = strip.Length.Meters;
            amplitudes[i] = strip.Amplitude;
            speeds[i] = strip.MeanSpeed.MetersPerSecond;
            criticalSpeeds[i] = VortexShedding.CriticalSpeed(null, strip.Width.Meters, input.Frequency.Hertz, strip.Section.StrouhalNumber);
            Edges[i + 1] = Edges[i] + lengths[i];
            middles[i] = Edges[i] + 0.5 * lengths[i];
        }
        Line = new ModeLine(lengths, amplitudes);
    }

    /// <summary>Where the strips meet, from 0 to the length of the body.</summary>
    public double[] Edges { get; }

    /// <summary>The mode shape.</summary>
    public ModeLine Line { get; }

    /// <summary>Mean speed at a place: straight between the middles of strips, and as at the outer middles beyond them.</summary>
    public double SpeedAt(double s)
    {
        int i = Array.BinarySearch(middles, s);
        if (i >= 0)
            return speeds[i];
        i = ~i;
        return i == 0 ? speeds[0] : i == middles.Length ? speeds[^1]
            : double.Lerp(speeds[i - 1], speeds[i], (s - middles[i - 1]) / (middles[i] - middles[i - 1]));
    }

    /// <summary>
    /// The stretch about a place where vortices can be in step at a wind speed: strips whose own critical speed is within
    /// 30 % of it. Empty when those at the place itself cannot.
    /// </summary>
    public (double From, double To) InStep(int strip, double criticalSpeed)
    {
        int first = strip, last = strip;
        if (!IsInStep(strip, criticalSpeed))
            return (middles[strip], middles[strip]);
        while (first > 0 && IsInStep(first - 1, criticalSpeed))
            first--;
        while (last < middles.Length - 1 && IsInStep(last + 1, criticalSpeed))
            last++;
        return (Edges[first], Edges[last + 1]);
    }

    /// <summary>The strip that a place is in.</summary>
    public int StripAt(double s)
    {
        int i = Array.BinarySearch(Edges, s);
        return Math.Clamp(i < 0 ? ~i - 1 : i, 0, middles.Length - 1);
    }

    private bool IsInStep(int strip, double criticalSpeed) => Math.Abs(criticalSpeeds[strip] / criticalSpeed - 1) <= Band;
}
