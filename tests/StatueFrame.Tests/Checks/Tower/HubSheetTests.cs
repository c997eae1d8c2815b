using CsCheck;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;

namespace StatueFrame.Tests.Checks.Members;

/// <summary>The arms that hand the forces of a tube or a limb to the legs of a lattice.</summary>
public class HubSheetTests
{
    private static readonly Hub stout = new() { Arms = new RectangularTube(300.Millimeters, 300.Millimeters, 16.Millimeters), Material = StructuralSteel.S355, Throat = 8.Millimeters };

    private static CheckSheet Sheet(Hub? hub)
    {
        SmallStatue whole = SmallWhole.Of();
        Statue statue = whole.Statue with { Tower = whole.Statue.Tower with { Levels = [.. whole.Statue.Tower.Levels.Select(level => level.Name == "mid" ? level with { Hub = hub } : level)] } };
        return statue.Check(whole.Criteria, whole.Situations);
    }

    private static double Use(CheckSheet sheet, string id) => sheet.Checks.Where(check => check.Id == id).Max(check => check.Utilization)!.Value;

    [Fact]
    public void Shares_of_legs_are_in_equilibrium_with_the_hub() =>
        Gen.Select(Gen.Double[0.3, 2], Gen.Double[0.3, 2], Gen.Double[-0.2, 0.2], Gen.Double[-1, 1].Array[6]).Sample((a, b, off, f) =>
        {
            HubSheet.Arm[] arms = [.. new[] { (a, b), (-a, b + off), (-a, -b), (a + off, -b) }.Select(leg => new HubSheet.Arm(new(leg.Item1, leg.Item2, 0), Vector3D.Zero, new(leg.Item1, leg.Item2, 0)))];
            Vector3D force = new(f[0], f[1], f[2]), moment = new(f[3], f[4], f[5]), F = Vector3D.Zero, M = Vector3D.Zero;
            Vector3D[] shares = HubSheet.Share(arms, force, moment);
            for (int i = 0; i < arms.Length; i++)
                (F, M) = (F + shares[i], M + arms[i].At.Cross(shares[i]));
            Assert.True((F - force).Length < 1e-12);
            Assert.True((M - moment).Length < 1e-12);
        });

    /// <summary>Arms as beams of the kernel from a node in the middle, each from the wall of the tube to a hinge at its leg.</summary>
    [Fact]
    public void Turn_and_shares_agree_with_a_frame_of_beams()
    {
        const double half = 0.6, radius = 0.2, M = 1e4;
        SectionProperties p = stout.Arms.Properties;
        double E = stout.Material.YoungsModulus.Pascals;
        var section = new BeamSection { EA = 1e13, EIy = E * p.Iy, EIz = E * p.Iz, GJ = 1e-3, GAy = double.PositiveInfinity, GAz = double.PositiveInfinity, Mass = 1 };
        var builder = new FrameBuilder();
        builder.AddNode(Vector3D.Zero, "hub");
        Vector3D[] legs = [new(half, half, 0), new(-half, half, 0), new(-half, -half, 0), new(half, -half, 0)];
        foreach (Vector3D leg in legs)
        {
            int node = builder.AddNode(leg, $"leg {leg}");
            builder.Restrain(node, Freedoms.Displacements);
            builder.Add(new BeamElement(0, Vector3D.Zero, node, leg, new BeamDefinition(section) { StartOffset = radius * leg.Normalized() }));
        }
        Frame frame = builder.Build();
        var loads = new double[frame.FreedomCount];
        loads[3] = M;
        double[] u = new LinearStatics(frame).Solve(loads), reactions = Equilibrium.Reactions(frame, u, loads);
        double L = half * Math.Sqrt(2) - radius, k = 4 * 3 * E * p.Iy / Math.Pow(L, 3) * half * half;
        Assert.Equal(M / k, u[3], 1e-6 * u[3]);
        HubSheet.Arm[] arms = [.. legs.Select(leg => new HubSheet.Arm(leg, radius * leg.Normalized(), leg))];
        Vector3D[] shares = HubSheet.Share(arms, Vector3D.Zero, new(M, 0, 0));
        for (int i = 0; i < 4; i++)
            Assert.Equal(-reactions[6 * (i + 1) + 2], shares[i].Z, 1e-6 * M);
    }

    [Fact]
    public void A_transition_is_open_until_a_hub_with_welds_holds_it()
    {
        PathLink Transition(Hub? hub) => Assert.Single(Sheet(hub).LoadPath, link => link.What.StartsWith("transition", StringComparison.Ordinal));
        Assert.Equal(LinkState.Open, Transition(null).State);
        Assert.Equal(LinkState.Open, Transition(stout with { Throat = null }).State);
        Assert.Equal(LinkState.Holds, Transition(stout).State);
        Assert.Equal(LinkState.Fails, Transition(stout with { Arms = new RectangularTube(60.Millimeters, 60.Millimeters, 3.Millimeters) }).State);
    }

    [Fact]
    public void A_weaker_hub_never_helps()
    {
        CheckSheet whole = Sheet(stout), thin = Sheet(stout with { Arms = new RectangularTube(180.Millimeters, 180.Millimeters, 8.Millimeters) }), weld = Sheet(stout with { Throat = 4.Millimeters });
        foreach (string id in (string[])["hubs.bending", "hubs.welds", "hubs.stiffness"])
            Assert.True(Use(thin, id) > Use(whole, id), id);
        Assert.Equal(2 * Use(whole, "hubs.welds"), Use(weld, "hubs.welds"), 1e-9);
    }

    [Fact]
    public void Its_arms_weigh_what_they_are()
    {
        double Total(Hub? hub) => Sheet(hub).Results.Single(line => line.Group == "masses" && line.Name == "total").Value;
        double side = SmallWhole.Of().Statue.Tower.Levels.Single(level => level.Name == "mid").Legs[0].X * 2;
        double expected = stout.Material.Density.KilogramsPerCubicMeter * stout.Arms.Area.SquareMeters * 2 * Math.Sqrt(2) * side;
        Assert.Equal(expected, Total(stout) - Total(null), 1e-6);
    }

    [Fact]
    public void A_hub_without_legs_is_a_problem()
    {
        SmallStatue whole = SmallWhole.Of();
        Statue statue = whole.Statue with { Tower = whole.Statue.Tower with { Levels = [.. whole.Statue.Tower.Levels.Select(level => level.Plan is null ? level with { Hub = stout } : level)] } };
        Assert.Contains(statue.FindProblems(), problem => problem.Path.EndsWith("Hub", StringComparison.Ordinal));
    }
}
