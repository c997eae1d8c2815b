using CsCheck;
using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Tests.Analysis;

/// <summary>The buckling factor of a mast whose arm is joined by springs.</summary>
public class JointBucklingTests
{
    private static readonly Situation weight = new() { Name = "weight", Actions = [new SelfWeight()] };

    /// <summary>A stiff spring in one direction, the others rigid, buckles as the arm that is held: no factor is lost, however thin the tubes.</summary>
    [Fact]
    public void A_stiff_joint_buckles_as_a_rigid_one() =>
        Gen.Select(Gen.Int[2, 25], Gen.Double[1.7, 3], Gen.Double[4, 20], Gen.Double[0.5, 6], Gen.Double[1, 4.5], Gen.Int[0, 3]).Sample(
            (segments, diameter, height, arm, load, direction) =>
            {
                Statue Mast(TowerBase joint) => Of(segments, Math.Pow(10, diameter), height, arm, Math.Pow(10, load), joint);
                double fixedArm = FactorOf(Mast(TowerBase.Fixed)), sprung = FactorOf(Mast(Stiff(direction)));
                Assert.Equal(fixedArm, sprung, 1e-3 * fixedArm);
            }, iter: 60);

    [Fact]
    public void A_weak_joint_buckles_sooner()
    {
        double At(double k) => FactorOf(Of(12, 150, 12, 4, 2000, TowerBase.Rocking(RotationalStiffness.FromNewtonMetersPerRadian(k))));
        Assert.True(At(1e4) < At(1e5) && At(1e5) < At(1e6) && At(1e6) < At(1e8));
    }

    private static double FactorOf(Statue mast)
    {
        Stability stability = StatueModel.Build(mast).Respond(weight).Stability;
        // Far above the loads nothing is looked for, with springs or without.
        return stability.IsLost ? double.NaN : stability.BucklingFactor ?? Stability.GreatestFactor;
    }

    private static TowerBase Stiff(int direction) => direction switch
    {
        0 => TowerBase.Rocking(RotationalStiffness.FromNewtonMetersPerRadian(1e12)),
        1 => new TowerBase { RotationZ = RotationalStiffness.FromNewtonMetersPerRadian(1e10) },
        2 => new TowerBase { Z = ForcePerLength.FromNewtonsPerMeter(1e12) },
        _ => new TowerBase { X = ForcePerLength.FromNewtonsPerMeter(1e12), RotationX = RotationalStiffness.FromNewtonMetersPerRadian(1e11) },
    };

    private static Statue Of(int segments, double diameter, double height, double arm, double load, TowerBase joint)
    {
        Tower Tube(string prefix, double length) => new()
        {
            Levels = [.. Enumerable.Range(0, segments + 1).Select(i => new TowerLevel($"{prefix}{i}", (length * i / segments).Meters))],
            Segments = [.. Enumerable.Repeat(new MemberSegment { Section = new Tube(diameter.Millimeters, (diameter / 18).Millimeters), Material = StructuralSteel.S355 }, segments)],
        };
        return new Statue
        {
            Name = "mast with an arm",
            Tower = Tube("t", height),
            Limbs = [new Limb { Name = "arm", From = $"t{segments / 2}", Heading = 30.Degrees, Inclination = 20.Degrees, Tower = Tube("a", arm) with { Base = joint } }],
            Fittings = [new Fitting { Name = "load", On = $"arm/a{segments}", Mass = load.Kilograms }, new Fitting { Name = "lamp", On = $"t{segments}", Mass = (load / 4).Kilograms }],
        };
    }
}
