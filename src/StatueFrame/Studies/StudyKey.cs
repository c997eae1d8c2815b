using StatueFrame.Checks;

namespace StatueFrame.Studies;

/// <summary>
/// What stays the same of a check while a statue changes: its id, the place without the number of the bar or the member,
/// which may go from one to another, and the situation.
/// </summary>
internal readonly record struct StudyKey(string Id, string Place, string Situation)
{
    public static StudyKey Of(Check check) => new(check.Id, PlaceOf(check.Where), check.Situation);

    /// <summary>The worst check of every key of a sheet; one that was not done counts only where no other is.</summary>
    public static Dictionary<StudyKey, Check> WorstOf(CheckSheet sheet)
    {
        var worst = new Dictionary<StudyKey, Check>();
        foreach (Check check in sheet.Checks.Order(CheckOrder.WorstFirst))
            worst.TryAdd(Of(check), check);
        return worst;
    }

    public override string ToString() => string.Join(", ", new[] { Id, Place, Situation }.Where(part => part.Length > 0));

    private static string PlaceOf(string where) => where.IndexOf(',') is > 0 and int comma ? where[..comma] : where;
}
