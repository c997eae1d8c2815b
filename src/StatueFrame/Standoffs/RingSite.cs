namespace StatueFrame;

/// <summary>What a ring of standoffs finds where it stands: the outlines of skin and tower, in the body's axes and SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Skin">The skin's outline at the height of the bars' skin ends.</param>
/// <param name="SkinElevation">That height, m.</param>
/// <param name="Tower">The tower's outline at the bars' tower ends; null for a tower given by its stiffness alone.</param>
/// <param name="CenterX">The tower's center, which plan angles are measured about, m.</param>
/// <param name="CenterY">The tower's center, m.</param>
internal readonly record struct RingSite(PlanCurve Skin, double SkinElevation, PlanCurve? Tower, double CenterX, double CenterY);
