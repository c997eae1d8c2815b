using UnitsNet;

namespace StatueFrame.Works;

/// <summary>Ten minutes of a storm: what the anemometer showed, and the greatest sway of one point meanwhile.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="GustSpeed">Greatest gust at the anemometer, of about 3 s.</param>
/// <param name="Sway">Greatest sway of the point from where it stands in calm.</param>
/// <param name="SwayError">Standard error of that sway.</param>
public sealed record StormReading(Speed GustSpeed, Length Sway, Length SwayError);
