using System.Text;

namespace StatueFrame;

/// <summary>Lays out a <see cref="Working"/> as plain text.</summary>
internal static class WorkingText
{
    private const int LongestSymbol = 16, WidestCause = 36, WidestNumber = 16;

    public static string Of(IReadOnlyList<WorkingLine> lines, DisplayUnits units)
    {
        int width = Math.Min(LongestSymbol, lines.Select(line => SymbolOf(line).Length).DefaultIfEmpty().Max());
        var text = new StringBuilder();
        foreach (WorkingLine line in lines)
        {
            string first = SymbolOf(line).PadRight(width) + " = ", next = new string(' ', width) + " = ";
            switch (line)
            {
                case WorkingLine.Heading h:
                    TextLayout.AppendWrapped(text.Append(text.Length > 0 ? "\n" : ""), "", h.Text);
                    break;
                case WorkingLine.Note n:
                    TextLayout.AppendWrapped(text, "", n.Text);
                    break;
                case WorkingLine.Superposition s:
                    AppendSuperposition(text, s, units);
                    break;
                case WorkingLine.Given g:
                    TextLayout.AppendWrapped(text, first, Result(g.Value, g.Dimension, g.Meaning, g.Source, units));
                    break;
                case WorkingLine.Computed c:
                    TextLayout.AppendWrapped(text, first, FormulaText.Unbroken(c.Formula, units));
                    if (c.Substituted is not null)
                        TextLayout.AppendWrapped(text, next, FormulaText.Unbroken(c.Substituted, units));
                    TextLayout.AppendWrapped(text, next, Result(c.Value, c.Dimension, c.Meaning, c.Source, units));
                    break;
            }
        }
        return text.ToString();
    }

    private static void AppendSuperposition(StringBuilder text, WorkingLine.Superposition s, DisplayUnits units)
    {
        string[][] rows =
        [
            ["", "factor", .. s.Quantities.Select(q => q.Dimension.Unit(units) is { Length: > 0 } unit ? $"{q.Symbol.ToText(units)},\u00A0{unit}" : q.Symbol.ToText(units)), ""],
            .. s.Terms.Select(term => (string[])[term.Cause, TextLayout.FormatNumber(term.Factor, Dimension.Number, units), .. term.Values.Select((value, i) => TextLayout.FormatNumber(value, s.Quantities[i].Dimension, units)), ""]),
            ["sum, times factors", "", .. s.Quantities.Select(q => TextLayout.FormatNumber(q.Value, q.Dimension, units)), ""],
        ];
        TextLayout.AppendTable(text, 0, [new(WidestCause), .. Enumerable.Repeat(new TextColumn(WidestNumber, Right: true), s.Quantities.Count + 1), new(1)], rows);
    }

    private static string SymbolOf(WorkingLine line) => line switch
    {
        WorkingLine.Given g => g.Symbol.ToText(),
        WorkingLine.Computed c => c.Symbol.ToText(),
        _ => "",
    };

    private static string Result(double value, Dimension dimension, string meaning, Source? source, DisplayUnits units)
    {
        string result = TextLayout.Unbroken(TextLayout.Format(value, dimension, units));
        if (meaning.Length > 0)
            result += $"\u00A0 {meaning}";
        return source is null ? result : $"{result}\u00A0 [{source}]";
    }
}
