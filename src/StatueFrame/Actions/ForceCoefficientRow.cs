using UnitsNet;

namespace StatueFrame;

/// <summary>The force coefficients at one heading of a <see cref="ForceCoefficientTable"/>.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Heading">The plan angle that the wind blows towards, anticlockwise from the statue's own x axis.</param>
/// <param name="Along">Coefficient of the force along the wind (drag), 0.05 to 5.</param>
/// <param name="Across">
/// Coefficient of the force across the wind (lift), positive to the left of the wind, where the heading plus 90° points;
/// −5 to 5. Null in all rows when the table has none.
/// </param>
public sealed record ForceCoefficientRow(Angle Heading, double Along, double? Across = null);
