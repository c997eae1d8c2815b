namespace StatueFrame;

/// <summary>
/// The inertia tensor of a body about its centroid in kg·m²: Xx = ∫(y²+z²)dm and so on; the products carry the tensor's
/// sign, Xy = −∫xy dm.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly record struct InertiaTensor(double Xx, double Yy, double Zz, double Xy, double Yz, double Zx);
