using System.Globalization;
using System.Text;
using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>Measured modes beside those of the model, matched by frequency, each mode once.</summary>
/// <remarks>
/// Frequencies alone cannot tell sway along x from sway along y: look at the model's description of the mode and at the
/// direction of the sensor. Immutable and safe to share between threads.
/// </remarks>
public sealed class ModeMatching
{
    private ModeMatching(ValueList<ModeMatch> rows) => Rows = rows;

    /// <summary>The measured modes in the order given.</summary>
    public ValueList<ModeMatch> Rows { get; }

    /// <summary>Matches the nearest pairs first.</summary>
    /// <param name="modes">The model's modes.</param>
    /// <param name="measured">The measured modes.</param>
    /// <param name="within">The greatest relative difference of a match, above 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The difference is out of range.</exception>
    public static ModeMatching Of(ModalResponse modes, IReadOnlyList<MeasuredMode> measured, double within = 0.25)
    {
        ArgumentNullException.ThrowIfNull(modes);
        ArgumentNullException.ThrowIfNull(measured);
        if (!(within is > 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(within), FormattableString.Invariant($"Must be above 0 and at most 1, is {within}."));
        var matched = new int?[measured.Count];
        var taken = new HashSet<int>();
        var pairs =
            from i in Enumerable.Range(0, measured.Count)
            from j in Enumerable.Range(0, modes.Modes.Count)
            let off = Math.Abs(modes.Modes[j].Frequency.Hertz / measured[i].Frequency.Hertz - 1)
            where off <= within
            orderby off, i, j
            select (i, j);
        foreach ((int i, int j) in pairs)
        {
            if (matched[i] is null && taken.Add(j))
                matched[i] = j;
        }
        return new ModeMatching(measured.Select((m, i) => matched[i] is { } j
            ? new ModeMatch(m, j + 1, modes.Modes[j].Frequency, modes.Modes[j].Description)
            : new ModeMatch(m, null, null, "")).ToValueList());
    }

    /// <summary>The table as plain text.</summary>
    public override string ToString()
    {
        var text = new StringBuilder("MEASURED MODES BESIDE THE MODEL\n");
        var rows = new List<string[]> { new[] { "measured", "damping", "mode", "model", "difference", "what moves" } };
        foreach (ModeMatch row in Rows)
        {
            rows.Add([
                Number($"{row.Measured.Frequency.Hertz:0.000} ± {row.Measured.FrequencyError.Hertz:0.000} Hz"),
                Number($"{100 * row.Measured.DampingRatio:0.00} ± {100 * row.Measured.DampingError:0.00} %"),
                row.Number?.ToString(CultureInfo.InvariantCulture) ?? "–",
                row.Model is { } model ? Number($"{model.Hertz:0.000} Hz") : "none near",
                row.Difference is { } off ? Number($"{100 * off:+0.0;−0.0;0.0} %") : "",
                row.Description]);
        }
        TextLayout.AppendTable(text, 2, [new(24), new(18), new(4, true), new(10, true), new(10, true), new(0)], rows);
        return text.ToString();

        static string Number(FormattableString value) => FormattableString.Invariant(value);
    }
}
