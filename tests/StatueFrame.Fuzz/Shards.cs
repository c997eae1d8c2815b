using System.Text;
using StatueFrame.Studies;

namespace StatueFrame.Fuzz;

/// <summary>Files of the shards of a study: all of them, one after the other. A merge gives the whole study bit by bit, or says why not.</summary>
internal sealed class Shards : Subject
{
    private const int Count = 3;

    private static readonly StudyOptions one = new() { Threads = 1 };
    private readonly SamplingPlan plan = Plan("a");
    private readonly SampleResult whole = Plan("a").Run(one);
    private readonly byte[][] own = Files(Plan("a")), other = Files(Plan("b"));

    public override string Name => "shards";

    public override int Weight => 2;

    public override IEnumerable<byte[]> SoundOnes() => [Joined(own)];

    public override byte[] Spoiled(Random random)
    {
        byte[][] files = [.. own];
        for (int i = 1 + random.Next(3); i > 0; i--)
        {
            int at = random.Next(Count);
            switch (random.Next(6))
            {
                case 0:
                    files[at] = other[at];
                    break;
                case 1:
                    files[at] = own[random.Next(Count)];
                    break;
                case 2:
                    files[at] = Lines(random, files[at], own[random.Next(Count)]);
                    break;
                case 3:
                    files[at] = Lines(random, files[at], other[at]);
                    break;
                default:
                    files[at] = Bytes(files[at], random);
                    break;
            }
        }
        return Joined(files);
    }

    public override string? Judge(byte[] spoiled, int number, out bool taken)
    {
        string folder = Directory.CreateTempSubdirectory("statueframe-fuzz-").FullName;
        try
        {
            Apart(spoiled, folder);
            taken = Merged(folder, out string? wrong);
            if (wrong is not null || taken)
                return wrong;
            // What is there is finished where it may be; then the study is whole, or something is there that does not belong.
            foreach (Shard shard in Enumerable.Range(0, Count).Select(i => new Shard(i, Count)))
            {
                try
                {
                    plan.RunShard(shard, folder, one);
                }
                catch (ShardException)
                {
                    return null;
                }
            }
            return Merged(folder, out wrong) ? wrong : wrong ?? "all shards were run, and yet they do not merge";
        }
        catch (Exception e)
        {
            taken = false;
            return e.ToString();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private bool Merged(string folder, out string? wrong)
    {
        wrong = null;
        try
        {
            SampleResult merged = plan.Merge(folder, Count);
            wrong = merged == whole ? null : "shards merge to another study";
            return true;
        }
        catch (ShardException)
        {
            return false;
        }
    }

    private static byte[] Lines(Random random, byte[] mine, byte[] theirs)
    {
        List<string> lines = [.. Encoding.Latin1.GetString(mine).Split('\n')];
        string[] foreign = Encoding.Latin1.GetString(theirs).Split('\n');
        lines.Insert(random.Next(lines.Count), foreign[random.Next(foreign.Length)]);
        if (random.Next(2) == 0)
            lines.RemoveAt(random.Next(lines.Count));
        return Encoding.Latin1.GetBytes(string.Join('\n', lines));
    }

    private static SamplingPlan Plan(string label) =>
        new([Uncertain.Normal("x", 0, 1), Uncertain.Gumbel("y", 24, 2.5)], x => label == "a" ? x[0] + x[1] : x[0] - x[1], count: 16) { Label = label };

    private static byte[][] Files(SamplingPlan plan)
    {
        string folder = Directory.CreateTempSubdirectory("statueframe-fuzz-").FullName;
        Shard[] shards = [.. Enumerable.Range(0, Count).Select(i => new Shard(i, Count))];
        byte[][] files = [.. shards.Select(shard => File.ReadAllBytes(plan.RunShard(shard, folder, one).Path))];
        Directory.Delete(folder, recursive: true);
        return files;
    }

    /// <summary>All files in one: the length of each before it.</summary>
    private static byte[] Joined(byte[][] files) => [.. files.SelectMany(file => BitConverter.GetBytes(file.Length).Concat(file))];

    private static void Apart(byte[] joined, string folder)
    {
        for (int i = 0, at = 0; i < Count; i++)
        {
            int length = BitConverter.ToInt32(joined, at);
            File.WriteAllBytes(Path.Combine(folder, new Shard(i, Count).FileName), joined[(at + 4)..(at + 4 + length)]);
            at += 4 + length;
        }
    }
}
