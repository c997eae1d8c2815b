using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>The standoff that is nearest to its yield strength at one wind speed, in the gust.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Where">The bar, as in "band 3, bar 2".</param>
/// <param name="Stress">Its normal stress, the worse of both assumptions on the skin.</param>
/// <param name="YieldFraction">Stress over yield or proof strength.</param>
/// <param name="Heading">The wind's heading; null in calm.</param>
public sealed record BarDemand(string Where, Pressure Stress, double YieldFraction, Angle? Heading);
