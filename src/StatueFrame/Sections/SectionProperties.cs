namespace StatueFrame;

/// <summary>The numbers of a cross-section in SI units, principal axes y (strong) and z (weak).</summary>
/// <param name="A">Area, m².</param>
/// <param name="Iy">Second moment of area about the strong axis y, m⁴.</param>
/// <param name="Iz">Second moment of area about the weak axis z, m⁴.</param>
/// <param name="J">St. Venant torsion constant, m⁴.</param>
/// <param name="Asy">Shear area for a force along y, m².</param>
/// <param name="Asz">Shear area for a force along z, m².</param>
/// <param name="Wy">Least elastic section modulus about y, m³.</param>
/// <param name="Wz">Least elastic section modulus about z, m³.</param>
internal readonly record struct SectionProperties(
    double A, double Iy, double Iz, double J, double Asy, double Asz, double Wy, double Wz);
