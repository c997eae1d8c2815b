namespace StatueFrame.Mechanics.Statics;

/// <summary>The lowest load factors at which a frame buckles, and the shapes in which it does.</summary>
/// <remarks>Immutable and safe to share between threads; its arrays must not be written to.</remarks>
/// <param name="LoadFactors">
/// Positive factors on the base state's loads, ascending; empty when none exists below the limit that was asked for.
/// </param>
/// <param name="Shapes">One full vector for each factor; the largest component is 1.</param>
/// <param name="MissedNone">
/// True when the number of negative pivots of K + μ·K_g, just above the last factor, confirms that no lower factor exists.
/// </param>
/// <param name="Error">
/// A bound of the relative error of every factor, from the residual (K + λ·K_g) φ of each, formed anew; no unit.
/// </param>
public sealed record BucklingResult(double[] LoadFactors, double[][] Shapes, bool MissedNone, double Error);
