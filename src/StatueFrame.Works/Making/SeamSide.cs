using StatueFrame.Mechanics;

namespace StatueFrame.Works;

/// <summary>A stretch of a sheet's edge along which one other sheet lies, or none.</summary>
/// <param name="Sheet">Place of the sheet in the plan, from 0.</param>
/// <param name="From">Vertex at which the edge of the triangle begins.</param>
/// <param name="To">Vertex at which it ends.</param>
/// <param name="Start">Where the stretch begins, as part of that edge.</param>
/// <param name="End">Where it ends.</param>
/// <param name="Other">Place of the other sheet; −1 at a free edge.</param>
/// <param name="Middle">Middle of the stretch, m.</param>
/// <param name="Length">Its length, m.</param>
internal readonly record struct SeamSide(int Sheet, int From, int To, double Start, double End, int Other, Vector3D Middle, double Length);
