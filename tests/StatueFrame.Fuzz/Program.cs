using System.Diagnostics;
using StatueFrame.Fuzz;

// Spoils what the library is given and looks what it makes of it: dotnet run -c Release --project tests/StatueFrame.Fuzz -- [SECONDS] [SEED] [SUBJECT or TRY]
// kill [COUNT] [SEED] kills processes that run shards, so many.
// unfelt weakens every member of some whole files that resists by itself and lists those that no check feels; unfelt all changes every number.
// With the name of a subject only that is spoiled; with the number of a try only that one is run, and what was spoiled is kept among the temporary files. The exit code is the number of finds, at most 100.

if (args is ["child", string into, string shard])
{
    Kills.RunChild(into, int.Parse(shard));
    return 0;
}
if (args is ["kill", ..])
{
    List<string> wrong = Kills.Run(args.Length > 1 ? int.Parse(args[1]) : 1000, args.Length > 2 ? int.Parse(args[2]) : 1);
    wrong.ForEach(Console.WriteLine);
    return wrong.Count;
}
if (args is ["unfelt", ..])
{
    List<string> unfelt = Weakenings.Unfelt(Corpus.Whole(), all: args.Contains("all"));
    unfelt.ForEach(Console.WriteLine);
    return unfelt.Count;
}

int seconds = args.Length > 0 ? int.Parse(args[0]) : 60, seed = args.Length > 1 ? int.Parse(args[1]) : Environment.TickCount & 0xFFFFFF;
string[] corpus = Corpus.Small(), whole = Corpus.Whole();
Subject[] subjects = [new Descriptions(corpus, whole), new Meshes(), new Shards(), new Packages(corpus), new Tables(), new Weakenings(whole)];
string only = args.Length > 2 && !int.TryParse(args[2], out _) ? args[2] : "";
Subject[] turns = [.. subjects.Where(subject => only.Length == 0 || subject.Name == only).SelectMany(subject => Enumerable.Repeat(subject, subject.Weight))];
foreach (Subject subject in subjects)
{
    foreach (byte[] sound in subject.SoundOnes())
    {
        if (subject.Judge(sound, 1, out bool taken) is { } wrong || !taken)
            throw new InvalidOperationException($"Of the {subject.Name} one is not sound: {subject.Judge(sound, 1, out _)}");
    }
}
if (args.Length > 2 && only.Length == 0)
{
    int one = int.Parse(args[2]);
    (Subject subject, byte[] spoiled) = Try(one);
    string kept = Path.Combine(Path.GetTempPath(), "statueframe-try");
    File.WriteAllBytes(kept, spoiled);
    Console.WriteLine($"{subject.Name}: {kept}");
    Console.WriteLine(subject.Judge(spoiled, one, out bool taken) ?? $"sound, {(taken ? "taken" : "refused")}");
    return 0;
}

Console.WriteLine($"seed {seed}, {seconds} s");
var clock = Stopwatch.StartNew();
int next = -1, slowest = 0, slowestTry = 0;
var tries = subjects.ToDictionary(subject => subject, _ => (Count: 0, Taken: 0));
var finds = new SortedDictionary<int, string>();
Parallel.For(0, Environment.ProcessorCount, _ =>
{
    while (clock.Elapsed.TotalSeconds < seconds && finds.Count < 100)
    {
        int number = Interlocked.Increment(ref next);
        var own = Stopwatch.StartNew();
        (Subject subject, byte[] spoiled) = Try(number);
        string? wrong = subject.Judge(spoiled, number, out bool taken);
        if (own.Elapsed.TotalSeconds > 30)
            wrong ??= $"it took {own.Elapsed.TotalSeconds:0} s";
        lock (finds)
        {
            tries[subject] = (tries[subject].Count + 1, tries[subject].Taken + (taken ? 1 : 0));
            if (own.ElapsedMilliseconds > slowest)
                (slowest, slowestTry) = ((int)own.ElapsedMilliseconds, number);
            if (wrong is not null)
                finds[number] = $"{subject.Name}: {wrong}";
        }
    }
});
foreach ((int number, string wrong) in finds.Take(20))
    Console.WriteLine($"FIND {seed} {number}: {wrong}\n");
foreach ((Subject subject, (int count, int taken)) in tries)
    Console.WriteLine($"{count} {subject.Name}, {taken} taken");
Console.WriteLine($"the slowest, try {slowestTry}, took {slowest} ms; {finds.Count} finds (seed {seed})");
return Math.Min(finds.Count, 100);

(Subject, byte[]) Try(int number)
{
    var random = new Random(unchecked(seed * 1_000_003 + number));
    Subject subject = turns[random.Next(turns.Length)];
    return (subject, subject.Spoiled(random));
}
