using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Writes the fatigue of the standoffs into a sheet, once for all situations: gusts of every wind in a service situation,
/// vortices of the same winds where they were found, and the daily cycle of every heat; of each ring the bar that is
/// damaged most.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class FatigueSheet
{
    private const double DefaultLife = 100, DefaultGammaMf = 1.35;

    private static readonly Source page = Source.Assumed("fatigue");
    private static readonly Assumption fifty = new("wind for fatigue", "the wind of the service situation, without its factor, is that of fifty years", page);
    private static readonly Assumption gusts = new("cycles of gusts", "all from the worst heading, each unloading fully", Source.En1991_1_4("B.3"));
    private static readonly Assumption daily = new("cycles of heat", "the whole temperature action comes and goes every day; of several the worst counts", page);
    private static readonly Assumption life = new("design life", "100 years", Source.En1990("Table 2.1, category 5: monumental structures"));
    private static readonly Assumption safety = new("γ_Mf for fatigue", Invariant($"{DefaultGammaMf}"), new Source("EN 1993-1-9:2005", "Table 3.1: safe life, high consequence"));
    private static readonly Assumption stainless = new("fatigue of stainless steel", "by the curves of structural steel", new Source("EN 1993-1-4:2006", "9; EN 1993-1-9:2005, 1.1 (4), from memory"));

    private static readonly Assumption noVortices = new("vortices in fatigue", "not counted, as vortex shedding was not looked at", page);

    private readonly StatueModel model;
    private readonly SheetWriter lists;
    private readonly double years, gammaMf;
    private readonly Assumption[] assumptions;
    private readonly bool lacksVortices;
    private readonly List<(Response Windy, Response Calm, double Factor)> winds = [];
    private readonly List<Response> heats = [];
    private readonly List<(AcrossWindCase Case, double[] Shape, double Cycles)> vortices = [];
    private readonly string situation;

    private FatigueSheet(StatueModel model, Criteria criteria, IReadOnlyList<Response> responses, SheetWriter lists)
    {
        (this.model, this.lists) = (model, lists);
        (years, gammaMf) = (criteria.DesignLife ?? DefaultLife, criteria.FatigueFactor ?? criteria.Annex?.GammaMf ?? DefaultGammaMf);
        var seen = new HashSet<WindAction>();
        foreach (Response response in responses)
        {
            if (response.Situation is not { LimitState: LimitState.Service, Wind: { Factor: > 0 } wind } || !seen.Add((WindAction)wind.Action))
                continue;
            Situation calm = response.Situation with { Actions = [new FactoredAction(0, new SelfWeight()), .. response.Situation.Actions.Where(a => a.Action is not WindAction)], Factors = [] };
            winds.Add((response, model.Respond(calm), wind.Factor));
            lacksVortices |= !AddVortices((WindAction)wind.Action, criteria);
        }
        situation = string.Join(", ", winds.Select(w => w.Windy.Situation.Name));
        foreach (TemperatureAction heat in responses.SelectMany(r => r.Situation.Actions).Select(a => a.Action).OfType<TemperatureAction>().Distinct())
            heats.Add(model.Respond(new Situation { Name = heat.Name, Actions = [heat] }));
        assumptions =
        [
            .. winds.SelectMany(w => ((WindAction)w.Windy.Situation.Wind!.Action).Assumptions(model.AllBandsHaveCoefficient, hasLimbs: false)), fifty, gusts, .. lacksVortices ? [noVortices] : (ReadOnlySpan<Assumption>)[], .. heats.Count > 0 ? [daily] : (ReadOnlySpan<Assumption>)[],
            .. criteria.DesignLife is null ? [life] : (ReadOnlySpan<Assumption>)[], .. criteria.FatigueFactor is null && criteria.Annex is null ? [safety] : (ReadOnlySpan<Assumption>)[],
        ];
    }

    /// <summary>Adds the lines, or why there are none.</summary>
    public static void Add(StatueModel model, Criteria criteria, IReadOnlyList<Response> responses, SheetWriter lists)
    {
        if (model.BarCount == 0)
            return;
        bool anyDetail = model.Rings.Any(r => Array.Exists(r.Ring.Bars, bar => DetailOf(bar) is not null));
        if (!anyDetail)
            NotChecked(lists, "", $"the detail is not described (Standoff.{nameof(Standoff.FatigueDetail)})");
        else if (!responses.Any(r => r.Situation is { LimitState: LimitState.Service, Wind.Factor: > 0 }))
            NotChecked(lists, "", "no service situation has wind");
        else
            new FatigueSheet(model, criteria, responses, lists).Add();
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

    private static void NotChecked(SheetWriter lists, string where, string reason) =>
        lists.Checks.Add(Check.NotChecked(new CheckSubject("bars.fatigue", "fatigue of a standoff", where), reason, page));

    /// <summary>Takes the vortices of a wind; false when they were not looked at.</summary>
    private bool AddVortices(WindAction wind, Criteria criteria)
    {
        if (!lists.Vortices.TryGetValue(wind, out (ModalResponse Modes, AcrossWindReport Report) found) || found.Report.Cases.Count == 0)
            return false;
        AcrossWindInput input = criteria.AcrossWind ?? new AcrossWindInput();
        foreach (AcrossWindCase vortex in found.Report.Cases)
        {
            if (vortex.Vortex.IsBeyondRange)
                continue;
            double[] shape = found.Modes.Set.Shape(vortex.Mode.Number - 1).ToArray();
            double amplitude = vortex.ModalAmplitude(model, found.Modes.Set);
            if (!(amplitude > 0))
                continue;
            for (int i = 0; i < shape.Length; i++)
                shape[i] *= amplitude;
            vortices.Add((vortex, shape, vortex.Vortex.Cycles * years / input.LifeYearsInUse));
        }
        return true;
    }

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
                ValueList<StressBlock> blocks = Blocks(worst.Ranges);
                int firstCheck = lists.Checks.Count;
                lists.Checks.Add(FatigueChecks.Miner(blocks, years, detail, gammaMf, where, situation));
                lists.Checks.Add(FatigueChecks.RangeLimit(blocks, bar.Bar.Place.Standoff.Material, detail, where, situation));
                lists.Assume(BarDesign.KindOf(bar.Bar.Place.Standoff.Material) == MetalKind.StainlessSteel && detail.IsOfSteel ? [.. assumptions, stainless] : assumptions, firstCheck);
                double lasts = years / (lists.Checks[firstCheck].Demand ?? 0);
                if (Extremes.Exceeds(-lasts, -shortest) || (double.IsPositiveInfinity(shortest) && double.IsFinite(lasts)))
                    (shortest, at) = (lasts, where);
            }
        }
        if (undescribed.Count > 0)
            NotChecked(lists, undescribed.Count == 1 ? undescribed[0] : Invariant($"{undescribed[0]} and {undescribed.Count - 1} more"), $"the detail is not described (Standoff.{nameof(Standoff.FatigueDetail)})");
        if (double.IsFinite(shortest))
            lists.Results.Add(new ResultLine("fatigue", "shortest life of a standoff, years", shortest, Dimension.Number, Invariant($"{at}, against a design life of {years:0.#} years")));
    }

    /// <summary>The stress ranges of a bar: gusts of fifty years, a day's heat, and each vortex case.</summary>
    private readonly record struct Ranges(double Gust, double Heat, double[] Vortex)
    {
        /// <summary>Whether no range of this bar is greater than the other's.</summary>
        public bool IsCoveredBy(in Ranges other)
        {
            if (Gust > other.Gust || Heat > other.Heat)
                return false;
            for (int i = 0; i < Vortex.Length; i++)
            {
                if (Vortex[i] > other.Vortex[i])
                    return false;
            }
            return true;
        }
    }

    /// <summary>The bar of a ring with the greatest damage; of those not damaged the one with the greatest gusts.</summary>
    private (int Bar, Ranges Ranges)? Worst(RingElement ring, int band, Func<BarModel, DetailCategory?> detailOf)
    {
        var candidates = new List<(int Bar, Ranges Ranges)>();
        for (int i = 0; i < ring.Bars.Length; i++)
        {
            BarModel bar = ring.Bars[i];
            if (detailOf(bar) is not { } detail)
                continue;
            string where = bar.Where;
            if (BarDesign.KindOf(bar.Bar.Place.Standoff.Material) == MetalKind.Other && detail.IsOfSteel)
            {
                NotChecked(lists, where, $"EN 1993-1-9 does not cover {bar.Bar.Place.Standoff.Material.Name}; give a category with its own source");
                continue;
            }
            if (RangesOf(ring, bar, band, detail) is not { } ranges)
            {
                NotChecked(lists, where, "the welds of the detail are not described");
                continue;
            }
            if (candidates.Exists(c => detailOf(ring.Bars[c.Bar]) == detail && ranges.IsCoveredBy(c.Ranges)))
                continue;
            candidates.RemoveAll(c => detailOf(ring.Bars[c.Bar]) == detail && c.Ranges.IsCoveredBy(ranges));
            candidates.Add((i, ranges));
        }
        if (candidates.Count <= 1)
            return candidates.Count == 0 ? null : candidates[0];
        double[] damages = [.. candidates.Select(c => FatigueChecks.Damage(Blocks(c.Ranges), detailOf(ring.Bars[c.Bar])!, gammaMf))];
        bool anyHarm = Array.Exists(damages, D => D > 0);
        return candidates[Enumerable.Range(0, damages.Length).ToArray().FirstGreatest(i => anyHarm ? damages[i] : candidates[i].Ranges.Gust)];
    }

    private Ranges? RangesOf(RingElement ring, BarModel bar, int band, DetailCategory detail)
    {
        Span<double> windy = stackalloc double[FrameElement.Size], calm = stackalloc double[FrameElement.Size];
        double gust = 0, heat = 0;
        foreach ((Response inWind, Response still, double factor) in winds)
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
                    if (FatigueStress.Range(bar.Bar, windy, detail) is not { } range)
                        return null;
                    gust = Math.Max(gust, range);
                }
            }
        }
        foreach (Response hot in heats)
        {
            foreach (SkinAssumption assumption in SkinBounds.All)
            {
                if (hot.Cases[0].ForcesOf(ring, bar, band, assumption, windy))
                    heat = Math.Max(heat, FatigueStress.Range(bar.Bar, windy, detail) ?? 0);
            }
        }
        var vortex = new double[vortices.Count];
        for (int i = 0; i < vortex.Length; i++)
            vortex[i] = VortexRange(ring, bar, band, detail, vortices[i].Case, vortices[i].Shape);
        return new Ranges(gust, heat, vortex);
    }

    /// <summary>Twice the stress of the amplitude: on the rigid ring, and alone with the inertia of the bar's own strip of skin.</summary>
    private double VortexRange(RingElement ring, BarModel bar, int band, DetailCategory detail, AcrossWindCase vortex, double[] shape)
    {
        Span<double> u = stackalloc double[FrameElement.Size], forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Frame.NodeSize];
        ring.Gather(shape, u);
        bar.Bar.Forces(u[..Frame.NodeSize], u[Frame.NodeSize..], forces);
        double asRing = FatigueStress.Range(bar.Bar, forces, detail) ?? 0;
        (BodyModel body, int index) = model.BandAt(band);
        double omega = 2 * Math.PI * vortex.Mode.Frequency.Hertz;
        Vector3D moved = model.Motion(shape, body.BandPlaces[index], bar.Bar.Place.SkinEnd).Displacement;
        double alone = SkinBounds.FactorOf(SkinAssumption.SlidingSkin, bar) ?? 1;
        alone = bar.Bar.Cantilever(alone * omega * omega * model.StripMass(bar) * moved, forces, tip) ? FatigueStress.Range(bar.Bar, forces, detail) ?? 0 : 0;
        return 2 * Math.Max(asRing, alone);
    }

    private ValueList<StressBlock> Blocks(in Ranges ranges)
    {
        var blocks = new List<StressBlock>(GustStressSpectrum.Blocks(Pressure.FromPascals(ranges.Gust), years));
        if (ranges.Heat > 0)
            blocks.Add(StressBlock.DailyHeat(Pressure.FromPascals(ranges.Heat), years));
        for (int i = 0; i < ranges.Vortex.Length; i++)
            blocks.Add(new StressBlock(Pressure.FromPascals(ranges.Vortex[i]), vortices[i].Cycles, $"vortices of {vortices[i].Case.Where}"));
        return blocks.ToValueList();
    }
}
