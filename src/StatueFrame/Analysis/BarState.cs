namespace StatueFrame.Analysis;

/// <summary>How the skin shares its load among the bars of a band: the truth lies between the two.</summary>
public enum SkinAssumption
{
    /// <summary>The band is a rigid ring that shares the load by the bars' stiffness.</summary>
    RigidRing,

    /// <summary>The skin is so limp that each bar takes the wind and the weight of its own strip, as a cantilever.</summary>
    LimpSkin,
}

/// <summary>One bar under one load case, both assumptions; SI units. Not a number where a pinned bar cannot stand alone.</summary>
internal readonly record struct BarState(double RingStress, double RingDeflection, double LimpStress, double LimpDeflection)
{
    public double WorseStress => LimpStress > RingStress ? LimpStress : RingStress;

    public SkinAssumption Worse => LimpStress > RingStress ? SkinAssumption.LimpSkin : SkinAssumption.RigidRing;

    public double WorseDeflection => LimpDeflection > RingDeflection ? LimpDeflection : RingDeflection;
}
