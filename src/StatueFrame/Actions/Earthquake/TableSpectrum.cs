using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// A spectrum given point by point, as of a site study or the multi-period spectrum of ASCE 7-22. Between points it runs
/// straight; before the first and after the last it keeps their values.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source of the straight lines: ASCE/SEI 7-22, 11.4.5.1.</remarks>
public sealed record TableSpectrum : DesignSpectrum
{
    /// <summary>The points, periods ascending; at least one.</summary>
    public required ValueList<SpectrumPoint> Points { get; init; }

    /// <summary>Where the points come from.</summary>
    public required Source Origin { get; init; }

    /// <summary>What the accelerations are divided by for forces, q or R/I_e, 1 to 10; 1 for an elastic analysis.</summary>
    public double ForceReduction { get; init; } = 1;

    /// <summary>What displacements are multiplied by, 1 to 10; null takes <see cref="ForceReduction"/>.</summary>
    public double? Amplification { get; init; }

    /// <inheritdoc/>
    public override Source Source => Origin;

    /// <inheritdoc/>
    public override double DisplacementFactor => Amplification ?? ForceReduction;

    internal override double LongestPeriod => Points[^1].Period.Seconds;

    internal override double AtSi(double T)
    {
        ReadOnlySpan<SpectrumPoint> points = Points.AsSpan();
        int after = 0;
        while (after < points.Length && points[after].Period.Seconds < T)
            after++;
        double a = after == 0 ? Value(points[0]) : after == points.Length ? Value(points[^1]) : Between(points[after - 1], points[after]);
        return a / ForceReduction;

        double Between(SpectrumPoint p, SpectrumPoint q)
        {
            double t = (T - p.Period.Seconds) / (q.Period.Seconds - p.Period.Seconds);
            return (1 - t) * Value(p) + t * Value(q);
        }

        static double Value(SpectrumPoint point) => point.Acceleration.MetersPerSecondSquared;
    }

    /// <summary>Straight lines through points, x ascending; the end values hold outside.</summary>
    internal static double Linear(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        int after = 0;
        while (after < x.Length && x[after] < at)
            after++;
        if (after == 0)
            return y[0];
        if (after == x.Length)
            return y[^1];
        double t = (at - x[after - 1]) / (x[after] - x[after - 1]);
        return (1 - t) * y[after - 1] + t * y[after];
    }

    internal override void Validate(Validator v)
    {
        v.Required(Origin);
        v.InRange(DampingRatio, 0.001, 0.5, "It is a part of critical damping, as in 0.05.");
        v.InRange(ForceReduction, 1, 10, "It is q or R/I_e.");
        if (Amplification is { } amplification)
            v.InRange(amplification, 1, 10, "It is q or C_d/I_e.", nameof(Amplification));
        if (Points?.Count == 0)
            v.Add(nameof(Points), "must not be empty", "Give periods with their spectral accelerations.");
        double before = double.NegativeInfinity;
        foreach ((_, SpectrumPoint point, Validator at) in v.Items(Points, StatueSize.TableRows))
        {
            at.NotNegative(point.Period, point.Period.Seconds, 100, nameof(SpectrumPoint.Period));
            at.Positive(point.Acceleration, point.Acceleration.MetersPerSecondSquared, 1e-6, 100, nameof(SpectrumPoint.Acceleration));
            if (point.Period.Seconds <= before)
                at.Add(nameof(SpectrumPoint.Period), Invariant($"must be longer than the one before, {before:0.####} s"), "Sort the points by period.");
            before = point.Period.Seconds;
        }
    }
}
