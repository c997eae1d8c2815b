using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// The straps of an armature under suction, which pulls the sheet off its bars, and under the weight of the sheet: a row of rivets along
/// the bar, of which each strap has its few, and the strap as a bracket from the rivets to the bar.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class StrapChecks
{
    private static readonly Source statics = Source.Assumed("sheets: half of a strap's pull on each side, at the lever from the rivets to the bar; elastic");
    private static readonly Source prying = new("EN 1993-1-8:2005", "6.2.4.1: n ≤ 1.25 m, from memory; balance of the strap's end about its rivets");

    /// <summary>All checks of the straps of a band.</summary>
    /// <param name="skin">The skin; its armature has straps.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="suction">Greatest local suction, without sign.</param>
    /// <param name="design">Rules of rivets.</param>
    /// <param name="stressFraction">Allowable stress over yield strength, above 0 to 1.</param>
    /// <param name="where">The band.</param>
    /// <param name="situation">Name of the situation.</param>
    public static IEnumerable<Check> All(Skin skin, Length thickness, Pressure suction, BarDesign design, double stressFraction, string where, string situation)
    {
        SaddleStrap strap = skin.Armature!.Straps!;
        RivetedSeam row = RowOf(strap);
        // A bar carries the sheet half way to either neighbor.
        SeamForces forces = SeamForces.Of(suction, Length.Zero, 2 * skin.Armature.Spacing, skin.Armature.Spacing, skin.Material, thickness);
        forces = forces with { InPlane = SeamForces.Of(Pressure.Zero, Length.Zero, Length.Zero, skin.Armature.Spacing, skin.Material, thickness).InPlane };
        yield return Weaker((metal, t) => SeamChecks.PullThrough(row, metal, t, forces, design, where, situation, w => Prying(w, strap))).About(new CheckSubject("straps.pull-off", "rivets of a strap and the sheet round their heads", where, situation));
        yield return SeamChecks.Shear(row, skin.Material, thickness, forces, design, where, situation).About(new CheckSubject("straps.shear", "rivets of a strap under the weight of the sheet", where, situation));
        yield return Weaker((metal, t) => SeamChecks.Bearing(row, metal, t, forces, design, where, situation)).About(new CheckSubject("straps.bearing", "sheet and strap in bearing and tear-out at the rivets of a strap", where, situation));
        yield return Check.Of(new CheckSubject("straps.bending", "strap bent between its rivets and the bar", where, situation), Dimension.Stress, statics, w =>
        {
            double sigma = Stress(w, skin.Armature, suction.Pascals), f_y = w.Given("f_y", strap.Material.YieldStrength.Pascals, Dimension.Stress, "yield strength"), fraction = w.Given("fraction", stressFraction, Dimension.Number);
            return (sigma, w.Let("allowed", fraction * f_y, Dimension.Stress));
        });

        // A rivet has a head on the sheet and one on the strap.
        Check Weaker(Func<Material, Length, Check> of) =>
            new[] { of(skin.Material, thickness), of(strap.Material, strap.Thickness) }.MaxBy(check => check.Utilization ?? double.PositiveInfinity)!;
    }

    /// <summary>What the rivets of one side have across the width, half of it to each edge, or a quarter and half between two, and to the end.</summary>
    public static Check Distances(SaddleStrap strap, string where)
    {
        RivetedSeam across = RowOf(strap) with { Pitch = strap.Rivets > 2 ? 0.5 * strap.Width : strap.Distance, IsSealed = false };
        return SeamChecks.Pitch(across, strap.Thickness, where).About(new CheckSubject("straps.distances", "distances of the rivets of a strap", where));
    }

    /// <summary>Stress of a strap at its rivets under suction, Pa: as thin there as its holes leave it.</summary>
    internal static double Stress(Working? w, Armature armature, double suction)
    {
        SaddleStrap strap = armature.Straps!;
        double F = Pull(w, armature, suction), e = w.Given("e", strap.Reach.Meters, Dimension.SmallLength, "from rivets to bar");
        double b = w.Given("b", strap.NetWidth, Dimension.SmallLength, "width less the holes of one side"), t = w.Given("t", strap.Thickness.Meters, Dimension.SmallLength, "thickness");
        double M = w.Let("M", F / 2 * e, Dimension.Moment, statics);
        return w.Let("sigma_1", 6 * M / (b * t * t) + F / (2 * b * t), Dimension.Stress, statics);
    }

    /// <summary>Stress of a strap's rivets under suction, Pa.</summary>
    internal static double RivetStress(Working? w, Armature armature, double suction)
    {
        SaddleStrap strap = armature.Straps!;
        double F = Pull(w, armature, suction), many = w.Given("many", strap.Rivets, Dimension.Number, "rivets"), A = w.Given("A", strap.Rivet.Area, Dimension.SmallArea, "rivet");
        double k_p = Prying(w, strap);
        return w.Let("sigma_1", k_p * F / (many * A), Dimension.Stress, statics);
    }

    /// <summary>
    /// By what the rivets are pulled more than by the bar alone: the moment F/2 · e that bends the strap at its rivets presses the end
    /// beyond them on the sheet, with F/2 · e/n.
    /// </summary>
    private static double Prying(Working? w, SaddleStrap strap)
    {
        double e = w.Given("e", strap.Reach.Meters, Dimension.SmallLength, "from rivets to bar"), n_p = w.Given("n_p", strap.PryingLever, Dimension.SmallLength, "from rivets to where the strap's end presses", prying);
        return w.Let("k_p", 1 + e / n_p, Dimension.Number, prying, "prying of the strap's end");
    }

    private static double Pull(Working? w, Armature armature, double suction)
    {
        double q = w.Given("q", suction, Dimension.Pressure, "suction"), s = w.Given("s", armature.Spacing.Meters, Dimension.SmallLength, "distance of bars"), a = w.Given("a", armature.Straps!.Distance.Meters, Dimension.SmallLength, "distance of straps");
        return w.Let("F", q * s * a, Dimension.Force, statics, "pull of a strap");
    }

    /// <summary>The rivets of the straps along a bar as a row.</summary>
    private static RivetedSeam RowOf(SaddleStrap strap) =>
        new() { Kind = SeamKind.Lapped, Rivet = strap.Rivet, Pitch = strap.Distance, Rows = strap.Rivets, EdgeDistance = UnitMath.Min((strap.Rivets > 2 ? 0.25 : 0.5) * strap.Width, strap.EndDistance ?? strap.Width) };
}
