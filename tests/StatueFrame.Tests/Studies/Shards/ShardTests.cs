using CsCheck;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Studies.Shards;

public class ShardTests
{
    [Fact]
    public void Every_piece_belongs_to_exactly_one_shard() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[0, 500], Gen.ULong).Sample((count, items, seed) =>
        {
            Shard[] shards = [.. Enumerable.Range(0, count).Select(i => new Shard(i, count, seed))];
            return shards.SelectMany(s => s.ItemsOf(items)).Order().SequenceEqual(Enumerable.Range(0, items))
                && shards.All(s => s.ItemsOf(items).All(s.Holds))
                && Enumerable.Range(0, items).All(i => shards.Count(s => s.Holds(i)) == 1);
        });

    [Fact]
    public void Shards_differ_by_one_piece_at_most() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[0, 500], Gen.ULong).Sample((count, items, seed) =>
        {
            int[] sizes = [.. Enumerable.Range(0, count).Select(i => new Shard(i, count, seed).ItemsOf(items).Count())];
            return sizes.Max() - sizes.Min() <= 1;
        });

    [Fact]
    public void The_seed_deals_a_regular_grid_out()
    {
        // A grid of ten by ten: without dealing, one shard would get one whole column.
        int[] columns = [.. new Shard(3, 10, 5).ItemsOf(100).Select(i => i % 10).Distinct()];
        Assert.InRange(columns.Length, 4, 10);
        Assert.NotEqual(new Shard(3, 10, 5).ItemsOf(100), new Shard(3, 10, 6).ItemsOf(100));
        Assert.Equal(new Shard(3, 10, 5).ItemsOf(100), new Shard(3, 10, 5).ItemsOf(100));
    }

    [Theory]
    [InlineData("JOB_COMPLETION_INDEX")]
    [InlineData("SLURM_ARRAY_TASK_ID")]
    public void A_batch_engine_tells_the_index(string variable)
    {
        Assert.Equal(new Shard(3, 8, 1), Shard.FromVariables(name => name == variable ? "3" : null, 8, 1));
        foreach (string bad in new[] { "8", "-1", "three", " 3" })
            Assert.Contains(variable, Assert.Throws<InvalidOperationException>(() => Shard.FromVariables(name => name == variable ? bad : null, 8, 0)).Message);
        Assert.Contains("is set", Assert.Throws<InvalidOperationException>(() => Shard.FromVariables(_ => null, 8, 0)).Message);
    }

    [Fact]
    public void Numbers_out_of_range_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Shard(0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Shard(2, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Shard(-1, 2));
    }
}
