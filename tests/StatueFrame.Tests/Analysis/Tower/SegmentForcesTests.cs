using StatueFrame.Analysis;

namespace StatueFrame.Tests.Analyses;

public class SegmentForcesTests
{
    private static readonly MemberSegment mast = new() { Section = new Tube(400.Millimeters, 12.Millimeters), Material = StructuralSteel.S355 };
    private static readonly LatticeSegment panel = new() { Legs = new AngleBar(100.Millimeters, 10.Millimeters), Braces = new FlatBar(60.Millimeters, 8.Millimeters), Material = StructuralSteel.S355 };

    private static LoadCase Push(TowerSegment segment, TowerBase held)
    {
        var statue = new Statue
        {
            Name = "mast",
            Tower = new Tower
            {
                Levels = [.. new[] { 0.0, 2, 5 }.Select(z => new TowerLevel($"{z} m", z.Meters) { Plan = TowerPlan.Square(1.Meters) })],
                Segments = [segment, segment],
                Base = held,
            },
            Limbs =
            [
                new Limb
                {
                    Name = "arm", From = "5 m", Heading = 90.Degrees, Inclination = 0.Degrees, Root = Point3.FromMeters(0, 0.5, 0),
                    Tower = new Tower { Levels = [new TowerLevel("root", 0.Meters), new TowerLevel("hand", 3.Meters)], Segments = [mast] },
                },
            ],
        };
        return StatueModel.Build(statue).Respond(new Situation
        {
            Name = "push",
            Actions = [new ImposedLoad { Name = "push", On = "arm/hand", AlongX = 1000.Newtons, Down = 500.Newtons }],
        }).Cases[0];
    }

    public static IEnumerable<TheoryDataRow<TowerSegment, TowerBase>> Towers =>
    [
        new(mast, TowerBase.Fixed) { TestDisplayName = "mast, fixed" },
        new(panel, TowerBase.Fixed) { TestDisplayName = "lattice, fixed" },
        new(mast, TowerBase.Rocking(1e7.NewtonMetersPerRadian)) { TestDisplayName = "mast, rocking" },
    ];

    /// <summary>Statics by hand: 1 kN along x and 0.5 kN down at (0, 3.5, 5), seen from each cut.</summary>
    [Theory, MemberData(nameof(Towers))]
    public void Cuts_carry_what_lies_beyond_them(TowerSegment segment, TowerBase held)
    {
        SegmentForces[] all = [.. Push(segment, held).Segments()];
        SectionForce bottom = all[0].Bottom, middle = all[0].Top, above = all[1].Bottom, root = all[2].Bottom;
        Equal(1000, bottom.ShearX.Newtons);
        Equal(-500, bottom.Axial.Newtons);
        Equal(-3.5 * 500, bottom.MomentX.NewtonMeters);
        Equal(5 * 1000, bottom.MomentY.NewtonMeters);
        Equal(-3.5 * 1000, bottom.Torsion.NewtonMeters);
        Equal(3 * 1000, middle.MomentY.NewtonMeters);
        Equal(middle.MomentY.NewtonMeters, above.MomentY.NewtonMeters);
        Equal(middle.Torsion.NewtonMeters, above.Torsion.NewtonMeters);
        // The arm's own axes: z along +y, y along −x, x down.
        Equal(0, root.Axial.Newtons);
        Equal(500, root.ShearX.Newtons);
        Equal(-1000, root.ShearY.Newtons);
        Equal(3 * 1000, root.MomentX.NewtonMeters);
        Equal(3 * 500, root.MomentY.NewtonMeters);
        SectionForce hand = all[2].Top;
        Equal(0, hand.MomentX.NewtonMeters);
        Equal(0, hand.MomentY.NewtonMeters);

        static void Equal(double expected, double actual) => Assert.Equal(expected, actual, 1e-3);
    }
}
