namespace StatueFrame;

/// <summary>
/// How a pulse runs in time: its size over its peak against time over its duration. One of <see cref="RectanglePulse"/>,
/// <see cref="TrianglePulse"/>, <see cref="HalfSinePulse"/>, <see cref="DecayPulse"/> and <see cref="RecordPulse"/>.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record PressureShape
{
    private static readonly double[] gaussAt = [0.18343464249564980, 0.52553240991632899, 0.79666647741362674, 0.96028985649753623];
    private static readonly double[] gaussWeights = [0.36268378337836198, 0.31370664587788729, 0.22238103445337447, 0.10122853629037626];

    private protected PressureShape()
    {
    }

    /// <summary>A name for prints, as in "half sine".</summary>
    public abstract string Name { get; }

    /// <summary>The impulse over peak times duration, suction included: the area under the shape.</summary>
    public abstract double Area { get; }

    /// <summary>Where the shape ends, in durations; beyond it is zero.</summary>
    internal double End => Corners is [.., double last] ? last : 0;

    /// <summary>Where the shape has kinks or jumps, in durations, ascending from its start at 0 to its end.</summary>
    internal abstract ReadOnlySpan<double> Corners { get; }

    /// <summary>The shape at a time in durations; zero before its start and after its end.</summary>
    /// <param name="time">Time over duration.</param>
    public double At(double time) => time >= 0 && time <= End ? Inside(time) : 0;

    /// <summary>The shape between its start and its end.</summary>
    internal abstract double Inside(double x);

    internal abstract void Validate(Validator v);

    /// <summary>
    /// The straight line over a stretch of time that has the same impulse and the same first moment as the shape: equal
    /// to the shape where it is straight itself. Jumps within the stretch lose nothing of their impulse.
    /// </summary>
    /// <param name="from">Start of the stretch, in durations.</param>
    /// <param name="to">Its end.</param>
    internal (double Before, double After) Line(double from, double to)
    {
        if (to <= 0 || from >= End)
            return (0, 0);
        ReadOnlySpan<double> corners = Corners;
        double h = to - from, middle = 0.5 * (from + to), impulse = 0, moment = 0, a = Math.Max(from, 0);
        int next = corners.BinarySearch(a);
        for (next = next < 0 ? ~next : next + 1; a < to && next < corners.Length; next++)
        {
            double b = Math.Min(corners[next], to);
            if (b <= a)
                continue;
            double center = 0.5 * (a + b), half = 0.5 * (b - a);
            for (int i = 0; i < gaussAt.Length; i++)
            {
                double d = half * gaussAt[i], before = Inside(center - d), after = Inside(center + d), weight = half * gaussWeights[i];
                impulse += weight * (before + after);
                moment += weight * (before * (center - d - middle) + after * (center + d - middle));
            }
            a = b;
        }
        double mean = impulse / h, rise = 6 * moment / (h * h);
        return (mean - rise, mean + rise);
    }

    /// <inheritdoc/>
    public sealed override string ToString() => Name;
}
