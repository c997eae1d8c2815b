namespace StatueFrame;

/// <summary>
/// A stretch of a closed plan curve, by the edges it begins and ends on and the parts of them, from 0 to 1, that lie
/// before. Edges count on beyond the last one when the stretch runs across vertex 0.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly record struct PlanStretch(int FirstEdge, double FirstPart, int LastEdge, double LastPart);
