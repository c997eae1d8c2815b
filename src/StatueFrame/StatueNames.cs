using System.Globalization;

namespace StatueFrame;

/// <summary>
/// The names by which a statue's levels and bands are called: "L7", "band 3", "wing/tip", "wing/band 2"; and those of its
/// points. The statue need not be valid.
/// </summary>
internal sealed class StatueNames
{
    private const string BandPrefix = "band ";
    private const int MostListed = 6;

    private readonly HashSet<string> all = [];
    private readonly Dictionary<string, int> levelOwner = [];
    private readonly HashSet<string> points;
    private readonly List<string> skinnedBodies = [];

    public StatueNames(Statue statue)
    {
        AddBody(-1, "", statue.Tower, statue.Skin);
        for (int i = 0; i < (statue.Limbs?.Count ?? 0); i++)
        {
            if (statue.Limbs![i] is { } limb)
                AddBody(i, limb.Name + "/", limb.Tower, limb.Skin);
        }
        points = [.. (statue.Points ?? []).Select(p => p?.Name).OfType<string>()];
    }

    /// <summary>The name of a band in its body.</summary>
    public static string OfBand(int index) => BandPrefix + (index + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>The number in the name of a band; null for other names.</summary>
    public static int? BandOf(string name) =>
        name.StartsWith(BandPrefix, StringComparison.Ordinal)
        && int.TryParse(name.AsSpan(BandPrefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out int band) && band > 0
            ? band
            : null;

    /// <summary>"trunk" and the names of limbs, as far as they have a skin.</summary>
    public IReadOnlyList<string> SkinnedBodies => skinnedBodies;

    public bool Has(string? name) => name is not null && all.Contains(name);

    /// <summary>Asks for the name of a level or band.</summary>
    public void Require(Validator v, string member, string? name)
    {
        if (v.Named(name, member) && !Has(name))
            v.Add(member, $"there is no level or band \"{name}\"", Suggest(name));
    }

    /// <summary>Asks for a level of the trunk or of a limb before limb number <paramref name="limb"/>.</summary>
    public void RequireLevelBefore(Validator v, string member, string? name, int limb)
    {
        if (!v.Named(name, member))
            return;
        if (!levelOwner.TryGetValue(name!, out int owner))
            v.Add(member, $"there is no level \"{name}\" that the limb could start from", Closest(name, levelOwner.Where(l => l.Value < limb).Select(l => l.Key)));
        else if (owner >= limb)
            v.Add(member, $"\"{name}\" does not belong to the trunk or to a limb listed before", "List limbs after those that they branch off.");
    }

    /// <summary>Asks for the name of a point.</summary>
    public void RequirePoint(Validator v, string member, string? name)
    {
        if (v.Named(name, member) && !points.Contains(name!))
            v.Add(member, $"the statue has no point \"{name}\"", points.Count == 0 ? "Add it to the statue's Points." : Closest(name, points));
    }

    public string Suggest(string? name) => Closest(name, all);

    /// <summary>A sentence with the name that was perhaps meant, or with the names there are.</summary>
    public static string Closest(string? name, IEnumerable<string> candidates)
    {
        string wanted = name ?? "";
        (int Distance, string Name)[] known = [.. candidates.Select(c => (Distance(wanted, c), c))];
        if (known.Length == 0)
            return "There are none.";
        (int distance, string closest) = known.MinBy(k => k.Distance);
        if (distance <= Math.Max(2, wanted.Length / 2))
            return $"Did you mean \"{closest}\"?";
        return $"There are {string.Join(", ", known.Take(MostListed).Select(k => $"\"{k.Name}\""))}{(known.Length > MostListed ? " and others" : "")}.";
    }

    private void AddBody(int owner, string prefix, Tower? tower, Skin? skin)
    {
        if (skin is not null)
            skinnedBodies.Add(prefix.Length == 0 ? "trunk" : prefix.TrimEnd('/'));
        foreach (TowerLevel? level in tower?.Levels ?? [])
        {
            if (level?.Name is not { } name)
                continue;
            all.Add(prefix + name);
            levelOwner.TryAdd(prefix + name, owner);
        }
        for (int i = 0; i < Math.Min(skin?.BandCount ?? 0, StatueSize.Bands); i++)
            all.Add(prefix + OfBand(i));
    }

    /// <summary>Levenshtein's edit distance, with upper and lower case alike.</summary>
    private static int Distance(string a, string b)
    {
        var row = new int[b.Length + 1];
        for (int j = 0; j <= b.Length; j++)
            row[j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int cost = char.ToUpperInvariant(a[i - 1]) == char.ToUpperInvariant(b[j - 1]) ? diagonal : diagonal + 1;
                diagonal = row[j];
                row[j] = Math.Min(cost, 1 + Math.Min(row[j], row[j - 1]));
            }
        }
        return row[^1];
    }
}
