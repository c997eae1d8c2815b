using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The peak axial force of a lattice member in an earthquake, without sign.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Segment">The segment.</param>
/// <param name="Member">The member.</param>
/// <param name="Axial">Peak axial force, tension or compression.</param>
public sealed record EarthquakeMember(string Segment, string Member, Force Axial);
