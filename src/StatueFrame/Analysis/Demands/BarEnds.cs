namespace StatueFrame.Analysis;

/// <summary>What acts on the two ends of a standoff, in its own axes. SI units.</summary>
/// <param name="Tower">At the tower end.</param>
/// <param name="Skin">At the skin end.</param>
/// <param name="Loose">
/// The part of what acts on the tower end whose forces need not come at one time, nor with these signs; zero for one state.
/// </param>
internal readonly record struct BarEnds(FlatForces Tower, FlatForces Skin, FlatForces Loose = default)
{
    /// <summary>Corners of the two ends.</summary>
    public const int Corners = 8;

    /// <summary>The ends from the twelve forces on a bar's ends, tower end first; moments keep the signs with which they act there.</summary>
    public static BarEnds Of(ReadOnlySpan<double> f) => new(
        new FlatForces(f[6], f[5], f[4], f[9], f[7], f[8]), new FlatForces(f[6], f[11], f[10], f[9], f[7], f[8]));

    /// <summary>The greater normal stress of the two ends, Pa; bending varies linearly, so that an end governs.</summary>
    /// <param name="b">Width, m.</param>
    /// <param name="t">Thickness, m.</param>
    public double NormalStress(double b, double t) => Math.Max(Tower.NormalStress(b, t), Skin.NormalStress(b, t));

    /// <summary>The normal stress at a corner, Pa: the first four are those of the tower end. It is linear in what acts.</summary>
    public double AtCorner(FlatRectangle section, int corner)
    {
        FlatForces end = corner < Corners / 2 ? Tower : Skin;
        double weak = (corner & 1) == 0 ? 1 : -1, strong = (corner & 2) == 0 ? 1 : -1;
        return end.N / section.A + weak * end.Weak / section.WeakW + strong * end.Strong / section.StrongW;
    }

    /// <summary>The same, its forces not of one time.</summary>
    public BarEnds AsPeaks() => this with { Loose = Tower };

    public static BarEnds operator +(in BarEnds a, in BarEnds b) => new(a.Tower + b.Tower, a.Skin + b.Skin, a.Loose + b.Loose);

    public static BarEnds operator *(double factor, in BarEnds ends) => new(factor * ends.Tower, factor * ends.Skin, factor * ends.Loose);
}
