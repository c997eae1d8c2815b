using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What rings of like bars have in common in the checks of their worst bars: effective lengths and torsion moduli, which cost most.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class StrutMemo
{
    private readonly Dictionary<(FlatBar Section, EndFixity Tower, EndFixity Skin, double Length, BarRestraint Restraint, double Young), (double Weak, double Strong)> lengths = [];
    private readonly Dictionary<FlatBar, (double Wide, double Narrow)> moduli = [];
    private LoadedBar? taken;
    private double weakLength, strongLength, wide, narrow;
    private const int MostKept = 256;

    /// <summary>A bar with the forces on its ends (12 values, bar axes).</summary>
    public LoadedBar Loaded(Standoff standoff, double length, bool isLimp, ReadOnlySpan<double> f) => new()
    {
        Section = standoff.Section,
        Material = standoff.Material,
        Length = Length.FromMeters(length),
        TowerFixity = standoff.TowerFixity,
        SkinFixity = standoff.SkinFixity,
        Restraint = isLimp ? BarRestraint.Free : BarRestraint.Sway,
        AtTower = new BarSectionForces { Axial = Force.FromNewtons(f[6]) },
        AtSkin = new BarSectionForces { Axial = Force.FromNewtons(f[6]) },
    };

    /// <summary>Looks at one bar from now on.</summary>
    public void Take(LoadedBar bar)
    {
        taken = bar;
        var key = (bar.Section, bar.TowerFixity, bar.SkinFixity, bar.L, bar.Restraint, bar.E);
        if (!lengths.TryGetValue(key, out (double Weak, double Strong) factor))
        {
            Trim(lengths);
            lengths[key] = factor = (bar.EffectiveLengthFactor(true), bar.EffectiveLengthFactor(false));
        }
        (weakLength, strongLength) = (factor.Weak * bar.L, factor.Strong * bar.L);
        if (!moduli.TryGetValue(bar.Section, out (double Wide, double Narrow) torsion))
        {
            Trim(moduli);
            moduli[bar.Section] = torsion = (new FlatRectangle(bar.b, bar.t).TorsionW, FlatStresses.NarrowTorsionW(bar.b, bar.t));
        }
        (wide, narrow) = torsion;
    }

    /// <summary>The equivalent stress of its section under forces, Pa.</summary>
    public double Equivalent(in FlatForces forces) => FlatStresses.Equivalent(null, forces, taken!.b, taken.t, wide, narrow);

    /// <summary>Its two axes as a strut.</summary>
    public (StrutAxis Weak, StrutAxis Strong) Axes(ReadOnlySpan<double> f) =>
        (new StrutAxis(taken!.t, taken.b, weakLength, f[5], f[11]), new StrutAxis(taken.b, taken.t, strongLength, f[4], f[10]));

    private static void Trim<TKey, TValue>(Dictionary<TKey, TValue> memo) where TKey : notnull
    {
        if (memo.Count >= MostKept)
            memo.Clear();
    }
}
