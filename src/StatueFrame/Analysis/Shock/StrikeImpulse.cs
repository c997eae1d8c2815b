using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What came of a <see cref="Strike"/> at the first moment.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">Name of the strike.</param>
/// <param name="StruckMass">The mass that the struck point sets against the blow in its direction.</param>
/// <param name="Impulse">The impulse that passes, factor included.</param>
public sealed record StrikeImpulse(string Name, Mass StruckMass, Impulse Impulse);
