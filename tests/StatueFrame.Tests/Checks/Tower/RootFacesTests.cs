using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks;

/// <summary>Walls of tubes under the roots of limbs: a mast with an arm, and a finger on the arm.</summary>
public class RootFacesTests
{
    private const double Gravity = 9.80665, Reach = 2, Mass = 300, Mast = 0.4, Wall = 0.01, Arm = 0.2;

    private static readonly Situation weight = new() { Name = "weight", Actions = [new SelfWeight()] };

    private static Tower Tubes(string prefix, double length, double diameter, double wall) => new()
    {
        Levels = [.. Enumerable.Range(0, 3).Select(i => new TowerLevel($"{prefix}{i}", (0.5 * i * length).Meters))],
        Segments = [.. Enumerable.Repeat(new MemberSegment { Section = new Tube(diameter.Meters, wall.Meters), Material = StructuralSteel.S355, LowerJoint = new WeldedTubeJoint() }, 2)],
    };

    private static Limb ArmAt(double root, double heading = 0, double inclination = 0) => new()
    {
        Name = "arm",
        From = "t1",
        Root = new Point3((root * Math.Cos(heading * Math.PI / 180)).Meters, (root * Math.Sin(heading * Math.PI / 180)).Meters, 0.Meters),
        Heading = heading.Degrees,
        Inclination = inclination.Degrees,
        Tower = Tubes("a", Reach, Arm, 0.008),
    };

    private static Statue Of(Limb arm, double wall = Wall, double mass = Mass) => new()
    {
        Name = "mast with an arm",
        Tower = Tubes("t", 6, Mast, wall),
        Limbs = [arm],
        Fittings = [new Fitting { Name = "load", On = "arm/a2", Mass = mass.Kilograms }],
    };

    private static Check Root(Statue statue, params ReadOnlySpan<Situation> situations) =>
        statue.Check(new Criteria(), situations.IsEmpty ? [weight] : situations).Checks.Single(check => check.Id == "limbs.roots" && check.Verdict != Verdict.NotChecked);

    /// <summary>Weight on a level arm: M_ip alone, the load over its reach and the arm's own weight over half of it, from the wall; EN 1993-1-8, Table 7.5 (from memory) with n of the mast.</summary>
    [Fact]
    public void An_arm_by_hand()
    {
        Statue statue = Of(ArmAt(Mast / 2));
        double own = 7850 * Math.PI / 4 * (Arm * Arm - 0.184 * 0.184) * Reach * Gravity, M = Mass * Gravity * Reach + own * Reach / 2;
        CheckSheet sheet = statue.Check(new Criteria(), weight);
        double amplification = Math.Max(1, StatueModel.Build(statue).Respond(weight).Stability.Amplification!.Value);
        double n = sheet.Checks.Where(check => check.Id == "tower.bending").Max(check => check.Utilization!.Value), k_p = 1 - 0.3 * n * (1 + n);
        double M_R = 4.85 * 355e6 * Wall * Wall * Arm * Math.Sqrt(Mast / 2 / Wall) * 0.5 * k_p, punches = M / (Arm * Arm) / (355e6 / Math.Sqrt(3) * Wall);
        Check check = sheet.Checks.Single(c => c.Id == "limbs.roots");
        Assert.Equal(Math.Max(Math.Pow(amplification * M / M_R, 2), amplification * punches), check.Utilization!.Value, 1e-3 * check.Utilization.Value);
        Assert.Equal("root of arm on t1", check.Where);
    }

    /// <summary>The same arm, described from the mast's axis instead of its wall, with the part inside the mast as long as the tube's radius.</summary>
    [Fact]
    public void It_does_not_matter_where_the_root_is_described()
    {
        Statue fromWall = Of(ArmAt(Mast / 2)), fromAxis = Of(ArmAt(0) with
        {
            Tower = Tubes("a", Reach, Arm, 0.008) with { Levels = [new TowerLevel("a0", 0.Meters), new TowerLevel("a1", 1.2.Meters), new TowerLevel("a2", 2.2.Meters)] },
        });
        // What is inside weighs, and pulls the other way at half the radius.
        Assert.Equal(Root(fromWall).Utilization!.Value, Root(fromAxis).Utilization!.Value, 2e-3);
    }

    [Fact]
    public void Turning_all_changes_nothing() =>
        Assert.Equal(Root(Of(ArmAt(Mast / 2))).Utilization!.Value, Root(Of(ArmAt(Mast / 2, heading: 77))).Utilization!.Value, 1e-6);

    [Fact]
    public void More_load_and_a_thinner_wall_never_help()
    {
        double use = Root(Of(ArmAt(Mast / 2))).Utilization!.Value;
        Assert.True(Root(Of(ArmAt(Mast / 2), mass: 2 * Mass)).Utilization > use);
        Assert.True(Root(Of(ArmAt(Mast / 2), wall: Wall / 2)).Utilization > 1.5 * use);
        Assert.Equal(Verdict.Fail, Root(Of(ArmAt(Mast / 2), wall: 0.002, mass: 3000)).Verdict);
    }

    /// <summary>A limb on a limb stands on its wall as one on the trunk does: the same figure, laid down.</summary>
    [Fact]
    public void A_finger_on_an_arm_is_looked_at()
    {
        Statue statue = Of(ArmAt(Mast / 2));
        Limb finger = new() { Name = "finger", From = "arm/a1", Root = new Point3(0.Meters, 0.Meters, (Arm / 2).Meters), Heading = 0.Degrees, Inclination = 90.Degrees, Tower = Tubes("f", 0.5, 0.1, 0.005) };
        var push = new ImposedLoad { Name = "push", On = "finger/f2", AlongX = 2.Kilonewtons };
        CheckSheet sheet = (statue with { Limbs = [.. statue.Limbs, finger] }).Check(new Criteria(), weight with { Actions = [new SelfWeight(), push] });
        Check check = sheet.Checks.Single(c => c.Id == "limbs.roots" && c.Where == "root of finger on arm/a1");
        double n = sheet.Checks.Where(c => c.Id == "limbs.bending" && c.Where.StartsWith("arm/", StringComparison.Ordinal)).Max(c => c.Utilization!.Value), k_p = 1 - 0.3 * n * (1 + n);
        const double f = 355e6, t = 0.008, d = 0.1, M = 2000 * 0.5;
        double own = 7850 * Math.PI / 4 * (0.1 * 0.1 - 0.09 * 0.09) * 0.5 * Gravity, beta = d / Arm;
        double yields = own / (Math.Pow(Arm / 2 / t, 0.2) * k_p * f * t * t * (2.8 + 14.2 * beta * beta)) + Math.Pow(M / (4.85 * f * t * t * d * Math.Sqrt(Arm / 2 / t) * beta * k_p), 2);
        double punches = (own / (Math.PI * d) + M / (d * d)) / (f / Math.Sqrt(3) * t);
        Assert.Equal(Math.Max(yields, punches), check.Utilization!.Value, 5e-3 * check.Utilization.Value);
    }

    /// <summary>A limb on the end of a tube, or one that is a lattice, stands open.</summary>
    [Fact]
    public void What_does_not_stand_on_a_wall_is_open()
    {
        CheckSheet sheet = Of(ArmAt(0, inclination: 85) with { From = "t2" }).Check(new Criteria(), weight);
        Check open = sheet.Checks.Single(check => check.Id == "limbs.roots");
        Assert.Equal(Verdict.NotChecked, open.Verdict);
        Assert.Contains("end of the tube", open.Reason);
    }
}
