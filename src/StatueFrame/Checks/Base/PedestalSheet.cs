using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Runs the checks of every bed joint of a pedestal in every state of a situation, and writes the worst of each kind.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class PedestalSheet(Statue statue, Pedestal pedestal, BaseDesign design, BaseState[] states, BaseState[] tipping, string situation, SheetWriter lists)
{
    public void Add(bool isStrength)
    {
        int first = lists.Checks.Count;
        BlockCut[] cuts = [.. Cuts(states)];
        if (isStrength)
        {
            lists.AddWorst(Cuts(tipping).Select(cut => (BlockChecks.Overturning(cut, design, "pedestal"), cut.Origin)));
            lists.Assume([BaseDesign.EquilibriumWeight], first);
            lists.AddWorst(cuts.Select(cut => (BlockChecks.ToeStress(cut, "pedestal"), cut.Origin)));
            lists.AddWorst(cuts.Select(cut => (BlockChecks.Capacity(cut, design, "pedestal"), cut.Origin)));
            lists.AddWorst(cuts.Select(cut => (BlockChecks.Shear(cut, "pedestal"), cut.Origin)));
        }
        else
        {
            lists.AddWorst(cuts.Select(cut => (BlockChecks.Kern(cut, "pedestal"), cut.Origin)));
        }
        lists.Assume(Array.Exists(states, state => state.Case.Wind is not null) ? [PedestalWind.Basis, .. Factors()] : Factors(), first);
    }

    /// <summary>The partial factors that nobody changed.</summary>
    private IEnumerable<Assumption> Factors() => pedestal.Courses.Select(course => course.Material).Distinct()
        .Where(material => material.Gamma == (material is Masonry ? 2.5 : 1.5))
        .Select(material => new Assumption($"partial factor of {material.Name}", FormattableString.Invariant($"{material.Gamma}"), new Source(material is Masonry ? "EN 1996-1-1:2005, 2.4.3" : "EN 1992-1-1:2004, Table 2.1N", "default")));

    private IEnumerable<BlockCut> Cuts(BaseState[] of)
    {
        foreach (BaseState state in of)
        {
            double depth = 0, weight = 0;
            for (int i = 0; i < pedestal.Courses.Count; i++)
            {
                PedestalCourse course = pedestal.Courses[i];
                depth += course.Height.Meters;
                weight += state.WeightFactor * course.Weight;
                BaseLoad still = state.Load.Below(depth, weight), windy = PedestalWind.On(still, statue, state, i + 1, depth), load = windy;
                foreach (AnchorBar bar in statue.HoldDown?.Bars ?? [])
                {
                    // A bar held below the joint presses it together, with what the losses leave.
                    if (bar.Embedment.Meters <= depth || bar.PreTension.Newtons == 0)
                        continue;
                    double P = PreTension(bar);
                    load = load with { N = load.N + P, mx = load.mx + P * bar.X.Meters, my = load.my + P * bar.Y.Meters };
                }
                yield return new BlockCut
                {
                    Section = course.Section,
                    Material = course.Material,
                    Compression = Force.FromNewtons(load.N),
                    ShearX = Force.FromNewtons(load.Vx),
                    ShearY = Force.FromNewtons(load.Vy),
                    MomentX = Torque.FromNewtonMeters(-load.my),
                    MomentY = Torque.FromNewtonMeters(load.mx),
                    FreeHeight = Length.FromMeters(depth),
                    Where = $"joint under course {i + 1}, {state.Where}",
                    Origin = state.Below(
                        depth, load, ("weight of courses above, with its factor", new BaseLoad(weight, 0, 0, 0, 0, 0)), ("wind on the pedestal, with its factor", windy - still), ("bars that press the joint, pre-tension left", load - windy)),
                    Situation = situation,
                };
            }
        }
    }

    private double PreTension(AnchorBar bar)
    {
        HoldDown holdDown = statue.HoldDown!;
        BlockMaterial on = pedestal.Courses[0].Material;
        return BarPreTension.Left(bar, on.E / holdDown.BedDepthInUse * holdDown.Plan.Whole.A / holdDown.Bars.Count, holdDown.Losses, on);
    }
}
