using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>Forces on a flat's cross-section, SI units, tension positive.</summary>
/// <param name="N">Axial force, N.</param>
/// <param name="Weak">Moment about the weak axis, N·m.</param>
/// <param name="Strong">Moment about the strong axis, N·m.</param>
/// <param name="T">Torsion, N·m.</param>
/// <param name="AlongThickness">Shear along the thickness, N.</param>
/// <param name="AlongWidth">Shear along the width, N.</param>
internal readonly record struct FlatForces(double N, double Weak, double Strong, double T, double AlongThickness, double AlongWidth)
{
    /// <summary>The normal stress at the corner where all parts agree in sign, Pa: |N|/A + |M_weak|/W_weak + |M_strong|/W_strong.</summary>
    /// <param name="b">Width, m.</param>
    /// <param name="t">Thickness, m.</param>
    public double NormalStress(double b, double t) => (Math.Abs(N) + 6 * (Math.Abs(Weak) / t + Math.Abs(Strong) / b)) / (b * t);

    /// <summary>What a bar whose tower end carries this puts on what it stands on, in the bar's axes: force in N, moment in N·m.</summary>
    public (Vector3D Force, Vector3D Moment) OnSupport => (new(N, AlongThickness, AlongWidth), new(T, -Strong, -Weak));

    public static FlatForces operator +(in FlatForces a, in FlatForces b) => new(
        a.N + b.N, a.Weak + b.Weak, a.Strong + b.Strong, a.T + b.T, a.AlongThickness + b.AlongThickness, a.AlongWidth + b.AlongWidth);

    public static FlatForces operator *(double factor, in FlatForces f) => new(
        factor * f.N, factor * f.Weak, factor * f.Strong, factor * f.T, factor * f.AlongThickness, factor * f.AlongWidth);
}
