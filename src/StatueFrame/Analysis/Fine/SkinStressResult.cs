using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The stress of the sheet of a fine model at one place.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Band">The band, as in "band 3".</param>
/// <param name="Heading">The wind's heading; null without wind.</param>
/// <param name="At">The middle of the triangle, m, in the statue's axes.</param>
/// <param name="VonMises">Greatest equivalent stress over the thickness, bending included; zero or more.</param>
/// <param name="Greatest">Greatest principal stress over the thickness, tension positive.</param>
/// <param name="Least">Least principal stress over the thickness.</param>
/// <param name="Membrane">Equivalent stress at the middle of the thickness, without bending.</param>
public sealed record SkinStressResult(string Band, Angle? Heading, Vector3D At, Pressure VonMises, Pressure Greatest, Pressure Least, Pressure Membrane)
{
    /// <summary>Where it lies round its body's axis, seen from the middle of the band's outline, −180° to 180° from the body's x.</summary>
    public Angle Around { get; internal init; }

    /// <summary>Where it lies along its body's axis.</summary>
    public Length Along { get; internal init; }
}
