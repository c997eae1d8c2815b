using MathNet.Numerics.LinearAlgebra;

namespace StatueFrame.Mechanics.Tests;

public class FrameTests
{
    [Fact]
    public void Assembled_matrices_equal_the_dense_sum_of_elements()
    {
        for (int seed = 0; seed < 20; seed++)
        {
            Frame frame = TestFrames.Random(seed).Build();
            Matrix<double> k = Matrix<double>.Build.Dense(frame.FreedomCount, frame.FreedomCount), m = k.Clone();
            foreach (var element in frame.Elements)
            {
                var ke = new double[144];
                var me = new double[144];
                element.AddStiffness(ke);
                element.AddMass(me);
                for (int i = 0; i < 144; i++)
                {
                    int row = Freedom(i / 12), column = Freedom(i % 12);
                    k[row, column] += ke[i];
                    m[row, column] += me[i];
                }

                int Freedom(int i) => 6 * element.Nodes[i / 6] + i % 6;
            }
            foreach ((int node, double[] spring) in frame.Springs)
            {
                for (int i = 0; i < 36; i++)
                    k[6 * node + i / 6, 6 * node + i % 6] += spring[i];
            }
            for (int i = 0; i < frame.EquationCount; i++)
            {
                for (int j = 0; j < frame.EquationCount; j++)
                    Assert.Equal(k[frame.FreedomOf(i), frame.FreedomOf(j)], frame.Stiffness[i, j], 1e-9 * k[frame.FreedomOf(i), frame.FreedomOf(i)]);
            }
        }
    }

    [Fact]
    public void Rigid_motion_of_an_unsupported_frame_causes_no_force()
    {
        Frame frame = TestFrames.Random(3, supported: false).Build();
        for (int direction = 0; direction < 6; direction++)
        {
            double[] motion = frame.RigidMotion(direction, new(1, -2, 0.5));
            var product = new double[frame.EquationCount];
            frame.Stiffness.Multiply(TestFrames.Reduced(frame, motion).AsArray(), product);
            Assert.All(product, force => Assert.Equal(0, force, 1e-10 * frame.Stiffness.Values.ToArray().Max()));
        }
    }

    [Fact]
    public void Full_and_reduced_vectors_convert_into_each_other()
    {
        Frame frame = TestFrames.Random(11).Build();
        double[] reduced = [.. Enumerable.Range(1, frame.EquationCount).Select(i => (double)i)];
        var full = new double[frame.FreedomCount];
        var back = new double[frame.EquationCount];
        frame.Expand(reduced, full);
        frame.Reduce(full, back);
        Assert.Equal(reduced, back);
        Assert.Equal(frame.EquationCount, full.Count(value => value != 0));
        for (int freedom = 0; freedom < full.Length; freedom++)
            Assert.Equal(frame.EquationOf(freedom) < 0, full[freedom] == 0);
    }

    [Fact]
    public void Freedoms_are_described_by_node_and_name() =>
        Assert.Equal("RotationY of node 1 'joint 1'", TestFrames.Random(1).Build().Describe(10));

    [Fact]
    public void Vectors_of_the_wrong_length_or_not_finite_are_refused()
    {
        Frame frame = TestFrames.Random(1).Build();
        Assert.Throws<ArgumentException>(() => frame.GeometricStiffness(new double[5]));
        double[] bad = new double[frame.FreedomCount];
        bad[7] = double.NaN;
        Assert.Contains("Y of node 1", Assert.Throws<ArgumentException>(() => frame.InertiaForces(bad)).Message);
    }
}
