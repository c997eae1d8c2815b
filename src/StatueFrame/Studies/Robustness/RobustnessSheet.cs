using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>The sheets of a robustness study that are not those of a statue.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class RobustnessSheet
{
    private static readonly Source Rule = new("EN 1990:2002+A1:2005", "2.1 (4) P: damage not out of proportion to its cause; removal of single parts as in EN 1991-1-7:2006, 3.3; from memory");

    private static readonly (RemovalKind Kind, string Name, string Missing)[] kinds =
    [
        (RemovalKind.Bar, "bar", "no ring has two bars or more"),
        (RemovalKind.Saddle, "saddle", "no ring has two bars or more"),
        (RemovalKind.Ring, "ring", "the statue has no standoffs"),
        (RemovalKind.Brace, "brace", "no tower or limb is a lattice"),
        (RemovalKind.Anchor, "anchor", "no anchor bars are described (Statue.HoldDown)"),
        (RemovalKind.Other, "other", ""),
    ];

    public static CheckSheet Of(Statue statue, ValueList<Situation> situations, RobustnessOptions options, WorstRemoval[] worst) => new()
    {
        Title = statue.Name,
        Subject = $"single parts gone; {string.Join("; ", situations.Select(situation => situation.Name))}",
        Checks = Checks(options, worst).ToValueList(),
        Assumptions =
        [
            .. worst.SelectMany(w => w.Sheet.Assumptions).Distinct(),
            new Assumption("loss of the part", "before the loads come, without a shock", Source.Assumed("robustness")),
            new Assumption("which removal is worst", "by stress over yield strength and sway over limit; then by the whole sheet", Source.Assumed("robustness")),
        ],
        Warnings = worst.Where(w => w.Screened.Falls is not null).Select(w => $"{w.Removal}: {w.Screened.Falls}").ToValueList(),
    };

    /// <summary>The sheet of a statue that does not hold together.</summary>
    public static CheckSheet OfFallen(Statue statue, Removal removal, string falls) => new()
    {
        Title = $"{statue.Name} {removal}",
        Checks = [Fallen("robustness.stands", removal)],
        Warnings = [falls],
    };

    private static IEnumerable<Check> Checks(RobustnessOptions options, WorstRemoval[] worst)
    {
        foreach ((RemovalKind kind, string name, string missing) in kinds)
        {
            if (Array.Find(worst, w => w.Removal.Kind == kind) is { } found)
                yield return Of($"robustness.{name}", found);
            else if (kind != RemovalKind.Other)
                yield return Check.NotChecked(new CheckSubject($"robustness.{name}", "statue with a part gone"), options.Kinds?.Contains(kind) ?? true ? missing : "not asked for", Rule);
        }
    }

    private static Check Of(string id, WorstRemoval found)
    {
        if (found.Screened.Falls is not null)
            return Fallen(id, found.Removal);
        var subject = new CheckSubject(id, $"statue without {found.Removal.Title}", found.Removal.Where);
        if (found.Sheet.Governing is not { } governing)
            return Check.NotChecked(subject, "nothing on the sheet of the damaged statue could be checked", Rule);
        if (governing.Utilization is not { } utilization || !double.IsFinite(utilization))
            utilization = double.MaxValue;
        Check check = Check.Of(subject, Dimension.Number, Rule, w =>
        {
            w?.Note($"Governed by {governing.Subject}.");
            if (found.Worsened is { } worsened)
                w?.Note($"The worst of what the loss makes worse: {worsened}.");
            return (utilization, 1);
        });
        return check.Assuming(governing.AssumedInputs.AsSpan());
    }

    private static Check Fallen(string id, Removal removal) =>
        Check.Of(new CheckSubject(id, $"statue without {removal.Title}: a part falls", removal.Where), Dimension.Number, Rule, _ => (1, 0));
}
