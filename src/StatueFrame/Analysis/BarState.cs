namespace StatueFrame.Analysis;

/// <summary>One bar under one load case, both assumptions; SI units. Not a number where a pinned bar cannot stand alone.</summary>
internal readonly record struct BarState(double RingStress, double RingDeflection, double LimpStress, double LimpDeflection)
{
    public double WorseStress => LimpStress > RingStress ? LimpStress : RingStress;

    public SkinAssumption Worse => Extremes.Exceeds(LimpStress, RingStress) ? SkinAssumption.LimpSkin : SkinAssumption.RigidRing;

    public double WorseDeflection => LimpDeflection > RingDeflection ? LimpDeflection : RingDeflection;
}
