using CsCheck;
using StatueFrame.Studies;

namespace StatueFrame.Tests.Studies.Windows;

public class DesignWindowTests
{
    private static readonly WindowInput t = new("thickness", Dimension.SmallLength, 0.004, 0.030), L = new("length", Dimension.SmallLength, 0.2, 1.2);

    /// <summary>A cantilever flat: stress under a force falls with t², rises with L; stress of a given movement rises with t, falls with L².</summary>
    private static IReadOnlyList<(string, double)> Bar(double thickness, double length) =>
    [
        ("gust", 2.0e-5 * length / (thickness * thickness)),
        ("heat", 12 * thickness / (length * length)),
    ];

    [Fact]
    public void Curves_lie_where_the_closed_forms_say()
    {
        DesignWindow window = DesignWindow.Of(t, L, Bar, 20, 12);
        Assert.NotEmpty(window.Curves);
        Assert.All(window.Curves, p => Assert.Equal(p.Limit == "gust" ? p.X * p.X / 2.0e-5 : Math.Sqrt(12 * p.X), p.Y, 1e-9));
        Assert.All(window.Curves, p => Assert.Equal(p.Limit == "heat", p.OkAbove));
        foreach (WindowInterval i in window.Intervals)
        {
            Assert.Equal(Math.Max(0.2, Math.Sqrt(12 * i.X)), i.From, 1e-9);
            Assert.Equal(Math.Min(1.2, i.X * i.X / 2.0e-5), i.To, 1e-9);
        }
    }

    [Fact]
    public void The_widest_margin_is_where_the_limits_balance()
    {
        // Both equal u at t = (2e-5 L/u)^½ and 12 t/L² = u: the least u has the greatest length.
        DesignWindow window = DesignWindow.Of(t, L, Bar, 40, 40);
        double u = Math.Pow(12 * Math.Sqrt(2.0e-5 * 1.2) / (1.2 * 1.2), 2.0 / 3);
        Assert.Equal(1 - u, window.Widest!.Value.Margin, 1e-4);
        Assert.Equal(1.2, window.Widest.Value.Y, 1e-6);
    }

    [Fact]
    public void The_widest_margin_inside_is_found_on_a_ridge()
    {
        // Max of two slanted wedges: the least of both is 0.5 at (0.7, 0.3), where neither axis leads down.
        DesignWindow window = DesignWindow.Of(
            new("x", Dimension.Number, 0, 1), new("y", Dimension.Number, 0, 1), (x, y) => [("a", 0.5 + Math.Abs(x + y - 1)), ("b", 0.5 + 0.1 * Math.Abs(x - y - 0.4))], 8, 9);
        Assert.Equal(0.5, window.Widest!.Value.Margin, 1e-5);
        Assert.Equal(0.7, window.Widest.Value.X, 1e-4);
    }

    [Fact]
    public void A_dip_between_samples_is_found()
    {
        // Fails only within 0.02 of y = 0.52, between the samples at 0.5 and 0.6.
        DesignWindow window = DesignWindow.Of(
            new("x", Dimension.Number, 0, 1), new("y", Dimension.Number, 0, 1), (_, y) => [("hump", 1.0004 - (y - 0.52) * (y - 0.52))], 2, 11);
        Assert.Equal([0.50, 0.54, 0.50, 0.54], window.Curves.Select(p => Math.Round(p.Y, 9)));
        Assert.Equal(4, window.Intervals.Count);
    }

    [Fact]
    public void Less_accuracy_costs_less()
    {
        int Calls(double accuracy)
        {
            int calls = 0;
            DesignWindow window = DesignWindow.Of(t, L, (x, y) => { Interlocked.Increment(ref calls); return Bar(x, y); }, 10, 8, null, accuracy);
            Assert.All(window.Curves, p => Assert.Equal(p.Limit == "gust" ? p.X * p.X / 2.0e-5 : Math.Sqrt(12 * p.X), p.Y, accuracy));
            return calls;
        }
        Assert.True(Calls(1e-3) < 0.8 * Calls(1e-12));
    }

    [Fact]
    public void An_empty_window_says_so()
    {
        DesignWindow window = DesignWindow.Of(t, L, (_, _) => [("never", 2)]);
        Assert.Null(window.Widest);
        Assert.Empty(window.Intervals);
    }

    [Fact]
    public void Inside_all_limits_hold_and_outside_one_fails() =>
        Gen.Select(Gen.Double[0.1, 3], Gen.Double[0.1, 3]).Sample((a, b) =>
        {
            IReadOnlyList<(string, double Utilization)> Limits(double x, double y) => [("one", a * Math.Sin(7 * x) + y), ("two", b * x / y)];
            DesignWindow window = DesignWindow.Of(new("x", Dimension.Number, 0.1, 2), new("y", Dimension.Number, 0.1, 2), Limits, 9, 25);
            return window.Intervals.All(i => Limits(i.X, i.From + 1e-6 * (i.To - i.From)).All(l => l.Utilization <= 1 + 1e-5) && Limits(i.X, (i.From + i.To) / 2).All(l => l.Utilization <= 1));
        }, iter: 50);

    [Fact]
    public void Infinite_and_missing_utilizations_are_outside()
    {
        DesignWindow window = DesignWindow.Of(t, L, (_, y) => [("a", y < 0.7 ? double.NaN : 0.5), ("b", y > 1 ? double.PositiveInfinity : 0.2)]);
        Assert.All(window.Intervals, i => { Assert.Equal(0.7, i.From, 1e-6); Assert.Equal(1, i.To, 1e-6); });
    }

    [Fact]
    public void Bad_ranges_and_changing_names_are_refused()
    {
        Assert.Throws<ArgumentException>(() => DesignWindow.Of(t with { Least = 1 }, L, Bar));
        Assert.ThrowsAny<Exception>(() => DesignWindow.Of(t, L, (_, y) => [(y > 0.5 ? "a" : "b", 0.5)]));
    }

    [Fact]
    public void It_is_written_as_a_table() =>
        Assert.StartsWith("limit,thickness [mm],length [mm],holds\r\n", DesignWindow.Of(t, L, Bar).ToCsv());
}
