namespace StatueFrame;

/// <summary>What the pressure of a wind makes of a band: coefficients times the area, and times area and width, that they are of.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Along">Along the wind, m².</param>
/// <param name="Across">Across it to the left, m².</param>
/// <param name="Up">Up, m².</param>
/// <param name="Twist">About the vertical, anticlockwise, m³.</param>
/// <param name="HasUp">Whether the force up is known.</param>
internal readonly record struct WindAreas(double Along, double Across, double Up, double Twist, bool HasUp);
