using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>One quantity by both models.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Quantity">What, as in "greatest stress of a standoff".</param>
/// <param name="Part">Where, as in "band 3" or "tip".</param>
/// <param name="Dimension">Its dimension.</param>
/// <param name="Reduced">By the model of rigid bands; of standoffs the worst of the bounds on the skin; SI units.</param>
/// <param name="Fine">By the fine model, SI units.</param>
/// <param name="Error">What the mesh may still lack, relative, from a mesh 1.4 times as coarse and an error with the square of the size; null when it was not asked for.</param>
/// <param name="IsBound">True when the first is meant to be the greater one.</param>
public sealed record FineComparisonRow(string Quantity, string Part, Dimension Dimension, double Reduced, double Fine, double? Error, bool IsBound)
{
    /// <summary>A bound may be exceeded by this much before it is called unsafe.</summary>
    internal const double Tolerated = FineModel.Tolerated;

    /// <summary>The second over the first; 1 when both are zero.</summary>
    public double Ratio => Reduced == 0 && Fine == 0 ? 1 : Fine / Reduced;

    /// <summary>Whether the fine model finds more than 1.05 times what should be a bound.</summary>
    public bool IsUnsafe => IsBound && Fine > Tolerated * Reduced;
}
