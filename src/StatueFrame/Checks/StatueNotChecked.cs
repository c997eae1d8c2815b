using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>What a sheet says was not checked, since nothing in it does: silence never reads as a pass.</summary>
internal static class StatueNotChecked
{
    /// <summary>The checks that a statue of this make needs and the sheet does not hold.</summary>
    public static IEnumerable<(string Id, string Title, string Reason)> Items(StatueModel model, IReadOnlyList<Check> done) =>
        All(model).Where(item => item.Id != "shock.response" || done.All(check => check.Family != "shock")).Where(item => done.All(check => check.Id != item.Id && !check.Id.StartsWith(item.Id, StringComparison.Ordinal)));

    private static IEnumerable<(string Id, string Title, string Reason)> All(StatueModel model)
    {
        yield return ("stability.second-order", "buckling factor of the whole statue", "no strength situation was given");
        if (model.BarCount > 0)
        {
            yield return ("bars.bending", "stress in a standoff", "no strength situation was given");
            yield return ("bars.second-order", "second-order stress of a standoff", "no strength situation was given");
            yield return ("bars.shear", "torsion and transverse shear of standoffs", "no strength situation was given");
            yield return ("bars.strut", "buckling of standoffs as struts", "no strength situation was given");
            yield return ("bars.fatigue", "fatigue of standoffs", "not part of this sheet");
            yield return ("bars.fixings", "bolts, welds and saddles of standoffs", "not part of this sheet");
            yield return ("heat.skin", "heat movement of skin against tower", "not part of this sheet");
        }
        if (model.Bodies.Any(b => b.Bands.Length > 0))
        {
            yield return ("sheet.panels", "sheets and armature between standoffs", "not part of this sheet");
            yield return ("seams.rivets", "seams and their rivets", "not part of this sheet");
            yield return ("bars.local", "standoff alone under the local pressure on its strip", "no strength situation has wind");
        }
        if (model.BareSlices.FirstOrDefault(s => !s.HasShape) is { } shapeless)
            yield return ("wind.bare", "wind on tower that no skin covers", $"the shape of the core between {shapeless.Lower.Name} and {shapeless.Upper.Name} of the {shapeless.Body.Name} is not known; give both levels a plan");
        yield return ("wind.vortex", "vortex shedding", "no situation has wind on a skin");
        yield return ("wind.galloping", "galloping", "no situation has wind on a skin");
        yield return ("tower.members", "strength and buckling of tower members and their connections", "member forces are given, resistances are not");
        yield return ("base.hold-down", "hold-down bars, base plates, pedestal and foundation", "the reactions are given, resistances are not");
        yield return ("shock.response", "pressure waves, blows and other shocks", "no situation has a shock");
        yield return ("earthquake.response", "earthquake", "not part of this sheet");
        yield return ("metals.galvanic", "dissimilar metals and loss by corrosion", "not part of this sheet");
    }
}
