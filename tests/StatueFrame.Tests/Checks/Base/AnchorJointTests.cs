using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Base;

public class AnchorJointTests
{
    private static AnchorJoint Joint(double kb, double kc, double P) => new()
    {
        BarStiffness = kb.NewtonsPerMeter,
        ClampStiffness = kc.NewtonsPerMeter,
        PreTension = P.Newtons,
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("member stiffness, two frusta, D = 1.5 d, d = 0.5 in, l = 1.5 in, E = 30 Mpsi", "Shigley's Mechanical Engineering Design, 0.5774 π E d/(2 ln(5(0.5774 l + 0.5 d)/(0.5774 l + 2.5 d))), from memory",
            0.5774 * Math.PI * 30e6 * 0.5 / (2 * Math.Log(5 * (0.5774 * 1.5 + 0.25) / (0.5774 * 1.5 + 1.25))), "lbf/in", 1e-4, () =>
            {
                ForcePerLength half = JointStiffness.Frustum((30e6).PoundsForcePerSquareInch, Length.FromInches(0.5), Length.FromInches(0.75), Length.FromInches(0.75), 30.Degrees);
                return JointStiffness.Series(half, half).KilopoundsForcePerInch * 1000;
            }, ValueKind.FromMemory),
        new("separation load over pre-tension, k_c = 3 k_b", "joint diagram, by hand: 1/(1 − Φ), Φ = 1/4", 4.0 / 3, "-", 1e-12, () => Joint(1, 3, 100).SeparationLoad.Newtons / 100, ValueKind.IndependentComputation),
        new("load factor of a joint with member three times as stiff as bolt", "closed form k_b/(k_b + k_m) = 1/4", 0.25, "-", 1e-12, () => Joint(7, 21, 1).LoadFactor, ValueKind.IndependentComputation),
        new("relaxation, class 2, ρ₁₀₀₀ = 2.5 %, μ = 0.7, final", "EN 1992-1-1:2004, 3.3.2 (3.29), by hand", 0.66 * 2.5 * Math.Exp(6.37) * Math.Pow(500, 0.225) * 1e-5, "-", 1e-9, () => Relaxation.Class2(0.025, 0.7), ValueKind.FromMemory),
    ];

    private static readonly Gen<(double kb, double kc, double P, double F)> joints = Gen.Select(Gen.Double[1, 10], Gen.Double[1, 100], Gen.Double[0, 50], Gen.Double[-100, 100]);

    [Fact]
    public void Bar_and_clamp_balance_the_pull() => joints.Sample(j =>
    {
        AnchorJoint joint = Joint(j.kb, j.kc, j.P);
        double bar = joint.BarForce(j.F.Newtons).Newtons, clamp = joint.ClampForce(j.F.Newtons).Newtons;
        Assert.Equal(j.F, bar - clamp, 1e-9);
        Assert.True(clamp >= -1e-9 && bar >= 0);
        if (j.F > joint.SeparationLoad.Newtons)
            Assert.Equal(j.F, bar, 1e-9);
    });

    [Fact]
    public void Force_in_the_bar_has_no_jump_at_separation() => joints.Sample(j =>
    {
        AnchorJoint joint = Joint(j.kb, j.kc, j.P);
        double at = joint.SeparationLoad.Newtons;
        Assert.Equal(joint.BarForce((at - 1e-6).Newtons).Newtons, joint.BarForce((at + 1e-6).Newtons).Newtons, 1e-5);
    });

    /// <summary>The two springs stepped through creep: the clamped part shortens by φP/k_c while P falls; with χ = 1/2 the mean force counts.</summary>
    [Fact]
    public void Creep_loss_agrees_with_small_steps() => Gen.Select(Gen.Double[1, 10], Gen.Double[1, 100], Gen.Double[0, 0.5]).Sample((kb, kc, phi) =>
    {
        double P = 100;
        for (int i = 0; i < 10_000; i++)
            P -= phi / 10_000 * P / kc / (1 / kb + 1 / kc);
        Assert.Equal(P, Joint(kb, kc, 100).AfterCreep(phi, 0.5).PreTension.Newtons, 1.1);
    }, iter: 20);

    [Fact]
    public void Setting_takes_pre_tension_by_both_springs_in_series() =>
        Assert.Equal(100 - 2 * (3 * 6 / 9.0), Joint(3, 6, 100).AfterSetting(2.Meters).PreTension.Newtons, 1e-9);

    [Fact]
    public void Separation_fails_above_its_load()
    {
        Assert.Equal(Verdict.Pass, Joint(1, 3, 100).Separation(133.Newtons).Verdict);
        Assert.Equal(Verdict.Fail, Joint(1, 3, 100).Separation(134.Newtons).Verdict);
    }
}
