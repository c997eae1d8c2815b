using StatueFrame.Mechanics;

namespace StatueFrame.Reporting;

/// <summary>A word of a <see cref="Drawing"/>, 2.5 mm high on paper.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Text">The word.</param>
/// <param name="At">Its middle in true size, m; z plays no part.</param>
/// <param name="Upright">True for a word that reads from below upwards, as along a dimension line.</param>
public sealed record DrawnText(string Text, Vector3D At, bool Upright = false);
