using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// Overturning in a shock against the weight on the base, at the moment when both come nearest to lifting an edge. The
/// base is taken as held all the while: above 1 it lifts, which is not yet toppling.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Moment">Overturning moment about the base's center at that time.</param>
/// <param name="Resistance">Moment at which the edge on that side lifts: what presses then, times the distance to the edge.</param>
/// <param name="Ratio">The first over the second; infinite when nothing presses.</param>
/// <param name="Time">Time since the shock began.</param>
/// <param name="Base">What the base was taken to be.</param>
public sealed record ShockOverturning(Torque Moment, Torque Resistance, double Ratio, Duration Time, string Base)
{
    /// <summary>True when an edge of the base lifts.</summary>
    public bool Lifts => Ratio > 1;
}
