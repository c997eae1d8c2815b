using StatueFrame.Analysis;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Checks;

/// <summary>A standoff with what acts on its ends: the one demand of all bar checks.</summary>
/// <param name="Bar">The bar and its rules.</param>
/// <param name="Ends">What acts on its ends.</param>
/// <param name="Restraint">How its skin end is held when it buckles.</param>
/// <param name="State">The state the forces are of; null in a script.</param>
/// <param name="Skin">The bound on the skin in it.</param>
internal readonly record struct BarLoad(CheckedBar Bar, BarEnds Ends, BarRestraint Restraint, DemandState? State = null, SkinAssumption Skin = default) : ITraced
{
    private static readonly (string, Dimension)[] forces =
        [("N", Dimension.Force), ("M_weak", Dimension.Moment), ("M_strong", Dimension.Moment), ("T", Dimension.Moment), ("V_thin", Dimension.Force), ("V_wide", Dimension.Force)];

    /// <summary>A bar of an analyzed statue under a bound on the skin: on a rigid ring or a shell it sways, else its skin end is free.</summary>
    /// <param name="bar">The bar and its rules.</param>
    /// <param name="skin">The bound.</param>
    /// <param name="ends">What acts on its ends.</param>
    /// <param name="state">The state they are of.</param>
    public static BarLoad Of(CheckedBar bar, SkinAssumption skin, in BarEnds ends, DemandState state) =>
        new(bar, ends, skin is SkinAssumption.RigidRing or SkinAssumption.Shell ? BarRestraint.Sway : BarRestraint.Free, state, skin);

    /// <summary>Where the forces come from, and under which bound on the skin, in words; empty in a script.</summary>
    public string When => State is null ? "" : State.When.Length > 0 ? $"{State.When}; {Skin.InWords()}" : Skin.InWords();

    /// <summary>How the forces of its worse end come about.</summary>
    public DemandOrigin? Origin => OriginAt(Worse == Ends.Skin, justStress: true);

    /// <summary>The compression, N; zero in tension.</summary>
    public double Compression => Math.Max(0, -Math.Min(Ends.Tower.N, Ends.Skin.N));

    /// <summary>The end with the greater normal stress.</summary>
    public FlatForces Worse => Ends.Skin.NormalStress(Bar.b, Bar.t) > Ends.Tower.NormalStress(Bar.b, Bar.t) ? Ends.Skin : Ends.Tower;

    public StrutAxis Weak => new(Bar.t, Bar.b, Bar.EffectiveLengthFactor(true, Restraint) * Bar.L, Ends.Tower.Weak, Ends.Skin.Weak);

    public StrutAxis Strong => new(Bar.b, Bar.t, Bar.EffectiveLengthFactor(false, Restraint) * Bar.L, Ends.Tower.Strong, Ends.Skin.Strong);

    public bool IsMechanism =>
        !double.IsFinite(Bar.EffectiveLengthFactor(true, Restraint)) || !double.IsFinite(Bar.EffectiveLengthFactor(false, Restraint));

    /// <summary>How the forces of one end come about; null where no load case is behind them.</summary>
    /// <param name="atSkin">True for the skin end.</param>
    /// <param name="justStress">True for those alone that stress it along its axis.</param>
    public DemandOrigin? OriginAt(bool atSkin, bool justStress)
    {
        if (State is null || State is { Steady: null, Shaken: "" } || Bar.Site is not { } site)
            return null;
        SkinAssumption skin = Skin;
        double? local = State.LocalPressure;
        return new DemandOrigin(State, justStress ? forces[..3] : forces, At, Of(Ends))
        {
            Rest = Bar.Standoff.Saddle is not null && site.Slides ? "friction of the saddle while it slides, the worse way" : "",
            Then = local is { } p ? w => w.Given(p, Dimension.Pressure, "local pressure with its factor, outward positive") : null,
        };

        double[] At(LoadCase loadCase)
        {
            (RingElement ring, int band) = loadCase.Model.Rings[site.Ring];
            Span<double> own = stackalloc double[FrameElement.Size];
            BarModel bar = ring.Bars[site.Index];
            return (local is not null ? loadCase.LocalForcesOf(ring, bar, band, 0, own) : loadCase.ForcesOf(ring, bar, band, skin, own)) ? Of(BarEnds.Of(own)) : Of(default);
        }

        double[] Of(in BarEnds ends)
        {
            FlatForces f = atSkin ? ends.Skin : ends.Tower;
            return justStress ? [f.N, f.Weak, f.Strong] : [f.N, f.Weak, f.Strong, f.T, f.AlongThickness, f.AlongWidth];
        }
    }

    /// <summary>Tells where the forces come from.</summary>
    public void Tell(Working? w)
    {
        if (w is not null && When.Length > 0)
            w.Note($"Worst of all states: {When}.");
    }
}
