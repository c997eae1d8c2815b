using System.Globalization;
using StatueFrame.Checks;

namespace StatueFrame.Fuzz;

/// <summary>Whether the library did with a spoiled file what it promises: a sheet of numbers, or one error that lists problems.</summary>
internal static class Judge
{
    /// <summary>As of German, of Persian and of nobody: this program also runs where no other cultures are installed.</summary>
    private static readonly CultureInfo[] cultures = [CultureInfo.InvariantCulture, Writing(",", ".", "-"), Writing("٫", "٬", "\u200e−"), Writing("#", " ", "~")];

    /// <summary>What went wrong; null when nothing did.</summary>
    /// <param name="text">The file.</param>
    /// <param name="number">Number of the try: it chooses the culture and the workings that are looked at.</param>
    /// <param name="sheet">Whether a sheet came out.</param>
    public static string? Of(string text, int number, out bool sheet)
    {
        sheet = false;
        CultureInfo.CurrentCulture = cultures[number % cultures.Length];
        try
        {
            StatueDocument document;
            try
            {
                document = StatueFile.Read(text);
            }
            catch (StatueFileException e)
            {
                return e.Problems.Count == 0 || e.Problems.Any(p => p.Message.Length == 0) ? "a file is refused without a problem" : null;
            }
            if (StatueFile.Read(StatueFile.Write(document)) != document)
                return "a file that is written and read again is another";
            CheckSheet checkedSheet;
            try
            {
                checkedSheet = document.Check();
            }
            catch (InvalidStatueException e)
            {
                return e.Problems.Count == 0 || e.Problems.Any(p => p.Path.Length == 0 || p.Message.Length == 0 || p.Hint.Length == 0)
                    ? $"a problem lacks path, words or hint: {string.Join("; ", e.Problems)}" : null;
            }
            sheet = true;
            return OfSheet(checkedSheet, number, mayPrintIt: text.Contains("NaN", StringComparison.Ordinal));
        }
        catch (Exception e)
        {
            return e.ToString();
        }
    }

    private static CultureInfo Writing(string point, string group, string minus)
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        (culture.NumberFormat.NumberDecimalSeparator, culture.NumberFormat.NumberGroupSeparator, culture.NumberFormat.NegativeSign) = (point, group, minus);
        return culture;
    }

    /// <param name="sheet">The sheet.</param>
    /// <param name="number">Number of the try.</param>
    /// <param name="mayPrintIt">Whether something was named "NaN" in the file.</param>
    private static string? OfSheet(CheckSheet sheet, int number, bool mayPrintIt)
    {
        if (sheet.BrokenOff.FirstOrDefault() is { } broken)
            return $"{broken.Subject} broke off: {broken.Error}";
        if (sheet.Results.FirstOrDefault(line => !double.IsFinite(line.Value)) is { } line)
            return $"result {line.Name} is {line.Value}";
        if (sheet.Checks.FirstOrDefault(c => !double.IsFinite(c.Demand ?? 0) || !double.IsFinite(c.Capacity ?? 0) || double.IsNaN(c.Utilization ?? 0)) is { } check)
            return $"{check} has no number";
        string text = sheet.Print(SheetForm.Everything);
        if (!mayPrintIt && text.Contains("NaN", StringComparison.Ordinal))
            return "the sheet prints NaN";
        Check[] done = [.. sheet.Checks.Where(c => c.Verdict != Verdict.NotChecked)];
        for (int i = 0; i < Math.Min(3, done.Length); i++)
        {
            Check some = done[(number * 31 + i * 7919) % done.Length];
            if (!mayPrintIt && some.Working().ToText().Contains("NaN", StringComparison.Ordinal))
                return $"the working of {some} prints NaN";
        }
        return null;
    }
}
