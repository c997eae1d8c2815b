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
        var row = new RivetedSeam { Kind = SeamKind.Lapped, Rivet = strap.Rivet, Pitch = strap.Distance, Rows = strap.Rivets, EdgeDistance = 0.5 * strap.Width };
        // A bar carries the sheet half way to either neighbor.
        SeamForces forces = SeamForces.Of(suction, Length.Zero, 2 * skin.Armature.Spacing, skin.Armature.Spacing, skin.Material, thickness);
        forces = forces with { InPlane = SeamForces.Of(Pressure.Zero, Length.Zero, Length.Zero, skin.Armature.Spacing, skin.Material, thickness).InPlane };
        yield return SeamChecks.PullThrough(row, skin.Material, thickness, forces, design, where, situation).About(new CheckSubject("straps.pull-off", "rivets of a strap and the sheet round their heads", where, situation));
        yield return SeamChecks.Shear(row, skin.Material, thickness, forces, design, where, situation).About(new CheckSubject("straps.shear", "rivets of a strap under the weight of the sheet", where, situation));
        yield return Check.Of(new CheckSubject("straps.bending", "strap bent between its rivets and the bar", where, situation), Dimension.Stress, statics, w =>
        {
            double q = w.Given("q", suction.Pascals, Dimension.Pressure, "suction"), s = w.Given("s", skin.Armature.Spacing.Meters, Dimension.SmallLength, "distance of bars"), a = w.Given("a", strap.Distance.Meters, Dimension.SmallLength, "distance of straps");
            double F = w.Let("F", q * s * a, Dimension.Force, statics, "pull of a strap"), e = w.Given("e", strap.Reach.Meters, Dimension.SmallLength, "from rivets to bar");
            double b = w.Given("b", strap.Width.Meters, Dimension.SmallLength, "width"), t = w.Given("t", strap.Thickness.Meters, Dimension.SmallLength, "thickness");
            double M = w.Let("M", F / 2 * e, Dimension.Moment, statics), f_y = w.Given("f_y", strap.Material.YieldStrength.Pascals, Dimension.Stress, "yield strength"), fraction = w.Given("fraction", stressFraction, Dimension.Number);
            return (w.Let("sigma", 6 * M / (b * t * t) + F / (2 * b * t), Dimension.Stress, statics), w.Let("allowed", fraction * f_y, Dimension.Stress));
        });
    }
}
