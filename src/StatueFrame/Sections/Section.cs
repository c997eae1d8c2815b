using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A cross-section, in its principal axes: y and z, with I_y ≥ I_z, so that z is the weak axis. Shapes are flat bars,
/// angles, round bars, tubes, rectangles and plates.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record Section
{
    /// <summary>Cross-sectional area A.</summary>
    public Area Area => Area.FromSquareMeters(Properties.A);

    /// <summary>Second moment of area about the strong principal axis y.</summary>
    public AreaMomentOfInertia StrongInertia => AreaMomentOfInertia.FromMetersToTheFourth(Properties.Iy);

    /// <summary>Second moment of area about the weak principal axis z.</summary>
    public AreaMomentOfInertia WeakInertia => AreaMomentOfInertia.FromMetersToTheFourth(Properties.Iz);

    /// <summary>St. Venant torsion constant J.</summary>
    public AreaMomentOfInertia TorsionConstant => AreaMomentOfInertia.FromMetersToTheFourth(Properties.J);

    /// <summary>The numbers of the section in SI units.</summary>
    internal abstract SectionProperties Properties { get; }

    /// <summary>A short text such as "flat 60×8 mm".</summary>
    public abstract string Designation { get; }

    /// <summary>Outer diameter of a round section, m; null for others.</summary>
    internal virtual double? OuterDiameter => null;

    /// <summary>The section of the same shape with dimensions a fraction <paramref name="t"/> of the way to <paramref name="other"/>.</summary>
    internal abstract Section Blend(Section other, double t);

    internal abstract void Validate(Validator v);

    internal BeamSection Of(Material material)
    {
        SectionProperties p = Properties;
        double E = material.YoungsModulus.Pascals, G = material.ShearModulus.Pascals, rho = material.Density.KilogramsPerCubicMeter;
        return new BeamSection
        {
            EA = E * p.A, EIy = E * p.Iy, EIz = E * p.Iz, GJ = G * p.J,
            GAy = G * p.Asy, GAz = G * p.Asz,
            Mass = rho * p.A, RotaryY = rho * p.Iy, RotaryZ = rho * p.Iz,
        };
    }
}
