using StatueFrame.Analysis;
using StatueFrame.Checks;

namespace StatueFrame.Tests.Analyses;

public class ParallelWorkTests
{
    [Fact]
    public void Every_piece_is_done_once()
    {
        var done = new int[1000];
        ParallelWork.ForEach(done.Length, i => Interlocked.Increment(ref done[i]));
        Assert.All(done, count => Assert.Equal(1, count));
    }

    [Fact]
    public void The_error_of_the_lowest_number_comes_out() =>
        Assert.Equal("7", Assert.Throws<InvalidOperationException>(() => ParallelWork.ForEach(100, i =>
        {
            if (i >= 7)
                throw new InvalidOperationException($"{i}");
        })).Message);

    [Fact]
    public void Work_within_a_piece_stays_on_its_thread() => ParallelWork.ForEach(8, _ =>
    {
        int own = Environment.CurrentManagedThreadId;
        ParallelWork.ForEach(50, _ => Assert.Equal(own, Environment.CurrentManagedThreadId));
    });

    [Fact]
    public void A_sheet_is_the_same_on_one_thread_and_on_many()
    {
        SampleStatue sample = new();
        Situation[] situations = [.. Enumerable.Range(0, 6).Select(i => new Situation { Name = $"storm {i}", LimitState = i % 3 == 2 ? LimitState.Service : LimitState.Strength, Actions = [1.35 * new SelfWeight(), (1 + 0.1 * i) * sample.Wind(0, 1.1 + i)] })];
        string many = sample.Statue.Check(new Criteria(), situations).Print(SheetForm.Full), one = "";
        ParallelWork.ForEach(1, _ => one = sample.Statue.Check(new Criteria(), situations).Print(SheetForm.Full));
        Assert.Equal(one, many);
    }
}
