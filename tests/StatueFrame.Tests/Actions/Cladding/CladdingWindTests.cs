using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Cladding;

public class CladdingWindTests
{
    private static readonly CladdingWind wind = new()
    {
        Profile = new En1991Wind { FundamentalVelocity = Speed.FromMetersPerSecond(27), Terrain = TerrainCategory.Zero },
        External = new CylinderPressure { Diameter = Length.FromMeters(4) },
        LoadedArea = Area.FromSquareMeters(1),
    };

    [Fact]
    public void All_round_a_point_sees_the_whole_curve_whichever_way_it_looks() =>
        Gen.Select(Gen.Double[0, 360], Gen.Double[1, 80]).Sample((normal, z) =>
        {
            CladdingPressure p = wind.At(Length.FromMeters(z), Angle.FromDegrees(normal));
            double q = wind.Profile.PeakPressure(Length.FromMeters(z)).Pascals;
            double reynolds = CylinderDrag.Reynolds(4, Math.Sqrt(2 * q / 1.25));
            double least = CylinderPressure.AnchorsAt(reynolds).Least;
            Assert.Equal(q * 1.3, p.Inward.Pascals, 2e-3 * q);
            Assert.Equal(q * (0.2 - least), p.Suction.Pascals, 2e-3 * q);
        }, iter: 50);

    [Fact]
    public void One_heading_presses_the_side_that_faces_it_and_sucks_at_the_lee()
    {
        CladdingWind east = wind with { Headings = [Angle.FromDegrees(0)], Internal = new InternalPressure(0, 0, Source.User) };
        CladdingPressure facing = east.At(Length.FromMeters(10), Angle.FromDegrees(180)), lee = east.At(Length.FromMeters(10), Angle.FromDegrees(0));
        Assert.Equal(facing.VelocityPressure.Pascals, facing.Inward.Pascals, 1e-9);
        Assert.Equal(-facing.Inward.Pascals, facing.Suction.Pascals, 1e-9);
        Assert.Equal(-lee.SuctionCoefficient * lee.VelocityPressure.Pascals, lee.Suction.Pascals, 1e-9);
        Assert.True(lee.SuctionCoefficient < 0);
    }

    [Fact]
    public void Turning_wind_and_wall_together_changes_nothing() =>
        Gen.Select(Gen.Double[0, 180], Gen.Double[0, 180], Gen.Double[0, 90]).Sample((heading, normal, turn) =>
        {
            CladdingPressure P(double by) => (wind with { Headings = [Angle.FromDegrees(heading + by)] }).At(Length.FromMeters(12), Angle.FromDegrees(normal + by));
            return Math.Abs(P(0).Inward.Pascals - P(turn).Inward.Pascals) < 1e-6;
        });

    private static SkinBand Band(Outline outline)
    {
        SkinStation Station(double z) => new() { Elevation = Length.FromMeters(z), Outline = outline };
        return BandBuilder.Bands(new Skin { Material = Copper.HalfHardR240, Thickness = Length.FromMillimeters(2), Stations = [Station(0), Station(2)] })[0];
    }

    /// <summary>Under ASCE 7 the edge zone of its own figures is looked at too.</summary>
    [Fact]
    public void Under_asce_its_own_walls_count()
    {
        var asce = new AsceWind { Edition = AsceEdition.Asce7_22, BasicSpeed = Speed.FromMetersPerSecond(52), Exposure = AsceExposure.C };
        CladdingPressure open = new CladdingWind { Profile = asce }.OnStrip(Band(new EllipseOutline { WidthX = Length.FromMeters(4), WidthY = Length.FromMeters(4) }), 0, 1, 10, 4, Headings.Evenly(72));
        Assert.Equal(-1.8, open.SuctionCoefficient, 1e-9);
        Assert.Equal(1.0, open.InwardCoefficient, 0.01);
        Assert.Contains(open.Assumptions, a => a.Value.Contains("whichever is worse", StringComparison.Ordinal));
    }

    [Fact]
    public void A_strip_is_pressed_at_least_as_hard_as_any_point_of_it()
    {
        SkinBand band = BandBuilder.Bands(Stages.Skin)[1];
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.02, 0.5], Gen.Double[0, 360]).Sample((from, width, heading) =>
        {
            ValueList<Angle> one = [Angle.FromDegrees(heading)];
            double to = from + width > 1 ? from + width - 1 : from + width;
            CladdingPressure strip = wind.OnStrip(band, from, to, 10, 20, one), whole = wind.OnStrip(band, 0, 1, 10, 20, one);
            foreach (double normal in CladdingWind.Normals(band.MidOutline, from, to))
            {
                CladdingPressure point = (wind with { Headings = one }).At(Length.FromMeters(10), Angle.FromRadians(normal));
                if (point.Inward > strip.Inward || point.Suction > strip.Suction)
                    return false;
            }
            return strip.Inward <= whole.Inward && strip.Suction <= whole.Suction;
        }, iter: 50);
    }

    [Fact]
    public void The_normals_of_a_circle_point_away_from_its_middle()
    {
        PlanCurve circle = PlanCurve.Ellipse(2, 2, 0, 0, 0, 96);
        double[] quarter = CladdingWind.Normals(circle, 0, 0.25);
        Assert.Equal(24, quarter.Length);
        Assert.All(quarter, n => Assert.InRange(n, 0, Math.PI / 2));
        Assert.Equal(96, CladdingWind.Normals(circle, 0, 1).Length);
        Assert.Equal(24, CladdingWind.Normals(circle, 0.875, 0.125).Length);
    }

    [Fact]
    public void A_band_is_taken_as_round_and_says_so()
    {
        CladdingPressure p = (wind with { External = null, LoadedArea = null }).OnBand(Stages.Statue, 2);
        Assert.True(p.Suction > p.Inward);
        Assert.Contains(p.Assumptions, a => a.Subject == "outside of the skin");
        Assert.Contains(p.Assumptions, a => a.Subject == "pressure inside the skin");
        Assert.Contains(p.Assumptions, a => a.Subject == "loaded area of skin");
        Assert.Contains("kPa", p.ToString());
    }

    [Fact]
    public void A_dominant_opening_carries_the_outside_pressure_in()
    {
        Assert.Equal(0.75 * 0.8, InternalPressure.DominantOpening(2, 0.8, -1.2).Greatest, 1e-12);
        Assert.Equal(0.825 * -1.2, InternalPressure.DominantOpening(2.5, 0.8, -1.2).Least, 1e-12);
        Assert.Equal(0.9 * 0.8, InternalPressure.DominantOpening(double.PositiveInfinity, 0.8, -1.2).Greatest, 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => InternalPressure.DominantOpening(1.5, 0.8, -1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => InternalPressure.DominantOpening(3, double.NaN, -1.2));
        Assert.Throws<ArgumentOutOfRangeException>(() => InternalPressure.DominantOpening(3, 0, 1));
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Length z = Length.FromMeters(10);
        Assert.Throws<InvalidStatueException>(() => (wind with { External = null }).At(z, Angle.Zero));
        Assert.Throws<InvalidStatueException>(() => (wind with { Headings = [] }).At(z, Angle.Zero));
        Assert.Throws<InvalidStatueException>(() => (wind with { LoadedArea = Area.FromSquareMeters(-1) }).At(z, Angle.Zero));
        Assert.Throws<InvalidStatueException>(() => (wind with { Internal = new InternalPressure(-1, 1, Source.User) }).At(z, Angle.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => wind.At(Length.FromMeters(-1), Angle.Zero));
        Assert.Throws<ArgumentException>(() => wind.OnBand(Stages.Statue, 9));
    }
}
