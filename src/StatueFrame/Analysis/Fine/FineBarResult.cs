using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What a standoff carries in a load case of a fine model.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Where">Its name, as in "band 3, bar 2".</param>
/// <param name="Heading">The wind's heading; null without wind.</param>
/// <param name="Axial">Axial force, tension positive.</param>
/// <param name="Stress">Greatest normal stress of its two ends, |N|/A + |M_weak|/W_weak + |M_strong|/W_strong; zero or more.</param>
public sealed record FineBarResult(string Where, Angle? Heading, Force Axial, Pressure Stress);
