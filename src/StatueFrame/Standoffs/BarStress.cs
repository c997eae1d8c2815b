namespace StatueFrame;

/// <summary>The stresses of one bar, Pa, all without sign.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="TowerEnd">Greatest normal stress at the corners of the tower end.</param>
/// <param name="SkinEnd">Greatest normal stress at the corners of the skin end.</param>
/// <param name="Torsion">Greatest St. Venant shear stress, at the middle of the wide faces.</param>
/// <param name="Shear">Greatest shear stress of the two transverse forces, at the centroid: 1.5 V/A.</param>
internal readonly record struct BarStress(double TowerEnd, double SkinEnd, double Torsion, double Shear)
{
    /// <summary>Greatest normal stress anywhere in the bar: both moments vary linearly, so that an end governs.</summary>
    public double Normal => Math.Max(TowerEnd, SkinEnd);
}
