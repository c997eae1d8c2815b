using CsCheck;
using StatueFrame.Mechanics.Elements;
using static StatueFrame.Mechanics.Tests.Elements.ElementMatrix;

namespace StatueFrame.Mechanics.Tests.Elements;

public class BarElementTests
{
    private sealed record Laid(Vector3D Start, Vector3D End, Vector3D StartOffset, Vector3D EndOffset)
    {
        public BarElement Build() => new(0, Start, 1, End, 2e5, 3, StartOffset, EndOffset);
    }

    private static readonly Gen<Laid> Bars =
        Gen.Select(Samples.Points, Samples.Points, Samples.Points, Samples.Points,
            (start, end, near, far) => new Laid(start, end, 0.2 * near, 0.2 * far))
        .Where(laid => (laid.End + laid.EndOffset - laid.Start - laid.StartOffset).Length > 0.5);

    [Fact]
    public void Rigid_motion_costs_nothing_and_weighs_the_whole() =>
        Gen.Select(Bars, Samples.Points, Samples.Points).Sample((laid, move, turn) =>
        {
            BarElement bar = laid.Build();
            double[] u = RigidMotion(move, turn, laid.Start, laid.End), k = Stiffness(bar);
            double[] straight = RigidMotion(move, default, laid.Start, laid.End);
            Assert.True(Form(k, u, u) < 1e-12 * Largest(k) * (1 + Largest(u) * Largest(u)));
            Assert.Equal(3 * bar.Length * move.Dot(move), Form(Mass(bar), straight, straight), 1e-9);
        }, iter: 200);

    [Fact]
    public void A_bar_is_a_beam_with_ball_joints() => Gen.Select(Bars, Gen.Double[-1e-3, 1e-3].Array[12]).Sample((laid, u) =>
    {
        BeamSection section = new() { EA = 2e5, EIy = 1e-9, EIz = 1e-9, GJ = 1e-9, Mass = 3 };
        BarElement bar = laid.Build();
        var beam = new BeamElement(0, laid.Start, 1, laid.End, new BeamDefinition(section)
        {
            StartOffset = laid.StartOffset,
            EndOffset = laid.EndOffset,
            StartJoint = BeamJoint.Pinned with { RotationX = 0 },
            EndJoint = BeamJoint.Pinned,
        });
        AssertClose(Stiffness(beam), Stiffness(bar), 1e-12);
        AssertClose(Mass(beam), Mass(bar), 1e-12);
        AssertClose(Geometric(beam, u), Geometric(bar, u), 1e-9, 0.01);
    }, iter: 100);

    [Fact]
    public void Geometric_stiffness_sees_no_strain_in_a_rigid_turn() =>
        Gen.Select(Bars, Gen.Double[-1e-3, 1e-3].Array[12], Samples.Points).Sample((laid, u, turn) =>
        {
            BarElement bar = laid.Build();
            double N = bar.AxialForce(u);
            double[] rigid = RigidMotion(default, turn, laid.Start, laid.End);
            double work = N * bar.Axes.X.Dot(turn.Cross(turn.Cross(laid.End - laid.Start)));
            Assert.Equal(-work, Form(Geometric(bar, u), rigid, rigid), 1e-9 * (1 + Math.Abs(N)) * turn.Dot(turn));
        }, iter: 200);

    [Fact]
    public void Axial_force_is_stretch_times_stiffness()
    {
        var bar = new BarElement(0, default, 1, new(0, 0, 4), 8e3, startOffset: new(1, 0, 0), endOffset: new(1, 0, 0));
        var u = new double[12];
        u[8] = 0.01;
        u[10] = 0.002;
        Assert.Equal(8e3 / 4 * (0.01 - 0.002), bar.AxialForce(u), 1e-9);
    }

    [Fact]
    public void Nonsense_is_refused_with_the_nodes_named()
    {
        Assert.Contains("from node 2 to node 5", Assert.Throws<ArgumentException>(() => new BarElement(2, default, 5, default, 1)).Message);
        Assert.Contains("from node 2 to node 5", Assert.Throws<ArgumentException>(() => new BarElement(2, default, 5, new(1, 0, 0), 0)).Message);
        Assert.Contains("from node 2 to node 5", Assert.Throws<ArgumentException>(() => new BarElement(2, default, 5, new(1, 0, 0), 1, double.NaN)).Message);
        Assert.Contains("node 2 twice", Assert.Throws<ArgumentException>(() => new BarElement(2, default, 2, new(1, 0, 0), 1)).Message);
    }
}
