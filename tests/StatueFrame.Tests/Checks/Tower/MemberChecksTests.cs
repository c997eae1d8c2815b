using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Members;

public class MemberChecksTests
{
    private const double Inch = 0.0254, Ksi = 6.894757293e6, Kip = 4448.2216;
    private const string Manual = "AISC Steel Construction Manual, 14th ed., Table 4-22, available critical stress for F_y = 50 ksi";
    private const string Scan = "AISC Steel Construction Manual, 14th ed., Table 4-22, second hand";
    private const string Lrfd2 = "AISC Manual of Steel Construction LRFD, 2nd ed., Table 3-36, F_y = 36 ksi, φ = 0.85, as reproduced (pdfslide.tips)";
    private const string Chs = "printed capacity check of a tube 76×2, S355, 10 m, to EN 1993-1-1, second hand";
    private const string F9 = "AISC Design Examples 14.0, F.9: pipe 8 x-strong, 35 ksi, second hand";
    private const string H5 = "AISC Design Examples 14.0, H.5A: HSS6×4×¼, 46 ksi, second hand";
    private const string E9 = "AISC Design Examples 14.0, E.9: HSS12×10×3/8, 46 ksi, K 0.8, 20 ft (round corners), second hand";
    private const string Braces = "Wind braces, manual calculation by EN 1993-1-8, 3.10.3: L70×7, S355 with f_u 470, two M16-8.8, e₁ 40, e₂ 35, p₁ 80 (steelynx)";
    private const string D2 = "AISC Design Examples, D.2: L4×4×½, A36, four ¾ in bolts at 3 in";
    private const string Gordon = "Rankine-Gordon formula for wrought columns of 250 MPa, 1/9000 pinned, worked by hand";
    private const string Shapes = "AISC shapes database, 14th ed.; rolled, with fillets";

    private static readonly Material a992 = StructuralSteel.S355 with { Name = "steel 50 ksi", Thicker = null, YoungsModulus = Pressure.FromPascals(29000 * Ksi), ShearModulus = Pressure.FromPascals(11200 * Ksi), YieldStrength = Pressure.FromPascals(50 * Ksi), UltimateStrength = Pressure.FromPascals(65 * Ksi) };
    private static readonly Material a53 = a992 with { Name = "steel 35 ksi", YieldStrength = Pressure.FromPascals(35 * Ksi), UltimateStrength = Pressure.FromPascals(60 * Ksi) };
    private static readonly AngleBar l4 = new(Length.FromInches(4), Length.FromInches(0.5));
    private static readonly BarDesign lrfd = BarDesign.For(a992, DesignCode.AiscLrfd), en = BarDesign.For(StructuralSteel.S355);

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new[] { (35, 20, 30.9, 20.5), (36, 20, 31.7, 21.1), (42, 20, 36.9, 24.5), (46, 20, 40.3, 26.8), (50, 20, 43.7, 29.1), (35, 24, 30.6, 20.3), (50, 24, 43.1, 28.7) }.SelectMany(r => new PublishedValue[]
        {
            new($"φF_cr at KL/r {r.Item2}, {r.Item1} ksi", Scan, r.Item3, "ksi", 2e-3, () => CriticalStress(r.Item2, r.Item1)),
            new($"F_cr/Ω at KL/r {r.Item2}, {r.Item1} ksi", Scan, r.Item4, "ksi", 3e-3, () => CriticalStress(r.Item2, r.Item1, DesignCode.AiscAsd)),
        }),
        .. new[] { (50, 26.83), (79, 22.03), (100, 18.08), (119, 14.52), (150, 9.48), (199, 5.39) }.Select(r =>
            new PublishedValue($"φF_cr at KL/r {r.Item1}, 36 ksi, φ 0.85", Lrfd2, r.Item2, "ksi", 1.5e-3, () => 0.85 / 0.9 * CriticalStress(r.Item1, 36))),
        new("CHS 76×2: area", Chs, 464.96, "mm²", 2e-5, () => 1e6 * chs.Properties.A),
        new("CHS 76×2: elastic modulus", Chs, 8381.44, "mm³", 1e-5, () => 1e9 * chs.Properties.Wy),
        new("CHS 76×2: plastic modulus", Chs, 10954.7, "mm³", 1e-5, () => 1e9 * MemberSection.Plastic(chs).Strong),
        new("CHS 76×2: class", Chs, 2, "-", 0, () => MemberSlenderness.Class(chs, 355e6)),
        new("CHS 76×2: shear area", Chs, 296, "mm²", 1e-3, () => 1e6 * MemberSection.ShearAndTorsion(chs).ShearArea),
        new("CHS 76×2: moment resistance", Chs, 3.89, "kN·m", 1.3e-3, () => 1e-3 * MemberSection.MomentsEn(null, Strut(chs, 10)).Strong),
        new("CHS 76×2: buckling resistance, curve a", Chs, 6.34, "kN", 8e-4, () => 1e-3 * MemberChecks.Compression(Strut(chs, 10), en with { Curve = BucklingCurve.A }).Capacity!.Value),
        new("pipe 8 x-strong: bending, LRFD", F9, 81.4, "kip·ft", 1.5e-3, () => 0.9 * XStrong()),
        new("pipe 8 x-strong: bending, ASD", F9, 54.1, "kip·ft", 1.5e-3, () => XStrong() / 1.67),
        new("HSS6×4×¼: torsion, LRFD", H5, 251, "kip·in", 3e-3, () => 0.9 * 0.6 * 46 * Twisting(6, 4, 0.233)),
        new("HSS6×4×¼: torsion, ASD", H5, 167, "kip·in", 3e-3, () => 0.6 * 46 * Twisting(6, 4, 0.233) / 1.67),
        new("HSS12×10×3/8: compression, LRFD", E9, 518, "kip", 0.025, () => Box(DesignCode.AiscLrfd)),
        new("HSS12×10×3/8: compression, ASD", E9, 345, "kip", 0.025, () => Box(DesignCode.AiscAsd)),
        new("tension of an angle by one leg, two bolts, N_u (A_net of 814 mm² with its fillet, 805 mm² with sharp corners)", Braces, 194, "kN", 0.013, () => 1e-3 * NetSection.RuptureEn(null, Brace, en, NetSection.Area(null, Brace, en))),
        new("shear of two M16-8.8 (A_s 157 mm²)", Braces, 120.576, "kN", 3.5e-3, () => 2e-3 * BoltStrength.Shear(null, Brace.Connection!.Bolt!, 1, en)),
        new("bearing of L70×7 at the end bolt", Braces, 77.99, "kN", 1e-4, () => 1e-3 * BoltStrength.BearingEn(null, "", Brace.Connection!.Bolt!, 0.04, null, 0.035, null, 0.007, 470e6, 1.25)),
        new("angle in tension, gross yield, LRFD", D2, 122, "kip", 5e-3, () => 0.9 * 36 * l4.Properties.A / (Inch * Inch), ValueKind.FromMemory),
        new("angle in tension, rupture with U 0.869, LRFD", D2 + "; A_n 3.31 in² with its fillet", 0.75 * 58 * 0.869 * 3.31, "kip", 1e-2, Rupture, ValueKind.FromMemory),
        new("strut of wrought iron of 250 MPa at L/r = 100, pinned", Gordon, 118.42, "MPa", 1e-4, RankineGordon, ValueKind.IndependentComputation),
        new("φF_cr at KL/r 50", Manual, 37.5, "ksi", 2e-3, () => CriticalStress(50), ValueKind.FromMemory),
        new("φF_cr at KL/r 80", Manual, 28.2, "ksi", 2e-3, () => CriticalStress(80), ValueKind.FromMemory),
        new("φF_cr at KL/r 100", Manual, 21.7, "ksi", 3e-3, () => CriticalStress(100), ValueKind.FromMemory),
        new("φF_cr at KL/r 150", Manual, 10.0, "ksi", 5e-3, () => CriticalStress(150), ValueKind.FromMemory),
        new("φF_cr at KL/r 200", Manual, 5.65, "ksi", 2e-3, () => CriticalStress(200), ValueKind.FromMemory),
        new("area of L4×4×½", Shapes, 3.75, "in²", 2e-3, () => l4.Properties.A / (Inch * Inch), ValueKind.FromMemory),
        new("r_z of L4×4×½", Shapes, 0.776, "in", 1.5e-2, () => Math.Sqrt(l4.Properties.Iz / l4.Properties.A) / Inch, ValueKind.FromMemory),
        new("J of L4×4×½", Shapes, 0.322, "in⁴", 3e-2, () => l4.Properties.J / Math.Pow(Inch, 4), ValueKind.FromMemory),
        new("φM_n of pipe 8 standard, 35 ksi (D 8.63, design wall 0.300, Z 20.8 in³)", "AISC Steel Construction Manual, 14th ed., Table 3-15", 54.6, "kip-ft", 2e-2, PipeMoment, ValueKind.FromMemory),
        new("column stress of wrought iron, L/r 100, hinged: 36 000/(1 + 100²/9000)", "Rankine, A Manual of Civil Engineering, strut formula", 17053, "psi", 1e-4, Rankine, ValueKind.FromMemory),
        new("χ of curve b at λ̄ = 1, through a centered angle", "EN 1993-1-1:2005, 6.3.1.2 (6.49)", 0.597, "-", 1e-3, () => ReductionAt(1), ValueKind.FromMemory),
        new("β₂ at p₁ = 2.5 d₀", "EN 1993-1-8:2005, Table 3.8", 0.4, "-", 1e-9, () => Beta(2, 2.5), ValueKind.FromMemory),
        new("β₂ at p₁ = 5 d₀", "EN 1993-1-8:2005, Table 3.8", 0.7, "-", 1e-9, () => Beta(2, 5), ValueKind.FromMemory),
        new("β₃ at p₁ = 2.5 d₀", "EN 1993-1-8:2005, Table 3.8", 0.5, "-", 1e-9, () => Beta(3, 2.5), ValueKind.FromMemory),
        new("β₃ at p₁ = 3.75 d₀", "EN 1993-1-8:2005, Table 3.8, linear between", 0.6, "-", 1e-9, () => Beta(3, 3.75), ValueKind.FromMemory),
        new("effective L/r of a web angle at L/r_x 60: 60 + 0.8·60", "AISC 360-16, E5 (b)", 108, "-", 1e-9, () => SingleAngleSlenderness(60), ValueKind.FromMemory),
        new("effective L/r of a web angle at L/r_x 120: 45 + 120", "AISC 360-16, E5 (b)", 165, "-", 1e-9, () => SingleAngleSlenderness(120), ValueKind.FromMemory),
        new("β_w of L8×6×½", "AISC 360-16, Commentary, Table C-F10.1", 3.31, "in", 1.5e-2, () => Sideways(8, 6, 0.5), ValueKind.FromMemory),
        new("β_w of L6×4×½", "AISC 360-16, Commentary, Table C-F10.1", 3.14, "in", 1.5e-2, () => Sideways(6, 4, 0.5), ValueKind.FromMemory),
        new("β_w of L4×3×¼", "AISC 360-16, Commentary, Table C-F10.1", 1.65, "in", 1.5e-2, () => Sideways(4, 3, 0.25), ValueKind.FromMemory),
        new("M_n of a short compact angle over its first yield", "AISC 360-16, (F10-1)", 1.5, "-", 1e-9, () => AngleMoment(l4, 0.1) / (345e6 * l4.Properties.Wy), ValueKind.FromMemory),
        new("M_cr of an equal angle 100×10, 12 m, sideways about the strong axis", "π √(E I_z G J)/L, Timoshenko and Gere, Theory of Elastic Stability, 6.3", Sidelong(), "kN·m", 2e-2, () => 1e-3 * CriticalMoment(new AngleBar(100.Millimeters, 10.Millimeters), 12), ValueKind.IndependentComputation),
        new("plastic modulus of a tube 200×10", "EN 10210-2:2006, section tables (W_pl 361 cm³)", 361, "cm³", 2e-3, () => 1e6 * MemberSection.Plastic(new Tube(200.Millimeters, 10.Millimeters)).Strong, ValueKind.FromMemory),
        new("least root of the buckling cubic of an unequal angle 100×65×7, 2 m", "companion matrix of the cubic (MathNet.Numerics)", CubicByMathNet(), "kN", 1e-9, () => 1e-3 * Twist(new AngleBar(100.Millimeters, 65.Millimeters, 7.Millimeters), 2).Least, ValueKind.IndependentComputation),
        new("load of an equal angle 100×100×6, 1 m, by bending about the axis of symmetry and twist", "closed form of the quadratic, Timoshenko and Gere (5-40)", EqualByQuadratic(), "kN", 1e-9, () => 1e-3 * Twist(new AngleBar(100.Millimeters, 6.Millimeters), 1).Least, ValueKind.IndependentComputation),
    ];

    private static double Sideways(double a, double b, double t) => new AngleBar(Length.FromInches(a), Length.FromInches(b), Length.FromInches(t)).SidewaysProperty / Inch;

    private static double AngleMoment(AngleBar angle, double length) => MemberSection.MomentsAisc(null, Angle(angle, length))!.Value.Strong;

    /// <summary>(F10-3) the other way: the moment of a long angle is 0.92 M_cr − 0.17 M_cr²/M_y.</summary>
    private static double CriticalMoment(AngleBar angle, double length)
    {
        double M_n = AngleMoment(angle, length), M_y = 345e6 * angle.Properties.Wy;
        return (0.92 - Math.Sqrt(0.92 * 0.92 - 4 * 0.17 * M_n / M_y)) * M_y / (2 * 0.17);
    }

    private static double Sidelong()
    {
        SectionProperties p = new AngleBar(100.Millimeters, 10.Millimeters).Properties;
        return 1e-3 * Math.PI * Math.Sqrt(StructuralSteel.S355.YoungsModulus.Pascals * p.Iz * StructuralSteel.S355.ShearModulus.Pascals * p.J) / 12;
    }

    private static LoadedMember Angle(AngleBar angle, double length) => new() { Section = angle, Material = StructuralSteel.S355 with { YieldStrength = 345.Megapascals, Thicker = null }, Length = Length.FromMeters(length) };

    /// <summary>Stiffly joined angles are checked by AISC 360 too, and longer or thinner ones are never stronger in bending.</summary>
    [Fact]
    public void Angles_bend_by_aisc() => Gen.Select(Gen.Double[60, 200], Gen.Double[0.5, 1], Gen.Double[0.05, 0.12], Gen.Double[0.5, 8], Gen.Double[1, 2]).Sample((leg, ratio, thickness, length, more) =>
    {
        AngleBar Bar(double t) => new(leg.Millimeters, (leg * ratio).Millimeters, (t * leg * ratio).Millimeters);
        BarDesign design = BarDesign.For(StructuralSteel.S355, DesignCode.AiscLrfd);
        double Use(AngleBar angle, double l) => MemberChecks.Bending(Angle(angle, l) with { Axial = Force.FromKilonewtons(5), StrongMoment = Torque.FromNewtonMeters(200), WeakMoment = Torque.FromNewtonMeters(50) }, design).Utilization!.Value;
        Assert.True(Use(Bar(thickness), more * length) >= Use(Bar(thickness), length) * (1 - 1e-9));
        Assert.True(Use(Bar(thickness / more), length) >= Use(Bar(thickness), length) * (1 - 1e-9));
    });

    [Fact]
    public void A_longer_member_is_never_stronger() =>
        Gen.Select(Gen.Double[0.5, 6], Gen.Double[1.01, 2], Gen.Int[0, 3].Select(i => (DesignCode)i), Gen.Int[0, 3]).Sample((length, more, code, shape) =>
        {
            BarDesign design = BarDesign.For(StructuralSteel.S355, code);
            Section section = Section(shape);
            return Capacity(section, length, design) >= Capacity(section, length * more, design) * (1 - 1e-12);
        });

    [Fact]
    public void Allowable_strength_is_the_factored_one_over_a_fixed_ratio() =>
        Gen.Select(Gen.Double[0.5, 6], Gen.Int[0, 3]).Sample((length, shape) =>
        {
            double factored = Capacity(Section(shape), length, BarDesign.For(StructuralSteel.S355, DesignCode.AiscLrfd));
            double allowable = Capacity(Section(shape), length, BarDesign.For(StructuralSteel.S355, DesignCode.AiscAsd));
            return Math.Abs(factored / allowable - 0.9 * 1.67) < 1e-9;
        });

    [Fact]
    public void Bending_and_twist_is_never_above_either_alone() =>
        Gen.Select(Gen.Double[40, 250], Gen.Double[0.4, 1], Gen.Double[0.05, 0.15], Gen.Double[0.2, 8]).Sample((leg, ratio, slenderness, length) =>
        {
            var angle = new AngleBar(leg.Millimeters, (leg * ratio).Millimeters, (leg * ratio * slenderness).Millimeters);
            AngleTwist twist = Twist(angle, length);
            double least = twist.Least, scale = twist.N_y * twist.N_z * twist.N_T;
            return least <= Math.Min(twist.N_T, Math.Min(twist.N_y, twist.N_z)) * (1 + 1e-12) && least > 0 && Math.Abs(twist.Cubic(least)) < 1e-9 * scale;
        });

    [Fact]
    public void An_equal_angle_has_its_shear_center_on_the_axis_of_symmetry() =>
        Gen.Select(Gen.Double[40, 250], Gen.Double[0.05, 0.15]).Sample((leg, slenderness) =>
        {
            AngleTwist twist = Twist(new AngleBar(leg.Millimeters, (leg * slenderness).Millimeters), 1);
            return Math.Min(Math.Abs(twist.y_0), Math.Abs(twist.z_0)) < 1e-9 * leg;
        });

    [Fact]
    public void More_axial_force_more_moment_and_more_shear_never_help() =>
        Gen.Select(Gen.Double[-800, 800], Gen.Double[0, 100], Gen.Double[0, 200], Gen.Double[0, 50], Gen.Int[0, 3].Select(i => (DesignCode)i)).Sample((N, M, V, T, code) =>
        {
            BarDesign design = BarDesign.For(StructuralSteel.S355, code);
            double U(double n, double m, double v, double t) => MemberChecks.Bending(Mast(N * n, M * m, V * v, T * t), design).Utilization!.Value;
            double u = U(1, 1, 1, 1) + 1e-12;
            return U(0.9, 1, 1, 1) <= u && U(1, 0.9, 1, 1) <= u && U(1, 1, 0.9, 1) <= u && U(1, 1, 1, 0.9) <= u && double.IsFinite(u);
        });

    [Fact]
    public void Without_bending_the_interaction_is_the_axial_check()
    {
        LoadedMember mast = Mast(-300, 0, 0, 0);
        Assert.Equal(MemberChecks.Compression(mast, en).Utilization!.Value, MemberChecks.Bending(mast, en).Utilization!.Value, 1e-12);
        double aisc = MemberChecks.Compression(mast, lrfd).Utilization!.Value;
        Assert.Equal(aisc >= 0.2 ? aisc : aisc / 2, MemberChecks.Bending(mast, lrfd).Utilization!.Value, 1e-12);
    }

    [Fact]
    public void Holes_take_strength_only_in_tension()
    {
        LoadedMember plain = Angle(200), holed = plain with { Connection = Joint(3) };
        Assert.True(MemberChecks.Tension(holed, en).Capacity < MemberChecks.Tension(plain, en).Capacity);
        Assert.Equal(MemberChecks.Compression(plain, en).Capacity, MemberChecks.Compression(holed, en).Capacity);
    }

    [Fact]
    public void More_fasteners_carry_more() =>
        Gen.Select(Gen.Int[1, 8], Gen.Int[0, 3].Select(i => (DesignCode)i)).Sample((n, code) =>
        {
            BarDesign design = BarDesign.For(StructuralSteel.S355, code);
            double Of(int count) => ConnectionChecks.Fasteners(Angle(200) with { Connection = Joint(count) }, design).Capacity!.Value;
            return Of(n + 1) > Of(n) && ConnectionChecks.Block(Angle(200) with { Connection = Joint(n + 1) }, design).Capacity > ConnectionChecks.Block(Angle(200) with { Connection = Joint(n) }, design).Capacity;
        });

    [Fact]
    public void Slender_legs_lose_strength_and_stocky_ones_do_not()
    {
        double f_y = 355e6;
        var stocky = new AngleBar(100.Millimeters, 12.Millimeters);
        var slender = new AngleBar(200.Millimeters, 10.Millimeters);
        Assert.Equal(stocky.Properties.A, MemberSlenderness.EffectiveAreaEn(null, stocky, f_y));
        Assert.True(MemberSlenderness.EffectiveAreaEn(null, slender, f_y) < slender.Properties.A);
        Assert.True(MemberSlenderness.EffectiveAreaAisc(null, slender, 200e9, f_y, f_y) < slender.Properties.A);
        Assert.Null(MemberSlenderness.EffectiveAreaEn(null, new Tube(2.Meters, 6.Millimeters), f_y));
    }

    [Fact]
    public void Wrought_iron_is_checked_by_allowable_stress()
    {
        BarDesign design = BarDesign.For(WroughtIron.Puddled);
        Check check = MemberChecks.Compression(Angle(-50) with { Material = WroughtIron.Puddled }, design);
        Assert.Equal(Verdict.Pass, check.Verdict);
        Assert.Contains("Rankine", check.Source.ToString());
        LoadedMember riveted = Angle(50) with { Material = WroughtIron.Puddled, Connection = Joint(3) with { Bolt = null, Rivet = Rivet.Of(20.Millimeters, WroughtIron.Puddled) } };
        Assert.Equal(Verdict.Pass, ConnectionChecks.Fasteners(riveted, design).Verdict);
    }

    [Fact]
    public void What_the_rules_do_not_reach_is_not_checked()
    {
        LoadedMember shell = Mast(-100, 10, 0, 0) with { Section = new Tube(2.Meters, 6.Millimeters) };
        Assert.Equal(Verdict.NotChecked, MemberChecks.Bending(shell, en).Verdict);
        Assert.Equal(Verdict.NotChecked, MemberChecks.Compression(shell, en).Verdict);
        Assert.Equal(Verdict.NotChecked, ConnectionChecks.Fasteners(Angle(10), en).Verdict);
        Assert.Equal(Verdict.NotChecked, MemberChecks.Bending(Angle(-10), en).Verdict);
    }

    [Fact]
    public void All_bad_inputs_are_named_at_once()
    {
        LoadedMember bad = Angle(100) with { Length = 0.Meters, WeakFactor = double.NaN, Connection = Joint(2) with { Bolt = null } };
        InvalidStatueException e = Assert.Throws<InvalidStatueException>(() => MemberChecks.Tension(bad, en));
        Assert.Equal(3, e.Problems.Count);
    }

    [Fact]
    public void Every_check_can_show_its_working()
    {
        foreach (DesignCode code in Enum.GetValues<DesignCode>())
        {
            BarDesign design = BarDesign.For(StructuralSteel.S355, code);
            LoadedMember pressed = Angle(-100) with { Connection = Joint(1), Ends = MemberEnds.OneLegOneFastener }, pulled = Angle(100) with { Connection = Joint(2) };
            Check[] checks = [MemberChecks.Compression(pressed, design), MemberChecks.Tension(pulled, design), MemberChecks.Bending(Mast(-100, 20, 10, 40), design), MemberChecks.Slenderness(pressed, design), ConnectionChecks.Fasteners(pulled, design), ConnectionChecks.Block(pulled, design), ConnectionChecks.Distances(pulled, design)];
            Assert.All(checks, c => { Assert.NotEqual(Verdict.NotChecked, c.Verdict); Assert.True(c.Working().Lines.Count > 3); });
        }
    }

    private static readonly Tube chs = new(76.Millimeters, 2.Millimeters);

    private static LoadedMember Brace => new()
    {
        Section = new AngleBar(70.Millimeters, 7.Millimeters),
        Material = StructuralSteel.S355 with { UltimateStrength = 470.Megapascals },
        Length = 1.8.Meters,
        Axial = 40.Kilonewtons,
        Ends = MemberEnds.OneLeg,
        Connection = new MemberConnection { Bolt = new Bolt { Diameter = 16.Millimeters, Grade = BoltGrade.Class88 }, InLine = 2, Pitch = 80.Millimeters, EndDistance = 40.Millimeters, EdgeDistance = 35.Millimeters },
    };

    private static LoadedMember Strut(Section section, double length) => new() { Section = section, Material = StructuralSteel.S355, Length = length.Meters, Axial = Force.FromNewtons(-1) };

    private static Material American(double yield, double ultimate = 65) => a992 with { Name = "steel", YieldStrength = Pressure.FromPascals(yield * Ksi), UltimateStrength = Pressure.FromPascals(ultimate * Ksi) };

    private static double XStrong() =>
        MemberSection.MomentsAisc(null, Strut(new Tube(8.625.Inches, 0.465.Inches), 1) with { Material = a53 })!.Value.Strong / (Kip * 12 * Inch);

    private static double Twisting(double a, double b, double t) =>
        MemberSection.ShearAndTorsion(new RectangularTube(a.Inches, b.Inches, t.Inches)).TorsionModulus / Math.Pow(Inch, 3);

    private static double Box(DesignCode code)
    {
        LoadedMember column = Strut(new RectangularTube(12.Inches, 10.Inches, 0.349.Inches), 240 * Inch) with { Material = American(46, 58) with { Name = "steel 46 ksi" }, WeakFactor = 0.8, StrongFactor = 0.8 };
        return MemberChecks.Compression(column, BarDesign.For(column.Material, code)).Capacity!.Value / Kip;
    }

    private static double Rupture()
    {
        LoadedMember angle = Strut(l4, 7) with
        {
            Material = American(36, 58),
            Ends = MemberEnds.OneLeg,
            Connection = new MemberConnection { Bolt = new Bolt { Diameter = 0.75.Inches, Grade = BoltGrade.A325, Hole = (13.0 / 16).Inches }, InLine = 4, Pitch = 3.Inches, EndDistance = 1.5.Inches, EdgeDistance = 1.5.Inches },
        };
        return NetSection.RuptureAisc(null, angle, lrfd, NetSection.Area(null, angle, lrfd)) / Kip;
    }

    private static double RankineGordon()
    {
        var bar = new RoundBar(100.Millimeters);
        Material iron = WroughtIron.Puddled with { YieldStrength = 250.Megapascals };
        return 1e-6 * MemberChecks.Compression(Strut(bar, 100 * 0.025) with { Material = iron }, BarDesign.For(iron) with { AllowableFraction = 1 }).Capacity!.Value / bar.Properties.A;
    }

    private static double CriticalStress(double slenderness, double yield = 50, DesignCode code = DesignCode.AiscLrfd)
    {
        var bar = new RoundBar(Length.FromInches(4));
        double r = Math.Sqrt(bar.Properties.Iz / bar.Properties.A);
        LoadedMember member = new() { Section = bar, Material = American(yield) with { Name = "steel plain" }, Length = Length.FromMeters(slenderness * r), Axial = Force.FromNewtons(-1) };
        return MemberChecks.Compression(member, BarDesign.For(member.Material, code)).Capacity!.Value / bar.Properties.A / Ksi;
    }

    private static double PipeMoment()
    {
        LoadedMember pipe = new() { Section = new Tube(Length.FromInches(8.63), Length.FromInches(0.300)), Material = a53, Length = 1.Meters };
        return 0.9 * MemberSection.MomentsAisc(null, pipe)!.Value.Strong / (Kip * 12 * Inch);
    }

    private static double Rankine()
    {
        var bar = new RoundBar(Length.FromInches(4));
        Material iron = WroughtIron.Puddled with { YieldStrength = Pressure.FromPascals(36 * Ksi), UltimateStrength = Pressure.FromPascals(48 * Ksi) };
        LoadedMember member = new() { Section = bar, Material = iron, Length = Length.FromMeters(100 * Math.Sqrt(bar.Properties.Iz / bar.Properties.A)), Axial = Force.FromNewtons(-1) };
        return 1000 * MemberChecks.Compression(member, BarDesign.For(iron) with { AllowableFraction = 1 }).Capacity!.Value / bar.Properties.A / Ksi;
    }

    private static double ReductionAt(double slenderness)
    {
        var angle = new AngleBar(100.Millimeters, 12.Millimeters);
        double r = Math.Sqrt(angle.Properties.Iz / angle.Properties.A), lambda_1 = Math.PI * Math.Sqrt(210e9 / 355e6);
        Material steel = StructuralSteel.S355 with { YoungsModulus = 210.Gigapascals, YieldStrength = 355.Megapascals };
        LoadedMember member = new() { Section = angle, Material = steel, Length = Length.FromMeters(slenderness * lambda_1 * r), Axial = Force.FromNewtons(-1), IsLeg = true };
        return MemberChecks.Compression(member, en).Capacity!.Value / (angle.Properties.A * 355e6);
    }

    private static double Beta(int count, double pitch)
    {
        MemberConnection joint = Joint(count) with { Pitch = Length.FromMeters(pitch * Joint(count).d_0) };
        LoadedMember member = Angle(100) with { Connection = joint };
        double A_net = NetSection.Area(null, member, en);
        return NetSection.RuptureEn(null, member, en, A_net) * en.GammaM2 / (A_net * member.f_u);
    }

    private static double SingleAngleSlenderness(double ofLeg)
    {
        var angle = new AngleBar(100.Millimeters, 12.Millimeters);
        double I = (angle.Properties.Iy + angle.Properties.Iz) / 2, r_x = Math.Sqrt(I / angle.Properties.A);
        LoadedMember member = new() { Section = angle, Material = a992, Length = Length.FromMeters(ofLeg * r_x), Axial = Force.FromNewtons(-1), Ends = MemberEnds.OneLeg };
        double F_cr = MemberChecks.Compression(member, lrfd).Capacity!.Value / (0.9 * angle.Properties.A), E = member.E, F_y = member.f_y;
        // The slenderness that gives the same stress, from E3 turned round.
        double F_e = F_cr > 0.877 * F_y / 2.25 ? F_y * Math.Log(0.658) / Math.Log(F_cr / F_y) : F_cr / 0.877;
        return Math.PI * Math.Sqrt(E / F_e);
    }

    private static double CubicByMathNet()
    {
        AngleTwist t = Twist(new AngleBar(100.Millimeters, 65.Millimeters, 7.Millimeters), 2);
        double b_y = t.y_0 * t.y_0 / (t.i_0 * t.i_0), b_z = t.z_0 * t.z_0 / (t.i_0 * t.i_0);
        (double N_y, double N_z, double N_T) = (t.N_y / t.N_z, 1, t.N_T / t.N_z);
        var polynomial = new MathNet.Numerics.Polynomial(-N_y * N_z * N_T, N_y * N_z + N_y * N_T + N_z * N_T, -(N_y + N_z + N_T) + b_y * N_z + b_z * N_y, 1 - b_y - b_z);
        return 1e-3 * t.N_z * polynomial.Roots().Min(r => r.Real);
    }

    private static double EqualByQuadratic()
    {
        AngleTwist t = Twist(new AngleBar(100.Millimeters, 6.Millimeters), 1);
        double b = Math.Max(t.y_0 * t.y_0, t.z_0 * t.z_0) / (t.i_0 * t.i_0), sum = t.N_y + t.N_T;
        return 1e-3 * Math.Min(t.N_z, (sum - Math.Sqrt(sum * sum - 4 * (1 - b) * t.N_y * t.N_T)) / (2 * (1 - b)));
    }

    private static AngleTwist Twist(AngleBar angle, double length) => AngleTwist.Of(angle, 210e9, 81e9, length, length);

    private static double Capacity(Section section, double length, BarDesign design) =>
        MemberChecks.Compression(new LoadedMember { Section = section, Material = StructuralSteel.S355, Length = length.Meters, Axial = Force.FromNewtons(-1) }, design).Capacity!.Value;

    private static Section Section(int shape) => shape switch
    {
        0 => new AngleBar(100.Millimeters, 65.Millimeters, 8.Millimeters),
        1 => new Tube(200.Millimeters, 8.Millimeters),
        2 => new RectangularTube(150.Millimeters, 100.Millimeters, 6.Millimeters),
        _ => new FlatBar(80.Millimeters, 20.Millimeters),
    };

    private static LoadedMember Mast(double N, double M, double V, double T) => new()
    {
        Section = new Tube(300.Millimeters, 12.Millimeters),
        Material = StructuralSteel.S355,
        Length = 2.Meters,
        WeakFactor = 2,
        StrongFactor = 2,
        Axial = Force.FromKilonewtons(N),
        StrongMoment = Torque.FromKilonewtonMeters(M),
        Shear = Force.FromKilonewtons(V),
        Torsion = Torque.FromKilonewtonMeters(T),
    };

    private static LoadedMember Angle(double N) => new()
    {
        Section = new AngleBar(100.Millimeters, 10.Millimeters),
        Material = StructuralSteel.S355,
        Length = 1.5.Meters,
        Axial = Force.FromKilonewtons(N),
        Ends = MemberEnds.OneLeg,
    };

    private static MemberConnection Joint(int count) => new()
    {
        Bolt = new Bolt { Diameter = 20.Millimeters, Grade = BoltGrade.Class88 },
        InLine = count,
        EndDistance = 40.Millimeters,
        EdgeDistance = 45.Millimeters,
        Pitch = 70.Millimeters,
    };
}
