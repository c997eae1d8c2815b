using System.Globalization;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Collects the problems of a description. Each part of a statue checks its own members with it; <see cref="At(string)"/>
/// gives the validator for a nested part, so that paths come out right. Every problem has a hint.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class Validator
{
    private const int LongestName = 200;
    private const string Missing = "is missing (null)";

    private readonly List<Problem> problems;
    private readonly string path;

    public Validator() : this([], "") { }

    private Validator(List<Problem> problems, string path)
    {
        this.problems = problems;
        this.path = path;
    }

    public IReadOnlyList<Problem> Problems => problems;

    /// <summary>The validator for the member <paramref name="member"/> of the part in hand.</summary>
    public Validator At(string member) => new(problems, Join(member));

    /// <summary>The validator for item <paramref name="index"/> of the list <paramref name="member"/>.</summary>
    public Validator At(string member, int index) => At($"{member}[{index}]");

    public void Add(string member, string message, string hint) => problems.Add(new Problem(Join(member), message, hint));

    /// <summary>Throws when anything was found.</summary>
    public void ThrowIfAny()
    {
        if (problems.Count > 0)
            throw new InvalidStatueException(problems);
    }

    /// <summary>Asks for a part that must be there, and gives it back.</summary>
    public T? Required<T>(T? part, [CallerArgumentExpression(nameof(part))] string member = "") where T : class
    {
        if (part is null)
            Add(member, Missing, $"Give it a value of the type {typeof(T).Name}.");
        return part;
    }

    /// <summary>
    /// The items of a list, each with its index and validator. That the list or an item is missing, or that there are
    /// more than <paramref name="most"/>, becomes a problem; what cannot be validated is left out.
    /// </summary>
    public IEnumerable<(int Index, T Item, Validator At)> Items<T>(
        ValueList<T>? list, int most, [CallerArgumentExpression(nameof(list))] string member = "")
    {
        if (list is null)
        {
            Add(member, Missing, "Give it a list; the empty one is [].");
            yield break;
        }
        if (!AtMost(list.Count, most, member))
            yield break;
        for (int i = 0; i < list.Count; i++)
        {
            if (list[i] is { } item)
                yield return (i, item, At(member, i));
            else
                At(member, i).Add("", Missing, $"Give it a value of the type {typeof(T).Name}, or take it out of the list.");
        }
    }

    /// <summary>Asks for no more of something than any sensible description has, so that no input can run out of time or memory.</summary>
    public bool AtMost(int count, int most, string member)
    {
        if (count <= most)
            return true;
        Add(member, $"are too many: {count}, of at most {most}", "Describe it more coarsely; the limit only keeps the work within bounds.");
        return false;
    }

    /// <summary>Asks for a positive quantity within a plausible range; the range is given in SI units.</summary>
    /// <param name="value">The quantity.</param>
    /// <param name="si">Its value in SI units.</param>
    /// <param name="least">The least plausible SI value; at or below zero means no lower bound but zero.</param>
    /// <param name="most">The greatest plausible SI value.</param>
    /// <param name="member">The member, taken from the expression itself.</param>
    public bool Positive(IQuantity value, double si, double least, double most,
        [CallerArgumentExpression(nameof(value))] string member = "") => si > 0
            ? Within(value, si, least, most, "is not plausible:", member)
            : Refuse(value, si, least, most, "must be greater than zero, is", member);

    /// <summary>Asks for a quantity that is zero or more, and at most <paramref name="most"/> in SI units.</summary>
    public bool NotNegative(IQuantity value, double si, double most,
        [CallerArgumentExpression(nameof(value))] string member = "") =>
        Within(value, si, 0, most, si < 0 ? "must not be negative, is" : "is not plausible:", member);

    /// <summary>Asks for a quantity in a closed range of SI values.</summary>
    public bool Within(IQuantity value, double si, double least, double most,
        [CallerArgumentExpression(nameof(value))] string member = "") =>
        Within(value, si, least, most, "is out of range:", member);

    /// <summary>Asks for a plain number in a closed range.</summary>
    public bool InRange(double value, double least, double most, string hint = "Choose a value in that range.",
        [CallerArgumentExpression(nameof(value))] string member = "")
    {
        if (double.IsFinite(value) && value >= least && value <= most)
            return true;
        Add(member, string.Create(CultureInfo.InvariantCulture, $"must be from {least:g6} to {most:g6}, is {value:g6}"), hint);
        return false;
    }

    /// <summary>Asks for a member of an enumeration.</summary>
    public void Defined<T>(T value, [CallerArgumentExpression(nameof(value))] string member = "") where T : struct, Enum
    {
        if (!Enum.IsDefined(value))
            Add(member, $"is not a {typeof(T).Name}: {value:D}", $"There are {string.Join(", ", Enum.GetNames<T>())}.");
    }

    /// <summary>Asks for a short text that is not empty.</summary>
    public bool Named(string? value, [CallerArgumentExpression(nameof(value))] string member = "")
    {
        if (string.IsNullOrWhiteSpace(value))
            Add(member, "must not be empty", "Give it a short name; results are listed under it.");
        else if (value.Length > LongestName)
            Add(member, $"is too long for a name: {value.Length} characters, of at most {LongestName}", "Give it a short name; results are listed under it.");
        else if (value.Any(IsHidden))
            Add(member, string.Create(CultureInfo.InvariantCulture, $"holds a character that is not seen: U+{(int)value.First(IsHidden):X4}"), "Line breaks and signs of control or direction would let a sheet read otherwise than it is; take them out.");
        else
            return true;
        return false;
    }

    /// <summary>Characters by which a printed line could be broken, hidden or turned round.</summary>
    internal static bool IsHidden(char c) => char.IsControl(c) || char.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.PrivateUse;

    private bool Within(IQuantity value, double si, double least, double most, string message, string member) =>
        (double.IsFinite(si) && si >= least && si <= most) || Refuse(value, si, least, most, message, member);

    private bool Refuse(IQuantity value, double si, double least, double most, string message, string member)
    {
        Add(member, $"{message} {QuantityText.Of(value)}", QuantityText.RangeHint(value, si, least, most));
        return false;
    }

    private string Join(string member) =>
        path.Length == 0 ? member : member.Length == 0 ? path : $"{path}.{member}";
}
