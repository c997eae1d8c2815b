using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Tests.Analyses;

/// <summary>A whole statue against the same statue as a plain frame, <see cref="MeshedStatue"/>.</summary>
public class WholeStatueTests
{
    private static readonly SeamStiffness seams = new(2.Megapascals, 0.5.Megapascals);

    public static TheoryData<int> Variants => [0, 1, 2];

    private static SampleStatue Sample(int variant) => variant switch
    {
        0 => new SampleStatue(),
        1 => new SampleStatue { Turn = 0.4, Base = SampleStatue.Springs, Bracing = Bracing.SingleDiagonal },
        _ => new SampleStatue { Turn = -2.1, Seams = seams, Base = TowerBase.Rocking(5e7.NewtonMetersPerRadian) },
    };

    private static (StatueModel Model, LoadCase Case, MeshedStatue Mesh, double[] U) Solve(int variant)
    {
        SampleStatue sample = Sample(variant);
        Statue statue = sample.Statue;
        StatueModel model = StatueModel.Build(statue);
        Point3 at = sample.Point(1.2, 1.1, 7.4);
        Response response = model.Respond(new Situation { Name = "s", Actions = [1.2 * new SelfWeight(), 1.5 * sample.Wind(0.3), 1.3 * sample.Imposed("wing/band 1", 2000, -700, 900, at)] });
        var mesh = new MeshedStatue(statue);
        mesh.AddWeight(1.2);
        mesh.AddWind(1.5, 0.3 + sample.Turn);
        (double sin, double cos) = Math.SinCos(sample.Turn);
        mesh.AddForce("wing/band 1", 1.3 * new Vector3D(2000 * cos + 700 * sin, 2000 * sin - 700 * cos, -900), new Vector3D(at.X.Meters, at.Y.Meters, at.Z.Meters));
        return (model, response.Cases[0], mesh, mesh.Solve());
    }

    [Theory, MemberData(nameof(Variants))]
    public void Levels_bands_and_points_move_as_in_the_mesh(int variant)
    {
        var (model, loadCase, mesh, u) = Solve(variant);
        double scale = mesh.Places.Max(p => mesh.Motion(u, p).U.Length);
        foreach (string place in mesh.Places)
        {
            Movement ours = loadCase.OfPart(place);
            (Vector3D move, Vector3D turn) = mesh.Motion(u, place);
            Assert.InRange((Meters(ours) - move).Length, 0, 1e-7 * scale);
            Assert.InRange((new Vector3D(ours.RotationX.Radians, ours.RotationY.Radians, ours.Twist.Radians) - turn).Length, 0, 1e-7 * scale);
        }
        foreach (NamedPoint point in model.Statue.Points)
        {
            Vector3D? at = point.At is { } p ? new Vector3D(p.X.Meters, p.Y.Meters, p.Z.Meters) : null;
            Assert.InRange((Meters(loadCase.Of(point.Name)) - mesh.Motion(u, point.On, at).U).Length, 0, 1e-7 * scale);
        }
    }

    [Theory, MemberData(nameof(Variants))]
    public void Bars_carry_the_forces_of_the_mesh(int variant)
    {
        var (model, loadCase, mesh, u) = Solve(variant);
        Assert.Equal(mesh.BarCount, model.BarCount);
        double[][] expected = [.. Enumerable.Range(0, mesh.BarCount).Select(i => mesh.BarForces(i, u))];
        double scale = expected.Max(f => f.Max(Math.Abs));
        int index = 0;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                var forces = new double[12];
                loadCase.ForcesOf(ring, bar, band, SkinAssumption.RigidRing, forces);
                for (int i = 0; i < 12; i++)
                    Assert.Equal(expected[index][i], forces[i], 1e-6 * scale);
                index++;
            }
        }
    }

    [Theory, MemberData(nameof(Variants))]
    public void Base_reactions_are_those_of_the_mesh(int variant)
    {
        var (_, loadCase, mesh, u) = Solve(variant);
        (Vector3D force, Vector3D moment) = Equilibrium.Resultant(mesh.Frame, Equilibrium.Reactions(mesh.Frame, u, mesh.Loads), Vector3D.Zero);
        BaseReaction ours = loadCase.Base;
        var ourForce = new Vector3D(ours.ForceX.Newtons, ours.ForceY.Newtons, ours.ForceZ.Newtons);
        var ourMoment = new Vector3D(ours.MomentX.NewtonMeters, ours.MomentY.NewtonMeters, ours.MomentZ.NewtonMeters);
        Assert.InRange((ourForce + force).Length, 0, 1e-7 * force.Length);
        Assert.InRange((ourMoment + moment).Length, 0, 1e-7 * moment.Length);
    }

    [Theory, MemberData(nameof(Variants))]
    public void Lowest_twelve_frequencies_are_those_of_the_mesh(int variant)
    {
        Statue statue = Sample(variant).Statue;
        ModalResponse ours = StatueModel.Build(statue).Modes(12);
        Mechanics.Vibration.ModeSet expected = Mechanics.Vibration.Modes.Solve(new MeshedStatue(statue).Frame, 12);
        Assert.True(ours.MissedNone);
        for (int i = 0; i < 12; i++)
            Assert.Equal(1, ours.Modes[i].Frequency.Hertz / expected.Frequency(i), 1e-7);
    }

    private static Vector3D Meters(Movement m) => new(m.X.Meters, m.Y.Meters, m.Z.Meters);
}
