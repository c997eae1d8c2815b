using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Checks of standoffs.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BarChecks
{
    private static readonly Source ElasticStress = Source.Roark("Table 8.1 and section 8.1: stress in a beam; axial and bending stresses add at a corner");
    private static readonly Source Allowable = Source.Assumed("standoffs: allowable stress is a fraction of the yield or proof strength");

    internal static readonly FormulaEntry<BarLoad> BendingEntry = new(
        "bars.bending", "stress in a standoff", Nature.Strength, "every bar, every state", "worst normal stress of the two ends",
        "fraction of yield or proof strength", "no strength situation was given")
    {
        Dimension = Dimension.Stress,
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad _) => Allowable,
        Run = (Working? w, in BarLoad load) =>
        {
            load.Tell(w);
            return Bending(w, load.Ends, load.Bar.b, load.Bar.t, load.Bar.f_y, load.Bar.Design.AllowableFraction);
        },
    };

    internal static readonly FormulaEntry<BarLoad> LocalEntry = new(
        "bars.local", "standoff alone under the local pressure on its strip, with weight and heat", Nature.Strength, "every bar of a skin that wind meets",
        "worst normal stress under local pressure or suction, weight and heat at one time", "fraction of yield or proof strength", "no strength situation has wind")
    {
        Dimension = Dimension.Stress,
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad _) => Allowable,
        Run = BendingEntry.Run,
    };

    /// <summary>Normal stress of a standoff from axial force and bending about both axes, against a fraction of its yield strength.</summary>
    /// <param name="bar">The bar in its situation.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <param name="stressFraction">Allowable stress over yield or proof strength, above 0 to 1.</param>
    /// <remarks>
    /// Forces are those of the worst stress, at the end where it is, under the worst bound on the skin. Torsion and
    /// transverse shear are not part of it.
    /// </remarks>
    public static Check Bending(BarResult bar, string situation, double stressFraction)
    {
        CheckInput.Within(stressFraction, 0.01, 1, nameof(stressFraction));
        var rules = new CheckedBar(bar.Standoff, bar.Length.Meters, BarDesign.For(bar.Standoff.Material) with { AllowableFraction = stressFraction }, bar.Where);
        return BendingEntry.With(BarLoad.Of(rules, bar.StressAssumption, bar.Ends, new DemandState(Headings.Describe(bar.StressHeading))), situation);
    }

    /// <summary>The stress of a flat at the worse of its two ends, and what is allowed.</summary>
    /// <param name="w">Listener for the working; null for none.</param>
    /// <param name="ends">What acts on the two ends.</param>
    /// <param name="b">Width, m; positive.</param>
    /// <param name="t">Thickness, m; positive.</param>
    /// <param name="f_y">Yield or proof strength, Pa.</param>
    /// <param name="fraction">Allowable stress over <paramref name="f_y"/>.</param>
    /// <returns>Stress and allowable stress, Pa.</returns>
    internal static (double Stress, double Allowable) Bending(
        Working? w, in BarEnds ends, double b, double t, double f_y, double fraction)
    {
        w.Given(b, Dimension.SmallLength, "width");
        w.Given(t, Dimension.SmallLength, "thickness");
        double A = w.Let("A", b * t, Dimension.SmallArea);
        double W_weak = w.Let("W_weak", b * t * t / 6, Dimension.SectionModulus);
        double W_strong = w.Let("W_strong", t * b * b / 6, Dimension.SectionModulus);
        bool towerGoverns = ends.Tower.NormalStress(b, t) >= ends.Skin.NormalStress(b, t);
        (double N, double M_weak, double M_strong, _, _, _) = towerGoverns ? ends.Tower : ends.Skin;
        w?.Note(towerGoverns ? "The tower end governs." : "The skin end governs.");
        w.Given(N, Dimension.Force, "axial force, tension positive");
        w.Given(M_weak, Dimension.Moment, "bending moment about the weak axis");
        w.Given(M_strong, Dimension.Moment, "bending moment about the strong axis");
        double sigma = w.Let("sigma", Math.Abs(N) / A + Math.Abs(M_weak) / W_weak + Math.Abs(M_strong) / W_strong, Dimension.Stress, ElasticStress);
        w.Given(f_y, Dimension.Stress, "yield or proof strength");
        w.Given(fraction, Dimension.Number, "allowable fraction");
        double allowable = w.Let("sigma_allow", fraction * f_y, Dimension.Stress, Allowable);
        return (sigma, allowable);
    }
}
