namespace StatueFrame;

/// <summary>The names by which a statue's levels and bands are called: "L7", "band 3", "wing/tip", "wing/band 2".</summary>
internal sealed class StatueNames
{
    private readonly List<string> all = [];
    private readonly Dictionary<string, int> levelOwner = [];

    public StatueNames(Statue statue)
    {
        AddBody(-1, "", statue.Tower, statue.Skin);
        for (int i = 0; i < statue.Limbs.Count; i++)
            AddBody(i, statue.Limbs[i].Name + "/", statue.Limbs[i].Tower, statue.Limbs[i].Skin);
    }

    /// <summary>The name of a band in its body.</summary>
    public static string OfBand(int index) => $"band {index + 1}";

    public bool IsLevelBefore(string name, int limb) => name is not null && levelOwner.TryGetValue(name, out int owner) && owner < limb;

    public bool Has(string name) => all.Contains(name);

    public void Require(Validator v, string member, string name)
    {
        if (!all.Contains(name))
            v.Add(member, $"there is no level or band \"{name}\"", Suggest(name));
    }

    public string Suggest(string name) => Closest(name, all);

    public static string Closest(string? name, IEnumerable<string> candidates)
    {
        string? closest = candidates.MinBy(c => Distance(name ?? "", c));
        return closest is null ? "" : $"Did you mean \"{closest}\"?";
    }

    private void AddBody(int owner, string prefix, Tower tower, Skin? skin)
    {
        foreach (TowerLevel level in tower.Levels)
        {
            all.Add(prefix + level.Name);
            levelOwner.TryAdd(prefix + level.Name, owner);
        }
        for (int i = 0; i < (skin?.BandCount ?? 0); i++)
            all.Add(prefix + OfBand(i));
    }

    /// <summary>Levenshtein's edit distance.</summary>
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
                int cost = a[i - 1] == b[j - 1] ? diagonal : diagonal + 1;
                diagonal = row[j];
                row[j] = Math.Min(cost, 1 + Math.Min(row[j], row[j - 1]));
            }
        }
        return row[^1];
    }
}
