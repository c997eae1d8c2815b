namespace StatueFrame.Checks;

/// <summary>Forces on a flat's cross-section, SI units, tension positive.</summary>
/// <param name="N">Axial force, N.</param>
/// <param name="Weak">Moment about the weak axis, N·m.</param>
/// <param name="Strong">Moment about the strong axis, N·m.</param>
/// <param name="T">Torsion, N·m.</param>
/// <param name="AlongThickness">Shear along the thickness, N.</param>
/// <param name="AlongWidth">Shear along the width, N.</param>
internal readonly record struct FlatForces(double N, double Weak, double Strong, double T, double AlongThickness, double AlongWidth);
