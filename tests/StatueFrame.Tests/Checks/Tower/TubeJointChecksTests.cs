using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Members;

public class TubeJointChecksTests
{
    private static readonly BarDesign en = BarDesign.For(StructuralSteel.S355), lrfd = BarDesign.For(StructuralSteel.S355, DesignCode.AiscLrfd);

    private static readonly FlangeJoint flange = new()
    {
        Bolt = new Bolt { Diameter = 24.Millimeters, Grade = BoltGrade.Class88 },
        Count = 16,
        BoltCircle = 500.Millimeters,
        OuterDiameter = 580.Millimeters,
        Thickness = 30.Millimeters,
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("pull on a bolt of a flange, M 100 kNm, N 0, 16 bolts, wall at 400 mm", "by hand: F = 4M/(n d), thin ring", 62.5, "kN", 1e-12, () => FlangePull(100, 0), ValueKind.IndependentComputation),
        new("pull on a bolt of a flange, M 100 kNm, 400 kN pressing", "by hand: F = 4M/(n d) + N/n, thin ring", 37.5, "kN", 1e-12, () => FlangePull(100, -400), ValueKind.IndependentComputation),
        new("tension resistance of an M24 8.8 bolt", "EN 1993-1-8:2005, Table 3.4: 0.9·800·353/1.25, as in published bolt tables", 203, "kN", 3e-3, () => 1e-3 * BoltStrength.Tension(null, flange.Bolt, en), ValueKind.FromMemory),
        new("a butt weld of full penetration uses the yield strength of the tube", "EN 1993-1-8:2005, 4.7.1 (1)", 1, "-", 1e-12, ButtWeldAtYield, ValueKind.FromMemory),
        new("von Mises stress of a fillet's throat in shear, at f_u/(√3 β_w γ_M2)", "EN 1993-1-8:2005, 4.5.3.3: S355, β_w 0.9: 241 MPa with f_u 470", 241.2, "MPa", 1e-3, FilletStrength, ValueKind.FromMemory),
    ];

    [Fact]
    public void Strength_of_a_flange_is_the_greatest_pull_that_its_plate_and_bolt_can_balance() =>
        Gen.Select(Gen.Double[4, 60], Gen.Double[8, 30], Gen.Double[40, 100], Gen.Double[30, 80], Gen.Int[6, 24]).Sample((thickness, wall, out1, out2, count) =>
        {
            FlangeJoint joint = flange with { Thickness = thickness.Millimeters, Count = count, BoltCircle = (414 + 2 * out1).Millimeters, OuterDiameter = (414 + 2 * out1 + 2 * out2).Millimeters };
            var member = Member(new Tube(414.Millimeters, wall.Millimeters), moment: 1);
            double f = 355e6, t = wall / 1e3, t_f = thickness / 1e3, d = 0.414 - t, m = out1 / 1e3, e = Math.Min(out2 / 1e3, 1.25 * m);
            double wallHinge = f * Math.PI * d / count * Math.Pow(Math.Min(t, t_f), 2) / 4, boltHinge = f * (Math.PI * joint.BoltCircle.Meters / count - 0.026) * t_f * t_f / 4;
            double bolt = BoltStrength.Tension(null, joint.Bolt, en), best = 0;
            // Lower bound theorem: any prying force Q that breaks no limit is safe; the best of them is the strength.
            for (int i = 0; i <= 20000; i++)
            {
                double Q = i / 20000.0 * Math.Min(bolt, boltHinge / e);
                best = Math.Max(best, Math.Min(bolt - Q, (wallHinge + Q * e) / m));
            }
            double pull = 4.0 / (count * d) * 1e3, shearless = TubeJointChecks.Utilization(null, member, joint, en);
            return Math.Abs(shearless / (pull / best) - 1) < 1e-3;
        }, iter: 200);

    [Fact]
    public void More_of_anything_is_never_safer() =>
        Gen.Select(Gen.Double[0, 300], Gen.Double[0, 200], Gen.Double[0, 100], Gen.Double[0, 500], Gen.Double[1, 3], Gen.Bool).Sample((moment, shear, torsion, pull, more, welded) =>
        {
            TubeJoint joint = welded ? new WeldedTubeJoint { Throat = 8.Millimeters } : flange;
            double before = Use(moment, shear, torsion, pull), tolerance = 1 + 1e-12;
            return Use(more * moment, shear, torsion, pull) * tolerance >= before && Use(moment, more * shear, torsion, pull) * tolerance >= before
                && Use(moment, shear, more * torsion, pull) * tolerance >= before && Use(moment, shear, torsion, more * pull) * tolerance >= before;

            double Use(double M, double V, double T, double N) => TubeJointChecks.Utilization(null, Member(new Tube(414.Millimeters, 14.Millimeters), M, V, T, N), joint, lrfd);
        });

    [Fact]
    public void Contact_carries_compression_of_a_flange() =>
        Assert.Equal(0, TubeJointChecks.Joint(Member(new Tube(414.Millimeters, 14.Millimeters), moment: 1, axial: -1000), flange, en).Utilization);

    [Fact]
    public void What_no_rule_covers_is_not_checked()
    {
        Check solid = TubeJointChecks.Joint(Member(new Tube(414.Millimeters, 14.Millimeters), moment: 1) with { Section = new RoundBar(414.Millimeters) }, flange, en);
        Assert.Equal(Verdict.NotChecked, solid.Verdict);
        Check copper = TubeJointChecks.Joint(Member(new Tube(414.Millimeters, 14.Millimeters), moment: 1), flange, en with { Code = DesignCode.AllowableStress });
        Assert.Equal(Verdict.NotChecked, copper.Verdict);
    }

    [Fact]
    public void A_flange_inside_its_tube_is_refused()
    {
        var e = Assert.Throws<InvalidStatueException>(() => TubeJointChecks.Joint(Member(new Tube(490.Millimeters, 14.Millimeters), moment: 1), flange, en));
        Assert.Contains("BoltCircle", e.Message, StringComparison.Ordinal);
    }

    private static LoadedMember Member(Tube tube, double moment, double shear = 0, double torsion = 0, double axial = 0) => new()
    {
        Section = tube,
        Material = StructuralSteel.S355,
        Length = 1.Meters,
        StrongMoment = Torque.FromKilonewtonMeters(moment),
        Shear = shear.Kilonewtons,
        Torsion = Torque.FromKilonewtonMeters(torsion),
        Axial = axial.Kilonewtons,
    };

    private static double FlangePull(double moment, double axial)
    {
        // So thick a flange and wall that the bolt alone decides.
        FlangeJoint thick = flange with { Thickness = 200.Millimeters };
        return 1e-3 * BoltStrength.Tension(null, thick.Bolt, en) * TubeJointChecks.Utilization(null, Member(new Tube(450.Millimeters, 50.Millimeters), moment, axial: axial), thick, en);
    }

    private static double ButtWeldAtYield()
    {
        var tube = new Tube(414.Millimeters, 14.Millimeters);
        double force = Math.PI * 0.4 * 0.014 * 355e6;
        return TubeJointChecks.Utilization(null, Member(tube, 0, axial: force / 1e3), new WeldedTubeJoint(), en);
    }

    private static double FilletStrength()
    {
        double throat = 0.006, force = 1e6, stress = force / (Math.PI * 0.414 * throat);
        var weld = new WeldedTubeJoint { Throat = 6.Millimeters, CorrelationFactor = 0.9 };
        Material steel = StructuralSteel.S355 with { UltimateStrength = 470.Megapascals };
        return 1e-6 * stress / TubeJointChecks.Utilization(null, Member(new Tube(414.Millimeters, 14.Millimeters), 0, axial: force / 1e3) with { Material = steel }, weld, en);
    }
}
