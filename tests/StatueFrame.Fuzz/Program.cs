using System.Diagnostics;
using StatueFrame.Fuzz;

// Spoils files and looks what the library makes of them: dotnet run -c Release --project tests/StatueFrame.Fuzz -- [SECONDS] [SEED] [TRY]
// With the number of a try only that one is run. The file of that try is kept among the temporary files. The exit code is their number, at most 100.

int seconds = args.Length > 0 ? int.Parse(args[0]) : 60, seed = args.Length > 1 ? int.Parse(args[1]) : Environment.TickCount & 0xFFFFFF;
string[] corpus = Corpus.Small();
for (int i = 0; i < corpus.Length; i++)
{
    if (Judge.Of(corpus[i], i, out bool sound) is { } wrong || !sound)
        throw new InvalidOperationException($"File {i} of the corpus is not sound: {Judge.Of(corpus[i], i, out _)}");
}
if (args.Length > 2)
{
    int one = int.Parse(args[2]);
    string text = Spoiled(one);
    string kept = Path.Combine(Path.GetTempPath(), "statueframe-try.json");
    File.WriteAllText(kept, text);
    Console.WriteLine(kept);
    Console.WriteLine(Judge.Of(text, one, out bool sheet) ?? $"sound, {(sheet ? "a sheet" : "refused")}");
    return 0;
}

Console.WriteLine($"seed {seed}, {seconds} s");
var clock = Stopwatch.StartNew();
int next = -1, sheets = 0, slowest = 0;
var finds = new SortedDictionary<int, string>();
Parallel.For(0, Environment.ProcessorCount, _ =>
{
    while (clock.Elapsed.TotalSeconds < seconds && finds.Count < 100)
    {
        int number = Interlocked.Increment(ref next);
        var own = Stopwatch.StartNew();
        string? wrong = Judge.Of(Spoiled(number), number, out bool sheet);
        if (own.Elapsed.TotalSeconds > 30)
            wrong ??= $"it took {own.Elapsed.TotalSeconds:0} s";
        lock (finds)
        {
            (sheets, slowest) = (sheets + (sheet ? 1 : 0), Math.Max(slowest, (int)own.ElapsedMilliseconds));
            if (wrong is not null)
                finds[number] = wrong;
        }
    }
});
foreach ((int number, string wrong) in finds.Take(20))
    Console.WriteLine($"FIND {seed} {number}: {wrong}\n");
Console.WriteLine($"{next + 1} files, {sheets} sheets, the slowest {slowest} ms, {finds.Count} finds (seed {seed})");
return Math.Min(finds.Count, 100);

string Spoiled(int number)
{
    var random = new Random(unchecked(seed * 1_000_003 + number));
    return new Spoiler(random).Spoil(corpus[random.Next(corpus.Length)]);
}
