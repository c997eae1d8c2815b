using StatueFrame.Analysis;
using StatueFrame.Studies;
using StatueFrame.Tests.Actions;

namespace StatueFrame.Tests.Studies.Windows;

public class StatueWindowTests
{
    private static readonly Criteria criteria = new() { BarStressFraction = 1 / 1.1, Modes = 2, Sway = [new SwayLimit("tip", MiddleSway())] };
    private static readonly Situation[] situations =
    [
        new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * Stages.Wind(0)] },
        new() { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), Stages.Wind(0)] },
    ];

    private static readonly WindowInput t = new("thickness", Dimension.SmallLength, 0.003, 0.025), L = new("length", Dimension.SmallLength, 0.7, 1.1);
    private static readonly StatueLimit bending = new("bending", ["bars.bending"]);

    private static Statue Change(double thickness, double length) => Stages.Statue with
    {
        Standoffs =
        [
            .. Stages.Statue.Standoffs.Select(r => (EvenRing)r with
            {
                Length = length.Meters, Standoff = ((EvenRing)r).Standoff with { Section = new FlatBar(60.Millimeters, thickness.Meters) },
            }),
        ],
    };

    [Fact]
    public void On_its_curve_a_limit_of_the_sheet_is_just_met()
    {
        DesignWindow window = StatueWindow.Of(t, L, Change, criteria, situations, [bending, StatueLimit.Sway], 4, 4, 1e-5);
        Assert.Contains(window.Curves, p => p.Limit == "sway");
        foreach (LimitPoint point in window.Curves.Where(p => p.Limit != StatueWindow.Description))
        {
            StatueLimit limit = point.Limit == "bending" ? bending : StatueLimit.Sway;
            Assert.Equal(1, limit.Of(Change(point.X, point.Y).Check(criteria, situations))!.Value, 0.002);
        }
        Assert.All(window.Intervals, i => Assert.True(bending.Of(Change(i.X, (i.From + i.To) / 2).Check(criteria, situations)) <= 1));
    }

    [Fact]
    public void A_limit_that_nothing_checks_is_refused()
    {
        var e = Assert.Throws<ArgumentException>(() => StatueWindow.Of(t, L, Change, criteria, situations, [bending, StatueLimit.Shock], 2, 3));
        Assert.Contains("\"shock\"", e.Message);
        Assert.Throws<ArgumentException>(() => StatueWindow.Of(t, L, Change, criteria, situations, [], 2, 3));
    }

    [Fact]
    public void What_cannot_be_built_is_outside()
    {
        // A flat thicker than wide is no flat.
        WindowInput thick = t with { Least = 0.02, Greatest = 0.1 };
        DesignWindow window = StatueWindow.Of(L, thick, (length, thickness) => Change(thickness, length), criteria, situations, [StatueLimit.Sway], 2, 5, 1e-6);
        Assert.All(window.Curves, p => Assert.Equal((StatueWindow.Description, 0.06), (p.Limit, Math.Round(p.Y, 5))));
        Assert.Equal(2, window.Curves.Count);
        Assert.All(window.Intervals, i => Assert.Equal(0.06, i.To, 1e-5));
    }

    [Fact]
    public void Ranges_without_any_statue_are_refused_with_the_reason() =>
        Assert.Contains("Section.Thickness", Assert.Throws<ArgumentException>(() => StatueWindow.Of(
            t, L, (thickness, length) => Change(100 * thickness, length), criteria, situations, [StatueLimit.Sway], 2, 3)).Message);

    [Fact]
    public void The_bar_for_a_wanted_frequency_is_that_of_the_closed_form()
    {
        // A mass on n bars that stay square at both ends: f = √(n·12·E·b·t³/12/L³/m)/2π, so that t³ = (2πf)²·m·L³/(n·E·b).
        double E = 2e11, b = 0.06, length = 0.9, m = 600, n = 8;
        double F(double thickness) => Math.Sqrt(n * E * b * Math.Pow(thickness / length, 3) / m) / (2 * Math.PI);
        double wanted = 3.3, exact = Math.Cbrt(Math.Pow(2 * Math.PI * wanted, 2) * m * Math.Pow(length, 3) / (n * E * b));
        Assert.Equal(exact, Assert.Single(StatueWindow.Solve(t, F, wanted, accuracy: 1e-12)), 1e-10);
        Assert.Empty(StatueWindow.Solve(t, F, 1e4));
        Assert.Equal([0.5, 1.5], StatueWindow.Solve(new("x", Dimension.Number, 0, 2), x => (x - 1) * (x - 1), 0.25, 12, 1e-12).Select(x => Math.Round(x, 9)));
    }

    [Fact]
    public void The_bar_for_a_wanted_frequency_of_the_statue_gives_it()
    {
        double Skin(double thickness) => StatueModel.Build(Change(thickness, 0.9)).Modes(1).First.Frequency.Hertz;
        double between = (Skin(0.005) + Skin(0.008)) / 2;
        double found = Assert.Single(StatueWindow.Solve(new("thickness", Dimension.SmallLength, 0.005, 0.008), Skin, between, 3));
        Assert.Equal(between, Skin(found), 1e-4);
    }

    /// <summary>The sway of the bar in the middle of the range, so that the limit's curve runs through it.</summary>
    private static UnitsNet.Length MiddleSway() => StatueModel.Build(Change(0.012, 0.9))
        .Respond(new Situation { Name = "sway", LimitState = LimitState.Service, Actions = [new SelfWeight(), Stages.Wind(0)] }).GreatestSway("tip").Sway;
}
