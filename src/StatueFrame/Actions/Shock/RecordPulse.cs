namespace StatueFrame;

/// <summary>A pulse as it was measured or prescribed: samples with straight lines between them.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Times and sizes are relative: the pulse's duration multiplies the times,
/// its peak the sizes. With a duration of 1 s the times are seconds.
/// </remarks>
public sealed record RecordPulse : PressureShape
{
    private const int MostSamples = 1_000_000;

    /// <summary>Makes a shape from its samples.</summary>
    /// <param name="times">Times over the duration: ascending, the first one 0; two or more. Equal times make a jump.</param>
    /// <param name="sizes">Sizes over the peak, one a time.</param>
    public RecordPulse(ValueList<double> times, ValueList<double> sizes) => (Times, Sizes) = (times, sizes);

    /// <summary>Times over the duration.</summary>
    public ValueList<double> Times { get; }

    /// <summary>Sizes over the peak.</summary>
    public ValueList<double> Sizes { get; }

    /// <inheritdoc/>
    public override string Name => "record";

    /// <inheritdoc/>
    public override double Area
    {
        get
        {
            ReadOnlySpan<double> times = Times.AsSpan(), sizes = Sizes.AsSpan();
            double sum = 0;
            for (int i = 1; i < times.Length; i++)
                sum += 0.5 * (times[i] - times[i - 1]) * (sizes[i - 1] + sizes[i]);
            return sum;
        }
    }

    internal override ReadOnlySpan<double> Corners => Times.AsSpan();

    internal override double Inside(double x)
    {
        ReadOnlySpan<double> times = Times.AsSpan(), sizes = Sizes.AsSpan();
        int after = times.BinarySearch(x);
        if (after >= 0)
            return sizes[after];
        after = ~after;
        double t = (x - times[after - 1]) / (times[after] - times[after - 1]);
        return sizes[after - 1] + t * (sizes[after] - sizes[after - 1]);
    }

    internal override void Validate(Validator v)
    {
        if (v.Required(Times) is null | v.Required(Sizes) is null)
            return;
        double[] times = [.. Times], sizes = [.. Sizes];
        if (!v.AtMost(times.Length, MostSamples, nameof(Times)))
            return;
        if (times.Length < 2 || sizes.Length != times.Length)
        {
            v.Add(nameof(Sizes), $"must have one size a time and two or more of them, has {sizes.Length} sizes for {times.Length} times", "Give both lists the same length.");
            return;
        }
        if (Array.Exists(times, t => !double.IsFinite(t)) || Array.Exists(sizes, s => !(Math.Abs(s) <= 100)))
            v.Add(nameof(Sizes), "must hold finite numbers, sizes from −100 to 100", "They are relative to the peak, which is given beside the shape.");
        if (times[0] != 0)
            v.Add(nameof(Times), "must start at 0", "Shift them; arrival is given elsewhere.");
        for (int i = 1; i < times.Length; i++)
        {
            if (times[i] >= times[i - 1] && (i < 2 || times[i] > times[i - 2]))
                continue;
            v.Add(nameof(Times), FormattableString.Invariant($"must ascend, but item {i} is {times[i]:g6} after {times[i - 1]:g6}"), "Sort the samples; a jump has two samples at one time, no more.");
            return;
        }
        if (times[^1] <= 0)
            v.Add(nameof(Times), "must end after 0", "A pulse needs a length.");
    }
}
