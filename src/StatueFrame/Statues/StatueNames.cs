using System.Globalization;

namespace StatueFrame;

/// <summary>
/// The names by which a statue's levels and bands are called: "L7", "band 3", "wing/tip", "wing/band 2"; and those of its
/// points. The statue need not be valid.
/// </summary>
internal sealed class StatueNames
{
    private const string BandPrefix = "band ";

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

    /// <summary>The bands of trunk and limbs.</summary>
    public int BandCount { get; private set; }

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
            v.Add(member, $"there is no level \"{name}\" that the limb could start from", NearNames.Closest(name, levelOwner.Where(l => l.Value < limb).Select(l => l.Key)));
        else if (owner >= limb)
            v.Add(member, $"\"{name}\" does not belong to the trunk or to a limb listed before", "List limbs after those that they branch off.");
    }

    /// <summary>Asks for the name of a point.</summary>
    public void RequirePoint(Validator v, string member, string? name)
    {
        if (v.Named(name, member) && !points.Contains(name!))
            v.Add(member, $"the statue has no point \"{name}\"", points.Count == 0 ? "Add it to the statue's Points." : NearNames.Closest(name, points));
    }

    public string Suggest(string? name) => NearNames.Closest(name, all);

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
        BandCount += skin?.BandCount ?? 0;
        for (int i = 0; i < Math.Min(skin?.BandCount ?? 0, StatueSize.Bands); i++)
            all.Add(prefix + OfBand(i));
    }
}
