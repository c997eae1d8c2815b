namespace StatueFrame;

/// <summary>The skin in one plane across its axis. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed record SkinSection(double Z, PlanCurve Curve, double Thickness, double FoldFactor);
