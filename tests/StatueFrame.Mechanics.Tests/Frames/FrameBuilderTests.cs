using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests;

public class FrameBuilderTests
{
    private sealed class Matrix(int start, int end, Func<int, int, double> stiffness, double mass = 0) : FrameElement(start, end)
    {
        public override void AddStiffness(Span<double> k)
        {
            for (int i = 0; i < 144; i++)
                k[i] += stiffness(i / 12, i % 12);
        }

        public override void AddMass(Span<double> m) => m[0] += mass;
    }

    private static FrameProblem[] ProblemsOf(FrameBuilder builder) =>
        [.. Assert.Throws<FrameException>(builder.Build).Problems];

    private static FrameBuilder Sound()
    {
        var builder = new FrameBuilder();
        builder.AddNode(Vector3D.Zero, "base");
        builder.AddNode(new(0, 0, 2), "neck");
        builder.Restrain(0, Freedoms.All);
        builder.Add(new UniformBeam(0, 1, Vector3D.Zero, new(0, 0, 2)));
        return builder;
    }

    [Fact]
    public void Empty_frame_is_refused() => Assert.Contains("no nodes", Assert.Single(ProblemsOf(new())).Message);

    [Fact]
    public void Unknown_nodes_are_named()
    {
        FrameBuilder builder = Sound();
        builder.Add(new UniformBeam(1, 7, default, Vector3D.UnitX)).Restrain(8, Freedoms.X).AddMass(-1, new double[36]).AddStiffness(9, new double[36]);
        FrameProblem[] problems = ProblemsOf(builder);
        Assert.Equal([8, -1, 9, 7], problems.Select(p => p.Node));
        Assert.All(problems, p => Assert.Contains("does not exist", p.Message));
    }

    [Fact]
    public void Element_that_joins_a_node_to_itself_is_refused() =>
        Assert.Contains("joins node 1 to itself", Assert.Single(ProblemsOf(Sound().Add(new Matrix(1, 1, (_, _) => 0)))).Message);

    [Fact]
    public void Position_that_is_not_finite_is_refused()
    {
        FrameBuilder builder = Sound();
        int node = builder.AddNode(new(0, double.NaN, 0), "beak");
        builder.Restrain(node, Freedoms.All);
        Assert.Contains("node 2 'beak' is not finite", Assert.Single(ProblemsOf(builder)).Message);
    }

    [Fact]
    public void Node_that_nothing_is_attached_to_is_named_with_its_freedoms()
    {
        FrameBuilder builder = Sound();
        builder.Restrain(builder.AddNode(Vector3D.UnitX, "feather"), Freedoms.Displacements | Freedoms.RotationX | Freedoms.RotationY);
        FrameProblem problem = Assert.Single(ProblemsOf(builder));
        Assert.Equal((2, Freedoms.RotationZ), (problem.Node, problem.Freedoms));
        Assert.Contains("node 2 'feather'", problem.Message);
    }

    [Fact]
    public void Freedom_without_stiffness_is_named()
    {
        FrameBuilder builder = Sound();
        int node = builder.AddNode(new(0, 0, 4), "crest");
        builder.Add(new Matrix(1, node, (i, j) => i == j && i != 9 && i != 11 ? 1 : 0));
        FrameProblem problem = Assert.Single(ProblemsOf(builder));
        Assert.Equal((node, Freedoms.RotationX | Freedoms.RotationZ), (problem.Node, problem.Freedoms));
        Assert.Contains("RotationX, RotationZ of node 2 'crest'", problem.Message);
    }

    [Fact]
    public void Matrices_that_are_not_finite_or_not_symmetric_are_refused()
    {
        FrameBuilder builder = Sound();
        builder.Add(new Matrix(0, 1, (i, j) => i == 3 && j == 2 ? double.NaN : 1));
        builder.Add(new Matrix(0, 1, (i, j) => i == j ? 2 : i < j ? 1 : 0.5));
        builder.Add(new Matrix(0, 1, (_, _) => 1, double.PositiveInfinity));
        var spring = new double[36];
        spring[7] = double.NegativeInfinity;
        builder.AddStiffness(1, spring).AddMass(1, spring);
        string[] messages = [.. ProblemsOf(builder).Select(p => p.Message)];
        Assert.Equal(5, messages.Length);
        Assert.Contains("stiffness matrix of element 1 from node 0 'base' to node 1 'neck' is not finite at row 3, column 2", messages[0]);
        Assert.Contains("stiffness matrix of element 2", messages[1]);
        Assert.Contains("not symmetric at row 1, column 0", messages[1]);
        Assert.Contains("mass matrix of element 3", messages[2]);
        Assert.Contains("ground spring at node 1 'neck' is not finite", messages[3]);
        Assert.Contains("mass at node 1 'neck' is not finite", messages[4]);
    }

    [Fact]
    public void Frame_without_any_freedom_is_refused() =>
        Assert.Contains("nothing to solve", Assert.Single(ProblemsOf(Sound().Restrain(1, Freedoms.All))).Message);

    [Fact]
    public void Matrices_of_the_wrong_size_are_refused_at_once() =>
        Assert.Throws<ArgumentException>(() => Sound().AddMass(1, new double[6]));

    [Fact]
    public void All_problems_are_in_the_message()
    {
        FrameBuilder builder = Sound();
        builder.AddNode(new(double.NaN, 0, 0));
        FrameException exception = Assert.Throws<FrameException>(builder.Build);
        Assert.Equal(2, exception.Problems.Count);
        Assert.All(exception.Problems, p => Assert.Contains(p.Message, exception.Message));
    }

    [Fact]
    public void Frames_of_equal_topology_share_pattern_and_symbolic_step()
    {
        Frame first = TestFrames.Random(5).Build();
        FrameBuilder builder = TestFrames.Random(5);
        builder.AddAtNode(0, [], TestFrames.PositiveMatrix(new Random(1), 10));
        Frame variant = builder.Build(first), alone = builder.Build();
        Assert.Same(first.Symbolic, variant.Symbolic);
        Assert.Same(first.Stiffness.Pattern, variant.Mass.Pattern);
        Assert.NotSame(first.Symbolic, alone.Symbolic);
        Assert.Equal(alone.Stiffness.Values, variant.Stiffness.Values);
        Assert.Equal(alone.Mass.Values, variant.Mass.Values);
    }

    [Fact]
    public void Frames_of_other_topology_find_their_own_pattern()
    {
        Frame first = TestFrames.Random(5).Build();
        FrameBuilder builder = TestFrames.Random(5);
        Frame held = builder.Restrain(0, Freedoms.X | Freedoms.RotationY).Restrain(1, Freedoms.Z).Build(first);
        Assert.NotSame(first.Symbolic, held.Symbolic);
        Frame other = TestFrames.Random(6).Build(first);
        Assert.NotSame(first.Symbolic, other.Symbolic);
    }

    [Fact]
    public void Built_frame_does_not_change_with_its_builder()
    {
        FrameBuilder builder = Sound();
        Frame frame = builder.Build();
        double before = frame.Mass[0, 0];
        builder.AddMass(1, TestFrames.PositiveMatrix(new Random(2), 10)).Restrain(1, Freedoms.X);
        Assert.Equal(before, frame.Mass[0, 0]);
        Assert.Equal(6, frame.EquationCount);
    }
}
