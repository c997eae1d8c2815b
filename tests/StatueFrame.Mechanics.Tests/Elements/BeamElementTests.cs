using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

public class BeamElementTests
{
    private const double L = 3;
    private const string Timoshenko = "shear-flexible beam formula with Φ = 12EI/(κGAL²)";
    private const string Roark = "Roark's Formulas for Stress and Strain, 7th ed., Table 8.1";

    private static readonly BeamSection Slim = Samples.Rectangle(0.1, 0.2) with { GAy = double.PositiveInfinity, GAz = double.PositiveInfinity };
    private static readonly BeamSection Deep = Samples.Rectangle(0.5, 0.8);

    public static IEnumerable<PublishedValue> Rows
    {
        get
        {
            double ei = Slim.EIy / Math.Pow(L, 3);
            yield return new("cantilever, tip stiffness", $"{Roark}, 3EI/L³", 3 * ei, "N/m", 1e-9, () => TipStiffness(Slim));
            yield return new("guided at both ends, stiffness", $"{Roark}, 12EI/L³", 12 * ei, "N/m", 1e-9, () => GuidedStiffness(Slim));
            yield return new("propped cantilever, midspan deflection", $"{Roark}, 7PL³/(768EI)", 7.0 / 768 / ei, "m/N", 1e-9, ProppedDeflection);

            double phi = 12 * Deep.EIy / (Deep.GAz * L * L), deep = Deep.EIy / Math.Pow(L, 3);
            yield return new("cantilever with shear, tip stiffness", $"{Timoshenko}: 3EI/L³ ÷ (1 + Φ/4)",
                3 * deep / (1 + phi / 4), "N/m", 1e-9, () => TipStiffness(Deep), ValueKind.IndependentComputation);
            yield return new("guided with shear, stiffness", $"{Timoshenko}: 12EI/L³ ÷ (1 + Φ)",
                12 * deep / (1 + phi), "N/m", 1e-9, () => GuidedStiffness(Deep), ValueKind.IndependentComputation);

            const double spring = 2e6;
            yield return new("cantilever on a rotational spring, tip stiffness", "closed form 1/(L³/3EI + L²/s)",
                1 / (1 / (3 * ei) + L * L / spring), "N/m", 1e-9, () => SpringTipStiffness(spring), ValueKind.IndependentComputation);
            double r = spring * L / Slim.EIy;
            yield return new("equal springs at both ends, fixed-end moment under midspan load", "closed form (PL/8)·r/(r+2), r = sL/EI",
                L / 8 * r / (r + 2), "N·m/N", 1e-9, () => SemiRigidMoment(spring), ValueKind.IndependentComputation);

            const double a = 0.6, t = 1 - a;
            double taper = (-Math.Log(t) - 2 * a + (1 - t * t) / 2) / Math.Pow(a, 3) / ei;
            yield return new("depth tapers linearly to 0.4, tip deflection", "closed form ∫(L−x)²/EI dx",
                taper, "m/N", 1e-9, () => 1 / TipStiffness(xi => Depth(Slim, 1 - a * xi)), ValueKind.IndependentComputation);
            yield return new("depth tapers linearly to 0.1, tip deflection", "closed form ∫(L−x)²/EI dx",
                (-Math.Log(0.1) - 1.8 + 0.495) / Math.Pow(0.9, 3) / ei, "m/N", 1e-7,
                () => 1 / TipStiffness(xi => Depth(Slim, 1 - 0.9 * xi)), ValueKind.IndependentComputation);
            yield return new("width tapers to a point (constant strength), tip deflection", "closed form PL³/(2EI₀)",
                1 / (2 * ei), "m/N", 1e-9, () => 1 / TipStiffness(xi => Width(Slim, 1 - xi)), ValueKind.IndependentComputation);
            yield return new("cone frustum in torsion, radius tapers to 0.5", "closed form ∫dx/GJ = (L/GJ₀)·(1/t³ − 1)/(3(1−t))",
                L / Slim.GJ * 7 / 1.5, "rad/(N·m)", 1e-9,
                () => DenseModel.Chain(1, L, xi => Slim with { GJ = Slim.GJ * Math.Pow(1 - 0.5 * xi, 4) }).Fix(0).Load(1, 3, 1).Solve()[9],
                ValueKind.IndependentComputation);
            yield return new("area tapers linearly to 0.25, stretch", "closed form (L/EA₀)·ln 4/0.75",
                L / Slim.EA * Math.Log(4) / 0.75, "m/N", 1e-9,
                () => DenseModel.Chain(1, L, xi => Slim with { EA = Slim.EA * (1 - 0.75 * xi) }).Fix(0).Load(1, 0, 1).Solve()[6],
                ValueKind.IndependentComputation);
        }
    }

    private static BeamSection Depth(BeamSection s, double depth) => s with { EIy = s.EIy * Math.Pow(depth, 3) };

    private static BeamSection Width(BeamSection s, double width) =>
        s with { EA = s.EA * width, EIy = s.EIy * width, EIz = s.EIz * Math.Pow(width, 3), GJ = s.GJ * width };

    private static double TipStiffness(BeamSection section) => TipStiffness(_ => section);

    private static double TipStiffness(Func<double, BeamSection> section) =>
        1 / DenseModel.Chain(1, L, section).Fix(0).Load(1, 2, 1).Solve()[8];

    private static double GuidedStiffness(BeamSection section) =>
        1 / DenseModel.Chain(1, L, section).Fix(0).Fix(1, Freedoms.Rotations).Load(1, 2, 1).Solve()[8];

    private static double ProppedDeflection() =>
        DenseModel.Chain(2, L, Slim).Fix(0).Fix(2, Freedoms.Displacements).Load(1, 2, 1).Solve()[8];

    private static double SpringTipStiffness(double spring)
    {
        var beam = new BeamElement(0, default, 1, new(L, 0, 0),
            new BeamDefinition(Slim) { StartJoint = new() { RotationY = spring, RotationZ = spring } });
        return 1 / new DenseModel(2).Add(beam).Fix(0).Load(1, 2, 1).Solve()[8];
    }

    private static double SemiRigidMoment(double spring)
    {
        BeamJoint joint = new() { RotationY = spring };
        var first = new BeamElement(0, default, 1, new(L / 2, 0, 0), new BeamDefinition(Slim) { StartJoint = joint });
        var second = new BeamElement(1, new(L / 2, 0, 0), 2, new(L, 0, 0), new BeamDefinition(Slim) { EndJoint = joint });
        double[] u = new DenseModel(3).Add(first).Add(second).Fix(0).Fix(2).Load(1, 2, 1).Solve();
        var forces = new double[12];
        first.EndForces(u.AsSpan(0, 12), forces);
        return Math.Abs(forces[4]);
    }

    [Fact]
    public void One_tapered_element_deflects_as_many_do()
    {
        static BeamSection Section(double xi) => Samples.Rectangle(0.3 - 0.2 * xi, 0.5 - 0.3 * xi);
        double[] one = DenseModel.Chain(1, L, Section).Fix(0).Load(1, 1, 2).Load(1, 2, 1).Load(1, 4, 3).Solve();
        double[] many = DenseModel.Chain(10, L, Section).Fix(0).Load(10, 1, 2).Load(10, 2, 1).Load(10, 4, 3).Solve();
        ElementMatrix.AssertClose(many[60..], one[6..], 1e-9);
    }

    [Fact]
    public void Uniform_slender_mass_is_the_cubic_one()
    {
        double[] m = ElementMatrix.Mass(new BeamElement(0, default, 1, new(L, 0, 0), new BeamDefinition(Samples.Slender(mass: 7))));
        double unit = 7 * L / 420;
        (int Row, int Column, double Value)[] expected =
        [
            (1, 1, 156), (1, 5, 22 * L), (1, 7, 54), (1, 11, -13 * L), (5, 5, 4 * L * L), (5, 11, -3 * L * L),
            (2, 4, -22 * L), (2, 10, 13 * L), (8, 10, 22 * L), (0, 0, 140), (0, 6, 70), (3, 3, 0),
        ];
        foreach ((int row, int column, double value) in expected)
            Assert.Equal(value * unit, m[12 * row + column], 1e-10);
    }

    [Fact]
    public void Uniform_slender_geometric_stiffness_is_the_cubic_one()
    {
        BeamSection section = Samples.Slender();
        var beam = new BeamElement(0, default, 1, new(L, 0, 0), new BeamDefinition(section));
        var u = new double[12];
        u[6] = L / section.EA;
        double[] kg = ElementMatrix.Geometric(beam, u);
        double unit = 1 / (30 * L);
        Assert.Equal(1, beam.AxialForce(u), 1e-12);
        Assert.Equal(36 * unit, kg[12 * 1 + 1], 1e-12);
        Assert.Equal(3 * L * unit, kg[12 * 1 + 5], 1e-12);
        Assert.Equal(4 * L * L * unit, kg[12 * 5 + 5], 1e-12);
        Assert.Equal(-L * L * unit, kg[12 * 4 + 10], 1e-12);
        Assert.Equal(-3 * L * unit, kg[12 * 2 + 4], 1e-12);
    }

    [Fact]
    public void Up_turns_the_strong_axis()
    {
        BeamSection flat = Samples.Rectangle(0.2, 0.02);
        double Deflection(Vector3D up, double roll = 0) => new DenseModel(2)
            .Add(new BeamElement(0, default, 1, new(L, 0, 0), new BeamDefinition(flat) { Up = up, Roll = roll }))
            .Fix(0).Load(1, 2, 1).Solve()[8];
        double weak = Deflection(Vector3D.UnitZ), strong = Deflection(Vector3D.UnitY);
        Assert.True(weak > 50 * strong);
        Assert.Equal(strong, Deflection(Vector3D.UnitZ, Math.PI / 2), 1e-9 * strong);
    }

    public static IEnumerable<TheoryDataRow<BeamDefinition, string>> Nonsense =>
    [
        new(new BeamDefinition(Slim with { EA = 0 }), "positive, finite rigidities"),
        new(new BeamDefinition(Slim with { EIy = double.NaN }), "positive, finite rigidities"),
        new(new BeamDefinition(Slim with { GAy = -1 }), "positive, finite rigidities"),
        new(new BeamDefinition(xi => Slim with { GJ = 0.5 - xi }), "positive, finite rigidities"),
        new(new BeamDefinition(Slim with { Mass = -1 }), "masses of 0 or more"),
        new(new BeamDefinition(Slim) { EndOffset = new(-L, 0, 0) }, "no length"),
        new(new BeamDefinition(Slim) { Roll = double.NaN }, "finite Roll"),
        new(new BeamDefinition(Slim) { Up = new(double.NaN, 0, 0) }, "finite positions"),
        new(new BeamDefinition(Slim) { StartJoint = new() { RotationY = -1 } }, "joint stiffness"),
        new(new BeamDefinition(Slim) { StartJoint = new() { RotationX = 0 }, EndJoint = new() { RotationX = 0 } }, "loose"),
        new(new BeamDefinition(Slim) { StartJoint = BeamJoint.Pinned, EndJoint = new() { RotationY = 0, Z = 0 } }, "loose"),
    ];

    [Theory, MemberData(nameof(Nonsense))]
    public void Nonsense_is_refused_with_the_nodes_named(BeamDefinition definition, string message)
    {
        var error = Assert.Throws<ArgumentException>(() => new BeamElement(3, default, 8, new(L, 0, 0), definition));
        Assert.Contains("from node 3 to node 8", error.Message);
        Assert.Contains(message, error.Message);
    }
}
