using UnitsNet;

namespace StatueFrame;

/// <summary>The force coefficients at one heading of a <see cref="ForceCoefficientTable"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Heading">The plan angle that the wind blows towards, anticlockwise from the statue's own x axis.</param>
/// <param name="Along">Coefficient of the force along the wind (drag), −5 to 5; negative where the wake of another part draws it against the wind.</param>
/// <param name="Across">
/// Coefficient of the force across the wind (lift), positive to the left of the wind, where the heading plus 90° points;
/// −5 to 5. Null in all rows when the table has none.
/// </param>
/// <param name="Up">Coefficient of the vertical force, positive up, −5 to 5. Null in all rows when the table has none.</param>
/// <param name="Twist">
/// Coefficient of the moment about the vertical through the pressure center, on area and width, positive anticlockwise as seen from above,
/// −5 to 5. Null in all rows when the table has none.
/// </param>
public sealed record ForceCoefficientRow(Angle Heading, double Along, double? Across = null, double? Up = null, double? Twist = null);
