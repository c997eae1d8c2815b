using CsCheck;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

public class PointMassTests
{
    private static readonly Gen<(double Mass, Vector3D At)[]> Clouds =
        Gen.Select(Gen.Double[0.1, 5], Samples.Points, (mass, at) => (mass, at)).Array[4, 8];

    [Fact]
    public void A_cloud_of_points_is_the_body_they_make() => Gen.Select(Clouds, Samples.Points, Samples.Points).Sample((cloud, move, turn) =>
    {
        double mass = cloud.Sum(p => p.Mass);
        Vector3D centroid = cloud.Aggregate(Vector3D.Zero, (sum, p) => sum + p.Mass * p.At) / mass;
        InertiaTensor own = cloud.Aggregate(default(InertiaTensor), (sum, p) => sum + InertiaTensor.OfPoint(p.Mass, p.At - centroid));
        InertiaTensor aboutOrigin = cloud.Aggregate(default(InertiaTensor), (sum, p) => sum + InertiaTensor.OfPoint(p.Mass, p.At));
        double[] u = [move.X, move.Y, move.Z, turn.X, turn.Y, turn.Z], m = Matrix(new PointMass(0, mass, centroid, own));

        double expected = cloud.Sum(p => p.Mass * (move + turn.Cross(p.At)).Dot(move + turn.Cross(p.At)));
        Assert.Equal(expected, ElementMatrix.Form(m, u, u), 1e-9 * expected);
        InertiaTensor moved = own.MovedFromCentroid(mass, centroid);
        Assert.Equal(aboutOrigin.XX, moved.XX, 1e-9 * mass);
        Assert.Equal(aboutOrigin.XY, moved.XY, 1e-9 * mass);
        Assert.Equal(aboutOrigin.YZ, moved.YZ, 1e-9 * mass);
        Assert.Equal(aboutOrigin.YZ, m[6 * 4 + 5], 1e-9 * mass);
    }, iter: 200);

    [Fact]
    public void Two_half_masses_weigh_one()
    {
        double[] halves = Matrix(new PointMass(0, 1, new(0, 0, 1)));
        new PointMass(0, 1, new(0, 0, 1)).AddMass(halves);
        Assert.Equal(Matrix(new PointMass(0, 2, new(0, 0, 1))), halves);
    }

    [Fact]
    public void A_thin_rod_has_no_inertia_about_itself() =>
        Samples.Rotations.Sample(axes =>
        {
            InertiaTensor rod = InertiaTensor.OfPoint(1, axes.X) + InertiaTensor.OfPoint(1, -axes.X);
            double[] m = Matrix(new PointMass(0, 2, default, rod)), spin = [0, 0, 0, axes.X.X, axes.X.Y, axes.X.Z];
            Assert.Equal(0, ElementMatrix.Form(m, spin, spin), 1e-12);
        }, iter: 100);

    [Fact]
    public void Nonsense_is_refused_with_the_node_named()
    {
        foreach (Func<PointMass> make in (Func<PointMass>[])
        [
            () => new(6, -1), () => new(6, double.PositiveInfinity), () => new(6, 1, new(double.NaN, 0, 0)),
            () => new(6, 1, default, new(1, 1, -1)), () => new(6, 1, default, new(1, 1, 1, XY: 1.1)),
            () => new(6, 1, default, new(1, 1, 1, YZ: double.NaN)),
        ])
        {
            Assert.Contains("node 6", Assert.Throws<ArgumentException>(() => make()).Message);
        }
    }

    private static double[] Matrix(PointMass mass)
    {
        var m = new double[36];
        mass.AddMass(m);
        return m;
    }

    [Fact]
    public void Added_mass_is_that_of_a_point_mass_without_inertia()
    {
        double[] expected = new double[36], actual = new double[36];
        new PointMass(0, 3, new Vector3D(0.4, -0.7, 1.1)).AddMass(expected);
        PointMass.Add(3, new Vector3D(0.4, -0.7, 1.1), actual);
        for (int i = 0; i < 36; i++)
            Assert.Equal(expected[i], actual[i], 1e-14);
    }
}
