namespace StatueFrame.Analysis;

/// <summary>
/// What a lattice member carries: one axial force, and the moments of its stiff joints about its two principal axes at both
/// ends, as they act on the ends. SI units.
/// </summary>
/// <param name="N">Axial force, N; compression is negative.</param>
/// <param name="StrongStart">Moment about the strong axis at its first joint, N·m.</param>
/// <param name="WeakStart">Moment about the weak axis there.</param>
/// <param name="StrongEnd">Moment about the strong axis at its second joint.</param>
/// <param name="WeakEnd">Moment about the weak axis there.</param>
/// <param name="V">Resultant shear, N; the same all along.</param>
internal readonly record struct MemberForces(double N, double StrongStart, double WeakStart, double StrongEnd, double WeakEnd, double V)
{
    /// <summary>Numbers that a member's state is made of.</summary>
    public const int Count = 7;

    /// <summary>From axial force, the two shears and the four moments.</summary>
    public static MemberForces Of(ReadOnlySpan<double> f) => new(f[0], f[3], f[4], f[5], f[6], double.Hypot(f[1], f[2]));

    public double Strong => Math.Max(Math.Abs(StrongStart), Math.Abs(StrongEnd));

    public double Weak => Math.Max(Math.Abs(WeakStart), Math.Abs(WeakEnd));
}
