namespace StatueFrame;

/// <summary>
/// A mode shape along an axis: straight between the middles of strips, carried on straight to the ends of the body (but
/// not through zero), and scaled to 1 at its greatest.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class ModeLine
{
    private readonly List<double> at = [];
    private readonly List<double> phi = [];
    private readonly double[] absolute, square;

    /// <param name="lengths">Lengths of the strips, m.</param>
    /// <param name="amplitudes">Modal amplitudes at their middles, in any scale; not all zero.</param>
    public ModeLine(ReadOnlySpan<double> lengths, ReadOnlySpan<double> amplitudes)
    {
        int last = lengths.Length - 1;
        Add(0, last == 0 ? amplitudes[0] : EndValue(amplitudes[0], amplitudes[1], lengths[0], lengths[1]));
        double end = 0;
        for (int i = 0; i <= last; i++)
        {
            Add(end + 0.5 * lengths[i], amplitudes[i]);
            end += lengths[i];
        }
        Add(end, last == 0 ? amplitudes[0] : EndValue(amplitudes[last], amplitudes[last - 1], lengths[last], lengths[last - 1]));
        Scale = phi.Max(Math.Abs);
        for (int i = 0; i < phi.Count; i++)
            phi[i] /= Scale;
        (absolute, square) = (new double[phi.Count], new double[phi.Count]);
        for (int i = 1; i < phi.Count; i++)
        {
            double step = at[i] - at[i - 1];
            absolute[i] = absolute[i - 1] + 0.5 * step * (Math.Abs(phi[i - 1]) + Math.Abs(phi[i]));
            square[i] = square[i - 1] + SquareOf(step, phi[i - 1], phi[i]);
        }
        Lobes = FindLobes();
    }

    /// <summary>What the amplitudes were divided by.</summary>
    public double Scale { get; }

    /// <summary>∫Φ² ds, m.</summary>
    public double Square => square[^1];

    /// <summary>∫|Φ| ds, m.</summary>
    public double Absolute => absolute[^1];

    /// <summary>Stretches between nodes of the mode.</summary>
    public ModeLobe[] Lobes { get; }

    /// <summary>Φ at a place.</summary>
    public double At(double s)
    {
        int i = Segment(s);
        return double.Lerp(phi[i - 1], phi[i], (s - at[i - 1]) / (at[i] - at[i - 1]));
    }

    /// <summary>∫|Φ| ds between two places.</summary>
    public double AbsoluteBetween(double from, double to) => AbsoluteUpTo(to) - AbsoluteUpTo(from);

    /// <summary>∫Φ² ds between two places.</summary>
    public double SquareBetween(double from, double to) => SquareUpTo(to) - SquareUpTo(from);

    /// <summary>Whether it has no node and is greatest at an end.</summary>
    public bool IsOfCantilever => Lobes is [{ } only] && Math.Max(Math.Abs(phi[0]), Math.Abs(phi[^1])) >= 1 - 1e-9 && only.To - only.From >= at[^1] * (1 - 1e-9);

    private double SquareUpTo(double s)
    {
        int i = Segment(s);
        return square[i - 1] + SquareOf(s - at[i - 1], phi[i - 1], At(s));
    }

    private static double SquareOf(double step, double start, double end) => step / 3 * (start * start + start * end + end * end);

    private double AbsoluteUpTo(double s)
    {
        int i = Segment(s);
        return absolute[i - 1] + 0.5 * (s - at[i - 1]) * (Math.Abs(phi[i - 1]) + Math.Abs(At(s)));
    }

    private int Segment(double s)
    {
        int i = at.BinarySearch(s);
        return Math.Clamp(i < 0 ? ~i : i, 1, at.Count - 1);
    }

    /// <summary>Adds a point, and one before it where the line goes through zero; a value that only rounding keeps from zero is zero.</summary>
    private void Add(double s, double value)
    {
        if (phi.Count > 0 && phi[^1] * value < 0)
        {
            double zero = at[^1] + (s - at[^1]) * phi[^1] / (phi[^1] - value);
            if (zero <= at[^1])
                phi[^1] = 0;
            else if (zero >= s)
                value = 0;
            else
            {
                at.Add(zero);
                phi.Add(0);
            }
        }
        at.Add(s);
        phi.Add(value);
    }

    private static double EndValue(double outer, double inner, double outerLength, double innerLength)
    {
        double value = outer + (outer - inner) * outerLength / (outerLength + innerLength);
        return value * outer < 0 ? 0 : value;
    }

    private ModeLobe[] FindLobes()
    {
        const double Rounding = 1e-9;
        var lobes = new List<ModeLobe>();
        int from = 0;
        for (int i = 1; i < phi.Count; i++)
        {
            if (phi[i] != 0 && i < phi.Count - 1)
                continue;
            int[] inside = [.. Enumerable.Range(from, i - from + 1)];
            double greatest = inside.Max(k => Math.Abs(phi[k]));
            if (greatest > 0)
                lobes.Add(new ModeLobe(at[from], at[i], [.. inside.Where(k => Math.Abs(phi[k]) >= greatest * (1 - Rounding)).Select(k => at[k])]));
            from = i;
        }
        return [.. lobes];
    }
}
