using System.Text.RegularExpressions;

namespace StatueFrame.Checks;

/// <summary>What a check is about, and where: the part of a <see cref="Check"/> that is known before any number is.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Id">
/// The kind of check, the same in every release, as in "bars.bending": a family and a name, in lower case, with a dot
/// between.
/// </param>
/// <param name="Title">The kind of check in words, as in "bending of a standoff".</param>
/// <param name="Where">The level, band or bar, as in "band 3, bar 2"; empty for the whole statue.</param>
/// <param name="Situation">The name of the situation; empty for all.</param>
public sealed partial record CheckSubject(string Id, string Title, string Where = "", string Situation = "")
{
    /// <summary>The part of <see cref="Id"/> before the first dot, as in "bars".</summary>
    public string Family => Id.IndexOf('.') is > 0 and int dot ? Id[..dot] : Id;

    /// <summary>
    /// The part that is looked at, whatever acts: "band 3" of "band 3, bar 2", "leg 1" of "leg 1, wind towards 45°"; empty for the
    /// whole statue.
    /// </summary>
    internal string Part
    {
        get
        {
            string first = Where.Split(", ")[0];
            return State().IsMatch(first) ? "" : first;
        }
    }

    /// <summary>What is no place but the state in which the whole statue is.</summary>
    [GeneratedRegex(@"^(wind towards -?[\d.]+°|no wind|weights (at their own value|times 0\.9)|(earthquake|vortices in mode \d+)( towards [\d.]+°)?|shock after [\d.]+ s)$")]
    private static partial Regex State();

    /// <summary>The subject on one line, as in "bars.bending, band 3, bar 2, storm".</summary>
    public override string ToString() => string.Join(", ", new[] { Id, Where, Situation }.Where(part => part.Length > 0));
}
