using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

public class BeamBucklingTests
{
    private const string Euler = "Euler column, closed form";
    private const Freedoms OutOfPlane = Freedoms.Y | Freedoms.RotationX | Freedoms.RotationZ;

    private static readonly double EulerLoad = Math.PI * Math.PI;

    public static IEnumerable<PublishedValue> Rows =>
    [
        Row("pinned column", $"{Euler} π²EI/L²", EulerLoad, () => Column(Freedoms.Displacements, Freedoms.Z)),
        Row("fixed-free column", $"{Euler} π²EI/(2L)²", EulerLoad / 4, () => Column(Freedoms.All, Freedoms.None)),
        Row("fixed-pinned column", $"{Euler}, first root of tan βL = βL", 20.190728556, () => Column(Freedoms.All, Freedoms.Z)),
        Row("fixed-fixed column", $"{Euler} 4π²EI/L²", 4 * EulerLoad, () => Column(Freedoms.All, Freedoms.Z | Freedoms.RotationY)),
        Row("fixed-guided column", $"{Euler} π²EI/L²", EulerLoad, () => Column(Freedoms.All, Freedoms.RotationY)),
        Row("pinned column with shear", "Engesser, P_E/(1 + P_E/κGA)", EulerLoad / (1 + EulerLoad / 30),
            () => Column(Freedoms.Displacements, Freedoms.Z, Samples.Slender() with { GAz = 30 }, 60), 1e-4),
        Row("column with rotational springs", "first root of tan(βL/2) = −βEI/s", SpringColumnLoad(3), () => SpringColumn(3)),
        Row("twist of a column under axial force", "closed form GJ·A/I_p", 0.05 * 1e4 / 2, TwistLoad),
        Row("column with rigid ends as offsets", "the same with ends 10⁷ times as stiff", RigidEnds(asOffsets: false), () => RigidEnds(asOffsets: true), 1e-5),
        Row("rigid rod on a rotational spring", "closed form s/h", 5 / 2.5, RigidRod),
    ];

    private static PublishedValue Row(string feature, string source, double expected, Func<double> compute, double tolerance = 2e-5) =>
        new(feature, source, expected, "N", tolerance, compute, ValueKind.IndependentComputation);

    private static double Column(Freedoms foot, Freedoms head, BeamSection? section = null, int n = 20) =>
        DenseModel.Chain(n, 1, section ?? Samples.Slender()).FixEverywhere(OutOfPlane)
            .Fix(0, foot).Fix(n, head).Load(n, 0, -1).BucklingFactor();

    private static double SpringColumnLoad(double spring)
    {
        double low = Math.PI + 1e-9, high = 2 * Math.PI;
        for (int i = 0; i < 60; i++)
        {
            double beta = (low + high) / 2;
            if (Math.Tan(beta / 2) + beta / spring < 0)
                low = beta;
            else
                high = beta;
        }
        return low * low;
    }

    private static double SpringColumn(double spring)
    {
        const int n = 20;
        BeamJoint joint = new() { RotationY = spring, RotationZ = spring };
        var model = new DenseModel(n + 1);
        for (int i = 0; i < n; i++)
        {
            model.Add(new BeamElement(i, new(0, 0, (double)i / n), i + 1, new(0, 0, (i + 1.0) / n), new BeamDefinition(Samples.Slender())
            {
                StartJoint = i == 0 ? joint : BeamJoint.Rigid,
                EndJoint = i == n - 1 ? joint : BeamJoint.Rigid,
            }));
        }
        return model.FixEverywhere(Freedoms.RotationZ).Fix(0).Fix(n, ~Freedoms.Z & Freedoms.All).Load(n, 2, -1).BucklingFactor();
    }

    private static double TwistLoad() =>
        DenseModel.Chain(1, 1, Samples.Slender() with { GJ = 0.05 })
            .FixEverywhere(Freedoms.Y | Freedoms.Z | Freedoms.RotationY | Freedoms.RotationZ).Fix(0).Load(1, 0, -1).BucklingFactor();

    /// <summary>A fixed-free column of which the lowest 0.2 m and the highest 0.3 m of 1.5 m are rigid.</summary>
    private static double RigidEnds(bool asOffsets)
    {
        const int n = 8;
        BeamSection soft = Samples.Slender(), stiff = Samples.Slender(1e7);
        var model = new DenseModel(n + 3);
        for (int i = 0; i < n; i++)
        {
            Vector3D from = new(0, 0, 0.2 + (double)i / n), to = new(0, 0, 0.2 + (i + 1.0) / n);
            Vector3D foot = i == 0 && asOffsets ? new(0, 0, 0.2) : default, head = i == n - 1 && asOffsets ? new(0, 0, -0.3) : default;
            model.Add(new BeamElement(i, from - foot, i + 1, to - head, new BeamDefinition(soft) { StartOffset = foot, EndOffset = head }));
        }
        if (asOffsets)
            return model.Fix(0).Fix(n + 1).Fix(n + 2).Load(n, 2, -1).BucklingFactor();
        model.Add(new BeamElement(n + 1, default, 0, new(0, 0, 0.2), new BeamDefinition(stiff)));
        model.Add(new BeamElement(n, new(0, 0, 1.2), n + 2, new(0, 0, 1.5), new BeamDefinition(stiff)));
        return model.Fix(n + 1).Load(n + 2, 2, -1).BucklingFactor();
    }

    /// <summary>A bar of 0.5 m under a rigid arm of 2 m; a spring at its foot is all that resists tilting.</summary>
    private static double RigidRod()
    {
        var beam = new BeamElement(0, default, 1, new(0, 0, 2.5), new BeamDefinition(Samples.Slender(1e6))
        {
            EndOffset = new(0, 0, -2),
            StartJoint = new() { RotationY = 5, RotationZ = 5 },
        });
        return new DenseModel(2).Add(beam).Fix(0).Load(1, 2, -1).BucklingFactor();
    }
}
