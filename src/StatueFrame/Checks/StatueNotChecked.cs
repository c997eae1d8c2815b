using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>What a sheet says was not checked, since nothing in it does: silence never reads as a pass.</summary>
internal static class StatueNotChecked
{
    private const string Earthquake = "earthquake.response";

    /// <summary>The checks that a statue of this make needs and the sheet does not hold.</summary>
    public static IEnumerable<(string Id, string Title, string Reason)> Items(StatueModel model, IReadOnlyList<Check> done) =>
        All(model, done).Where(item => done.All(check => check.Id != item.Id && !check.Id.StartsWith(item.Id, StringComparison.Ordinal)))
            .Where(item => item.Id != Earthquake || done.All(check => check.Family != "earthquake"))
            .Where(item => item.Id != "shock.response" || done.All(check => check.Family != "shock"));

    private static IEnumerable<(string Id, string Title, string Reason)> All(StatueModel model, IReadOnlyList<Check> done)
    {
        yield return ("stability.second-order", "buckling factor of the whole statue", "no strength situation was given");
        if (model.BarCount > 0)
        {
            yield return ("bars.bending", "stress in a standoff", "no strength situation was given");
            yield return ("bars.second-order", "second-order stress of a standoff", "no strength situation was given");
            yield return ("bars.shear", "torsion and transverse shear of standoffs", "no strength situation was given");
            yield return ("bars.strut", "buckling of standoffs as struts", "no strength situation was given");
            if (done.All(check => check.Id is not ("bars.bolts" or "bars.welds")))
                yield return ("bars.fixings", "bolts or welds of standoffs", "no strength situation was given");
            if (model.Rings.Any(r => Array.Exists(r.Ring.Bars, bar => bar.Bar.Place.Standoff.Slide == SaddleSlide.None)))
                yield return ("bars.saddle-slip", "slip of a clamped saddle", "no strength situation was given");
            yield return ("heat.bar-stress", "heat movement of skin against tower", "no situation has a temperature action");
        }
        if (model.Bodies.Any(b => b.Bands.Length > 0))
        {
            yield return ("sheet.panel-bending", "stress in a panel of sheet", "no strength situation has wind");
            yield return ("armature.bending", "stress in an armature bar", "no strength situation has wind");
            yield return ("seams.shear", "rivets of a seam in shear", "no strength situation has wind");
            yield return ("bars.local", "standoff alone under the local pressure on its strip", "no strength situation has wind");
        }
        if (model.Bodies.Any(b => b.Skin?.SheetSeam is { HeatRestraint: > 0 }))
            yield return ("seams.heat", "heat held back at a seam", "no situation has a temperature action");
        if (model.BareSlices.FirstOrDefault(s => !s.HasShape) is { } shapeless)
            yield return ("wind.bare", "wind on tower that no skin covers", $"the shape of the core between {shapeless.Lower.Name} and {shapeless.Upper.Name} of the {shapeless.Body.Name} is not known; give both levels a plan");
        yield return ("wind.vortex", "vortex shedding", "no situation has wind on a skin");
        yield return ("wind.galloping", "galloping", "no situation has wind on a skin");
        yield return ("tower.", "strength and buckling of tower members", "no strength situation was given");
        foreach ((string Id, string Title, string Reason) item in BaseSheet.NotChecked(model))
            yield return item;
        yield return (Earthquake, "earthquake", "no situation has an earthquake");
        foreach ((string Id, string Title, string Reason) item in MetalSheet.NotChecked(model.Statue))
            yield return item;
        yield return ("shock.response", "pressure waves, blows and other shocks", "no situation has a shock");
    }
}
