using UnitsNet;

namespace StatueFrame.Works;

/// <summary>All parts of one metal or block.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Material">Its name.</param>
/// <param name="Pieces">How many pieces, fasteners included.</param>
/// <param name="Mass">Their mass.</param>
/// <param name="Carbon">Embodied carbon in CO₂ equivalent, cradle to gate; null when the table has no value for the family.</param>
public sealed record MaterialTotal(string Material, int Pieces, Mass Mass, Mass? Carbon);
