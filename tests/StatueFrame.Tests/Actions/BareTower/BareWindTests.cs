using CsCheck;
using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Tests.Actions.BareTower;

public class BareWindTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        new("c_f,0 of a square prism", "EN 1991-1-4:2005, Figure 7.23, as read in a public program", 2.1, "-", 1e-9, () => BareDrag.RectangleCoefficient(1)),
        new("c_f,0 of a prism, d/b = 0.7", "EN 1991-1-4:2005, Figure 7.23, as read in a public program", 2.4, "-", 1e-9, () => BareDrag.RectangleCoefficient(0.7)),
        new("c_f,0 of a prism, d/b = 5", "EN 1991-1-4:2005, Figure 7.23, as read in a public program", 1.0, "-", 1e-9, () => BareDrag.RectangleCoefficient(5)),
        new("c_f,0 of a cylinder below the critical Reynolds number", "EN 1991-1-4:2005, Figure 7.28", 1.2, "-", 1e-9, () => CylinderDrag.Coefficient(1e5, 1e-5), ValueKind.FromMemory),
        new("c_f,0 of a cylinder, Re 1e7, k/b 1e-3", "EN 1991-1-4:2005, Figure 7.28, formula as in a public program, evaluated by hand", 0.942857, "-", 1e-5, () => CylinderDrag.Coefficient(1e7, 1e-3), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void The_wind_on_a_bare_tower_is_the_sum_over_its_panels_by_hand()
    {
        LoadCase load = Stages.Blow(Stages.Bare, Stages.Wind(0));
        double expected = 0;
        LatticeFace face = LatticeFace.Of(Stages.Panel, Stages.Tower.Levels[0], Stages.Tower.Levels[1])[0];
        double lattice = face.ForceCoefficient(LatticeRule.En1993_3_1, Angle.Zero) * face.SolidArea.SquareMeters / 2;
        for (double z = 0.125; z < 8; z += 0.25)
        {
            double q = Stages.Profile.PeakPressure(Length.FromMeters(z)).Pascals, gust = Math.Sqrt(2 * q / 1.25);
            double tube = 0.4 * CylinderDrag.Coefficient(CylinderDrag.Reynolds(0.4, gust), 0.2e-3 / 0.4);
            expected += 0.25 * q * (z < 6 ? lattice : tube);
        }
        Assert.Equal(expected, load.WindForce.Newtons, 1e-6 * expected);
        Assert.Equal(expected, load.Base.Shear.Newtons, 1e-6 * expected);
    }

    [Fact]
    public void Levels_carry_the_moment_of_the_wind_too()
    {
        LoadCase load = Stages.Blow(Stages.Bare, Stages.Wind(0));
        double moment = 0;
        foreach (BareSlice slice in StatueModel.Build(Stages.Bare).BareSlices)
        {
            double q = Stages.Profile.PeakPressure(Length.FromMeters(slice.At.Z)).Pascals;
            moment += q * slice.Length * slice.At.Z * BareDrag.PerLength(slice.Part, slice.Lower, slice.Upper, slice.T, 0, Math.Sqrt(2 * q / 1.25), LatticeRule.En1993_3_1, 0);
        }
        Assert.Equal(moment, load.Base.Overturning.NewtonMeters, 1e-9 * moment);
    }

    [Fact]
    public void Turning_the_wind_by_a_quarter_turns_the_force() =>
        Gen.Double[0, 90].Sample(heading =>
        {
            double here = Stages.Blow(Stages.Bare, Stages.Wind(heading)).WindForce.Newtons, there = Stages.Blow(Stages.Bare, Stages.Wind(heading + 90)).WindForce.Newtons;
            return Math.Abs(here - there) < 1e-6 * here;
        }, iter: 8);

    [Fact]
    public void The_tower_inside_its_skin_catches_nothing_and_the_limb_only_outside()
    {
        BareSlice[] slices = StatueModel.Build(Stages.Statue).BareSlices;
        Assert.All(slices, s => Assert.Equal("wing/", s.Body.Prefix));
        // The wing runs along +y at 6 m; there the skin, from 3 m at 5 m to 2 m at 8 m, is 2.67 m across y.
        double half = 0.5 * (3 - 1.0 / 3);
        Assert.All(slices, s => Assert.True(s.At.Y > half));
        Assert.InRange(slices.Sum(s => s.Length), 4 - half - 0.5, 4 - half + 0.5);
    }

    [Fact]
    public void A_limb_along_the_wind_catches_none_of_it()
    {
        Statue wing = Stages.Statue.CladUpTo(8.Meters);
        double along = Stages.Blow(wing, Stages.Wind(90)).WindForce.Newtons, across = Stages.Blow(wing with { Limbs = [] }, Stages.Wind(90)).WindForce.Newtons;
        Assert.Equal(across, along, 1e-6 * across);
        Assert.True(Stages.Blow(wing, Stages.Wind(0)).WindForce > Stages.Blow(wing with { Limbs = [] }, Stages.Wind(0)).WindForce);
    }

    [Fact]
    public void A_core_without_a_plan_is_not_checked_and_one_with_a_plan_is()
    {
        var core = new CoreSegment
        {
            BendingX = Rigidity.FromNewtonSquareMeters(1e9),
            BendingY = Rigidity.FromNewtonSquareMeters(1e9),
            Torsion = Rigidity.FromNewtonSquareMeters(1e9),
            Axial = Force.FromNewtons(1e10),
            Mass = LinearDensity.FromKilogramsPerMeter(500),
        };
        Statue Mast(TowerPlan? plan) => new()
        {
            Name = "mast",
            Tower = new Tower { Levels = [new TowerLevel("foot", 0.Meters) { Plan = plan }, new TowerLevel("head", 10.Meters) { Plan = plan }], Segments = [core] },
        };
        var storm = new Situation { Name = "storm", Actions = [new SelfWeight(), Stages.Wind(0)] };
        Assert.Contains(Mast(null).Check(new Criteria(), storm).NotChecked, c => c.Id == "wind.bare");
        Assert.DoesNotContain(Mast(TowerPlan.Round(1.Meters)).Check(new Criteria(), storm).NotChecked, c => c.Id == "wind.bare");
        double square = Stages.Blow(Mast(TowerPlan.Square(1.Meters)), Stages.Wind(0)).WindForce.Newtons;
        double round = Stages.Blow(Mast(TowerPlan.Round(1.Meters)), Stages.Wind(0)).WindForce.Newtons;
        Assert.True(square > 2 * round);
    }

    [Fact]
    public void The_sheet_says_whose_coefficients_it_took()
    {
        var storm = new Situation { Name = "storm", Actions = [new SelfWeight(), Stages.Wind(0) with { LatticeRule = LatticeRule.Asce7 }] };
        CheckSheet sheet = Stages.Bare.Check(new Criteria(), storm);
        Assert.Contains(sheet.Assumptions, a => a.Subject == "force coefficient of bare lattice" && a.Source.Document.StartsWith("ASCE", StringComparison.Ordinal));
        Assert.DoesNotContain(sheet.NotChecked, c => c.Id == "wind.bare");
    }
}
