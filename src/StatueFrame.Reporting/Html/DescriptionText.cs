using System.Collections;
using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using UnitsNet;

namespace StatueFrame.Reporting;

/// <summary>
/// Writes any description, a statue or a situation, as tables of what the user set: one row a member, one row an item of
/// a list, equal neighbors in one row. It reads the members by reflection, so that no part can be forgotten.
/// </summary>
internal sealed partial class DescriptionText(HtmlText html, DisplayUnits units)
{
    private const int Deepest = 12;

    private static readonly ConcurrentDictionary<Type, PropertyInfo[]> members = new();

    private static readonly Dictionary<Type, Func<double, Dimension>> dimensions = new()
    {
        [typeof(Length)] = si => Math.Abs(si) is > 0 and < 1 ? Dimension.SmallLength : Dimension.Length,
        [typeof(Area)] = si => Math.Abs(si) is > 0 and < 0.1 ? Dimension.SmallArea : Dimension.Area,
        [typeof(Force)] = _ => Dimension.Force,
        [typeof(Torque)] = _ => Dimension.Moment,
        [typeof(ForcePerLength)] = _ => Dimension.Stiffness,
        [typeof(Pressure)] = si => Math.Abs(si) < 1e5 ? Dimension.Pressure : Dimension.Stress,
        [typeof(Mass)] = _ => Dimension.Mass,
        [typeof(Density)] = _ => Dimension.Density,
        [typeof(AreaDensity)] = _ => Dimension.AreaDensity,
        [typeof(LinearDensity)] = _ => Dimension.LinearDensity,
        [typeof(Speed)] = _ => Dimension.Speed,
        [typeof(Acceleration)] = _ => Dimension.Acceleration,
        [typeof(RotationalStiffness)] = _ => Dimension.RotationalStiffness,
        [typeof(Temperature)] = _ => Dimension.Temperature,
        [typeof(TemperatureDelta)] = _ => Dimension.TemperatureDelta,
    };

    /// <summary>The members of a description, in the order they are declared.</summary>
    /// <param name="record">The description.</param>
    /// <param name="level">Level of its headings, 3 to 6.</param>
    public void Write(object record, int level) => Write(record, level, 0);

    private void Write(object record, int level, int depth)
    {
        (string Name, object Value)[] set = [.. Set(record)];
        (string Name, object Value)[] simple = [.. set.Where(m => IsSimple(m.Value))];
        if (simple.Length > 0)
        {
            using (html.Element("table", ("class", "description")))
            using (html.Element("tbody"))
            {
                foreach ((string name, object value) in simple)
                {
                    using var row = html.Element("tr");
                    html.Element("th", Words(name), ("scope", "row")).Element("td", Simple(value));
                }
            }
            html.Line();
        }
        if (depth == Deepest)
            return;
        foreach ((string name, object value) in set.Where(m => !IsSimple(m.Value) && (m.Value is IEnumerable || Set(m.Value).Any())))
        {
            string title = value is IEnumerable || Words(name) == Kind(value) ? Words(name) : $"{Words(name)}: {Kind(value)}";
            html.Element($"h{Math.Min(level, 6)}", title).Line();
            if (value is IEnumerable list)
                WriteList([.. list.Cast<object>()], level + 1, depth + 1);
            else
                Write(value, level + 1, depth + 1);
        }
    }

    /// <summary>One row an item where its members are simple or can be said on a line; else one part an item.</summary>
    private void WriteList(object[] items, int level, int depth)
    {
        var rows = new List<(string Label, Dictionary<string, string> Cells)>();
        Type? kind = null;
        foreach ((string label, object item) in Runs(items))
        {
            // A table holds items of one kind: others have other columns.
            if (item.GetType() != kind)
                WriteRows();
            kind = item.GetType();
            if (Flat(item, 0) is { } cells)
            {
                rows.Add((label, cells));
                continue;
            }
            WriteRows();
            html.Element($"h{Math.Min(level, 6)}", Title(item) is { Length: > 0 } title ? $"{label}: {title}" : $"{label}: {Kind(item)}").Line();
            Write(item, level + 1, depth + 1);
        }
        WriteRows();

        void WriteRows()
        {
            if (rows.Count > 0)
                WriteTable(rows);
            rows.Clear();
        }
    }

    /// <summary>A table of items; of a wide one, what is the same in all is said once above it, and one item alone stands as a list.</summary>
    private void WriteTable(List<(string Label, Dictionary<string, string> Cells)> rows)
    {
        const int Narrow = 7;
        string[] columns = [.. rows.SelectMany(row => row.Cells.Keys).Distinct()];
        string[] same = columns.Length > Narrow
            ? [.. columns.Where(c => rows.TrueForAll(row => row.Cells.GetValueOrDefault(c) == rows[0].Cells.GetValueOrDefault(c)))]
            : [];
        if (same.Length > 0)
        {
            using (html.Element("table", ("class", "description")))
            {
                html.Element("caption", rows.Count == 1 ? $"no. {rows[0].Label}" : $"the same in {rows[0].Label.Split('–')[0]} to {rows[^1].Label.Split('–')[^1]}");
                using var body = html.Element("tbody");
                foreach (string column in same)
                {
                    using var row = html.Element("tr");
                    html.Element("th", column, ("scope", "row")).Element("td", rows[0].Cells[column]);
                }
            }
            html.Line();
        }
        string[] different = [.. columns.Except(same)];
        if (different.Length == 0)
            return;
        using var scroll = html.Element("div", ("class", "wide"));
        using var table = html.Element("table");
        using (html.Element("thead"))
        using (html.Element("tr"))
        {
            html.Element("th", "no.", ("scope", "col"));
            foreach (string column in different)
                html.Element("th", column, ("scope", "col"));
        }
        using (html.Element("tbody"))
        {
            foreach ((string label, Dictionary<string, string> cells) in rows)
            {
                using (html.Element("tr"))
                {
                    html.Element("th", label, ("scope", "row"));
                    foreach (string column in different)
                        html.Element("td", cells.GetValueOrDefault(column, ""));
                }
                html.Line();
            }
        }
    }

    /// <summary>The items with their numbers; equal neighbors are one, as "3–7".</summary>
    private static (string Label, object Item)[] Runs(object[] items)
    {
        var runs = new List<(string, object)>();
        for (int first = 0, next; first < items.Length; first = next)
        {
            for (next = first + 1; next < items.Length && items[next].Equals(items[first]);)
                next++;
            runs.Add((next == first + 1 ? $"{next}" : $"{first + 1}–{next}", items[first]));
        }
        return [.. runs];
    }

    /// <summary>The members of an item as cells, those of a nested part behind its name; null when it holds a long list or nests deeper.</summary>
    private Dictionary<string, string>? Flat(object item, int nesting)
    {
        const int ShortList = 12, Nesting = 2;
        if (IsSimple(item))
            return new() { ["value"] = Simple(item) };
        var cells = new Dictionary<string, string>();
        if (item.GetType().BaseType is { IsAbstract: true } type && type != typeof(object))
            cells["kind"] = Kind(item);
        foreach ((string name, object value) in Set(item))
        {
            if (IsSimple(value))
            {
                cells[Words(name)] = Simple(value);
            }
            else if (value is IEnumerable list)
            {
                object[] inner = [.. list.Cast<object>()];
                if (inner.Length > ShortList || inner.Any(i => !IsSimple(i)))
                    return null;
                cells[Words(name)] = string.Join("; ", inner.Select(Simple));
            }
            else
            {
                if (nesting == Nesting || Flat(value, nesting + 1) is not { } nested)
                    return null;
                if (nested.Count == 0)
                    cells[Words(name)] = Kind(value);
                foreach ((string key, string cell) in nested)
                    cells[key == "kind" ? Words(name) : $"{Words(name)}, {key}"] = cell;
            }
        }
        return cells;
    }

    private static IEnumerable<(string Name, object Value)> Set(object record)
    {
        foreach (PropertyInfo property in members.GetOrAdd(record.GetType(), MembersOf))
        {
            if (property.GetValue(record) is { } value && !(value is IEnumerable list and not string && !list.Cast<object>().Any()))
                yield return (property.Name, value);
        }
    }

    /// <summary>What a user sets: public members with an init accessor, those of base types first.</summary>
    private static PropertyInfo[] MembersOf(Type type)
    {
        var chain = new List<Type>();
        for (Type? t = type; t is not null && t != typeof(object); t = t.BaseType)
            chain.Insert(0, t);
        return
        [
            .. chain.SelectMany(t => t.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly))
                .Where(p => p.SetMethod is { IsPublic: true } && p.GetIndexParameters().Length == 0)
                .DistinctBy(p => p.Name),
        ];
    }

    /// <summary>True for what is said on one line: a number, a name, a quantity, a material, a section, a source, a list of these.</summary>
    private static bool IsSimple(object value) =>
        value is string or bool or IQuantity or Enum or IFormattable or Material or Section or BoltGrade or Source or EndFixity or Point3 or Bracket or LevelFrame or Delegate
        || (value is IEnumerable list ? list.Cast<object>().All(i => i is IQuantity or double or string) : members.GetOrAdd(value.GetType(), MembersOf).Length == 0);

    private string Simple(object value) => value switch
    {
        Point3 p => $"({Quantity(p.X)}, {Quantity(p.Y)}, {Quantity(p.Z)})",
        IEnumerable list and not string => string.Join(", ", list.Cast<object>().Select(Simple)),
        string s => s,
        bool b => b ? "yes" : "no",
        Enum e => Words(e.ToString()),
        IQuantity q => Quantity(q),
        double d => Plain(d),
        IFormattable f => f.ToString(null, CultureInfo.InvariantCulture),
        Delegate => "a function of the user's",
        _ => value.ToString() is { } text && !text.StartsWith($"{value.GetType().Name} {{", StringComparison.Ordinal) && text != value.GetType().FullName ? text : Kind(value),
    };

    /// <summary>In the unit it was given in when that belongs to the units asked for, else converted.</summary>
    private string Quantity(IQuantity quantity)
    {
        bool isCustomary = CustomaryUnit().IsMatch(quantity.Unit.ToString());
        if (isCustomary != (units == DisplayUnits.UsCustomary) && dimensions.TryGetValue(quantity.GetType(), out Func<double, Dimension>? dimension))
        {
            // The base units of UnitsNet for these are those of SI.
            double si = quantity.As(quantity.QuantityInfo.BaseUnitInfo.Value);
            return dimension(si).Format(si, units);
        }
        string unit = quantity.ToString("a", CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"{Plain((double)quantity.Value)}{(unit is "" or "°" ? "" : "\u00A0")}{unit}");
    }

    private static string Plain(double value) =>
        Math.Abs(value) is 0 or (>= 1e-4 and < 1e7)
            ? value.ToString("#,0.######", CultureInfo.InvariantCulture)
            : value.ToString("0.#####e0", CultureInfo.InvariantCulture).Replace("e", "·10^", StringComparison.Ordinal);

    private static string? Title(object item) => item.GetType().GetProperty("Name")?.GetValue(item) as string;

    private static string Kind(object value) => Words(value.GetType().Name);

    /// <summary>"BaseAboveGround" as "base above ground".</summary>
    internal static string Words(string name) => Capital().Replace(name, m => (m.Index == 0 ? "" : " ") + m.Value.ToLowerInvariant());

    [GeneratedRegex("Inch|Foot|Feet|Pound|Kip|Mile|Psi|Fahrenheit|Ton(?!ne)|Slug|Yard")]
    private static partial Regex CustomaryUnit();

    [GeneratedRegex("[A-Z](?![A-Z0-9])|(?<![A-Z0-9])[A-Z]")]
    private static partial Regex Capital();
}
