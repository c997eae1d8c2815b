using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>One end of a standoff with what acts on it: the demand of its fixing.</summary>
/// <param name="Load">The bar.</param>
/// <param name="AtSkin">True for the skin end.</param>
internal readonly record struct FixingLoad(BarLoad Load, bool AtSkin) : ITraced
{
    /// <summary>How the forces of this end come about.</summary>
    public DemandOrigin? Origin => Load.End(AtSkin).Origin();

    public FlatForces Forces => AtSkin ? Load.Ends.Skin : Load.Ends.Tower;

    public StandoffFixing? Fixing => Load.Bar.Fixing(AtSkin);

    public BoltedFixing Bolts => (BoltedFixing)Fixing!;

    public WeldedFixing Welds => (WeldedFixing)Fixing!;

    public string Where => string.Join(", ", new[] { Load.Bar.Where, AtSkin ? "skin end" : "tower end" }.Where(part => part.Length > 0));

    /// <summary>A bar in a script.</summary>
    public static FixingLoad Of(LoadedBar bar, StandoffFixing fixing, BarDesign design, bool atSkin) => new(bar.Load(design, fixing, atSkin), atSkin);
}
