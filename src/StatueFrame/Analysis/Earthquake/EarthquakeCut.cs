using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The peak forces and moments in a cut across a tower or limb at one end of a segment, in the body's own axes; without
/// sign, and not at one time. The shears of the trunk are its story forces summed from the top.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Segment">The segment, as in "L3–L4" or "wing/root–W1".</param>
/// <param name="AtTop">Whether the cut is at its upper level.</param>
/// <param name="Axial">Axial force.</param>
/// <param name="ShearX">Shear along the body's x.</param>
/// <param name="ShearY">Shear along the body's y.</param>
/// <param name="MomentX">Bending moment about the body's x.</param>
/// <param name="MomentY">Bending moment about the body's y.</param>
/// <param name="Torsion">Torsional moment about the body's z.</param>
public sealed record EarthquakeCut(
    string Segment, bool AtTop, Force Axial, Force ShearX, Force ShearY, Torque MomentX, Torque MomentY, Torque Torsion);
