using System.Text;
using StatueFrame.Analysis;
using StatueFrame.Reporting;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>
/// Every piece of a statue with mark, size, metal, mass, place and drawing, and what the list tells about the model: the parts
/// that are in it weigh together what the model weighs.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PartList
{
    private PartList()
    {
    }

    /// <summary>The statue's name.</summary>
    public required string Statue { get; init; }

    /// <summary>The parts, body by body from the lowest up.</summary>
    public required ValueList<Part> Parts { get; init; }

    /// <summary>What the reader should know: where list and model differ, and what was estimated.</summary>
    public required ValueList<string> Notes { get; init; }

    /// <summary>Mass of the model that the checks were run with.</summary>
    public required Mass ModelMass { get; init; }

    /// <summary>The table of embodied carbon in use.</summary>
    public required EmbodiedCarbon Carbon { get; init; }

    /// <summary>Mass of all pieces, allowances left out.</summary>
    public Mass Mass => SumOf(Parts.Where(p => p.Kind != PartKind.Allowance));

    /// <summary>Mass of the parts and allowances that are in the model; equal to <see cref="ModelMass"/>.</summary>
    public Mass MassInModel => SumOf(Parts.Where(p => p.InModel));

    /// <summary>Pieces by metal, allowances left out, the heaviest first.</summary>
    public ValueList<MaterialTotal> Totals =>
    [
        .. Parts.Where(p => p.Kind != PartKind.Allowance && p.Mass is not null).GroupBy(p => (p.Material, p.Family)).Select(g => new MaterialTotal(
            g.Key.Material.Length > 0 ? g.Key.Material : "not described", g.Sum(p => p.Count), SumOf(g),
            g.Key.Family is { } family && Carbon.Of(family) is { } perMass ? perMass * SumOf(g) : null)).OrderByDescending(t => t.Mass).ThenBy(t => t.Material, StringComparer.Ordinal),
    ];

    /// <summary>The list of a statue.</summary>
    /// <param name="statue">The statue.</param>
    /// <param name="sheets">The sheets of the skins that are cut already; other skins are listed band by band.</param>
    /// <param name="carbon">Embodied carbon; null takes <see cref="EmbodiedCarbon.Inventory"/>.</param>
    /// <exception cref="InvalidStatueException">The description has problems, or sheets are of no body with a skin.</exception>
    public static PartList Of(Statue statue, ValueList<BodySheets>? sheets = null, EmbodiedCarbon? carbon = null)
    {
        ArgumentNullException.ThrowIfNull(statue);
        var model = StatueModel.Build(statue);
        var v = new Validator();
        foreach ((BodySheets of, int i) in (sheets ?? []).Select((s, i) => (s, i)))
        {
            if (model.Bodies.All(b => b.Name != of.Body || b.Bands.Length == 0))
                v.At(nameof(sheets), i).Add(nameof(BodySheets.Body), $"there is no skin of \"{of.Body}\"", NearNames.Closest(of.Body, model.Bodies.Where(b => b.Bands.Length > 0).Select(b => b.Name)));
        }
        v.ThrowIfAny();
        (Part[] parts, string[] notes) = PartCollector.Of(model, sheets ?? []);
        return new PartList
        {
            Statue = statue.Name,
            Parts = [.. parts],
            Notes =
            [
                .. notes,
                "Bolts are weighed with nut and washers as rods six diameters long, rivets with two and a half diameters for head and tail (common practice, no source). Bolts of members are in the model as part of their allowance.",
                "Saddle straps, gussets, welds, paint and isolation are not listed piece by piece: the description has no size for them.",
            ],
            ModelMass = model.Masses.Total,
            Carbon = carbon ?? EmbodiedCarbon.Inventory,
        };
    }

    /// <summary>The parts as comma-separated values (RFC 4180), with a heading; positions in m, masses in kg, lengths in mm.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["mark", "kind", "where", "size", "material", "length [mm]", "count", "mass [kg]", "x [m]", "y [m]", "z [m]", "drawing", "in the model"]);
        foreach (Part p in Parts)
        {
            CsvText.AppendLine(text,
            [
                p.Mark, p.Kind.ToString(), p.Where, p.Size, p.Material, p.Length is { } l ? Invariant($"{l.Millimeters:0.#}") : "", Invariant($"{p.Count}"), p.Mass is { } m ? Invariant($"{m.Kilograms:0.###}") : "",
                Invariant($"{p.Center.X.Meters:0.000}"), Invariant($"{p.Center.Y.Meters:0.000}"), Invariant($"{p.Center.Z.Meters:0.000}"), p.Drawing, p.InModel ? "yes" : "no",
            ]);
        }
        return text.ToString();
    }

    /// <summary>Like pieces with their totals, for a calculation package.</summary>
    public Appendix ToAppendix() => new()
    {
        Title = "Part list",
        Notes = [Invariant($"{Mass.Kilograms:0} kg of pieces; the lines that are in the model, allowances with them, weigh {MassInModel.Kilograms:0} kg as the model does. Carbon of all metals: {Totals.Sum(t => t.Carbon?.Tonnes ?? 0):0.0} t CO₂e ({Carbon.Source})."), .. Notes],
        Heads = ["mark", "kind", "size", "material", "length, mm", "pieces", "mass, kg"],
        Rows = [.. LikePieces().Select(cells => ValueList.Create<string>(cells))],
    };

    /// <summary>Pieces by mark, allowances left out: mark, kind, size, material, length, pieces, mass.</summary>
    internal IEnumerable<string[]> LikePieces() => Parts.Where(p => p.Kind != PartKind.Allowance).GroupBy(p => p.Mark).Select(g => new[]
    {
        g.Key, g.First().Kind.ToString().ToLowerInvariant(), g.First().Size, g.First().Material, g.First().Length is { } l ? Invariant($"{l.Millimeters:0}") : "", Invariant($"{g.Sum(p => p.Count)}"),
        g.Any(p => p.Mass is not null) ? Invariant($"{g.Sum(p => p.Mass?.Kilograms ?? 0):0.0}") : "",
    });

    /// <summary>The list as one page of HTML without scripts: totals, notes, like pieces by mark, and all parts.</summary>
    public string ToHtml() => PartListPage.Of(this);

    /// <summary>Totals by metal and the notes, as plain text at most 110 columns wide.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        TextLayout.AppendLine(text, $"PART LIST: {Statue}");
        TextLayout.AppendLine(text, Invariant($"{Parts.Count(p => p.Kind != PartKind.Allowance)} lines, {Mass.Kilograms:0} kg listed; the model weighs {ModelMass.Kilograms:0} kg, {MassInModel.Kilograms:0} kg of the lines below"));
        TextLayout.AppendTable(text, 2, [new(40), new(9, true), new(12, true), new(24, true)],
        [
            ["material", "pieces", "mass", "embodied carbon"],
            .. Totals.Select(t => new[] { t.Material, Invariant($"{t.Pieces}"), Invariant($"{t.Mass.Kilograms:0} kg"), t.Carbon is { } c ? Invariant($"{c.Tonnes:0.0} t CO₂e") : "not in the table" }),
        ]);
        TextLayout.AppendWrapped(text, "  ", $"Carbon from cradle to gate: {Carbon.Source}.");
        foreach (string note in Notes)
            TextLayout.AppendWrapped(text, "  ", note);
        TextLayout.AppendWrapped(text, "  ", Drawing.Caution);
        return text.ToString();
    }

    private static Mass SumOf(IEnumerable<Part> parts) => Mass.FromKilograms(parts.Sum(p => p.Mass?.Kilograms ?? 0));
}
