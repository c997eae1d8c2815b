using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Works.Tests.Moving;

public class PiecePlanTests
{
    private static readonly PieceLimits Truck = new() { Length = 8.Meters, Width = 7.Meters, GreatestMass = 12.Tonnes };

    private static readonly PiecePlan Plan = PiecePlan.Of(Heron.Statue, Truck);

    /// <summary>A uniform tube of 10 m in one piece, lifted without dynamics or factors.</summary>
    private static readonly PieceLift Beam = PieceLift.Of(PiecePlan.Of(Heron.Tube(5, 2), new PieceLimits { Length = 20.Meters, Width = 2.Meters, GreatestMass = 20.Tonnes }).Pieces[0],
        new LiftOptions { WeightFactor = 1, HoistingSpeed = Speed.Zero, Crane = HoistingClass.HC1, Uncertainty = 1 });

    private static double Load => 1.05 * 9.80665 * Beam.Piece.Mass.Kilograms / 10;

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("uniform beam turned upright by a sling at 0.793 of its length: greatest moment over wL²", "closed form R²/2 with R = 1 − 0.5/0.793", Math.Pow(1 - 0.5 / 0.793, 2) / 2, "-", 1e-9, () => Beam.Moment.NewtonMeters / (Load * 100), ValueKind.IndependentComputation),
        new("the same: greatest shear over wL", "closed form 0.793 − R below the sling", 0.793 - (1 - 0.5 / 0.793), "-", 1e-9, () => Beam.Shear.Newtons / (Load * 10), ValueKind.IndependentComputation),
        new("the same, lifted level: sling force over weight at 60°", "closed form 1/(2 sin 60°)", 1 / (2 * Math.Sin(Math.PI / 3)), "-", 1e-9, () => Beam.Sling.Newtons / (10 * Load), ValueKind.IndependentComputation),
        new("hoisting class HC3 at 0.5 m/s: dynamic factor", "EN 1991-3:2006, Tables 2.4 and 2.5", 1.15 + 0.51 * 0.5, "-", 1e-9, () => new LiftOptions { Crane = HoistingClass.HC3, HoistingSpeed = 0.5.MetersPerSecond }.DynamicFactor, ValueKind.FromMemory),
        new("square of four legs 2 m apart: moment over greatest leg force, worst direction", "closed form d√2", 2 * Math.Sqrt(2), "m", 1e-9, () => Arm(TowerPlan.Square(2.Meters)), ValueKind.IndependentComputation),
    ];

    private static double Arm(TowerPlan plan) => PiecePlan.Of(Lattice(plan), Truck).Pieces[0].Arms[0];

    private static Statue Lattice(TowerPlan plan, double leg = 0.1) => new()
    {
        Name = "lattice",
        Tower = new Tower
        {
            Levels = [.. Enumerable.Range(0, 5).Select(i => new TowerLevel($"L{i}", (1.5 * i).Meters) { Plan = plan })],
            Segments = [.. Enumerable.Range(0, 4).Select(_ => new LatticeSegment { Legs = new AngleBar(leg.Meters, 10.Millimeters), Braces = new AngleBar(60.Millimeters, 6.Millimeters), Material = StructuralSteel.S355 })],
        },
    };

    [Fact]
    public void Pieces_are_all_of_tower_and_limbs_and_keep_to_their_limits()
    {
        MassSummary masses = Heron.Model.Masses;
        double structure = Heron.Model.Segments.Sum(s => s.Mass + s.JointMass) + Heron.Model.Bodies.SelectMany(b => b.FrameMasses).Sum(m => m.Mass) + masses.Of(MassGroup.Brackets).Kilograms;
        Assert.Equal(structure, Plan.Pieces.Sum(p => p.Mass.Kilograms), 1e-6);
        Assert.Equal(Heron.Model.Segments.Length, Plan.Pieces.Sum(p => p.Segments.Count));
        Assert.All(Plan.Pieces, p => Assert.True(p.Length <= Truck.Length && p.Mass <= Truck.GreatestMass && p.Center > Length.Zero && p.Center < p.Length));
        Assert.Equal("wing/root to W4", Plan.Pieces[^1].Name);
    }

    [Fact]
    public void The_lifted_Heron_holds_and_every_segment_is_looked_at()
    {
        foreach (TowerPiece piece in Plan.Pieces)
        {
            PieceLift lift = PieceLift.Of(piece);
            Assert.All(piece.Segments, s => Assert.Contains(lift.Checks, c => c.Where.StartsWith(s, StringComparison.Ordinal)));
            Assert.All(lift.Checks, c => Assert.Equal(Verdict.Pass, c.Verdict));
            // Nobody said how it is lifted, and the checks say that.
            Assert.All(lift.Checks, c => Assert.Contains(c.AssumedInputs, a => a.Contains("HC2")));
            Assert.All(PieceLift.Of(piece, new LiftOptions()).Checks, c => Assert.DoesNotContain(c.AssumedInputs, a => a.Contains("HC2")));
        }
    }

    [Fact]
    public void A_thinner_wall_a_flatter_sling_and_a_harder_crane_never_help()
    {
        TowerPiece thick = Tube(0.014), thin = Tube(0.008);
        Assert.True(Worst(thin, new LiftOptions()) > Worst(thick, new LiftOptions()));
        Assert.True(Worst(thick, new LiftOptions { SlingAngle = 35.Degrees }) > Worst(thick, new LiftOptions()));
        Assert.True(Worst(thick, new LiftOptions { Crane = HoistingClass.HC4 }) > Worst(thick, new LiftOptions { Crane = HoistingClass.HC1 }));

        static TowerPiece Tube(double wall) => PiecePlan.Of(Heron.Tube(6, 5, wall), new PieceLimits { Length = 40.Meters, Width = 2.Meters, GreatestMass = 50.Tonnes }).Pieces[0];
        static double Worst(TowerPiece piece, LiftOptions options) => PieceLift.Of(piece, options).Checks.Where(c => c.Situation == "lifted level").Max(c => c.Utilization!.Value);
    }

    [Fact]
    public void A_core_of_stiffnesses_alone_is_not_passed()
    {
        Statue core = Heron.Tube(2, 2) with
        {
            Tower = Heron.Tube(2, 2).Tower with
            {
                Segments = [.. Enumerable.Range(0, 2).Select(_ => new CoreSegment { BendingX = Rigidity.FromNewtonSquareMeters(1e8), BendingY = Rigidity.FromNewtonSquareMeters(1e8), Torsion = Rigidity.FromNewtonSquareMeters(1e8), Axial = Force.FromNewtons(1e9), Mass = LinearDensity.FromKilogramsPerMeter(100) })],
            },
        };
        Assert.All(PieceLift.Of(PiecePlan.Of(core, Truck).Pieces[0]).Checks, c => Assert.Equal(Verdict.NotChecked, c.Verdict));
    }

    [Fact]
    public void A_segment_larger_than_the_truck_is_named() =>
        Assert.Contains("L8–L9", Assert.Throws<InvalidStatueException>(() => PiecePlan.Of(Heron.Statue, Truck with { Width = 2.Meters })).Message);
}
