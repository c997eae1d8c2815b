namespace StatueFrame;

/// <summary>Names that were perhaps meant.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class NearNames
{
    /// <summary>Beyond these a hint is not worth the time: candidates looked at, and letters of each.</summary>
    private const int MostListed = 6, MostCandidates = 400, MostLetters = 40;

    /// <summary>A sentence with the name that was perhaps meant, or with the names there are.</summary>
    public static string Closest(string? name, IEnumerable<string> candidates)
    {
        string wanted = Start(name ?? "");
        (int Distance, string Name)[] known = [.. candidates.Take(MostCandidates).Select(c => (Distance(wanted, Start(c)), c))];
        if (known.Length == 0)
            return "There are none.";
        (int distance, string closest) = known.MinBy(k => k.Distance);
        if (distance <= Math.Max(2, wanted.Length / 2))
            return $"Did you mean \"{closest}\"?";
        return $"There are {string.Join(", ", known.Take(MostListed).Select(k => $"\"{k.Name}\""))}{(known.Length > MostListed ? " and others" : "")}.";
    }

    private static string Start(string name) => name.Length <= MostLetters ? name : name[..MostLetters];

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
