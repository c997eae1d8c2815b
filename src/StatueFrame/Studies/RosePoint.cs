using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>One point of a rose: a wind heading and the value it gives.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Heading">The plan angle that the wind blows towards, from 0 up to 360°.</param>
/// <param name="Value">The value in SI units, without sign.</param>
public sealed record RosePoint(Angle Heading, double Value);
