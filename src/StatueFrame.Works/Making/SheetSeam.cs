using UnitsNet;

namespace StatueFrame.Works;

/// <summary>The seam between two sheets.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="First">The lower number of the two sheets.</param>
/// <param name="Second">The other.</param>
/// <param name="Flush">Whether it is made flush, with a strap behind.</param>
/// <param name="Length">Its length.</param>
/// <param name="Rivets">Rivets along it, all rows and both sides of a strap.</param>
public sealed record SheetSeam(int First, int Second, bool Flush, Length Length, int Rivets);
