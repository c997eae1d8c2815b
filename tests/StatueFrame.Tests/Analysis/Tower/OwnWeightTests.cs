using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Tests.Analysis;

/// <summary>What a tube weighs between its levels is in the forces at its ends.</summary>
public class OwnWeightTests
{
    private const double Gravity = 9.80665;

    private static readonly Situation weight = new() { Name = "weight", Actions = [1.35 * new SelfWeight()] };

    private static Statue Of(double length, double lower, double upper, double inclination) => new()
    {
        Name = "mast with an arm",
        Tower = new Tower { Levels = [new TowerLevel("base", 0.Meters), new TowerLevel("top", 3.Meters)], Segments = [new MemberSegment { Section = new Tube(400.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 }] },
        Limbs =
        [
            new Limb
            {
                Name = "arm", From = "top", Heading = 25.Degrees, Inclination = inclination.Degrees,
                Tower = new Tower
                {
                    Levels = [new TowerLevel("root", 0.Meters), new TowerLevel("tip", length.Meters)],
                    Segments = [new MemberSegment { Section = new Tube(lower.Meters, 10.Millimeters), TopSection = new Tube(upper.Meters, 10.Millimeters), Material = StructuralSteel.S355 }],
                },
            },
        ],
    };

    /// <summary>An arm in one piece: w L²/2 and w L at its root, nothing at its tip.</summary>
    [Fact]
    public void A_level_arm_in_one_piece_carries_itself_to_its_root()
    {
        SegmentForces arm = StatueModel.Build(Of(4, 0.2, 0.2, 0)).Respond(weight).Cases[0].Segments()[1];
        double w = 1.35 * 7850 * Gravity * Math.PI / 4 * (0.2 * 0.2 - 0.18 * 0.18);
        Assert.Equal(w * 4, double.Hypot(arm.Bottom.ShearX.Newtons, arm.Bottom.ShearY.Newtons), 1e-6 * w);
        Assert.Equal(w * 8, double.Hypot(arm.Bottom.MomentX.NewtonMeters, arm.Bottom.MomentY.NewtonMeters), 1e-6 * w);
        Assert.Equal(0, arm.Top.Forces.Length, 1e-6 * w);
        Assert.Equal(0, arm.Top.Moments.Length, 1e-6 * w);
    }

    /// <summary>Tapered, at any slope: what the root carries is the weight of the arm at its center of mass; the same at the foot of the mast.</summary>
    [Fact]
    public void Cuts_carry_what_is_beyond_them() => Gen.Select(Gen.Double[0.5, 8], Gen.Double[0.1, 0.4], Gen.Double[0.1, 0.4], Gen.Double[-80, 80]).Sample((length, lower, upper, inclination) =>
    {
        StatueModel model = StatueModel.Build(Of(length, lower, upper, inclination));
        LoadCase loadCase = model.Respond(weight).Cases[0];
        IReadOnlyList<SegmentForces> cuts = loadCase.Segments();
        SegmentModel mast = model.Bodies[0].Segments[0], arm = model.Bodies[1].Segments[0];
        Vector3D force = new(0, 0, -1.35 * Gravity * arm.Mass), moment = (arm.CenterOfMass - new Vector3D(0, 0, 3)).Cross(force);
        Near(force, model.Bodies[1].Axes.Axes.ToGlobal(cuts[1].Bottom.Forces));
        Near(moment, model.Bodies[1].Axes.Axes.ToGlobal(cuts[1].Bottom.Moments));
        Near(Vector3D.Zero, cuts[1].Top.Forces);
        Near(Vector3D.Zero, cuts[1].Top.Moments);
        Near(force, cuts[0].Top.Forces);
        Near(force + new Vector3D(0, 0, -1.35 * Gravity * mast.Mass), cuts[0].Bottom.Forces);
        Near(moment, cuts[0].Bottom.Moments);
        Assert.Equal(-loadCase.Base.ForceZ.Newtons, -cuts[0].Bottom.Axial.Newtons, 1e-6 * force.Length);

        void Near(Vector3D expected, Vector3D actual) => Assert.True((expected - actual).Length <= 1e-6 * force.Length * Math.Max(1, length), $"{expected} and {actual}");
    });

    /// <summary>
    /// A bare lattice of six bays in one segment against the same in three: what wind and weight do bay by bay does not depend on how many levels
    /// are described, but for levels that are stiffer in plan than the horizontals between bays.
    /// </summary>
    [Fact]
    public void Bays_carry_what_is_above_them()
    {
        const int bays = 6;
        Statue Lattice(int segments) => new()
        {
            Name = "bare",
            Tower = new Tower
            {
                Levels = [.. Enumerable.Range(0, segments + 1).Select(i => new TowerLevel($"L{i}", (12.0 * i / segments).Meters) { Plan = TowerPlan.Square(2.Meters) })],
                Segments =
                [
                    .. Enumerable.Repeat(new LatticeSegment
                    {
                        Legs = new AngleBar(100.Millimeters, 10.Millimeters), Braces = new FlatBar(60.Millimeters, 10.Millimeters), Horizontals = new FlatBar(60.Millimeters, 10.Millimeters), Material = StructuralSteel.S355, Bays = bays / segments,
                    }, segments),
                ],
            },
        };
        var calm = new Situation { Name = "calm", Actions = [new SelfWeight()] };
        Situation storm = calm with { Actions = [new WindAction { Profile = new En1991Wind { FundamentalVelocity = 30.MetersPerSecond, Terrain = TerrainCategory.II }, GustEffectFactor = 1, Headings = [0.Degrees] }] };
        (LoadCase, LoadCase) Both(Situation situation) => (StatueModel.Build(Lattice(1)).Respond(situation).Cases[0], StatueModel.Build(Lattice(bays / 2)).Respond(situation).Cases[0]);
        (LoadCase one, LoadCase three) = Both(storm);
        // One has horizontals between its bays, which weigh and catch wind: all over what acts in all.
        Compare(one, three, loadCase => loadCase.Base.Overturning.NewtonMeters, "leg");
        Compare(one, three, loadCase => loadCase.WindForce.Newtons, "brace");
        (one, three) = Both(calm);
        Compare(one, three, loadCase => loadCase.Base.ForceZ.Newtons, "leg");

        static void Compare(LoadCase one, LoadCase three, Func<LoadCase, double> all, string kind)
        {
            for (int bay = 1; bay <= bays; bay++)
            {
                double scale = Math.Abs(all(one)), most = Greatest(one.LatticeMembers().Where(m => m.Member.EndsWith($"bay {bay}", StringComparison.Ordinal))) / scale;
                double expected = Greatest(three.LatticeMembers().Where(m => m.Segment == $"L{(bay - 1) / 2}–L{(bay + 1) / 2}" && m.Member.EndsWith($"bay {2 - bay % 2}", StringComparison.Ordinal))) / Math.Abs(all(three)), first = Greatest(three.LatticeMembers()) / Math.Abs(all(three));
                Assert.True(Math.Abs(most - expected) < 0.06 * first, $"{kind}, bay {bay}: {most} and {expected}");
            }

            double Greatest(IEnumerable<MemberForce> members) => members.Where(m => m.Member.StartsWith(kind, StringComparison.Ordinal)).Max(m => Math.Abs(m.Axial.Newtons));
        }
    }
}
