using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Fatigue;

/// <summary>What the sheet says of the fatigue of tower, brackets and base.</summary>
public class FatiguePartsTests
{
    private static CheckSheet Sheet(Func<Statue, Statue>? change = null, double wind = 26, Criteria? criteria = null, bool amid = false)
    {
        SmallStatue whole = SmallWhole.Of(wind: wind);
        if (amid)
            whole = whole with { Situations = [.. whole.Situations.Select(Amid)] };
        Statue statue = whole.Statue with { Tower = whole.Statue.Tower with { Segments = [.. whole.Statue.Tower.Segments.Select(segment => segment is MemberSegment mast ? mast with { LowerJoint = (FlangeJoint)mast.LowerJoint! with { Weld = new WeldedTubeJoint() } } : segment)] } };
        return (change?.Invoke(statue) ?? statue).Check(criteria ?? whole.Criteria with { DesignLife = 100, FatigueFactor = 1.15 }, whole.Situations);
    }

    /// <summary>With its wind amid the figure and without lift alone.</summary>
    private static Situation Amid(Situation situation) =>
        situation with { Actions = [.. situation.Actions.Select(a => a.Action is WindAction wind ? a.Factor * (wind with { Eccentricity = 0, LiftCoefficient = 0 }) : a)] };

    private static Check Worst(CheckSheet sheet, string id) => sheet.Checks.Where(check => check.Id == id).MaxBy(check => check.Demand ?? -1)!;

    /// <summary>A tower of one tube all the way.</summary>
    private static Statue AllTube(Statue statue, Func<MemberSegment, MemberSegment> change)
    {
        MemberSegment mast = change(statue.Tower.Segments.OfType<MemberSegment>().Single());
        return statue with { Tower = statue.Tower with { Segments = [mast, mast with { LowerJoint = null }] } };
    }

    private static Statue Mast(Statue statue, Func<MemberSegment, MemberSegment> change) =>
        statue with { Tower = statue.Tower with { Segments = [.. statue.Tower.Segments.Select(segment => segment is MemberSegment mast ? change(mast) : segment)] } };

    /// <summary>The wind alone on the foot of the mast, N/A + M/W, with the spectrum of EN 1991-1-4, B.3, integrated here on a grid of its own.</summary>
    [Fact]
    public void Damage_of_a_tube_is_that_of_the_wind_alone()
    {
        const double category = 40;
        CheckSheet sheet = Sheet(statue => AllTube(statue, mast => mast with { Section = new Tube(200.Millimeters, 6.Millimeters), LowerJoint = new WeldedTubeJoint { Throat = 8.Millimeters } }), amid: true);
        SmallStatue whole = SmallWhole.Of();
        Statue thin = AllTube(whole.Statue, mast => mast with { Section = new Tube(200.Millimeters, 6.Millimeters), LowerJoint = new WeldedTubeJoint { Throat = 8.Millimeters } });
        StatueModel model = StatueModel.Build(thin);
        Situation sway = whole.Situations.Single(s => s.LimitState == LimitState.Service);
        Response windy = model.Respond(sway), calm = model.Respond(new Situation { Name = "calm", LimitState = LimitState.Service, Actions = [new SelfWeight()] });
        SegmentModel mast = model.Segments[0];
        SectionProperties p = new Tube(200.Millimeters, 6.Millimeters).Properties;
        SectionForce still = calm.Cases[0].SectionForcesOf(mast).Bottom;
        double range = windy.Cases.Max(heading =>
        {
            SectionForce bottom = heading.SectionForcesOf(mast).Bottom;
            Mechanics.Vector3D M = bottom.Moments - still.Moments;
            return Math.Abs(bottom.Axial.Newtons - still.Axial.Newtons) / p.A + double.Hypot(M.X, M.Y) / p.Wy;
        });
        double D = 0, limit = category * 1e6 * Math.Pow(0.4, 1 / 3.0);
        for (double log = 0; log < 9; log += 1e-4)
        {
            double share = (0.7 * log * log - 17.4 * log + 100) / 100, n = Math.Pow(10, log + 1e-4) - Math.Pow(10, log), s = share * range * 1.15;
            D += 2 * n / (s >= limit ? 2e6 * Math.Pow(category * 1e6 / s, 3) : s >= limit * Math.Pow(0.05, 0.2) ? 5e6 * Math.Pow(limit / s, 5) : double.PositiveInfinity);
        }
        Check toe = sheet.Checks.Single(check => check.Id == "fatigue.tubes" && check.Where.Contains("bottom", StringComparison.Ordinal));
        Assert.Contains("toe", toe.Where, StringComparison.Ordinal);
        Assert.True(D > 0);
        Assert.InRange(toe.Demand!.Value, D, 1.035 * D);
    }

    [Fact]
    public void A_calm_place_tires_nothing() =>
        Assert.All(Sheet(wind: 5).Checks.Where(check => check.Family == "fatigue" && check.Demand is not null), check => Assert.Equal(0, check.Demand));

    [Fact]
    public void More_wind_and_thinner_parts_never_help()
    {
        CheckSheet whole = Sheet(), windy = Sheet(wind: 32), thin = Sheet(statue => Mast(statue, mast => mast with { Section = new Tube(300.Millimeters, 6.Millimeters) }));
        string[] ids = [.. whole.Checks.Where(check => check.Family == "fatigue" && check.Demand is not null).Select(check => check.Id).Distinct()];
        Assert.Contains("fatigue.members", ids);
        Assert.Contains("fatigue.tubes", ids);
        foreach (string id in ids)
            Assert.True(Worst(windy, id).Demand >= Worst(whole, id).Demand, id);
        Assert.True(Worst(thin, "fatigue.tubes").Demand >= Worst(whole, "fatigue.tubes").Demand);
    }

    [Fact]
    public void Tightened_bolts_feel_a_quarter_and_loose_ones_all()
    {
        Statue With(Statue statue, double kN) => AllTube(statue, mast => mast with { Section = new Tube(250.Millimeters, 8.Millimeters), LowerJoint = (FlangeJoint)mast.LowerJoint! with { Bolt = new Bolt { Diameter = 10.Millimeters, Grade = BoltGrade.Class88 }, PreTension = Force.FromKilonewtons(kN) } });
        double loose = Worst(Sheet(s => With(s, 0)), "fatigue.flange-bolts").Demand!.Value, tight = Worst(Sheet(s => With(s, 500)), "fatigue.flange-bolts").Demand!.Value;
        Assert.True(loose > 0);
        Assert.True(tight < loose / 50, $"{tight} of {loose}");
        Assert.True(Worst(Sheet(s => With(s, 1)), "fatigue.flange-bolts").Demand <= loose);
    }

    /// <summary>The bars of a mast on one plate take its moment: M r/Σx² each, far more than their share of what lifts it.</summary>
    [Fact]
    public void Bars_of_a_mast_tire_by_its_moment()
    {
        Statue On(Statue statue, double apart, double preTension)
        {
            Statue tube = AllTube(statue, mast => mast);
            HoldDown old = tube.HoldDown!;
            BasePlate plate = old.Plates[0] with { X = Length.Zero, Y = Length.Zero, WidthX = 0.9.Meters, WidthY = 0.9.Meters, FootX = 0.3.Meters, FootY = 0.3.Meters };
            AnchorBar bar = old.Bars[0] with { Diameter = 16.Millimeters, StressArea = null, PreTension = Force.FromKilonewtons(preTension) };
            return tube with { HoldDown = old with { Plates = [plate], Bars = [.. new[] { (1, 1), (1, -1), (-1, 1), (-1, -1) }.Select(corner => bar with { X = (0.5 * apart * corner.Item1).Meters, Y = (0.5 * apart * corner.Item2).Meters })] } };
        }
        double near = Worst(Sheet(s => On(s, 0.5, 0)), "fatigue.anchors").Demand!.Value, far = Worst(Sheet(s => On(s, 0.7, 0)), "fatigue.anchors").Demand!.Value, tight = Worst(Sheet(s => On(s, 0.5, 45)), "fatigue.anchors").Demand!.Value;
        Assert.True(near > far && far > 0, $"{near}, {far}");
        Assert.True(tight < near, $"{tight} of {near}");
    }

    [Fact]
    public void What_is_not_described_is_open()
    {
        string[] Open(CheckSheet sheet) => [.. sheet.OpenLinks.Where(link => link.Link == "fatigue").Select(link => link.What)];
        Assert.Contains("tubes at their joints, roots of limbs", Open(Sheet(statue => Mast(statue, mast => mast with { LowerJoint = null }))));
        Assert.Contains("members of lattices, their fasteners and gussets", Open(Sheet(statue => statue with { Tower = statue.Tower with { Segments = [.. statue.Tower.Segments.Select(segment => segment is LatticeSegment lattice ? lattice with { BraceJoint = null } : segment)] } })));
        // A weld that is there and cannot be worked out is told of, beside those that can.
        Bracket angle = new() { Section = new AngleBar(80.Millimeters, 8.Millimeters), Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid, Throat = 4.Millimeters };
        Bracket box = angle with { Section = new RectangularTube(80.Millimeters, 80.Millimeters, 5.Millimeters) };
        Check[] mixed = [.. Sheet(statue => statue with { Standoffs = [.. statue.Standoffs.Select((ring, i) => ring with { Bracket = i == 0 ? angle : box })] }).Checks.Where(check => check.Id == "fatigue.brackets")];
        Assert.Contains(mixed, check => check.Verdict == Verdict.NotChecked && check.Reason.Contains("angle", StringComparison.Ordinal));
        Assert.Contains(mixed, check => check.Demand is not null);
        SmallStatue whole = SmallWhole.Of();
        CheckSheet noWind = whole.Statue.Check(whole.Criteria, [.. whole.Situations.Where(s => s.LimitState == LimitState.Strength)]);
        Assert.Contains(noWind.Checks, check => check.Id == "fatigue.members" && check.Verdict == Verdict.NotChecked);
    }
}
