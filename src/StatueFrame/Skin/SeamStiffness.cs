using UnitsNet;

namespace StatueFrame;

/// <summary>
/// How stiffly the seam between two neighboring bands ties them, per length of seam: N/m of force per metre of
/// movement and metre of seam, which is a pressure.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Across">Stiffness per length against opening and closing of the seam, along the body's axis.</param>
/// <param name="Along">Stiffness per length against sliding of one band's edge on the other, in and along the plan.</param>
public sealed record SeamStiffness(Pressure Across, Pressure Along)
{
    internal void Validate(Validator v)
    {
        v.NotNegative(Across, Across.Pascals, 1e12);
        v.NotNegative(Along, Along.Pascals, 1e12);
    }
}
