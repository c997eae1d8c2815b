namespace StatueFrame.Analysis;

/// <summary>A random quantity in gusts: mean, standard deviations, and the peak expected in a time. SI units.</summary>
internal readonly record struct GustStatistics(double Mean, double Background, double Deviation, double Upcrossing, double Duration)
{
    /// <summary>EN 1991-1-4, (B.5): at ten minutes it makes the peak factor at least 3.</summary>
    private const double LeastUpcrossing = 0.08, Euler = 0.5772;

    /// <summary>The sum of quantities that are independent of one another; the mean is that of them all.</summary>
    public static GustStatistics Sum(IReadOnlyList<GustStatistics> independent)
    {
        double mean = 0, background = 0, square = 0, speed = 0;
        foreach (GustStatistics one in independent)
        {
            double variance = one.Deviation * one.Deviation;
            mean += one.Mean;
            background += one.Background * one.Background;
            square += variance;
            speed += variance * one.Upcrossing * one.Upcrossing;
        }
        return new GustStatistics(mean, Math.Sqrt(background), Math.Sqrt(square), square > 0 ? Math.Sqrt(speed / square) : 0, independent[0].Duration);
    }

    public double Resonant => Math.Sqrt(Math.Max(0, Deviation * Deviation - Background * Background));

    /// <summary>How often a second it crosses its mean upwards, ν, not below 0.08 Hz.</summary>
    public double UpcrossingInUse => Math.Max(LeastUpcrossing, Upcrossing);

    /// <summary>g = √(2 ln νT) + 0.5772/√(2 ln νT) (Davenport).</summary>
    public double PeakFactor
    {
        get
        {
            double root = Math.Sqrt(2 * Math.Log(UpcrossingInUse * Duration));
            return root + Euler / root;
        }
    }

    /// <summary>The mean and, to its side, the peak factor times the deviation.</summary>
    public double Peak => Mean + (Mean < 0 ? -1 : 1) * PeakFactor * Deviation;
}
