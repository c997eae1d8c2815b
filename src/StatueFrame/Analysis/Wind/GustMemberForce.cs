using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The axial force of one lattice member in gusts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Segment">The tower segment, as in "L3–L4".</param>
/// <param name="Member">The member, as in "leg 2, bay 1".</param>
/// <param name="Heading">The wind's heading.</param>
/// <param name="Axial">Axial force; compression is negative.</param>
public sealed record GustMemberForce(string Segment, string Member, Angle Heading, GustEffect<Force> Axial);
