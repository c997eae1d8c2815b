using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes the fatigue of the standoffs into a sheet, once for all situations: of each ring the bar that is damaged most.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FatigueSheet
{
    private static readonly Source page = Source.Assumed("fatigue");

    private readonly StatueModel model;
    private readonly SheetWriter lists;
    private readonly FatigueCauses causes;

    private FatigueSheet(FatigueCauses causes, SheetWriter lists) => (model, this.causes, this.lists) = (causes.Model, causes, lists);

    /// <summary>Adds the lines, or why there are none.</summary>
    public static void Add(StatueModel model, FatigueCauses? causes, SheetWriter lists)
    {
        if (model.BarCount == 0)
            return;
        bool anyDetail = model.Rings.Any(r => Array.Exists(r.Ring.Bars, bar => DetailOf(bar) is not null));
        if (!anyDetail)
            NotChecked(lists, "", $"the detail is not described (Standoff.{nameof(Standoff.FatigueDetail)})");
        else if (causes is null)
            NotChecked(lists, "", "no service situation has wind");
        else
            new FatigueSheet(causes, lists).Add();
    }

    private static DetailCategory? DetailOf(BarModel bar) => bar.Bar.Place.Standoff.FatigueDetail;

    /// <summary>What is looked at of every bar: the detail given, and both ways in which a welded end cracks, from the toe and from the root.</summary>
    private static readonly Func<BarModel, DetailCategory?>[] details =
        [DetailOf, bar => OfWelds(bar, DetailCategory.FilletToe), bar => OfWelds(bar, DetailCategory.FilletRoot)];

    /// <summary>A detail of welds, of bars that have welds and another detail; of a metal that the standard covers.</summary>
    private static DetailCategory? OfWelds(BarModel bar, DetailCategory detail)
    {
        Standoff standoff = bar.Bar.Place.Standoff;
        return standoff.FatigueDetail is { } given && given != detail && (standoff.TowerFixing is WeldedFixing || standoff.SkinFixing is WeldedFixing)
            && BarDesign.KindOf(standoff.Material) != MetalKind.Other ? detail : null;
    }

    private static CheckSubject Subject(string where, string situation = "") => new("bars.fatigue", "fatigue of a standoff", where, situation);

    private static void NotChecked(SheetWriter lists, string where, string reason) =>
        lists.Checks.Add(Check.NotChecked(Subject(where), reason, page));

    private void Add()
    {
        double shortest = double.PositiveInfinity;
        string at = "";
        List<string> undescribed = [];
        foreach ((RingElement ring, int band) in model.Rings)
        {
            if (Array.Exists(ring.Bars, bar => DetailOf(bar) is null))
                undescribed.Add(ring.BandName);
            foreach (Func<BarModel, DetailCategory?> detailOf in details)
            {
                if (Worst(ring, band, detailOf) is not { } worst)
                    continue;
                BarModel bar = ring.Bars[worst.Bar];
                DetailCategory detail = detailOf(bar)!;
                string where = detail == DetailOf(bar) ? bar.Where : $"{bar.Where}, {(detail.On == FatigueSection.Throat ? "root" : "toe")} of its welds";
                ValueList<StressBlock> blocks = causes.Blocks(worst.Ranges);
                int firstCheck = lists.Checks.Count;
                lists.Checks.Add(FatigueChecks.Miner(blocks, causes.Years, detail, causes.GammaMf, Subject(where, causes.Situation)));
                lists.Checks.Add(FatigueChecks.RangeLimit(blocks, bar.Bar.Place.Standoff.Material, detail, where, causes.Situation));
                lists.Assume(causes.AssumptionsFor(bar.Bar.Place.Standoff.Material, detail), firstCheck);
                double lasts = causes.Years / (lists.Checks[firstCheck].Demand ?? 0);
                if (Extremes.Exceeds(-lasts, -shortest) || (double.IsPositiveInfinity(shortest) && double.IsFinite(lasts)))
                    (shortest, at) = (lasts, where);
            }
        }
        if (undescribed.Count > 0)
            NotChecked(lists, undescribed.Count == 1 ? undescribed[0] : Invariant($"{undescribed[0]} and {undescribed.Count - 1} more"), $"the detail is not described (Standoff.{nameof(Standoff.FatigueDetail)})");
        if (double.IsFinite(shortest))
            lists.Results.Add(new ResultLine("fatigue", "shortest life of a standoff, years", shortest, Dimension.Number, Invariant($"{at}, against a design life of {causes.Years:0.#} years")));
    }

    /// <summary>The bar of a ring with the greatest damage; of those not damaged the one with the greatest gusts.</summary>
    private (int Bar, FatigueRanges Ranges)? Worst(RingElement ring, int band, Func<BarModel, DetailCategory?> detailOf)
    {
        var all = new List<(int Bar, FatigueRanges Ranges, DetailCategory Detail)>();
        for (int i = 0; i < ring.Bars.Length; i++)
        {
            BarModel bar = ring.Bars[i];
            if (detailOf(bar) is not { } detail)
                continue;
            string where = bar.Where;
            if (BarDesign.KindOf(bar.Bar.Place.Standoff.Material) == MetalKind.Other && detail.IsOfSteel)
                NotChecked(lists, where, $"EN 1993-1-9 does not cover {bar.Bar.Place.Standoff.Material.Name}; give a category with its own source");
            else if (RangesOf(ring, bar, band, detail) is { } ranges)
                all.Add((i, ranges, detail));
            else
                NotChecked(lists, where, "the welds of the detail are not described");
        }
        int worst = causes.Worst([.. all.Select(one => (one.Ranges, one.Detail))]);
        return worst < 0 ? null : (all[worst].Bar, all[worst].Ranges);
    }

    private FatigueRanges? RangesOf(RingElement ring, BarModel bar, int band, DetailCategory detail)
    {
        Span<double> windy = stackalloc double[FrameElement.Size], calm = stackalloc double[FrameElement.Size];
        double gust = 0, heat = 0;
        foreach ((Response inWind, Response still, double factor) in causes.Winds)
        {
            foreach (SkinAssumption assumption in SkinBounds.All)
            {
                bool stands = still.Cases[0].ForcesOf(ring, bar, band, assumption, calm);
                foreach (LoadCase loadCase in inWind.Cases)
                {
                    if (!stands | !loadCase.ForcesOf(ring, bar, band, assumption, windy))
                        continue;
                    for (int i = 0; i < windy.Length; i++)
                        windy[i] = (windy[i] - calm[i]) / factor;
                    if (FatigueStress.Range(bar.Bar, BarEnds.Of(windy), detail) is not { } range)
                        return null;
                    gust = Math.Max(gust, range);
                }
            }
        }
        for (int wind = 0; wind < causes.Winds.Count; wind++)
        {
            if (causes.Locals[wind] is not { } local)
                continue;
            // Under no pressure a bar alone has what else acts, which comes and goes by itself.
            LoadCase still = causes.Winds[wind].Calm.Cases[0];
            foreach (double pressure in (ReadOnlySpan<double>)[-local.Inward(band), local.Suction(band)])
            {
                if (!still.LocalForcesOf(ring, bar, band, pressure, windy) || !still.LocalForcesOf(ring, bar, band, 0, calm))
                    continue;
                for (int i = 0; i < windy.Length; i++)
                    windy[i] -= calm[i];
                gust = Math.Max(gust, FatigueStress.Range(bar.Bar, BarEnds.Of(windy), detail) ?? 0);
            }
        }
        foreach (Response hot in causes.Heats)
        {
            foreach (SkinAssumption assumption in SkinBounds.All)
            {
                if (!hot.Cases[0].ForcesOf(ring, bar, band, assumption, windy))
                    continue;
                BarEnds moved = BarEnds.Of(windy), rubbing = SaddleDrag.InHeat(hot.Cases[0], ring, bar, assumption, 2);
                heat = Math.Max(heat, Math.Max(FatigueStress.Range(bar.Bar, moved + rubbing, detail) ?? 0, FatigueStress.Range(bar.Bar, moved + -1 * rubbing, detail) ?? 0));
            }
        }
        gust = Math.Max(gust, ByFineModel(causes.FineWinds, ring, bar, detail));
        heat = Math.Max(heat, ByFineModel(causes.FineHeats, ring, bar, detail));
        var vortex = new double[causes.Vortices.Count];
        for (int i = 0; i < vortex.Length; i++)
            vortex[i] = VortexRange(ring, bar, band, detail, causes.Vortices[i].Case, causes.Vortices[i].Shape);
        return new FatigueRanges(gust, heat, vortex);
    }

    /// <summary>The greatest range of a bar whose skin is a shell; zero without a fine model.</summary>
    private static double ByFineModel(IReadOnlyList<FineResponse> responses, RingElement ring, BarModel bar, DetailCategory detail)
    {
        double greatest = 0;
        foreach (FineResponse response in responses)
        {
            FineBar fine = response.Model.ByRing[ring].First(other => other.Bar == bar);
            foreach (FineCase loadCase in response.Cases)
                greatest = Math.Max(greatest, FatigueStress.Range(bar.Bar, loadCase.EndsOf(fine), detail) ?? 0);
        }
        return greatest;
    }

    /// <summary>Twice the stress of the amplitude: on the rigid ring, and alone with the inertia of the bar's own strip of skin.</summary>
    private double VortexRange(RingElement ring, BarModel bar, int band, DetailCategory detail, AcrossWindCase vortex, double[] shape)
    {
        Span<double> u = stackalloc double[FrameElement.Size], forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Frame.NodeSize];
        ring.Gather(shape, u);
        bar.Bar.Forces(u[..Frame.NodeSize], u[Frame.NodeSize..], forces);
        double asRing = FatigueStress.Range(bar.Bar, BarEnds.Of(forces), detail) ?? 0;
        (BodyModel body, int index) = model.BandAt(band);
        double omega = 2 * Math.PI * vortex.Mode.Frequency.Hertz;
        Vector3D moved = model.Motion(shape, body.BandPlaces[index], bar.Bar.Place.SkinEnd).Displacement;
        double alone = SkinBounds.FactorOf(SkinAssumption.SlidingSkin, bar) ?? 1;
        alone = bar.Bar.Cantilever(alone * omega * omega * model.StripMass(bar) * moved, forces, tip) ? FatigueStress.Range(bar.Bar, BarEnds.Of(forces), detail) ?? 0 : 0;
        return 2 * Math.Max(asRing, alone);
    }
}
