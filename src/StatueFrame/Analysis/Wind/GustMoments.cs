namespace StatueFrame.Analysis;

/// <summary>What gusts do to a few quantities, and so to every sum of them: means and covariances. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class GustMoments(double[] mean, double[] background, double[] total, double[] velocity, double duration)
{
    private readonly double[] mean = mean, background = background, total = total, velocity = velocity;
    private readonly double duration = duration;

    /// <summary>The statistics of the sum of the quantities, each times its coefficient.</summary>
    public GustStatistics Of(ReadOnlySpan<double> c)
    {
        double sum = 0;
        for (int i = 0; i < mean.Length; i++)
            sum += c[i] * mean[i];
        double all = Quadratic(total, c);
        return new GustStatistics(sum, GustCovariance.Root(Quadratic(background, c)), GustCovariance.Root(all), GustCovariance.Ratio(Quadratic(velocity, c), all), duration);
    }

    /// <summary>Of sums of independent parts.</summary>
    public static GustMoments operator +(GustMoments a, GustMoments b) => new(Sum(a.mean, b.mean), Sum(a.background, b.background), Sum(a.total, b.total), Sum(a.velocity, b.velocity), a.duration);

    private static double[] Sum(double[] a, double[] b) => [.. a.Zip(b, (x, y) => x + y)];

    private static double Quadratic(double[] matrix, ReadOnlySpan<double> c)
    {
        double sum = 0;
        for (int i = 0, at = 0; i < c.Length; i++)
        {
            for (int j = 0; j < c.Length; j++)
                sum += c[i] * matrix[at++] * c[j];
        }
        return sum;
    }
}
