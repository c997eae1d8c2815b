using System.Text;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Studies.Shards;

public class ShardFileTests
{
    private const int Items = 20;
    private static readonly ShardHead head = new("samples", "0123ABCD", Items, new Shard(1, 3, 9));
    private static readonly StudyOptions one = new() { Threads = 1 };

    private static string Work(int item) => $"piece {item} – done";

    private static byte[] Whole()
    {
        using var stream = new MemoryStream();
        ShardFile.Finish(stream, head, Work, one);
        return stream.ToArray();
    }

    [Fact]
    public void A_file_cut_at_any_byte_is_finished_to_the_same_file()
    {
        byte[] whole = Whole();
        int pieces = head.Shard.ItemsOf(Items).Count(), headEnd = Array.IndexOf(whole, (byte)'\n') + 1;
        for (int cut = 0; cut <= whole.Length; cut++)
        {
            using var stream = new MemoryStream();
            stream.Write(whole.AsSpan(0, cut));
            int wholeLines = whole.AsSpan(0, cut).Count((byte)'\n');
            var redone = new List<int>();
            (int found, int done, bool torn) = ShardFile.Finish(stream, head, i => { redone.Add(i); return Work(i); }, one);
            Assert.Equal(Math.Max(0, wholeLines - 1), found);
            Assert.Equal(pieces - found, done);
            Assert.Equal(done, redone.Count);
            Assert.Equal(cut > 0 && whole[cut - 1] != '\n', torn);
            Assert.Equal(whole, stream.ToArray());
            Assert.True(cut < headEnd || ShardFile.Read(whole.AsSpan(0, cut)).Head == head);
        }
    }

    [Fact]
    public void A_byte_that_flipped_is_never_believed()
    {
        byte[] whole = Whole();
        for (int at = 0; at < whole.Length; at++)
        {
            byte[] spoiled = [.. whole];
            spoiled[at] ^= 0x04;
            ShardFile.Content content = ShardFile.Read(spoiled);
            Assert.All(content.Records, r => Assert.Equal(Work(r.Key), r.Value));
            Assert.True(content.Head is null || content.Head == head);
            Assert.True(content.Sound <= at);
        }
    }

    [Fact]
    public void Zeros_after_a_crash_of_the_machine_are_cut_off()
    {
        byte[] whole = Whole();
        using var stream = new MemoryStream();
        stream.Write(whole);
        stream.Write(new byte[4096]);
        (_, int done, bool torn) = ShardFile.Finish(stream, head, Work, one);
        Assert.Equal((0, true), (done, torn));
        Assert.Equal(whole, stream.ToArray());
    }

    [Fact]
    public void A_line_of_another_shard_is_not_taken()
    {
        byte[] line = ShardFile.Line("4\tstolen", (head with { Key = "FFFF" }).Text);
        Assert.Empty(ShardFile.Read([.. ShardFile.Line(head.Text, ""), .. line]).Records);
    }

    [Theory]
    [InlineData("a note that somebody keeps here\n")]
    [InlineData("a note")]
    public void A_file_that_is_not_ours_is_left_as_it_is(string text)
    {
        using var stream = new MemoryStream();
        stream.Write(Encoding.UTF8.GetBytes(text));
        Assert.Throws<ShardException>(() => ShardFile.Finish(stream, head, Work, one));
        Assert.Equal(text, Encoding.UTF8.GetString(stream.ToArray()));
        foreach (ShardHead other in new[] { head with { Kind = "variants" }, head with { Key = "1" }, head with { Items = 21 }, head with { Shard = new Shard(0, 3, 9) }, head with { Shard = new Shard(1, 4, 9) } })
            Assert.Throws<ShardException>(() => ShardFile.Finish(new MemoryStream(Whole()), other, Work, one));
    }

    [Fact]
    public void What_was_finished_before_an_exception_stays()
    {
        using var stream = new MemoryStream();
        int[] mine = [.. head.Shard.ItemsOf(Items)];
        Assert.Throws<TimeoutException>(() => ShardFile.Finish(stream, head, i => i == mine[3] ? throw new TimeoutException() : Work(i), one));
        Assert.Equal(mine.Take(3), ShardFile.Read(stream.ToArray()).Records.Keys.Order());
        Assert.Equal(mine.Length - 3, ShardFile.Finish(stream, head, Work, one).Done);
    }

    [Fact]
    public void Many_threads_write_whole_lines()
    {
        using var stream = new MemoryStream();
        ShardHead large = head with { Items = 6000 };
        ShardFile.Finish(stream, large, Work, new StudyOptions { Threads = 8 });
        Assert.Equal(2000, ShardFile.Read(stream.ToArray()).Records.Count);
    }
}
