using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>What a sheet says about the wind on tower that no skin covers.</summary>
internal static class BareTowerNotes
{
    public static IEnumerable<Assumption> Assumptions(StatueModel model, WindAction wind)
    {
        var parts = model.BareSlices.Where(s => s.HasShape).Select(s => s.Part).ToList();
        if (parts.Count == 0)
            yield break;
        yield return new Assumption("bare tower", "no shelter from skin or other members, no end effect, gust factor of the skin; gussets left out; ladders and platforms where they are fittings with a WindArea", Source.Assumed("bare-tower"));
        if (parts.OfType<LatticeSegment>().Any())
        {
            bool asce = wind.LatticeRuleInUse == LatticeRule.Asce7;
            yield return new Assumption("force coefficient of bare lattice", "by solidity; round members below the critical Reynolds number", asce ? LatticeDrag.Asce7Source : LatticeDrag.En1993Source);
        }
        if (parts.Any(p => p is not LatticeSegment))
            yield return new Assumption("force coefficient of bare members", "round: by Reynolds number, 0.2 mm rough; others: a rectangle, its larger side to the wind", Source.En1991_1_4("Figures 7.23 and 7.28"));
    }

    public static IEnumerable<string> Warnings(StatueModel model)
    {
        foreach (var (body, segment) in model.BareSlices.Select(s => (s.Body, s.Segment)).Distinct())
        {
            if (body.Tower.Segments[segment] is not LatticeSegment lattice)
                continue;
            TowerLevel lower = body.Tower.Levels[segment], upper = body.Tower.Levels[segment + 1];
            LatticeFace[] faces = LatticeFace.Of(lattice, lower, upper, 0);
            string where = $"{body.Prefix}{lower.Name}–{upper.Name}";
            if (faces.Length > 4)
                yield return $"EN 1993-3-1, Annex B: the bare lattice {where} has {faces.Length} legs; the coefficients are for 3 or 4.";
            double most = faces.Max(f => f.EnclosedArea.SquareMeters), least = faces.Min(f => f.EnclosedArea.SquareMeters);
            if (most > 1.1 * least)
                yield return $"EN 1993-3-1, Annex B: the bare lattice {where} is not square in plan, as the coefficients ask.";
            double solidity = faces.Max(f => f.Solidity);
            if (solidity > 0.6)
                yield return Invariant($"EN 1993-3-1, Annex B: the bare lattice {where} has a solidity of {solidity:0.00}; above 0.6 look at it as a solid body too.");
        }
    }
}
