using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Values that a description leaves as the library has them and that decide a number: each an assumption, with the ids of the
/// checks that rest on it.
/// </summary>
internal static class DescriptionDefaults
{
    private static readonly string[] sheets = ["sheet."], armatures = ["armature."], sags = ["sheet.panel-deflection", "armature.deflection"];

    /// <summary>Lists the defaults that a statue and its criteria rest on, and names them in the rows that do.</summary>
    public static void AddTo(SheetWriter lists, StatueModel model, Criteria criteria)
    {
        foreach ((Assumption assumption, string[] ids) in Of(model, criteria, new SkinDesign()).DistinctBy(pair => pair.Assumption))
        {
            lists.Assumptions.Add(assumption);
            for (int i = 0; i < lists.Checks.Count; i++)
            {
                if (lists.Checks[i].Verdict != Verdict.NotChecked && Array.Exists(ids, id => lists.Checks[i].Id.StartsWith(id, StringComparison.Ordinal)))
                    lists.Checks[i] = lists.Checks[i].Assuming(assumption.Short);
            }
        }
    }

    private static IEnumerable<(Assumption Assumption, string[] Ids)> Of(StatueModel model, Criteria criteria, SkinDesign usual)
    {
        Statue statue = model.Statue;
        foreach (Skin skin in model.Bodies.Select(body => body.Skin).OfType<Skin>())
        {
            if (skin.ClosedTop)
                yield return (new("top of the skin", "closed by sheet: its mass is counted", Source.Assumed("skin")), []);
            if (skin.SheetSeam is { IsSealed: true })
                yield return (new("rivet lines of sheets", "sealed: the greater pitch is allowed", Source.Assumed("seams")), ["seams.pitch"]);
            if (skin.Armature is not { } armature)
                continue;
            if (armature.IsContinuous)
                yield return (new("armature bars over the standoffs", "run on: continuous", Source.Assumed("skin")), armatures);
            if (armature.Straps is { EndDistance: null })
                yield return (new("ends of straps beyond their rivets", "1.5 holes", Source.Assumed("sheets")), ["straps.pull-off", "fatigue.straps"]);
            if (armature.PanelRadius is null)
                yield return (new("panels of sheet", "flat", Source.Assumed("skin")), sheets);
            if (armature.Edges == PanelEdges.Supported)
                yield return (new("edges of sheet panels", "supported, free to turn" + (criteria.Skin.PanelsHeldInPlane ? "" : " and to draw in"), Source.Assumed("skin")), sheets);
            if (armature.DeflectionLimit == 1.0 / 50)
                yield return (new("greatest deflection of panels and armature", "span / 50", Source.CommonPractice), sags);
        }
        if (criteria.Skin.MaintenanceLoad is not null && criteria.Skin.AllowedDent.Meters == usual.AllowedDent.Meters)
            yield return (new("dent that is tolerated", Invariant($"{usual.AllowedDent.Millimeters:0} mm"), Source.CommonPractice), ["sheet.denting"]);
        if (criteria.Skin.MaintenanceLoad is not null && criteria.Skin.MaintenancePatch.Meters == usual.MaintenancePatch.Meters)
            yield return (new("radius of what presses on a panel", Invariant($"{usual.MaintenancePatch.Millimeters:0} mm"), Source.CommonPractice), ["sheet.denting"]);
        if (criteria.Skin.SagLimit == usual.SagLimit)
            yield return (new("greatest sag of a level panel", "shorter side / 100", Source.CommonPractice), ["sheet.sag"]);
        if (statue.HoldDown is { Friction: HoldDown.DefaultFriction })
            yield return (new("friction under the base plates", Invariant($"{HoldDown.DefaultFriction}"), new Source("EN 1993-1-8:2005", "6.2.2 (6)")), ["base.sliding", "base.anchor-shear", "base.anchor-interaction", "earthquake.sliding"]);
        if (criteria.LeastBucklingFactor == new Criteria().LeastBucklingFactor)
            yield return (new("least buckling factor without second order", Invariant($"{criteria.LeastBucklingFactor}"), Source.En1993_1_1("5.2.1 (3)")), ["stability.buckling"]);
        if (statue.Foundation is { Soil: { } soil } foundation)
        {
            if (foundation.BaseFriction is null && soil.FrictionAngle is not null)
                yield return (new("friction under the block", "the soil's own angle", new Source("EN 1997-1:2004", "6.5.3 (10), concrete cast against the ground")), ["foundation.sliding"]);
            var untouched = new Soil();
            if (soil.Density.KilogramsPerCubicMeter == untouched.Density.KilogramsPerCubicMeter)
                yield return (new("density of the soil", Invariant($"{soil.Density.KilogramsPerCubicMeter:0} kg/m³"), Source.Assumed("foundations")), ["foundation.bearing", "foundation.uplift", "foundation.sliding", "foundation.overturning"]);
            if (soil.PoissonRatio == untouched.PoissonRatio)
                yield return (new("Poisson's ratio of the soil", Invariant($"{soil.PoissonRatio}"), Source.Assumed("foundations")), ["foundation.sway", "foundation.tilt-stability"]);
        }
        foreach ((BlockMaterial material, string[] ids) in Blocks(model, statue))
        {
            if (material is Masonry { JointFriction: 0.4 })
                yield return (new($"friction of the joints of {material.Name}", "0.4", new Source("EN 1996-1-1:2005", "3.6.2")), ids);
        }
        foreach ((Assumption, string[]) electrode in Electrodes(model, criteria))
            yield return electrode;
    }

    private static IEnumerable<(BlockMaterial Material, string[] Ids)> Blocks(StatueModel model, Statue statue)
    {
        foreach (BlockSegment block in model.Bodies.SelectMany(body => body.Segments).Select(segment => segment.Segment).OfType<BlockSegment>())
            yield return (block.Stuff, ["core.shear"]);
        foreach (PedestalCourse course in statue.Pedestal?.Courses ?? [])
            yield return (course.Material, ["pedestal.sliding"]);
    }

    /// <summary>Electrodes of 70 ksi, which only AISC asks for.</summary>
    private static IEnumerable<(Assumption Assumption, string[] Ids)> Electrodes(StatueModel model, Criteria criteria)
    {
        var assumed = new Assumption("electrode of welds", Invariant($"F_EXX {FilletThroat.UsualElectrode.Megapascals:0} MPa (70 ksi)"), new Source("AISC 360-16", "Table J2.5, user note; from memory"));
        if (IsAmerican(criteria.BarCodeInUse) && model.Rings.SelectMany(ring => ring.Ring.Bars)
            .Any(bar => IsUsual(bar.Standoff.TowerFixing) || IsUsual(bar.Standoff.SkinFixing)))
            yield return (assumed, ["bars.welds"]);
        if (IsAmerican(criteria.TowerCodeInUse) && model.Bodies.SelectMany(body => body.Segments)
            .Any(segment => segment.Segment is MemberSegment { LowerJoint: WeldedTubeJoint { ElectrodeStrength: null } }))
            yield return (assumed, ["tower.tube-joints", "limbs.tube-joints"]);
        if (IsAmerican(criteria.TowerCodeInUse) && model.Bodies.SelectMany(body => body.Segments)
            .Any(segment => segment.Segment is MemberSegment { LowerJoint: FlangeJoint { Weld.ElectrodeStrength: null } }))
            yield return (assumed, ["tower.flange-welds", "limbs.flange-welds"]);

        static bool IsAmerican(DesignCode code) => code is DesignCode.AiscLrfd or DesignCode.AiscAsd;

        bool IsUsual(StandoffFixing? fixing) => fixing is WeldedFixing { ElectrodeStrength: null };
    }
}
