using System.Text;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Reporting;
using static System.FormattableString;
using Verdict = StatueFrame.Checks.Verdict;

namespace StatueFrame.Works;

/// <summary>A statue checked in every stage of its raising, each in the wind of the return period that its duration asks for.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Bands are clad whole; sectors of a band, guys and temporary ties are not
/// described and make a stage stiffer or less so: they ask for a model of their own.
/// </remarks>
public sealed record RaisingStudy
{
    private RaisingStudy()
    {
    }

    /// <summary>The stages in the order given.</summary>
    public required ValueList<RaisedStage> Stages { get; init; }

    /// <summary>Checks the stages.</summary>
    /// <param name="statue">The finished statue.</param>
    /// <param name="criteria">
    /// Its criteria; each stage takes those of its limits whose point is there, without what belongs to the finished figure alone
    /// (corrosion and life), and the wind's return period of the stage.
    /// </param>
    /// <param name="actions">Its characteristic actions; earthquake and shock are left out of stages.</param>
    /// <param name="stages">The stages.</param>
    /// <exception cref="InvalidStatueException">Statue, criteria, actions or stages have problems; all are listed.</exception>
    public static RaisingStudy Of(Statue statue, Criteria criteria, CharacteristicActions actions, params ReadOnlySpan<RaisingStage> stages)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        ArgumentNullException.ThrowIfNull(actions);
        var v = new Validator();
        statue.Validate(v);
        if (criteria.Basis is not EurocodeBasis)
            v.Add(nameof(Criteria.Basis), "is not EurocodeBasis, whose wind can be brought to another return period", "Check stages by hand with the wind of their own.");
        for (int i = 0; i < stages.Length; i++)
        {
            Validator at = v.At(nameof(stages), i);
            RaisingStage stage = stages[i];
            stage.Validate(at);
            if (stage.TowerTo is { } level && statue.Tower?.Levels.Skip(1).All(l => l.Name != level) == true)
                at.Add(nameof(RaisingStage.TowerTo), $"there is no level \"{level}\" above the base", NearNames.Closest(level, statue.Tower.Levels.Skip(1).Select(l => l.Name)));
            foreach (string limb in stage.WithoutLimbs.Where(name => statue.Limbs.All(l => l.Name != name)))
                at.Add(nameof(RaisingStage.WithoutLimbs), $"there is no limb \"{limb}\"", NearNames.Closest(limb, statue.Limbs.Select(l => l.Name)));
        }
        v.ThrowIfAny();
        var done = new RaisedStage[stages.Length];
        for (int i = 0; i < stages.Length; i++)
            done[i] = Check(statue, criteria, actions, stages[i]);
        return new RaisingStudy { Stages = [.. done] };
    }

    /// <summary>A line a stage, with what governs, and the caution, as plain text.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        TextLayout.AppendLine(text, "STAGES OF RAISING");
        foreach (RaisedStage s in Stages)
        {
            TextLayout.AppendWrapped(text, "  ", Invariant($"{s.Stage.Name}: stands {s.Stage.Stands.Days:0.#} days, wind of {s.Stage.ReturnPeriod:0} years; {Found(s)}"));
            foreach (Check check in s.Sheet?.Checks.Where(c => c.Verdict == Verdict.Fail).OrderByDescending(c => c.Utilization).Take(3) ?? [])
                TextLayout.AppendWrapped(text, "    ", check.ToString());
        }
        TextLayout.AppendWrapped(text, "  ", Limits);
        TextLayout.AppendWrapped(text, "  ", Drawing.Caution);
        return text.ToString();
    }

    /// <summary>The stages with what governs each, for a calculation package.</summary>
    public Appendix ToAppendix() => new()
    {
        Title = "Stages of raising",
        Notes = [Limits, "Return periods by EN 1991-1-6:2005, Table 3.1 (from memory)."],
        Heads = ["stage", "stands, days", "wind of, years", "found"],
        Rows = [.. Stages.Select(s => ValueList.Create<string>([s.Stage.Name, Invariant($"{s.Stage.Stands.Days:0.#}"), Invariant($"{s.Stage.ReturnPeriod:0}"), Found(s)]))],
    };

    private const string Limits = "Weight, wind and ice act; heat, people and what the builders store are left out. Where gust factors are given by band, they are found anew for what stands. Bands are clad whole; sectors of a band, guys and temporary ties are not described. Lifting, and what hangs from a crane, is looked at by PieceLift.";

    private static string Found(RaisedStage s)
    {
        if (s.Sheet is not { } sheet)
            return $"NOT CHECKED: {s.Problem}";
        int fail = sheet.Checks.Count(c => c.Verdict == Verdict.Fail), open = sheet.Checks.Count(c => c.Verdict == Verdict.NotChecked);
        Check? worst = sheet.Checks.Where(c => c.Utilization is not null && c.Nature == Nature.Strength).MaxBy(c => c.Utilization);
        return Invariant($"{(fail > 0 ? $"FAIL: {fail} checks fail" : "no check fails")}, {open} not checked; strength is governed by {worst?.ToString() ?? "nothing"}");
    }

    private static RaisedStage Check(Statue statue, Criteria criteria, CharacteristicActions actions, RaisingStage stage)
    {
        Statue standing = Standing(statue, stage);
        var points = standing.Points.Select(p => p.Name).ToHashSet();
        IReadOnlyList<string> bodies = new StatueNames(standing).SkinnedBodies;
        Criteria own = criteria with
        {
            Basis = ((EurocodeBasis)criteria.Basis) with { WindReturnPeriod = stage.ReturnPeriod },
            Sway = criteria.Sway.Where(limit => points.Contains(limit.Point)).ToValueList(),
            AcrossWind = criteria.AcrossWind is { } across ? across with { Sections = across.Sections.Where(s => bodies.Contains(s.Body)).ToValueList() } : null,
            Platforms = criteria.Platforms.Where(platform => points.Contains(platform.Point)).ToValueList(),
            // It tires for as long as it stands; what corrodes does not count yet.
            DesignLife = Math.Max(0.01, stage.Stands.Days / 365.25),
            Durability = null,
            Shock = null,
            Earthquake = null,
        };
        try
        {
            CharacteristicActions then = actions with { Accidental = [], Seismic = [], Variable = [.. actions.Variable.Where(a => a.Action is WindAction or IceAction).Select(a => a.Action is WindAction { GustByBand.Count: > 0 } wind ? a with { Action = InItsGusts(standing, wind, criteria.Damping) } : a)] };
            return new RaisedStage(stage, standing, standing.Check(own, then));
        }
        catch (InvalidStatueException e)
        {
            return new RaisedStage(stage, standing, null, e.Problems[0].ToString());
        }
    }

    /// <summary>The gust factors that are enough for what stands of the figure, in place of those of the finished one.</summary>
    private static WindAction InItsGusts(Statue standing, WindAction wind, DampingModel? damping)
    {
        WindAction plain = wind with { GustByBand = [], GustEffectFactor = Math.Max(wind.GustEffectFactor ?? 1, wind.GustByBand.Max()) };
        if (standing.FindProblems().Count > 0)
            return plain;
        var model = StatueModel.Build(standing);
        return GustGuard.CatchesWind(model) ? GustFactors.ByBand(model, wind with { GustByBand = [] }, damping) : plain;
    }

    /// <summary>What stands of a statue.</summary>
    private static Statue Standing(Statue statue, RaisingStage stage)
    {
        int top = stage.TowerTo is { } level ? statue.Tower.IndexOfLevel(level) : statue.Tower.Levels.Count - 1;
        var levels = statue.Tower.Levels.Take(top + 1).Select(l => l.Name).ToHashSet();
        var gone = stage.WithoutLimbs.ToHashSet();
        foreach (Limb limb in statue.Limbs)
        {
            string from = limb.From.Split('/')[0];
            if (limb.From.Contains('/') ? gone.Contains(from) : !levels.Contains(from))
                gone.Add(limb.Name);
        }
        Statue clad = statue.CladUpTo(stage.CladTo) with { Name = $"{statue.Name}, {stage.Name}", Corrosion = null };
        Statue up = clad with
        {
            Tower = clad.Tower with { Levels = clad.Tower.Levels.Take(top + 1).ToValueList(), Segments = clad.Tower.Segments.Take(top).ToValueList() },
            Standoffs = clad.Standoffs.Where(r => levels.Contains(r.Level)).ToValueList(),
            Limbs = clad.Limbs.Where(l => !gone.Contains(l.Name)).ToValueList(),
        };
        var names = new StatueNames(up);
        return up with { Points = up.Points.Where(p => names.Has(p.On)).ToValueList(), Fittings = up.Fittings.Where(f => names.Has(f.On)).ToValueList() };
    }
}
