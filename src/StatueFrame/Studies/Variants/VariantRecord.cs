using System.Text.Json;
using System.Text.Json.Serialization;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>The numbers of a variant that are kept, as one line of JSON in which every number comes back bit by bit.</summary>
internal sealed record VariantRecord(
    string Name, string Error, string Verdict, bool Passes, VariantRecord.Governs? Governing, VariantRecord.Governs[] Families, VariantRecord.Weight[] Masses, double[] Hertz)
{
    internal sealed record Governs(string Id, string Title, string Where, string Situation, double Utilization, Verdict Verdict)
    {
        public static Governs? Of(GoverningCheck? check) => check is null ? null
            : new(check.Subject.Id, check.Subject.Title, check.Subject.Where, check.Subject.Situation, check.Utilization, check.Verdict);

        public GoverningCheck ToCheck() => new(new CheckSubject(Id, Title, Where, Situation), Utilization, Verdict);
    }

    internal sealed record Weight(string Name, double Kilograms);

    private static readonly JsonSerializerOptions options = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    public static string Write(VariantRow row) => JsonSerializer.Serialize(
        new VariantRecord(
            row.Name, row.Error, row.VerdictText, row.Passes, Governs.Of(row.Governing), [.. row.Families.Select(f => Governs.Of(f)!)],
            [.. row.Masses.Select(m => new Weight(m.Name, m.Mass.Kilograms))], [.. row.Frequencies.Select(f => f.Hertz)]),
        options);

    public static VariantRow Read(string text, Statue? statue, Func<CheckSheet> check)
    {
        VariantRecord r = JsonSerializer.Deserialize<VariantRecord>(text, options) ?? throw new JsonException("A record is empty.");
        return new VariantRow(r.Error.Length > 0 ? null : check)
        {
            Name = r.Name,
            Statue = statue,
            Error = r.Error,
            VerdictText = r.Verdict,
            Passes = r.Passes,
            Governing = r.Governing?.ToCheck(),
            Families = r.Families.Select(f => f.ToCheck()).ToValueList(),
            Masses = r.Masses.Select(m => (m.Name, Mass.FromKilograms(m.Kilograms))).ToValueList(),
            Frequencies = r.Hertz.Select(f => Frequency.FromHertz(f)).ToValueList(),
        };
    }
}
