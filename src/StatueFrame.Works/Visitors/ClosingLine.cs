using UnitsNet;

namespace StatueFrame.Works;

/// <summary>One place in the guard's table.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Rule">The rule.</param>
/// <param name="Gust">Close when the anemometer shows this gust.</param>
/// <param name="Mean">Or this mean of ten minutes.</param>
/// <param name="SwayThen">Sway of the point then: close as well when a sway meter shows it at any wind.</param>
/// <param name="Because">What decides, as in "sway at wing tip".</param>
public sealed record ClosingLine(ClosingRule Rule, Speed Gust, Speed Mean, Length SwayThen, string Because);
