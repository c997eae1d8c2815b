using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Studies;
using StatueFrame.Tests.Checks.Metals;
using UnitsNet;

namespace StatueFrame.Tests.Studies.Damage;

public class RobustnessStudyTests
{
    private static readonly Statue statue = HeronMetals.Statue with { Limbs = [] };
    private static readonly Situation storm = HeronMetals.Storm with { Actions = [1.35 * new SelfWeight(), 1.5 * HeronMetals.Wind with { Headings = [0.Degrees, 90.Degrees, 180.Degrees, 270.Degrees] }] };
    private static readonly Criteria criteria = HeronMetals.Criteria;
    private static readonly Lazy<RobustnessStudy> study = new(() => RobustnessStudy.Of(statue, criteria, [storm], new RobustnessOptions { SheetsOfEachKind = 2 }));

    [Fact]
    public void Every_single_part_is_taken_away_once()
    {
        Assert.Equal(24, study.Value.All.Count(s => s.Removal.Kind == RemovalKind.Bar));
        Assert.Equal(24, study.Value.All.Count(s => s.Removal.Kind == RemovalKind.Saddle));
        Assert.Equal(3, study.Value.All.Count(s => s.Removal.Kind == RemovalKind.Ring));
        Assert.Equal(16, study.Value.All.Count(s => s.Removal.Kind == RemovalKind.Brace));
        Assert.Equal(study.Value.All.Count, study.Value.All.Select(s => s.Removal.ToString()).Distinct().Count());
    }

    [Fact]
    public void A_band_without_its_ring_falls_and_the_check_fails()
    {
        WorstRemoval ring = study.Value.WorstOf(RemovalKind.Ring)!;
        Assert.Contains("nothing holds it", ring.Screened.Falls);
        Assert.Equal(Verdict.Fail, study.Value.Sheet.Checks.Single(c => c.Id == "robustness.ring").Verdict);
        Assert.Contains(study.Value.Sheet.Warnings, w => w.Contains("band 1", StringComparison.Ordinal));
        Assert.Equal(Verdict.NotChecked, study.Value.Sheet.Checks.Single(c => c.Id == "robustness.anchor").Verdict);
    }

    [Fact]
    public void Seams_hold_a_band_that_lost_its_ring()
    {
        Statue tied = statue with { Seams = new SeamStiffness(2e8.Pascals, 1e8.Pascals) };
        RobustnessStudy rings = RobustnessStudy.Of(tied, criteria, [storm], new RobustnessOptions { Kinds = [RemovalKind.Ring] });
        Assert.All(rings.All, s => Assert.Null(s.Falls));
        Assert.True(rings.WorstOf(RemovalKind.Ring)!.Worsened!.Utilization > 0);
    }

    [Fact]
    public void The_worst_standoff_makes_its_neighbors_worse()
    {
        WorstRemoval bar = study.Value.WorstOf(RemovalKind.Bar)!;
        Assert.True(bar.Screened.Worst > 0);
        Assert.All(study.Value.All.Where(s => s.Removal.Kind == RemovalKind.Bar), s => Assert.True(s.Worst <= bar.Screened.Worst * (1 + 1e-9)));
        Assert.NotNull(bar.Worsened);
        Assert.False(bar.Changes.IsEmpty);
        Assert.Equal(bar.Sheet.CompareWith(study.Value.Whole).ToText(), bar.Changes.ToText());
        Assert.All(bar.Worse, check => Assert.True(check.After.Utilization > (check.Before?.Utilization ?? 0)));
    }

    [Fact]
    public void The_screening_agrees_with_the_response_of_a_model_built_by_hand()
    {
        ScreenedRemoval one = study.Value.All.First(s => s.Removal.Kind == RemovalKind.Bar && s.Removal.Where == "L2, bar 3");
        var ring = (EvenRing)statue.Standoffs[1];
        StandoffBar[] all = [.. Enumerable.Range(0, 8).Where(k => k != 2).Select(k =>
        {
            double a = (22.5 + 45 * k) * Math.PI / 180;
            return new StandoffBar { SkinEnd = Point(a, 1.2), TowerEnd = Point(a, 0.7), Standoff = ring.Standoff };
        })];
        Statue byHand = statue with { Standoffs = statue.Standoffs.With(1, new ExplicitRing { Level = "L2", Bars = [.. all] }) };
        double worst = StatueModel.Build(byHand).Respond(storm).Bars.Where(b => b.Band == "band 2").Max(b => b.Stress / b.Standoff.Material.YieldStrength);
        Assert.Equal("standoffs of band 2 at L2", one.Item);
        Assert.Equal(worst, one.Worst!.Value, 2e-3);

        static Point3 Point(double angle, double r) => Point3.FromMeters(r * Math.Cos(angle), r * Math.Sin(angle), 3);
    }

    [Fact]
    public void A_quick_look_sees_what_a_model_built_anew_shows()
    {
        foreach (ScreenedRemoval s in study.Value.All.Where((s, i) => s.Removal.Kind is RemovalKind.Bar or RemovalKind.Brace && i % 3 == 0))
        {
            Response anew = StatueModel.Build(s.Removal.From(statue)).Respond(storm);
            double worst = s.Removal.Kind == RemovalKind.Bar
                ? anew.Bars.Where(b => s.Item == $"standoffs of {b.Band} at {b.Level}").Select(b => b.Stress / b.Standoff.Material.YieldStrength).DefaultIfEmpty().Max()
                : anew.Cases.SelectMany(c => anew.Model.LatticeSegments.Where(m => s.Item == $"members of {m.Name}").SelectMany(m => Stresses(c, m))).DefaultIfEmpty().Max() / 355e6;
            Assert.Equal(worst, s.Worst!.Value, 2e-3 * worst);
            Assert.True(worst > 0);
        }
    }

    private static double[] Stresses(LoadCase loadCase, SegmentModel segment)
    {
        var forces = new double[segment.Members.Count * MemberForces.Count];
        loadCase.MemberForces(segment, forces);
        return [.. segment.Members.Select((member, i) =>
        {
            MemberForces of = MemberForces.Of(forces.AsSpan(i * MemberForces.Count, MemberForces.Count));
            SectionProperties p = member.Section.Properties;
            return Math.Abs(of.N) / p.A + of.Strong / p.Wy + of.Weak / p.Wz;
        })];
    }

    [Fact]
    public void Mirror_image_bars_are_missed_alike()
    {
        Dictionary<string, double> worst = study.Value.All.Where(s => s.Removal.Kind == RemovalKind.Bar).ToDictionary(s => s.Removal.Where, s => s.Worst!.Value);
        for (int k = 1; k <= 4; k++)
        {
            for (int level = 1; level <= 3; level++)
                Assert.Equal(worst[$"L{level}, bar {k}"], worst[$"L{level}, bar {9 - k}"], 1e-6 * worst[$"L{level}, bar {k}"]);
        }
    }

    [Fact]
    public void Removing_nothing_changes_nothing()
    {
        var nothing = new Removal(RemovalKind.Other, "nothing", s => s);
        RobustnessStudy none = RobustnessStudy.Of(statue, criteria, [storm], new RobustnessOptions { Kinds = [], More = [nothing] });
        WorstRemoval worst = Assert.Single(none.Worst);
        Assert.DoesNotContain(worst.Changes.Changes, change => change.Kind != SheetChangeKind.Statement);
        Assert.Null(worst.Worsened);
    }

    [Fact]
    public void A_missing_bar_weighs_nothing_and_a_loose_one_its_weight()
    {
        Statue With(Func<EvenRing, EvenRing> change) => statue with { Standoffs = statue.Standoffs.With(0, change((EvenRing)statue.Standoffs[0])) };
        double whole = Mass(statue), bar = 7850 * 0.05 * 0.012 * 0.5;
        Assert.Equal(whole - 2 * bar, Mass(With(r => r with { Missing = [1, 4] })), 1e-6);
        Assert.Equal(whole, Mass(With(r => r with { Loose = [2] })), 1e-6);
        Response response = StatueModel.Build(With(r => r with { Missing = [2] })).Respond(storm);
        Assert.Equal([1, 3, 4, 5, 6, 7, 8], response.Bars.Where(b => b.Level == "L1").Select(b => b.Number));
        Assert.NotEmpty(With(r => r with { Missing = [9] }).FindProblems());
        Assert.NotEmpty(With(r => r with { Missing = [1, 2, 3, 4], Loose = [5, 6, 7, 8] }).FindProblems());
    }

    [Theory]
    [InlineData(Bracing.Cross)]
    [InlineData(Bracing.TensionOnlyCross)]
    [InlineData(Bracing.SingleDiagonal)]
    [InlineData(Bracing.KBrace)]
    public void A_lattice_loses_one_brace_and_the_rest_carries_on(Bracing bracing)
    {
        Statue braced = statue with { Tower = statue.Tower with { Segments = [HeronMetals.Panel with { Bracing = bracing, Bays = 2 }, HeronMetals.Panel with { Bracing = bracing }, statue.Tower.Segments[2]] } };
        Removal[] braces = [.. Removals.Of(braced).Where(r => r.Kind == RemovalKind.Brace)];
        Assert.Equal(bracing == Bracing.SingleDiagonal ? 12 : 24, braces.Length);
        IReadOnlyList<MemberForce> whole = StatueModel.Build(braced).Respond(storm).Cases[1].LatticeMembers();
        foreach (Removal removal in braces.Where((_, i) => i % 5 == 0))
        {
            IReadOnlyList<MemberForce> left = StatueModel.Build(removal.From(braced)).Respond(storm).Cases[1].LatticeMembers();
            Assert.Equal(whole.Count - 1, left.Count);
            string gone = $"{removal.Where}";
            Assert.DoesNotContain(left, m => $"{m.Segment}, {m.Member}" == gone);
            if (bracing == Bracing.TensionOnlyCross)
                Assert.All(left.Where(m => m.Member.StartsWith("brace", StringComparison.Ordinal)), m => Assert.True(m.Axial.Newtons >= 0));
        }
    }

    [Fact]
    public void A_member_that_does_not_exist_is_named()
    {
        Statue wrong = statue with { Tower = statue.Tower with { Segments = statue.Tower.Segments.With(0, HeronMetals.Panel with { Missing = ["brace c, face 1, bay 1"] }) } };
        Problem problem = Assert.Single(wrong.FindProblems());
        Assert.Equal("Tower.Segments[0].Missing[0]", problem.Path);
        Assert.Contains("brace a, face 1, bay 1", problem.Hint);
    }

    [Fact]
    public void The_result_does_not_depend_on_chance()
    {
        RobustnessStudy again = RobustnessStudy.Of(statue, criteria, [storm], new RobustnessOptions { SheetsOfEachKind = 2 });
        Assert.Equal(study.Value.ToCsv(), again.ToCsv());
        Assert.Equal(study.Value.ToText(), again.ToText());
    }

    [Fact]
    public void Text_fits_and_table_holds_every_removal()
    {
        Assert.All(study.Value.ToText().Split('\n'), line => Assert.True(line.Length <= 110));
        Assert.Equal(study.Value.All.Count + 1, Figures.Parse(study.Value.ToCsv()).Length);
        Assert.Contains("FALLS", study.Value.ToText());
    }

    [Fact]
    public void The_study_can_be_stopped() =>
        Assert.ThrowsAny<OperationCanceledException>(() => RobustnessStudy.Of(statue, criteria, [storm], null, null, new CancellationToken(true)));

    private static double Mass(Statue s) => StatueModel.Build(s).Masses.Total.Kilograms;
}
