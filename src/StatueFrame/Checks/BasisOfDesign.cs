using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>What a sheet rests on, in words: the codes, the life, what acts, the materials.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BasisOfDesign
{
    public static IEnumerable<BasisLine> Of(StatueModel model, Criteria criteria, IReadOnlyList<Situation> situations)
    {
        // Factors that nobody took from the basis do not follow its classes.
        bool byHand = situations.All(s => s.Factors.Count == 0);
        yield return new("codes", byHand ? $"{criteria.Basis.Codes}; factors on actions as written by hand" : criteria.Basis.Name);
        if (criteria.BarCodeInUse != criteria.Basis.Resistance || criteria.TowerCodeInUse != criteria.Basis.Resistance)
            yield return new("resistances", $"standoffs {criteria.BarCodeInUse}, tower {criteria.TowerCodeInUse}");
        yield return new("design life", criteria.DesignLife is { } life ? Invariant($"{life:0.##} years") : "not given");
        StatueAction[] acting = [.. situations.SelectMany(s => s.Actions).Select(a => a.Action).Distinct()];
        foreach (WindAction wind in acting.OfType<WindAction>())
        {
            double ground = model.Statue.BaseAboveGround.Meters, top = model.GreatestHeightAboveGround;
            yield return new("wind", Invariant(
                $"{wind.Profile.Name}, gust factor {Gusts(wind)}, {wind.Headings.Count} heading{(wind.Headings.Count == 1 ? "" : "s")}{(wind.Sectors.Count == 0 ? "" : $" ({wind.Sectors.Count} sector{(wind.Sectors.Count == 1 ? "" : "s")} milder)")}, {wind.Profile.PeakPressureSi(Math.Max(0, ground)) / 1000:0.00} to {wind.Profile.PeakPressureSi(Math.Max(0, top)) / 1000:0.00} kPa"));
        }
        string[] others = [.. acting.Where(a => a is not (WindAction or SelfWeight)).Select(a => a.Title).Distinct()];
        if (others.Length > 0)
            yield return new("besides weight", string.Join(", ", others));
        yield return new("materials", string.Join("; ", Materials(model)));
        yield return new("situations", Invariant($"{situations.Count}, {(byHand ? "written by hand" : "by the combination rules")}: {string.Join("; ", situations.Select(s => s.Name))}"));
    }

    private static string Gusts(WindAction wind) => wind.GustByBand.Count > 0
        ? Invariant($"by band {wind.GustByBand.Min():0.##}–{wind.GustByBand.Max():0.##}")
        : Invariant($"{wind.GustFactorInUse:0.###}{(wind.GustEffectFactor is null ? " (assumed)" : "")}");

    private static IEnumerable<string> Materials(StatueModel model)
    {
        if (Named(model.Bodies.Where(b => b.Skin is not null).Select(b => b.Skin!.Material)) is { } skin)
            yield return $"skin {skin}";
        if (Named(model.Rings.SelectMany(r => r.Ring.Bars).Select(b => b.Standoff.Material)) is { } bars)
            yield return $"bars {bars}";
        if (Named(model.Bodies.SelectMany(b => b.Tower.Segments).OfType<MemberSegment>().Select(s => s.Material)
            .Concat(model.Bodies.SelectMany(b => b.Tower.Segments).OfType<LatticeSegment>().Select(s => s.Material))) is { } tower)
        {
            yield return $"tower {tower}";
        }

        static string? Named(IEnumerable<Material> materials)
        {
            string[] names = [.. materials.Select(m => m.Name).Distinct()];
            return names.Length > 0 ? string.Join(", ", names) : null;
        }
    }
}
