using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// What makes a statue tire, once for all of its parts: gusts of every wind in a service situation, vortices of the same winds where they
/// were found, and the daily cycle of every heat.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class FatigueCauses
{
    private const double DefaultLife = 100, DefaultGammaMf = 1.35;

    private static readonly Source page = Source.Assumed("fatigue");
    private static readonly Assumption fifty = new("wind for fatigue", "the wind of the service situation, without its factor, is that of fifty years", page);
    private static readonly Assumption gusts = new("cycles of gusts", "all from the worst heading, each unloading fully", Source.En1991_1_4("B.3"));
    private static readonly Assumption daily = new("cycles of heat", "the whole temperature action comes and goes every day, and saddles that slide rub there and back; of several the worst counts", page);
    private static readonly Assumption life = new("design life", "100 years", Source.En1990("Table 2.1, category 5: monumental structures"));
    private static readonly Assumption safety = new("γ_Mf for fatigue", Invariant($"{DefaultGammaMf}"), new Source("EN 1993-1-9:2005", "Table 3.1: safe life, high consequence"));
    private static readonly Assumption stainless = new("fatigue of stainless steel", "by the curves of structural steel", new Source("EN 1993-1-4:2006", "9; EN 1993-1-9:2005, 1.1 (4), from memory"));
    private static readonly Assumption noVortices = new("vortices in fatigue", "not counted, as vortex shedding was not looked at", page);

    private readonly List<Situation> winds = [];
    private readonly List<Situation> heats = [];
    private readonly List<FatigueVortex> vortices = [];
    private readonly FineModel? fine;
    private readonly DampingModel damping;

    private FatigueCauses(StatueModel model, Criteria criteria, IReadOnlyList<Response> responses, SheetWriter lists, FineModel? fine)
    {
        (Model, Years, GammaMf) = (model, criteria.DesignLife ?? DefaultLife, criteria.FatigueFactor ?? criteria.Annex?.GammaMf ?? DefaultGammaMf);
        bool lacksVortices = false;
        var seen = new HashSet<WindAction>();
        var situations = new List<string>();
        foreach (Response response in responses.Where(HasWind))
        {
            var wind = (WindAction)response.Situation.Wind!.Action;
            if (!seen.Add(wind))
                continue;
            winds.Add(Alone(response.Situation, wind));
            situations.Add(response.Situation.Name);
            lacksVortices |= !AddVortices(wind, criteria, lists);
        }
        Situation = string.Join(", ", situations);
        foreach (TemperatureAction heat in responses.SelectMany(r => r.Situation.Actions).Select(a => a.Action).OfType<TemperatureAction>().Distinct())
            heats.Add(Alone(new Situation { Name = heat.Name, Actions = [] }, heat));
        Locals = [.. winds.Select(wind => LocalWind.Of(model, wind))];
        this.fine = fine;
        damping = ShockSheet.DampingOf(criteria);
        Assumptions =
        [
            .. seen.SelectMany(wind => wind.Assumptions(model.AllBandsHaveCoefficient, model.Statue.Limbs.Count > 0)), fifty, gusts, .. lacksVortices ? [noVortices] : (ReadOnlySpan<Assumption>)[], .. heats.Count > 0 ? [daily] : (ReadOnlySpan<Assumption>)[],
            .. fine is null ? (ReadOnlySpan<Assumption>)[] : FineSheet.Assumptions,
            .. criteria.DesignLife is null ? [life] : (ReadOnlySpan<Assumption>)[], .. criteria.FatigueFactor is null && criteria.Annex is null ? [safety] : (ReadOnlySpan<Assumption>)[],
        ];
    }

    public StatueModel Model { get; }

    /// <summary>Design life in years.</summary>
    public double Years { get; }

    public double GammaMf { get; }

    private Assumption[] Assumptions { get; }

    /// <summary>What the fatigue of a metal at a detail rests on.</summary>
    public Assumption[] AssumptionsFor(Material metal, DetailCategory detail) =>
        BarDesign.KindOf(metal) == MetalKind.StainlessSteel && detail.IsOfSteel ? [.. Assumptions, stainless] : Assumptions;

    /// <summary>The situations whose winds count.</summary>
    public string Situation { get; }

    /// <summary>The local pressure and suction of each wind, without its factor; null without skin.</summary>
    public IReadOnlyList<LocalWind?> Locals { get; }

    /// <summary>Each heat alone, without its factor.</summary>
    public IReadOnlyList<Situation> Heats => heats;

    /// <summary>How many causes there are: winds, then heats, then vortices.</summary>
    public int Count => winds.Count + heats.Count + vortices.Count;

    /// <summary>Whether a cause is a heat.</summary>
    public bool IsHeat(int cause) => cause >= winds.Count && cause < winds.Count + heats.Count;

    /// <summary>What a cause does, alone and without its factor; null for vortices that nothing feels, which stay far below every cut-off.</summary>
    public SituationDemands? DemandsOf(int cause)
    {
        if (cause < winds.Count + heats.Count)
            return SituationDemands.Of([Model], cause < winds.Count ? winds[cause] : heats[cause - winds.Count], damping, fine: fine);
        FatigueVortex vortex = vortices[cause - winds.Count - heats.Count];
        Situation still = new() { Name = "vortices", LimitState = LimitState.Service, Actions = [new FactoredAction(0, new SelfWeight())] };
        return VortexForces.IsFelt(vortex.Case) ? SituationDemands.Of([Model], still, damping, [new ShakingWind(still, vortex.Peaks, 1, "vortices")]) : null;
    }

    /// <summary>The ranges of a detail.</summary>
    /// <param name="stresses">The greatest stress of each cause, Pa; of vortices that of their amplitude.</param>
    public FatigueRanges RangesOf(double[] stresses) => new(
        stresses[..winds.Count].Max(), stresses[winds.Count..(winds.Count + heats.Count)].DefaultIfEmpty().Max(), [.. stresses[(winds.Count + heats.Count)..].Select(amplitude => 2 * amplitude)]);

    /// <summary>The causes; null when no service situation has wind.</summary>
    public static FatigueCauses? Of(StatueModel model, Criteria criteria, IReadOnlyList<Response> responses, SheetWriter lists, FineModel? fine = null) =>
        responses.Any(HasWind) ? new FatigueCauses(model, criteria, responses, lists, fine) : null;

    private static bool HasWind(Response response) => response.Situation is { LimitState: LimitState.Service, Wind.Factor: > 0 };

    private static Situation Alone(Situation situation, StatueAction action) =>
        situation with { LimitState = LimitState.Service, Actions = [new FactoredAction(0, new SelfWeight()), action], Factors = [] };

    /// <summary>Takes the vortices of a wind; false when they were not looked at.</summary>
    private bool AddVortices(WindAction wind, Criteria criteria, SheetWriter lists)
    {
        if (!lists.Vortices.TryGetValue(wind, out (ModalResponse Modes, AcrossWindReport Report) found) || found.Report.Cases.Count == 0)
            return false;
        AcrossWindInput input = criteria.AcrossWind ?? new AcrossWindInput();
        foreach (AcrossWindCase vortex in found.Report.Cases)
        {
            if (vortex.Vortex.IsBeyondRange)
                continue;
            double amplitude = vortex.ModalAmplitude(Model, found.Modes.Set);
            if (!(amplitude > 0))
                continue;
            var peaks = new DynamicPeaks(Model, new ModeShape(Model, found.Modes.Set, vortex.Mode.Number - 1), CovariancePeaks.OfAmplitude(amplitude));
            vortices.Add(new FatigueVortex(vortex, peaks, vortex.Vortex.Cycles * Years / input.LifeYearsInUse));
        }
        return true;
    }

    /// <summary>The cycles of all kinds in the design life.</summary>
    public ValueList<StressBlock> Blocks(in FatigueRanges ranges)
    {
        ValueList<StressBlock> gusts = GustStressSpectrum.Blocks(Pressure.FromPascals(ranges.Gust), Years);
        var blocks = new List<StressBlock>(gusts.Count + 1 + ranges.Vortex.Length);
        blocks.AddRange(gusts.AsSpan());
        if (ranges.Heat > 0)
            blocks.Add(StressBlock.DailyHeat(Pressure.FromPascals(ranges.Heat), Years));
        for (int i = 0; i < ranges.Vortex.Length; i++)
            blocks.Add(new StressBlock(Pressure.FromPascals(ranges.Vortex[i]), vortices[i].Cycles, $"vortices of {vortices[i].Case.Where}"));
        return blocks.ToValueList();
    }

    /// <summary>The damage of all these cycles.</summary>
    private double Damage(in FatigueRanges ranges, DetailCategory detail)
    {
        double D = GustStressSpectrum.Damage(ranges.Gust, Years, detail, GammaMf);
        if (ranges.Heat > 0)
            D += StressBlock.DailyHeat(Pressure.Zero, Years).Cycles / detail.Cycles(ranges.Heat, GammaMf);
        for (int i = 0; i < ranges.Vortex.Length; i++)
            D += vortices[i].Cycles / detail.Cycles(ranges.Vortex[i], GammaMf);
        return D;
    }

    /// <summary>Of many details the one with the greatest damage; of those not damaged the one with the greatest gusts; −1 for none.</summary>
    public int Worst(IReadOnlyList<(FatigueRanges Ranges, DetailCategory Detail)> all)
    {
        var candidates = new List<int>();
        for (int i = 0; i < all.Count; i++)
        {
            if (candidates.Exists(c => all[c].Detail == all[i].Detail && all[i].Ranges.IsCoveredBy(all[c].Ranges)))
                continue;
            candidates.RemoveAll(c => all[c].Detail == all[i].Detail && all[c].Ranges.IsCoveredBy(all[i].Ranges));
            candidates.Add(i);
        }
        if (candidates.Count <= 1)
            return candidates.Count == 0 ? -1 : candidates[0];
        double[] damages = [.. candidates.Select(c => Damage(all[c].Ranges, all[c].Detail))];
        bool anyHarm = Array.Exists(damages, D => D > 0);
        return candidates[Enumerable.Range(0, damages.Length).ToArray().FirstGreatest(i => anyHarm ? damages[i] : all[candidates[i]].Ranges.Gust)];
    }
}

/// <summary>Vortices that shake a mode, for fatigue.</summary>
/// <param name="Case">What they do.</param>
/// <param name="Peaks">What that does to all parts.</param>
/// <param name="Cycles">How often in the design life.</param>
internal sealed record FatigueVortex(AcrossWindCase Case, DynamicPeaks Peaks, double Cycles);

/// <summary>The stress ranges of a detail, Pa: gusts of fifty years, a day's heat, and each vortex case.</summary>
internal readonly record struct FatigueRanges(double Gust, double Heat, double[] Vortex)
{
    /// <summary>Whether no range of this detail is greater than the other's.</summary>
    public bool IsCoveredBy(in FatigueRanges other)
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
