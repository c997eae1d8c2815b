using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Which entries of the catalogue a statue needs, so that those its sheet lacks are listed: silence never reads as a pass.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class StatueNotChecked
{
    /// <summary>Whether a statue of this make needs an entry that no line of its sheet is about.</summary>
    public static bool Needs(StatueModel model, Criteria criteria, CheckEntry entry, IReadOnlyList<Check> done)
    {
        Statue statue = model.Statue;
        bool hasSkin = model.BandCount > 0, hasBars = model.BarCount > 0, hasSeam = model.Bodies.Any(b => b.Skin?.SheetSeam is not null);
        bool hasArmature = model.Bodies.Any(b => b.Skin?.Armature is not null);
        return entry.Id switch
        {
            "stability.buckling" or "stability.second-order" or "wind.vortex" or "wind.galloping" => true,
            "bars.bending" or "bars.shear" or "bars.strut" or "bars.beam-column" or "bars.second-order" or "bars.clearance" or "heat.bar-stress" => hasBars,
            "bars.fixings" => hasBars && done.All(check => check.Id is not ("bars.bolts" or "bars.welds")),
            "bars.saddle-slip" => model.Rings.Any(r => Array.Exists(r.Ring.Bars, bar => bar.Standoff.Slide == SaddleSlide.None)),
            "bars.local" => hasBars,
            "sheet.panel-bending" or "armature.bending" => hasSkin,
            "seams.shear" => hasSkin,
            "seams.heat" => model.Bodies.Any(b => b.Skin?.SheetSeam is { HeatRestraint: > 0 }),
            "sheet.denting" or "sheet.frequency" => hasArmature && hasSkin,
            "seams.pitch" => hasSkin && !hasSeam && done.All(check => check.Family != "seams"),
            "wind.bare" => Array.Exists(model.BareSlices, s => !s.HasShape),
            "tower.compression" => model.Bodies[0].Segments.Any(s => s.Members.Count > 0),
            "tower.bending" => model.Bodies[0].Segments.Any(s => s.Segment is MemberSegment),
            "limbs.bending" => model.Bodies.Skip(1).Any(b => b.Segments.Any(s => s.Segment is MemberSegment)),
            "limbs.compression" => model.Bodies.Skip(1).Any(b => b.Segments.Any(s => s.Members.Count > 0)),
            "core.overturning" => model.Segments.Any(s => s.Segment is BlockSegment) && done.All(check => check.Id != "core.interaction"),
            "core.kern" => model.Segments.Any(s => s.Segment is BlockSegment and not ConcreteSegment { Reinforcement: not null }),
            "tower.core" => model.Segments.Any(s => s.Segment is CoreSegment) && done.All(check => check.Id != "limbs.core"),
            "base.overturning" or "pedestal.overturning" or "foundation.overturning" => true,
            "base.separation" => statue.HoldDown is not null,
            "pedestal.kern" => statue.Pedestal is not null,
            "foundation.uplift" => statue.Foundation is not null,
            "earthquake.response" => done.All(check => check.Family != "earthquake"),
            "shock.response" => done.All(check => check.Family != "shock"),
            "metals.galvanic" or "metals.loss" => true,
            "life.end" => criteria.DesignLife is not null || criteria.Durability is not null,
            "sway.limit" => criteria.Sway.Count == 0,
            _ => false,
        };
    }
}
