namespace StatueFrame.Analysis;

/// <summary>A response in time, sample by sample. SI units.</summary>
/// <remarks>Does not change once made; safe to share between threads.</remarks>
public sealed class ShockHistory
{
    private readonly double[] point, reaction, energy;
    private readonly string[] points;

    internal ShockHistory(string[] points, int samples)
    {
        this.points = points;
        Times = new double[samples];
        point = new double[3 * points.Length * samples];
        reaction = new double[6 * samples];
        energy = new double[4 * samples];
    }

    /// <summary>Times of the samples, s.</summary>
    public IReadOnlyList<double> TimesInSeconds => Times;

    internal double[] Times { get; }

    /// <summary>The movement of a named point from rest, m.</summary>
    /// <param name="name">The point's name.</param>
    /// <param name="sample">The sample, from 0.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public (double X, double Y, double Z) Of(string name, int sample)
    {
        int at = Array.IndexOf(points, name);
        if (at < 0)
            throw new ArgumentException($"The statue has no point \"{name}\". {NearNames.Closest(name, points)}", nameof(name));
        at = 3 * (sample * points.Length + at);
        return (point[at], point[at + 1], point[at + 2]);
    }

    /// <summary>Forces and moments on the base about its center, weight included, along x, y, z; N, N·m.</summary>
    /// <param name="sample">The sample, from 0.</param>
    public ReadOnlySpan<double> BaseAt(int sample) => reaction.AsSpan(6 * sample, 6);

    /// <summary>Input, kinetic and elastic energy, and what damping and yielding have taken, J.</summary>
    /// <param name="sample">The sample, from 0.</param>
    public (double Input, double Kinetic, double Strain, double Lost) EnergyAt(int sample) =>
        (energy[4 * sample], energy[4 * sample + 1], energy[4 * sample + 2], energy[4 * sample + 3]);

    internal void Put(int sample, double time, ReadOnlySpan<double> moved, ReadOnlySpan<double> onBase, (double Input, double Kinetic, double Strain, double Lost) e)
    {
        Times[sample] = time;
        moved.CopyTo(point.AsSpan(3 * points.Length * sample));
        onBase.CopyTo(reaction.AsSpan(6 * sample));
        (energy[4 * sample], energy[4 * sample + 1], energy[4 * sample + 2], energy[4 * sample + 3]) = e;
    }
}
