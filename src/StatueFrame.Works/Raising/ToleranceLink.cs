using UnitsNet;

namespace StatueFrame.Works;

/// <summary>One step by which a hole comes off its place.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">As in "template marked from the drawing".</param>
/// <param name="Tolerance">Greatest deviation to either side, zero to 100 mm.</param>
public sealed record ToleranceLink(string Name, Length Tolerance);
