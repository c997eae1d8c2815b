using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Tests.Standoffs;

public class PlacedBarTests
{
    [Fact]
    public void Stiffness_is_symmetric_and_never_negative() => Bars.Placed.Sample(bar =>
    {
        Matrix<double> k = Bars.Square(Bars.Full(bar));
        Assert.Equal(k, k.Transpose());
        Assert.True(Bars.LeastEigenvalue(k) >= -1e-12 * Bars.Scale(bar));
    });

    [Fact]
    public void Rigid_motion_of_both_nodes_makes_no_force() =>
        Gen.Select(Bars.Placement, Bars.Vector(1), Bars.Vector(3), Bars.Vector(1), Bars.Vector(1)).Sample((place, level, band, u, r) =>
        {
            var bar = new PlacedBar(place, level, band);
            double[] k = Bars.Full(bar), motion = [.. Rigid(u, r, level), .. Rigid(u, r, band)];
            Assert.All(Bars.Times(k, motion), f => Assert.Equal(0, f, 1e-11 * Bars.Scale(bar)));
        });

    [Fact]
    public void Loads_on_one_node_do_reciprocal_work() =>
        Gen.Select(Bars.Placed, Bars.Vector(1), Bars.Vector(1), Bars.Vector(1), Bars.Vector(1)).Sample((bar, u1, r1, u2, r2) =>
        {
            double[] zero = new double[6], d1 = Six(u1, r1), d2 = Six(u2, r2), f = new double[12], g = new double[12], m = new double[6], n = new double[6];
            bar.Forces(d1, zero, f);
            bar.Forces(zero, d2, g);
            bar.Motion(d1, zero, m);
            bar.Motion(zero, d2, n);
            double work12 = Enumerable.Range(0, 6).Sum(i => f[6 + i] * n[i]), work21 = Enumerable.Range(0, 6).Sum(i => g[6 + i] * m[i]);
            Assert.Equal(work12, work21, 1e-11 * Bars.Scale(bar));
        });

    [Fact]
    public void Forces_at_the_ends_are_what_the_matrix_puts_on_the_nodes() =>
        Gen.Select(Bars.Placement, Bars.Vector(1), Bars.Vector(3), Bars.Vector(1), Bars.Vector(1), Bars.Vector(1), Bars.Vector(1)).Sample((place, level, band, u1, r1, u2, r2) =>
        {
            var bar = new PlacedBar(place, level, band);
            double[] f = new double[12], k = Bars.Full(bar);
            bar.Forces(Six(u1, r1), Six(u2, r2), f);
            double[] nodes = Bars.Times(k, [.. Six(u1, r1), .. Six(u2, r2)]);
            double tolerance = 1e-11 * Bars.Scale(bar);
            AssertCarried(f[..6], place.TowerEnd - level, nodes[..6]);
            AssertCarried(f[6..], place.SkinEnd - band, nodes[6..]);

            void AssertCarried(double[] end, Vector3D arm, double[] node)
            {
                Vector3D force = place.Axes.ToGlobal(new(end[0], end[1], end[2]));
                Vector3D moment = place.Axes.ToGlobal(new(end[3], end[4], end[5])) + arm.Cross(force);
                double[] expected = Six(force, moment);
                for (int i = 0; i < 6; i++)
                    Assert.Equal(expected[i], node[i], tolerance);
            }
        });

    [Fact]
    public void Turning_everything_turns_the_stiffness_with_it() =>
        Gen.Select(Bars.Placement, Bars.Vector(1), Bars.Vector(3), Bars.Direction, Bars.Direction, Bars.Vector(5))
            .Where((_, _, _, x, up, _) => x.Cross(up).Length > 0.1)
            .Sample((place, level, band, x, up, origin) =>
            {
                Axes3D axes = Axes3D.Along(x, up);
                var bar = new PlacedBar(place, level, band);
                Matrix<double> k = Bars.Square(Bars.Full(bar));
                Matrix<double> moved = Bars.Square(Bars.Full(new PlacedBar(place.Moved(axes, origin), origin + axes.ToGlobal(level), origin + axes.ToGlobal(band))));
                var R = Matrix<double>.Build.Dense(12, 12);
                for (int b = 0; b < 12; b += 3)
                {
                    for (int j = 0; j < 3; j++)
                    {
                        Vector3D column = axes.ToGlobal(Bars.Ends[j]);
                        (R[b, b + j], R[b + 1, b + j], R[b + 2, b + j]) = (column.X, column.Y, column.Z);
                    }
                }
                Assert.True((R * k * R.Transpose() - moved).FrobeniusNorm() <= 1e-11 * Bars.Scale(bar));
            });

    [Fact]
    public void Sliding_saddle_carries_no_force_along_its_direction() => Gen.Select(Bars.Placement, Bars.Vector(0.01), Bars.Vector(0.01)).Sample((place, u, r) =>
    {
        var f = new double[12];
        var bar = new PlacedBar(place, place.TowerEnd, place.SkinEnd);
        bar.Forces(new double[6], Six(u, r), f);
        Assert.Equal(0, place.Axes.ToGlobal(new(f[6], f[7], f[8])).Dot(place.Slide), 1e-13 * Bars.Scale(bar));
    });

    [Fact]
    public void Imposed_motion_acts_like_the_same_motion_of_the_band() => Gen.Select(Bars.Placed, Bars.Vector(0.01)).Sample((bar, u) =>
    {
        double[] zero = new double[6], moved = new double[12], imposed = new double[12], load = new double[12], k = Bars.Full(bar);
        bar.Forces(zero, Six(u, Vector3D.Zero), moved);
        bar.Forces(zero, zero, imposed, u);
        bar.AddLoad(u, load);
        double[] held = Bars.Times(k, [.. zero, .. Six(u, Vector3D.Zero)]);
        double tolerance = 1e-13 * Bars.Scale(bar);
        for (int i = 0; i < 12; i++)
        {
            Assert.Equal(moved[i], imposed[i], tolerance);
            Assert.Equal(-held[i], load[i], tolerance);
        }
    });

    [Fact]
    public void Radial_bar_props_the_skin_and_a_bar_along_the_skin_only_flexes()
    {
        double prop = Push(Vector3D.Zero), flex = Push(new Vector3D(1, 1, 0));
        double EA = 200e9 * 480e-6, EI = 200e9 * 2.56e-9;
        Assert.Equal(EA, prop, 1e-6 * EA);
        Assert.Equal(3 * EI, flex, 1e-3 * 3 * EI);

        static double Push(Vector3D tower)
        {
            Vector3D skin = new(1, 0, 0);
            double[] k = Bars.Full(new PlacedBar(BarPlacement.Between(tower, skin, Vector3D.UnitX, 0, Bars.Flat), tower, skin));
            return k[12 * 6 + 6];
        }
    }

    [Fact]
    public void Cantilever_takes_its_force_in_the_outer_axes()
    {
        var bar = new PlacedBar(BarPlacement.Between(new(1, 0, 0), new(3, 0, 0), Vector3D.UnitX, 0, Bars.Flat with { Roll = Angle.FromDegrees(90) }), default, default);
        double[] f = new double[12], d = new double[6];
        Assert.True(bar.Cantilever(new Vector3D(0, 0, 100), f, d));
        Assert.Equal(100, f[7], 1e-9);
        Assert.Equal(-200, f[5], 1e-9);
        Assert.Equal(100 * 8 / (3 * 200e9 * 2.56e-9), d[1], 1e-3 * d[1]);
    }

    private static double[] Six(Vector3D u, Vector3D r) => [u.X, u.Y, u.Z, r.X, r.Y, r.Z];

    private static double[] Rigid(Vector3D u, Vector3D r, Vector3D at) => Six(u + r.Cross(at), r);
}
