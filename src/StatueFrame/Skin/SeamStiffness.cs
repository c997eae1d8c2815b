using UnitsNet;

namespace StatueFrame;

/// <summary>
/// How stiffly the seam between two neighboring bands ties them, per length of seam: the force per
/// movement and length of seam, which is a pressure.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Across">Stiffness per length against opening and closing of the seam, along the body's axis; zero to 1e12 Pa.</param>
/// <param name="Along">Stiffness per length against sliding of one band's edge on the other, in the plane across the body's axis; zero to 1e12 Pa.</param>
public sealed record SeamStiffness(Pressure Across, Pressure Along)
{
    internal void Validate(Validator v)
    {
        v.NotNegative(Across, Across.Pascals, 1e12);
        v.NotNegative(Along, Along.Pascals, 1e12);
    }
}
