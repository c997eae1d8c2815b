using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>A standoff with what acts on its ends: the one demand of all bar checks.</summary>
/// <param name="Bar">The bar and its rules.</param>
/// <param name="Ends">What acts on its ends.</param>
/// <param name="Restraint">How its skin end is held when it buckles.</param>
/// <param name="State">The state the forces are of; null in a script.</param>
/// <param name="Skin">The bound on the skin in it.</param>
internal readonly record struct BarLoad(CheckedBar Bar, BarEnds Ends, BarRestraint Restraint, DemandState? State = null, SkinAssumption Skin = default) : ITraced
{
    /// <summary>A bar of an analyzed statue under a bound on the skin: on a rigid ring or a shell it sways, else its skin end is free.</summary>
    /// <param name="bar">The bar and its rules.</param>
    /// <param name="skin">The bound.</param>
    /// <param name="ends">What acts on its ends.</param>
    /// <param name="state">The state they are of.</param>
    public static BarLoad Of(CheckedBar bar, SkinAssumption skin, in BarEnds ends, DemandState state) =>
        new(bar, ends, skin is SkinAssumption.RigidRing or SkinAssumption.Shell ? BarRestraint.Sway : BarRestraint.Free, state, skin);

    /// <summary>Where the forces come from, and under which bound on the skin, in words; empty in a script.</summary>
    public string When => End(atSkin: false).When;

    /// <summary>How the forces of its worse end come about.</summary>
    public DemandOrigin? Origin => End(Worse == Ends.Skin).Origin(justStress: true);

    /// <summary>One end, as what holds it takes it over.</summary>
    /// <param name="atSkin">True for the skin end.</param>
    public BarEnd End(bool atSkin) => new(Bar, State, Skin, atSkin, atSkin ? Ends.Skin : Ends.Tower);

    /// <summary>The compression, N; zero in tension.</summary>
    public double Compression => Math.Max(0, -Math.Min(Ends.Tower.N, Ends.Skin.N));

    /// <summary>The end with the greater normal stress.</summary>
    public FlatForces Worse => Ends.Skin.NormalStress(Bar.b, Bar.t) > Ends.Tower.NormalStress(Bar.b, Bar.t) ? Ends.Skin : Ends.Tower;

    public StrutAxis Weak => new(Bar.t, Bar.b, Bar.EffectiveLengthFactor(true, Restraint) * Bar.L, Ends.Tower.Weak, Ends.Skin.Weak);

    public StrutAxis Strong => new(Bar.b, Bar.t, Bar.EffectiveLengthFactor(false, Restraint) * Bar.L, Ends.Tower.Strong, Ends.Skin.Strong);

    public bool IsMechanism =>
        !double.IsFinite(Bar.EffectiveLengthFactor(true, Restraint)) || !double.IsFinite(Bar.EffectiveLengthFactor(false, Restraint));

    /// <summary>Tells where the forces come from.</summary>
    public void Tell(Working? w)
    {
        if (w is not null && When.Length > 0)
            w.Note($"Worst of all states: {When}.");
    }
}
