using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Checks;

namespace Regression;

/// <summary>
/// Check sheets that are kept as texts beside the tests, in the folder sheets. A kept text changes only when asked:
/// set KEEP=1 and run the tests, then read the diff before you commit it.
/// </summary>
internal static class KeptSheet
{
    /// <summary>Asks that a sheet still says what the kept one says, to some significant digits.</summary>
    /// <param name="name">The variant, and the name of its text.</param>
    /// <param name="sheet">The sheet as it is now.</param>
    /// <param name="digits">Significant digits that must agree, 1 to 9: fewer let more rounding pass, and more drift.</param>
    public static void Match(string name, CheckSheet sheet, int digits = 4, [CallerFilePath] string test = "")
    {
        string path = Path.Combine(Path.GetDirectoryName(test)!, "sheets", name + ".txt");
        string now = sheet.ToStableText(digits);
        if (Environment.GetEnvironmentVariable("KEEP") == "1")
            File.WriteAllText(path, now);
        Assert.True(File.Exists(path), $"No sheet of \"{name}\" is kept yet; run with KEEP=1.");
        string kept = File.ReadAllText(path).ReplaceLineEndings("\n");
        string difference = SheetDifference.Of(kept, now, digits);
        Assert.True(difference.Length == 0, $"\"{name}\" is not the sheet that was kept:\n{difference}");
    }

    /// <summary>Asks that one sheet differs from another only in what was foreseen, and tells what else moved.</summary>
    /// <param name="earlier">The sheet before the change.</param>
    /// <param name="later">The sheet after it.</param>
    /// <param name="foreseen">Whether a change was meant.</param>
    /// <param name="digits">Significant digits that must agree for a number not to count as moved.</param>
    public static void MovedOnly(CheckSheet earlier, CheckSheet later, Func<SheetChange, bool> foreseen, int digits = 4)
    {
        SheetComparison comparison = later.CompareWith(earlier, tolerance: 0.5 * Math.Pow(10, 1 - digits));
        var others = new SheetComparison(comparison.Changes.Where(change => !foreseen(change)).ToValueList());
        Assert.True(others.IsEmpty, $"What moved and was not foreseen:\n{others}");
    }
}
