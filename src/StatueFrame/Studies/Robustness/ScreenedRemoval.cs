namespace StatueFrame.Studies;

/// <summary>A removal, and how bad it looks before its whole sheet is made.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Removal">What is gone.</param>
/// <param name="Worst">
/// The greatest of what the removal makes worse: stress of a standoff or a lattice member over yield strength in strength
/// situations, sway over its limit in service situations. Zero when nothing gets worse, infinite when a part falls, null when
/// forces and movements do not show it, as for anchors.
/// </param>
/// <param name="Item">What that is, as in "standoffs of band 3"; empty when there is none.</param>
/// <param name="Falls">What falls, and why; null when the statue holds together.</param>
public sealed record ScreenedRemoval(Removal Removal, double? Worst, string Item, string? Falls);
