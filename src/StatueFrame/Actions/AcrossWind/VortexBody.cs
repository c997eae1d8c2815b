namespace StatueFrame;

/// <summary>The strips of a body as plain numbers along its axis, with their mode shape. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class VortexBody
{
    private readonly double[] middles;
    private readonly double[] speeds;

    public VortexBody(VortexInput input)
    {
        int count = input.Strips.Count;
        Edges = new double[count + 1];
        middles = new double[count];
        speeds = new double[count];
        var lengths = new double[count];
        var amplitudes = new double[count];
        for (int i = 0; i < count; i++)
        {
            VortexStrip strip = input.Strips[i];
            lengths[i] = strip.Length.Meters;
            amplitudes[i] = strip.Amplitude;
            speeds[i] = strip.MeanSpeed.MetersPerSecond;
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
}
