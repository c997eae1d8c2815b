using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using StatueFrame.Checks;

namespace StatueFrame.Fuzz;

/// <summary>
/// Files in which strengths, fasteners and limits are made weaker, wherever they stand, or what shakes harsher: no check may get better
/// by it, none may fall silent, and no open link of the load path may close.
/// </summary>
internal sealed partial class Weakenings(string[] corpus) : Subject
{
    /// <summary>Members whose value resists; the path must hold the word after the slash, where there is one.</summary>
    private static readonly string[] lessIsWeaker =
    [
        "throat", "legWeld", "weldLength", "leastFriction", "clearance", "headWidth", "friction/holdDown", "jointFriction", "frictionAngle", "initialShearStrength", "compressiveStrength/courses", "allowableBearing", "ultimateStrength", "yieldStrength/rivet",
        "strength/fatigueDetail", "allowedDent", "limit/sway", "barStressFraction", "stressFraction", "amplitudeLimit", "sagLimit", "greatestLossFraction", "towerCoating", "deflectionLimit", "lever/fixing", "endDistance", "edgeDistance",
        "maintenancePatch", "phiConcrete", "stop", "reach/fixing", "count/fixing",
    ];

    private static readonly string[] moreIsWeaker =
        ["gammaMc", "gammaM0", "gammaM2", "overturningMargin", "slidingFactor", "bearingFactor", "leastPanelFrequency", "bucklingSafety", "leastBucklingFactor", "maintenanceLoad", "correlationFactor", "partialFactor", "eccentricity/plate", "freeLength/plate"];

    /// <summary>Members of what shakes, which acts both ways, and of how long it acts: more of them is harder to bear. Wind and sun may relieve one another.</summary>
    private static readonly string[] moreIsHarsher = ["referenceAcceleration", "importanceFactor", "lowerBound", "lateralCoefficient", "designLife"];

    /// <summary>Not the category of the air: what rusts more is softer, which relieves it of heat.</summary>
    private static readonly (string From, string To)[] words =
    [
        ("StructuralSteel.S355", "StructuralSteel.S235"), ("StructuralSteel.S355", "StructuralSteel.S275"), ("BoltGrade.Class88", "BoltGrade.Class46"), ("BoltGrade.Class88", "BoltGrade.Class56"),
        ("Ptfe", "None"),
    ];

    private static readonly string[] counts = ["count", "inLine", "lines", "rows", "faces", "bays", "shearPlanes", "modes", "rivets"];

    private static readonly Dictionary<string, (CheckSheet Sheet, Dictionary<string, Check> Worst)> before = [];

    public override string Name => "weakenings";

    public override int Weight => 1;

    public override IEnumerable<byte[]> SoundOnes() => corpus.Select((text, i) => Joined(i, text));

    public override byte[] Spoiled(Random random)
    {
        int of = random.Next(corpus.Length);
        JsonNode root = JsonNode.Parse(corpus[of])!;
        var all = new List<JsonValue>();
        Collect(root, all);
        for (int i = 1 + random.Next(3); i > 0; i--)
        {
            // Of what is the same in many parts one is weakened, or all are.
            JsonValue one = all[random.Next(all.Count)];
            double by = 0.3 + 0.69 * random.NextDouble();
            string word = one.GetValueKind() == System.Text.Json.JsonValueKind.String ? one.GetValue<string>() : "";
            string[] others = [.. words.Where(w => w.From == word).Select(w => w.To)];
            string? other = others.Length > 0 ? others[random.Next(others.Length)] : null;
            foreach (JsonValue value in random.Next(2) == 0 ? [one] : all.Where(v => Member(v) == Member(one) && Text(v) == Text(one)).ToArray())
            {
                JsonValue weaker = other is not null ? JsonValue.Create(other) : Scaled(value, IsOf(lessIsWeaker, value) ? by : 1 / by);
                value.ReplaceWith(weaker);
                all.Remove(value);
            }
            if (all.Count == 0)
                break;
        }
        return Joined(of, root.ToJsonString());
    }

    public override string? Judge(byte[] spoiled, int number, out bool taken)
    {
        taken = false;
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        try
        {
            (CheckSheet sheet, Dictionary<string, Check> worst) = Sound(spoiled[0]);
            CheckSheet weaker = StatueFile.Read(Encoding.UTF8.GetString(spoiled, 1, spoiled.Length - 1)).Check();
            taken = true;
            return Better(sheet, worst, weaker) is { } better ? $"{better}; {Changes(corpus[spoiled[0]], Encoding.UTF8.GetString(spoiled, 1, spoiled.Length - 1))}" : null;
        }
        catch (Exception e)
        {
            return e is StatueFileException or InvalidStatueException ? null : e.ToString();
        }
    }

    /// <summary>
    /// Members that no check feels: of every file each member alone, in one part alone, is changed much, and some check has to say
    /// something else for it.
    /// </summary>
    /// <param name="corpus">The files.</param>
    /// <param name="all">Every number, made less and more, rather than what resists, made weaker.</param>
    public static List<string> Unfelt(string[] corpus, bool all)
    {
        var unfelt = new List<string>();
        foreach (string text in corpus)
        {
            Dictionary<string, Check> worst = ByPlace(StatueFile.Read(text).Check());
            int count = Members(JsonNode.Parse(text)!, all).Count;
            Console.WriteLine($"{count} members");
            Parallel.ForEach(Enumerable.Range(0, count), i =>
            {
                foreach (double by in (ReadOnlySpan<double>)(all ? [0.7, 1.3, 0.98, 1.02] : [0.1, 0.4, 0.8]))
                {
                    JsonNode root = JsonNode.Parse(text)!;
                    JsonValue one = Members(root, all)[i];
                    string path = one.GetPath(), other = all ? "" : words.FirstOrDefault(w => w.From == Text(one)).To ?? "";
                    one.ReplaceWith(other.Length > 0 ? JsonValue.Create(other) : Scaled(one, all || IsOf(lessIsWeaker, one) ? by : 1 / by));
                    Dictionary<string, Check> now;
                    try
                    {
                        now = ByPlace(StatueFile.Read(root.ToJsonString()).Check());
                    }
                    catch (Exception e) when (e is StatueFileException or InvalidStatueException)
                    {
                        continue;
                    }
                    if (!now.Any(check => !worst.TryGetValue(check.Key, out Check? then) || check.Value.Verdict != then.Verdict || (all ? check.Value.Utilization != then.Utilization : check.Value.Utilization > then.Utilization)))
                    {
                        lock (unfelt)
                            unfelt.Add($"{path} times {by}");
                    }
                    return;
                }
            });
        }
        unfelt.Sort(StringComparer.Ordinal);
        return unfelt;
    }

    private static List<JsonValue> Members(JsonNode root, bool all)
    {
        var members = new List<JsonValue>();
        Collect(root, members, all ? value => Numbers().IsMatch(Text(value)) : null);
        return members;
    }

    private static Dictionary<string, Check> ByPlace(CheckSheet sheet) =>
        sheet.Checks.GroupBy(check => $"{check.Id}, {check.Where}, {check.Situation}").ToDictionary(group => group.Key, group => group.MaxBy(check => check.Utilization ?? double.NegativeInfinity)!);

    private static string? Better(CheckSheet sheet, Dictionary<string, Check> worst, CheckSheet weaker)
    {
        Dictionary<string, Check> now = WorstOf(weaker);
        // The place may change with what governs; that something is looked at may not.
        HashSet<(string, string)> looked = [.. weaker.Checks.Select(check => (check.Id, check.Situation))];
        foreach ((string key, Check check) in worst)
        {
            if (!looked.Contains((check.Id, check.Situation)))
                return $"{key} is silent";
            if (!now.TryGetValue(key, out Check? then))
                continue;
            if (check.Utilization is { } u && then.Utilization is { } after && after < u * (1 - 1e-9) - 1e-12)
                return $"{key} goes from {u} to {after}";
            if (check.Verdict is Verdict.Fail or Verdict.NotChecked && then.Verdict == Verdict.Pass)
                return $"{key} did not hold, and does: {check.VerdictText}, {then.VerdictText}";
        }
        Dictionary<(string, string), LinkState> links = weaker.LoadPath.ToDictionary(link => (link.Link, link.What), link => link.State);
        return sheet.OpenLinks.FirstOrDefault(link => links.TryGetValue((link.Link, link.What), out LinkState state) && state == LinkState.Holds) is { } closed ? $"{closed} closes"
            : weaker.Holds && !sheet.Holds ? "the statue holds now" : null;
    }

    private static string Changes(string before, string after)
    {
        var then = new List<JsonValue>();
        var now = new List<JsonValue>();
        Collect(JsonNode.Parse(before), then);
        Collect(JsonNode.Parse(after), now);
        Dictionary<string, string> values = now.ToDictionary(value => value.GetPath(), Text);
        return string.Join("; ", then.Where(value => values.GetValueOrDefault(value.GetPath()) != Text(value)).Take(6)
            .Select(value => $"{value.GetPath()} from {Text(value)} to {values.GetValueOrDefault(value.GetPath()) ?? "another word"}"));
    }

    private (CheckSheet, Dictionary<string, Check>) Sound(int of)
    {
        string text = corpus[of];
        lock (before)
        {
            if (!before.TryGetValue(text, out (CheckSheet Sheet, Dictionary<string, Check> Worst) one))
            {
                CheckSheet sheet = StatueFile.Read(text).Check();
                before[text] = one = (sheet, WorstOf(sheet));
            }
            return one;
        }
    }

    /// <summary>By id, place without the number of the bar, leg or member, which may go from one to another, and situation.</summary>
    private static Dictionary<string, Check> WorstOf(CheckSheet sheet) => sheet.Checks
        .GroupBy(check => $"{check.Id}, {NumberAtEnd().Replace(check.Where.Split(',')[0], "")}, {check.Situation}")
        .ToDictionary(group => group.Key, group => group.MaxBy(check => check.Utilization ?? double.NegativeInfinity)!);

    private static byte[] Joined(int of, string text) => [(byte)of, .. Encoding.UTF8.GetBytes(text)];

    private static JsonValue Scaled(JsonValue value, double by)
    {
        string text = Text(value);
        int unit = text.IndexOf(' ');
        double number = double.Parse(unit < 0 ? text : text[..unit], CultureInfo.InvariantCulture) * by;
        string written = number.ToString("R", CultureInfo.InvariantCulture);
        return value.GetValueKind() == System.Text.Json.JsonValueKind.String ? JsonValue.Create(written + text[unit..])
            : JsonValue.Create(counts.Contains(Member(value)) ? Math.Max(1, (int)(by < 1 ? number : Math.Ceiling(number))) : number);
    }

    private static void Collect(JsonNode? node, List<JsonValue> all, Predicate<JsonValue>? which = null)
    {
        IEnumerable<JsonNode?> inner = node switch { JsonArray list => list, JsonObject item => item.Select(m => m.Value), _ => [] };
        foreach (JsonNode? below in inner)
            Collect(below, all, which);
        if (node is JsonValue value && (which?.Invoke(value) ?? (IsOf(lessIsWeaker, value) || IsOf(moreIsWeaker, value) || IsOf(moreIsHarsher, value) || words.Any(w => w.From == Text(value)))))
            all.Add(value);
    }

    private static bool IsOf(string[] members, JsonValue value) =>
        members.Any(member => member.Split('/') is var parts && Member(value) == parts[0] && (parts.Length == 1 || value.GetPath().Contains(parts[1], StringComparison.Ordinal)));

    private static string Member(JsonValue value) => value.Parent is JsonObject ? value.GetPropertyName() : "";

    private static string Text(JsonValue value) => value.ToJsonString().Trim('"');

    [GeneratedRegex(@"^-?\d+(\.\d+)?(E-?\d+)?( .*)?$")]
    private static partial Regex Numbers();

    [GeneratedRegex(@" \d+$")]
    private static partial Regex NumberAtEnd();
}
