using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The axial force of one lattice member in one load case.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Segment">The tower segment, as in "L3–L4".</param>
/// <param name="Member">The member, as in "leg 2, bay 1".</param>
/// <param name="Heading">The wind's heading; null without wind.</param>
/// <param name="Axial">Axial force; compression is negative. Zero for a tension-only brace that has gone slack.</param>
/// <param name="Stress">Axial force over gross area; bending of the legs is not included.</param>
public sealed record MemberForce(string Segment, string Member, Angle? Heading, Force Axial, Pressure Stress);
