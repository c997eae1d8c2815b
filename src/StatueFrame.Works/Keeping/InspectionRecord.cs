using System.Globalization;
using CsvHelper;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>The findings of one or several inspections.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record InspectionRecord
{
    private const int MostLines = 200_000, MostProblems = 100;

    /// <summary>The findings, oldest first; of a part the last one counts.</summary>
    public required ValueList<Finding> Findings { get; init; }

    /// <summary>The last finding of each part.</summary>
    public IEnumerable<Finding> Latest => Findings.GroupBy(f => Plain(f.Part)).Select(g => g.OrderBy(f => f.Date).Last());

    /// <summary>
    /// Reads comma-separated values with the heading "part,date,condition,thickness_mm,photo,note"; the last three may be
    /// missing or empty. Dates are year-month-day, numbers have a point, conditions are Sound, Worn, Damaged, Failed.
    /// </summary>
    /// <param name="csv">The text.</param>
    /// <exception cref="InvalidStatueException">Lines have problems; all, or the first hundred, are listed with their number.</exception>
    public static InspectionRecord Parse(string csv)
    {
        using CsvReader reader = CsvTable.Open(csv, "part", "date", "condition");
        string[] heads = reader.HeaderRecord!;
        var v = new Validator();
        var findings = new List<Finding>();
        for (int line = 2; reader.Read() && line <= MostLines && v.Problems.Count < MostProblems; line++)
        {
            Validator at = v.At(Invariant($"line {line}"));
            string part = reader.GetField("part") ?? "", date = reader.GetField("date") ?? "", condition = reader.GetField("condition") ?? "", thickness = Optional("thickness_mm");
            at.Named(part, "part");
            if (!DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
                at.Add("date", $"\"{date}\" is no date", "Write it as 2031-05-17.");
            if (!Enum.TryParse(condition, ignoreCase: true, out PartCondition found) || !Enum.IsDefined(found) || condition.Any(char.IsDigit))
                at.Add("condition", $"\"{condition}\" is no condition", NearNames.Closest(condition, Enum.GetNames<PartCondition>()));
            double mm = 0;
            if (thickness.Length > 0 && !(double.TryParse(thickness, NumberStyles.Float, CultureInfo.InvariantCulture, out mm) && mm is > 0 and <= 1000))
                at.Add("thickness_mm", $"\"{thickness}\" is no thickness from 0 to 1000 mm", "Leave it empty when it was not measured.");
            findings.Add(new Finding { Part = part, Date = day, Condition = found, Thickness = thickness.Length > 0 ? Length.FromMillimeters(mm) : null, Photo = Optional("photo"), Note = Optional("note") });
        }
        v.ThrowIfAny();
        return new InspectionRecord { Findings = [.. findings.OrderBy(f => f.Date)] };

        string Optional(string name) => heads.Contains(name, StringComparer.OrdinalIgnoreCase) ? reader.GetField(name) ?? "" : "";
    }

    /// <summary>A name as it is compared: with a hyphen for the dash between levels.</summary>
    internal static string Plain(string part) => part.Replace('–', '-').Trim();
}
