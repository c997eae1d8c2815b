using UnitsNet;

namespace StatueFrame;

/// <summary>How much warmer the skin is at a height than its <see cref="TemperatureAction.SkinChange"/> says.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Elevation">Height above the tower's base; −1000 to 1000 m.</param>
/// <param name="Change">What is added there; −150 K to 150 K.</param>
public sealed record HeatAtHeight(Length Elevation, TemperatureDelta Change);
