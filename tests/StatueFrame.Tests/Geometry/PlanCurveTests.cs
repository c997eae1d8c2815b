using CsCheck;

namespace StatueFrame.Tests.Geometry;

public class PlanCurveTests
{
    private static readonly PlanCurve Box = new([0, 3, 3, 0], [0, 0, 1, 1]);

    [Fact]
    public void Box_has_its_area_centroid_and_perimeter()
    {
        Assert.Equal(3, Box.Area, 1e-12);
        Assert.Equal(8, Box.Perimeter, 1e-12);
        Assert.Equal((1.5, 0.5), (Math.Round(Box.CentroidX, 12), Math.Round(Box.CentroidY, 12)));
    }

    [Fact]
    public void Extent_is_that_of_the_outermost_vertices()
    {
        Assert.Equal((0, 3), Box.Extent(1, 0));
        Assert.Equal((-1, 0), Box.Extent(0, -1));
    }

    [Fact]
    public void Extent_counts_every_vertex_of_any_number_of_them() =>
        Gen.Select(Gen.Int[3, 40], Gen.Double[-4, 4]).Sample((n, angle) =>
        {
            PlanCurve c = PlanCurve.Ellipse(3, 1, 0.2, 0.1, 0.3, n);
            (double s, double cos) = Math.SinCos(angle);
            double[] along = [.. c.X.ToArray().Zip(c.Y.ToArray(), (x, y) => x * cos + y * s)];
            return c.Extent(cos, s) == (along.Min(), along.Max());
        });

    [Fact]
    public void A_ray_meets_the_nearest_edge_with_its_outward_normal()
    {
        Assert.Equal((2, 1, 0, Box.NearestPosition(3, 0.5)), Box.Cast(1, 0.5, 1, 0));
        Assert.Equal((1, -1, 0, Box.NearestPosition(0, 0.5)), Box.Cast(1, 0.5, -1, 0));
        Assert.True(double.IsNaN(Box.Cast(5, 5, 1, 0).Distance));
    }

    [Fact]
    public void Fractions_lead_back_to_the_vertices()
    {
        PlanCurve ellipse = PlanCurve.Ellipse(3, 1, 0.2, 0.1, 0.3, 40);
        PlanCurve again = ellipse.AtFractions(ellipse.Fractions());
        for (int i = 0; i < 40; i++)
        {
            Assert.Equal(ellipse.X[i], again.X[i], 1e-12);
            Assert.Equal(ellipse.Y[i], again.Y[i], 1e-12);
        }
    }

    [Fact]
    public void Fractions_between_vertices_lie_on_the_edges()
    {
        PlanCurve curve = Box.AtFractions([0, 1 / 16.0, 3.5 / 8, 7.5 / 8]);
        Assert.Equal([0, 0.5, 3, 0], curve.X.ToArray());
        Assert.Equal([0, 0, 0.5, 0.5], curve.Y.ToArray());
    }

    [Fact]
    public void Nearest_position_of_a_point_on_the_curve_is_its_own() =>
        Gen.Select(Gen.Int[0, 39], Gen.Double[0, 0.999]).Sample((i, t) =>
        {
            PlanCurve c = PlanCurve.Ellipse(3, 1, 0.2, 0.1, 0.3, 40);
            int j = (i + 1) % 40;
            double[] f = c.Fractions();
            double expected = (f[i] + t * ((j == 0 ? 1 : f[j]) - f[i])) * c.Perimeter;
            return Math.Abs(c.NearestPosition(c.X[i] + t * (c.X[j] - c.X[i]), c.Y[i] + t * (c.Y[j] - c.Y[i])) - expected) < 1e-9;
        });

    [Fact]
    public void Windward_width_of_the_whole_is_the_extent_across() =>
        Gen.Double[-4, 4].Sample(angle =>
        {
            PlanCurve c = PlanCurve.Ellipse(3, 1, 0.2, 0.1, 0.3, 40);
            (double s, double cos) = Math.SinCos(angle);
            (double least, double greatest) = c.Extent(-s, cos);
            return Math.Abs(c.WindwardWidth(PlanCurve.Stretch(c.Fractions(), 0, 1), cos, s) - (greatest - least)) < 1e-12
                && Math.Abs(c.WindwardWidth(PlanCurve.Stretch(c.Fractions(), 0.5, 3.5), cos, s) - 3 * (greatest - least)) < 1e-12;
        });

    [Fact]
    public void Anticlockwise_keeps_the_first_vertex()
    {
        PlanCurve curve = new PlanCurve([0, 0, 3, 3], [0, 1, 1, 0]).Anticlockwise();
        Assert.Equal([0, 3, 3, 0], curve.X.ToArray());
        Assert.Equal(3, curve.Area, 1e-12);
        Assert.Same(Box, Box.Anticlockwise());
    }

    [Fact]
    public void Simple_curves_do_not_cross_or_touch_themselves()
    {
        Assert.True(Box.IsSimple());
        Assert.True(PlanCurve.Ellipse(3, 1, 0, 0, 0.2, 96).IsSimple());
        Assert.True(new PlanCurve([0, 1, 2, 2, 0], [0, 0, 0, 1, 1]).IsSimple());
        Assert.False(new PlanCurve([0, 1, 1, 0], [0, 1, 0, 1]).IsSimple());
        Assert.False(new PlanCurve([0, 2, 1, 1], [0, 0, 0, 1]).IsSimple());
        Assert.False(new PlanCurve([0, 2, 2, 1, 0], [0, 0, 2, 0, 2]).IsSimple());
    }
}
