using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics.Elements;
using static StatueFrame.Mechanics.Tests.Elements.ElementMatrix;

namespace StatueFrame.Mechanics.Tests.Elements;

public class BeamElementPropertyTests
{
    private const int Times = 200;

    /// <summary>A usual stiffness of these beams, N/m: a beam released all round has only rounding of it left.</summary>
    private const double Usual = 1e5;

    /// <summary>A hundredth of a newton per metre: below it a geometric stiffness is rounding of an axial force of zero.</summary>
    private const double Floor = 0.01;

    private static readonly Gen<double[]> Displacements = Gen.Double[-1e-3, 1e-3].Array[12];

    [Fact]
    public void Matrices_are_symmetric_and_finite() => Gen.Select(Samples.JointedBeams, Displacements).Sample((laid, u) =>
    {
        BeamElement beam = laid.Build();
        foreach (double[] m in (double[][])[Stiffness(beam), Mass(beam), Geometric(beam, u)])
            for (int i = 0; i < 12; i++)
                for (int j = 0; j < 12; j++)
                    Assert.True(double.IsFinite(m[12 * i + j]) && m[12 * i + j] == m[12 * j + i]);
    }, iter: Times);

    [Fact]
    public void Stiffness_and_mass_are_never_negative() => Samples.JointedBeams.Sample(laid =>
    {
        double[] k = Stiffness(laid.Build());
        foreach (double[] m in (double[][])[k, Mass(laid.Build())])
            Assert.True(Eigenvalues(m)[0] >= -1e-11 * (Largest(m) + (m == k ? Usual : 0)));
    }, iter: Times);

    [Fact]
    public void A_rigidly_joined_beam_has_six_rigid_motions_and_no_other() => Samples.Beams.Sample(laid =>
    {
        double[] values = Eigenvalues(Stiffness(laid.Build()));
        Assert.Equal(6, values.Count(v => Math.Abs(v) < 1e-10 * values[11]));
    }, iter: Times);

    [Fact]
    public void Rigid_motion_costs_nothing() =>
        Gen.Select(Samples.JointedBeams, Samples.Points, Samples.Points).Sample((laid, move, turn) =>
        {
            double[] k = Stiffness(laid.Build()), u = RigidMotion(move, turn, laid.Start, laid.End);
            for (int i = 0; i < 12; i++)
                Assert.True(Math.Abs(Row(k, i, u)) < 1e-11 * (Largest(k) + Usual) * (1 + Largest(u)));
        }, iter: Times);

    [Fact]
    public void Mass_of_rigid_motion_is_that_of_the_body() =>
        Gen.Select(Samples.JointedBeams, Samples.Points, Samples.Points).Sample((laid, move, turn) =>
        {
            BeamElement beam = laid.Build();
            double[] u = RigidMotion(move, turn, laid.Start, laid.End);
            Vector3D from = laid.Start + laid.Definition.StartOffset, spin = beam.Axes.ToLocal(turn);
            double expected = 0;
            foreach (double gauss in (double[])[-0.5 / Math.Sqrt(3), 0.5 / Math.Sqrt(3)])
            {
                double xi = 0.5 + gauss;
                BeamSection s = laid.Definition.SectionAt(xi);
                Vector3D v = move + turn.Cross(from + xi * beam.Length * beam.Axes.X);
                expected += beam.Length / 2 * (s.Mass * v.Dot(v)
                    + (s.RotaryY + s.RotaryZ) * spin.X * spin.X + s.RotaryY * spin.Y * spin.Y + s.RotaryZ * spin.Z * spin.Z);
            }
            double[] m = Mass(beam);
            Assert.Equal(expected, Form(m, u, u), 1e-11 * Largest(m) * Largest(u) * Largest(u));
        }, iter: Times);

    [Fact]
    public void End_forces_balance() => Gen.Select(Samples.JointedBeams, Displacements).Sample((laid, u) =>
    {
        BeamElement beam = laid.Build();
        var f = new double[12];
        beam.EndForces(u, f);
        double[] sums =
        [
            f[0] + f[6], f[1] + f[7], f[2] + f[8], f[3] + f[9],
            f[4] + f[10] - beam.Length * f[8], f[5] + f[11] + beam.Length * f[7],
        ];
        Assert.All(sums, sum => Assert.True(Math.Abs(sum) < 1e-9 * (1 + Largest(f))));
        Assert.Equal(f[6], beam.AxialForce(u), 1e-9 * (1 + Largest(f)));
    }, iter: Times);

    [Fact]
    public void End_forces_do_the_work_of_the_stiffness() =>
        Gen.Select(Samples.JointedBeams, Displacements, Displacements).Sample((laid, u, v) =>
        {
            BeamElement beam = laid.Build();
            var f = new double[12];
            beam.EndForces(u, f);
            double work = End(0, laid.Definition.StartOffset) + End(6, laid.Definition.EndOffset);
            double[] k = Stiffness(beam);
            Assert.Equal(Form(k, v, u), work, 1e-11 * (Largest(k) + Usual) * Largest(u) * Largest(v));

            double End(int at, Vector3D arm)
            {
                Vector3D turn = new(v[at + 3], v[at + 4], v[at + 5]);
                Vector3D move = new Vector3D(v[at], v[at + 1], v[at + 2]) + turn.Cross(arm);
                return beam.Axes.ToGlobal(new(f[at], f[at + 1], f[at + 2])).Dot(move)
                    + beam.Axes.ToGlobal(new(f[at + 3], f[at + 4], f[at + 5])).Dot(turn);
            }
        }, iter: Times);

    [Fact]
    public void Turning_the_whole_turns_the_matrices() =>
        Gen.Select(Samples.JointedBeams, Samples.Rotations, Displacements).Sample((laid, q, u) =>
        {
            BeamDefinition d = laid.Definition;
            BeamElement beam = laid.Build(), turned = new(0, q.ToGlobal(laid.Start), 1, q.ToGlobal(laid.End), d with
            {
                Up = q.ToGlobal(d.Up),
                StartOffset = q.ToGlobal(d.StartOffset),
                EndOffset = q.ToGlobal(d.EndOffset),
            });
            double[] turnedU = Turn(u);
            AssertSameForm(Stiffness(beam), Stiffness(turned), Usual);
            AssertSameForm(Mass(beam), Mass(turned), 0);
            AssertSameForm(Geometric(beam, u), Geometric(turned, turnedU), Floor);

            void AssertSameForm(double[] m, double[] n, double floor) =>
                Assert.Equal(Form(m, u, u), Form(n, turnedU, turnedU), 1e-9 * (Largest(m) + floor) * Largest(u) * Largest(u));

            double[] Turn(double[] w)
            {
                var result = new double[12];
                for (int i = 0; i < 12; i += 3)
                {
                    Vector3D v = q.ToGlobal(new(w[i], w[i + 1], w[i + 2]));
                    (result[i], result[i + 1], result[i + 2]) = (v.X, v.Y, v.Z);
                }
                return result;
            }
        }, iter: Times);

    [Fact]
    public void A_beam_laid_the_other_way_is_the_same_beam() => Gen.Select(Samples.JointedBeams, Displacements).Sample((laid, u) =>
    {
        BeamDefinition d = laid.Definition;
        BeamElement beam = laid.Build(), reversed = new(0, laid.End, 1, laid.Start,
            new BeamDefinition(xi => d.SectionAt(1 - xi))
            {
                Up = d.Up,
                Roll = -d.Roll,
                StartOffset = d.EndOffset,
                EndOffset = d.StartOffset,
                StartJoint = d.EndJoint,
                EndJoint = d.StartJoint,
            });
        double[] swapped = [.. u[6..], .. u[..6]];
        AssertClose(Stiffness(beam), Swap(Stiffness(reversed)), 1e-10, Usual);
        AssertClose(Mass(beam), Swap(Mass(reversed)), 1e-10);
        AssertClose(Geometric(beam, u), Swap(Geometric(reversed, swapped)), 1e-9, Floor);

        static double[] Swap(double[] m) => [.. Enumerable.Range(0, 144).Select(i => m[12 * ((i / 12 + 6) % 12) + (i + 6 - i / 12 * 12) % 12])];
    }, iter: Times);

    [Fact]
    public void Equal_ends_make_a_uniform_beam() => Samples.JointedBeams.Sample(laid =>
    {
        BeamDefinition d = laid.Definition;
        BeamElement uniform = Build(new BeamDefinition(laid.First)), varying = Build(new BeamDefinition(_ => laid.First));
        AssertClose(Stiffness(uniform), Stiffness(varying), 1e-11, Usual);
        AssertClose(Mass(uniform), Mass(varying), 1e-11);

        BeamElement Build(BeamDefinition of) => new(0, laid.Start, 1, laid.End, of with
        {
            StartOffset = d.StartOffset,
            EndOffset = d.EndOffset,
            StartJoint = d.StartJoint,
            EndJoint = d.EndJoint,
        });
    }, iter: Times);

    [Fact]
    public void Springs_at_every_freedom_act_in_series_with_the_beam() =>
        Gen.Select(Samples.Beams, Samples.Springs.Array[12]).Sample((laid, s) =>
        {
            BeamDefinition plain = laid.Definition with { StartOffset = default, EndOffset = default, Up = Vector3D.UnitZ, Roll = 0 };
            double L = (laid.End - laid.Start).Length;
            if (L < 0.5)
                return;
            BeamDefinition jointed = plain with { StartJoint = JointOf(s.AsSpan(0, 6)), EndJoint = JointOf(s.AsSpan(6, 6)) };
            BeamElement inner = new(0, default, 1, new(L, 0, 0), plain), outer = new(0, default, 1, new(L, 0, 0), jointed);
            Matrix<double> k = Dense(Stiffness(inner)), springs = Matrix<double>.Build.DenseOfDiagonalArray(s);
            Matrix<double> t = (k + springs).Solve(springs);
            AssertClose((k * t).ToRowMajorArray(), Stiffness(outer), 1e-9);
            AssertClose((t.Transpose() * Dense(Mass(inner)) * t).ToRowMajorArray(), Mass(outer), 1e-9);
        }, iter: Times);

    [Fact]
    public void A_pinned_end_carries_no_moment() => Gen.Select(Samples.Beams, Displacements).Sample((laid, u) =>
    {
        var beam = new BeamElement(0, laid.Start, 1, laid.End, laid.Definition with { EndJoint = BeamJoint.Pinned });
        var f = new double[12];
        beam.EndForces(u, f);
        Assert.Equal(0, f[10]);
        Assert.Equal(0, f[11]);
    }, iter: Times);

    [Fact]
    public void Spring_limits_are_released_and_rigid() => Samples.Beams.Sample(laid =>
    {
        AssertClose(With(0), With(1e-8), 1e-9);
        AssertClose(With(double.PositiveInfinity), With(1e18), 1e-9);
        AssertClose(With(double.PositiveInfinity), With(double.MaxValue), 1e-12);
        AssertClose(With(0), With(double.Epsilon), 1e-12);

        double[] With(double stiffness)
        {
            BeamJoint joint = new() { RotationY = stiffness, RotationZ = stiffness };
            var beam = new BeamElement(0, laid.Start, 1, laid.End, laid.Definition with { StartJoint = joint, EndJoint = joint });
            return [.. Stiffness(beam), .. Mass(beam).Select(m => 1e3 * m)];
        }
    }, iter: Times);

    [Fact]
    public void A_softer_joint_never_stiffens() => Gen.Select(Samples.JointedBeams, Displacements).Sample((laid, u) =>
    {
        BeamElement jointed = laid.Build();
        var rigid = new BeamElement(0, laid.Start, 1, laid.End,
            laid.Definition with { StartJoint = BeamJoint.Rigid, EndJoint = BeamJoint.Rigid });
        double[] k = Stiffness(rigid);
        Assert.True(Form(Stiffness(jointed), u, u) <= Form(k, u, u) + 1e-12 * Largest(k) * Largest(u) * Largest(u));
    }, iter: Times);

    /// <summary>
    /// To second order a turned body moves by θ×r + ½θ×(θ×r). A beam under axial force that turns so is not stretched, so
    /// its geometric stiffness must take back the work of the end forces on the second part.
    /// </summary>
    [Fact]
    public void Geometric_stiffness_sees_no_strain_in_a_rigid_turn() =>
        Gen.Select(Samples.JointedBeams, Displacements, Samples.Points).Sample((laid, u, turn) =>
        {
            BeamElement beam = laid.Build();
            double N = beam.AxialForce(u);
            double[] rigid = RigidMotion(default, turn, laid.Start, laid.End);
            double work = N * beam.Axes.X.Dot(turn.Cross(turn.Cross(laid.End - laid.Start)));
            Assert.Equal(-work, Form(Geometric(beam, u), rigid, rigid), 1e-9 * (1 + Math.Abs(N)) * turn.Dot(turn));
        }, iter: Times);

    private static BeamJoint JointOf(ReadOnlySpan<double> s) =>
        new() { X = s[0], Y = s[1], Z = s[2], RotationX = s[3], RotationY = s[4], RotationZ = s[5] };

    private static Matrix<double> Dense(double[] m) => Matrix<double>.Build.Dense(12, 12, (i, j) => m[12 * i + j]);

    private static double Row(double[] m, int row, double[] u)
    {
        double sum = 0;
        for (int j = 0; j < 12; j++)
            sum += m[12 * row + j] * u[j];
        return sum;
    }

    private static double[] Eigenvalues(double[] m) =>
        [.. Dense(m).Evd(Symmetricity.Symmetric).EigenValues.Select(v => v.Real).Order()];
}
