using System.Globalization;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Collects the problems of a description. Each part of a statue checks its own members with it; <see cref="At(string)"/>
/// gives the validator for a nested part, so that paths come out right.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class Validator
{
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

    public void Add(string member, string message, string hint = "") => problems.Add(new Problem(Join(member), message, hint));

    /// <summary>Throws when anything was found.</summary>
    public void ThrowIfAny()
    {
        if (problems.Count > 0)
            throw new InvalidStatueException(problems);
    }

    /// <summary>Asks for a positive quantity within a plausible range; the range is given in SI units.</summary>
    /// <param name="value">The quantity.</param>
    /// <param name="si">Its value in SI units.</param>
    /// <param name="least">The least plausible SI value; at or below zero means no lower bound but zero.</param>
    /// <param name="most">The greatest plausible SI value.</param>
    /// <param name="member">The member, taken from the expression itself.</param>
    public bool Positive(IQuantity value, double si, double least = 0, double most = double.MaxValue,
        [CallerArgumentExpression(nameof(value))] string member = "")
    {
        if (!double.IsFinite(si) || si <= 0)
        {
            Add(member, $"must be greater than zero, is {Text(value)}");
            return false;
        }
        return Plausible(value, si, least, most, member);
    }

    /// <summary>Asks for a quantity that is zero or more, and at most <paramref name="most"/> in SI units.</summary>
    public bool NotNegative(IQuantity value, double si, double most = double.MaxValue,
        [CallerArgumentExpression(nameof(value))] string member = "")
    {
        if (!double.IsFinite(si) || si < 0)
        {
            Add(member, $"must not be negative, is {Text(value)}");
            return false;
        }
        return Plausible(value, si, 0, most, member);
    }

    /// <summary>Asks for a plain number in a closed range.</summary>
    public bool InRange(double value, double least, double most, string hint = "",
        [CallerArgumentExpression(nameof(value))] string member = "")
    {
        if (double.IsFinite(value) && value >= least && value <= most)
            return true;
        Add(member, string.Create(CultureInfo.InvariantCulture, $"must be from {least:g4} to {most:g4}, is {value:g6}"), hint);
        return false;
    }

    /// <summary>Asks for a quantity in a closed range of SI values.</summary>
    public bool Within(IQuantity value, double si, double least, double most,
        [CallerArgumentExpression(nameof(value))] string member = "")
    {
        if (double.IsFinite(si) && si >= least && si <= most)
            return true;
        Add(member, string.Create(CultureInfo.InvariantCulture, $"is out of range: {Text(value)}; the range is {least:g4} to {most:g4} in SI units"));
        return false;
    }

    /// <summary>Asks for a text that is not empty.</summary>
    public bool Named(string? value, [CallerArgumentExpression(nameof(value))] string member = "")
    {
        if (!string.IsNullOrWhiteSpace(value))
            return true;
        Add(member, "must not be empty", "Give it a short name; results are listed under it.");
        return false;
    }

    private bool Plausible(IQuantity value, double si, double least, double most, string member)
    {
        if (si >= least && si <= most)
            return true;
        Add(member, $"is not plausible: {Text(value)}", PowerHint(si, least, most));
        return false;
    }

    private static string PowerHint(double si, double least, double most) =>
        si > most
            ? string.Create(CultureInfo.InvariantCulture, $"The greatest value accepted is {most:g4} in SI units, {si / most:g2} times less; is the unit right?")
            : string.Create(CultureInfo.InvariantCulture, $"The least value accepted is {least:g4} in SI units, {least / si:g2} times more; is the unit right?");

    private static string Text(IQuantity value) => value.ToString(CultureInfo.InvariantCulture);

    private string Join(string member) =>
        path.Length == 0 ? member : member.Length == 0 ? path : $"{path}.{member}";
}
