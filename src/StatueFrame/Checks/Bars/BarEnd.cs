using StatueFrame.Analysis;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Checks;

/// <summary>What acts on one end of a standoff in a state, as what it stands on takes it over.</summary>
/// <param name="Bar">The bar; null in a script.</param>
/// <param name="State">The state.</param>
/// <param name="Skin">The bound on the skin in it.</param>
/// <param name="AtSkin">True for the skin end.</param>
/// <param name="Forces">What acts on the end.</param>
internal readonly record struct BarEnd(CheckedBar? Bar, DemandState? State, SkinAssumption Skin, bool AtSkin, FlatForces Forces)
{
    private static readonly (string, Dimension)[] forces =
        [("N", Dimension.Force), ("M_weak", Dimension.Moment), ("M_strong", Dimension.Moment), ("T", Dimension.Moment), ("V_thin", Dimension.Force), ("V_wide", Dimension.Force)];

    /// <summary>Where the forces come from, and under which bound on the skin, in words; empty in a script.</summary>
    public string When => State is null ? "" : State.When.Length > 0 ? $"{State.When}; {Skin.InWords()}" : Skin.InWords();

    /// <summary>How its forces come about; null where no load case is behind them.</summary>
    /// <param name="justStress">True for those alone that stress the bar along its axis.</param>
    public DemandOrigin? Origin(bool justStress = false)
    {
        if (State is null || State is { Steady: null, Shaken: "" } || Bar?.Site is not { } site)
            return null;
        (SkinAssumption skin, bool atSkin, double? local) = (Skin, AtSkin, State.LocalPressure);
        return new DemandOrigin(State, justStress ? forces[..3] : forces, At, Of(Forces))
        {
            Rest = Bar.Standoff.Saddle is not null && site.Slides ? "friction of the saddle while it slides, the worse way" : "",
            Then = local is { } p ? w => w.Given(p, Dimension.Pressure, "local pressure with its factor, outward positive") : null,
        };

        double[] At(LoadCase loadCase)
        {
            (RingElement ring, int band) = loadCase.Model.Rings[site.Ring];
            Span<double> own = stackalloc double[FrameElement.Size];
            BarModel bar = ring.Bars[site.Index];
            bool stands = local is not null ? loadCase.LocalForcesOf(ring, bar, band, 0, own) : loadCase.ForcesOf(ring, bar, band, skin, own);
            BarEnds ends = stands ? BarEnds.Of(own) : default;
            return Of(atSkin ? ends.Skin : ends.Tower);
        }

        double[] Of(in FlatForces f) => justStress ? [f.N, f.Weak, f.Strong] : [f.N, f.Weak, f.Strong, f.T, f.AlongThickness, f.AlongWidth];
    }
}
