using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Heat;

/// <summary>What heat does to a statue.</summary>
public class HeatFieldTests
{
    private static TemperatureDelta K(double kelvins) => TemperatureDelta.FromKelvins(kelvins);

    private static TemperatureAction Uniform(double skin, double tower = 0) => new() { SkinChange = K(skin), TowerChange = K(tower) };

    private static TemperatureAction Sunny(double rise, double degrees, double skin = 0) =>
        new() { SkinChange = K(skin), SunRise = K(rise), SunSide = degrees.Degrees };

    [Fact]
    public void Even_heat_on_a_round_band_presses_every_bar_alike_as_by_hand()
    {
        foreach ((double skin, double tower) in new[] { (30.0, 0.0), (-20, 5), (40, 40) })
        {
            double grown = HotRing.Copper * skin * HotRing.Radius - HotRing.Steel * tower * (HotRing.Radius - HotRing.Length)
                - HotRing.Steel * 0.5 * (skin + tower) * HotRing.Length;
            foreach (BarResult bar in HotRing.Respond(HotRing.Of(8), Uniform(skin, tower)).Bars)
                Assert.Equal(Math.Abs(HotRing.Axial * grown) / (HotRing.Width * HotRing.Thickness), bar.Stress.Pascals, 1e-5 * Math.Abs(HotRing.Axial * grown) / 4.8e-4 + 1);
        }
    }

    /// <summary>
    /// An independent solution: the free shape of the circle by its series; then the ring moves in plan, each bar a beam,
    /// until their forces balance.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(77)]
    [InlineData(200)]
    public void Sun_on_one_side_moves_the_ring_as_a_small_frame_worked_by_hand(double side)
    {
        const int Bars = 7;
        const double Rise = 25;
        Statue statue = HotRing.Of(Bars);
        StatueModel model = StatueModel.Build(statue);
        RingElement element = model.Bodies[0].Rings[0];
        Material steel = StructuralSteel.S355;
        double t = HotRing.Thickness, b = HotRing.Width, L = HotRing.Length, EI = steel.YoungsModulus.Pascals * b * t * t * t / 12;
        double phi = 12 * EI / (steel.ShearModulus.Pascals * 5.0 / 6 * b * t * L * L);
        double across = 12 * EI / (L * L * L * (1 + phi)), mixed = -6 * EI / (L * L * (1 + phi)), turning = (4 + phi) * EI / (L * (1 + phi));
        // Outward, along the ring, turn; of the ring: x, y, turn.
        double[,] k = { { HotRing.Axial, 0, 0 }, { 0, across, mixed }, { 0, mixed, turning } };
        Matrix<double> K = Matrix<double>.Build.DenseOfArray(k);
        Matrix<double> stiffness = 0 * K;
        Vector<double> load = Vector<double>.Build.Dense(3);
        var free = new Vector<double>[Bars];
        for (int i = 0; i < Bars; i++)
        {
            double a = 2 * Math.PI * i / Bars, toSun = a - side * Math.PI / 180;
            (double radial, double tangential, double turn) = WarmCircle.Under(HotRing.Copper * Rise, HotRing.Radius, toSun);
            double own = HotRing.Steel * 0.5 * Rise * Math.Max(0, Math.Cos(toSun)) * L;
            free[i] = Vector<double>.Build.DenseOfArray([radial + HotRing.Copper * Rise / Math.PI * HotRing.Radius - own, tangential, turn]);
            stiffness += Follows(a).TransposeThisAndMultiply(K * Follows(a));
            load -= Follows(a).TransposeThisAndMultiply(K * free[i]);
        }
        Vector<double> moves = stiffness.Solve(load);
        Response response = model.Respond(new Situation { Name = "heat", Actions = [Sunny(Rise, side)] });
        double most = HotRing.Copper * Rise * HotRing.Radius;
        Movement ring = response.Cases[0].Of("ring");
        Assert.Equal(moves[0], ring.X.Meters, 2e-3 * most);
        Assert.Equal(moves[1], ring.Y.Meters, 2e-3 * most);
        Span<double> forces = stackalloc double[12];
        for (int i = 0; i < Bars; i++)
        {
            Vector<double> expected = K * (free[i] + Follows(2 * Math.PI * i / Bars) * moves);
            response.Cases[0].ForcesOf(element, element.Bars[i], 0, SkinAssumption.RigidRing, forces);
            Assert.Equal(expected[0], forces[6], 3e-3 * HotRing.Axial * most);
            Assert.Equal(expected[1], forces[7], 5e-3 * across * most);
            Assert.Equal(expected[2], forces[11], 3e-3 * -mixed * most);
        }

        static Matrix<double> Follows(double a) => Matrix<double>.Build.DenseOfArray(new[,]
        {
            { Math.Cos(a), Math.Sin(a), 0 },
            { -Math.Sin(a), Math.Cos(a), HotRing.Radius },
            { 0, 0, 1 },
        });
    }

    [Fact]
    public void A_statue_of_one_metal_heated_evenly_grows_without_a_force()
    {
        var heat = new TemperatureAction { SkinChange = K(40), TowerChange = K(40), TowerExpansion = 12.PpmPerKelvin };
        Material same = Copper.HalfHardR240 with { ThermalExpansion = 12.PpmPerKelvin };
        Statue small = SmallStatue.Good.Statue;
        Statue one = small with
        {
            Skin = small.Skin! with { Material = same, Joints = [] },
            Seams = new SeamStiffness(50.Megapascals, 80.Megapascals),
            Limbs = [small.Limbs[0] with { Skin = small.Limbs[0].Skin! with { Material = same, Joints = [] } }],
        };
        Response response = HotRing.Respond(one, heat);
        Assert.All(response.Bars, bar => Assert.True(bar.Stress.Pascals < 20, bar.ToString()));
        Assert.All(response.Cases[0].LatticeMembers(), m => Assert.Equal(0, m.Axial.Newtons, 0.01));
        Movement tip = response.Cases[0].OfPart("top"), hand = response.Cases[0].OfPart("arm/hand"), band = response.Cases[0].OfPart("band 2");
        Assert.Equal(40 * 12e-6 * 6, tip.Z.Meters, 1e-9);
        Assert.Equal(40 * 12e-6 * 4 * Math.Cos(Math.PI / 9), hand.X.Meters, 1e-9);
        Assert.Equal(40 * 12e-6 * (3 + 4 * Math.Sin(Math.PI / 9)), hand.Z.Meters, 1e-9);
        Assert.Equal(40 * 12e-6 * StatueModel.Build(one).ElevationOf("band 2").Meters, band.Z.Meters, 1e-8);
    }

    [Fact]
    public void Heat_is_in_balance_with_itself_and_asks_nothing_of_the_base() =>
        Gen.Select(Gen.Double[-40, 60], Gen.Double[-20, 30], Gen.Double[0, 50], Gen.Double[0, 360]).Sample(
            (skin, tower, rise, side) =>
            {
                LoadCase found = HotRing.Under(SmallStatue.Good.Statue, Sunny(rise, side, skin) with { TowerChange = K(tower) });
                Assert.Equal(0, found.Base.Shear.Newtons, 1e-6);
                Assert.Equal(0, found.Base.Overturning.NewtonMeters, 1e-6);
                (SectionForce bottom, _) = (found.Segments()[0].Bottom, 0);
                Assert.Equal(0, bottom.Axial.Newtons, 1e-2);
                Assert.Equal(0, bottom.MomentX.NewtonMeters, 0.05);
                Assert.Equal(0, bottom.MomentY.NewtonMeters, 0.05);
            }, iter: 15);

    [Fact]
    public void Twice_the_heat_makes_twice_the_stress() =>
        Gen.Select(Gen.Double[5, 40], Gen.Double[0, 40], Gen.Double[0, 360]).Sample((skin, rise, side) =>
        {
            Response once = HotRing.Respond(SmallStatue.Good.Statue, Sunny(rise, side, skin));
            Response twice = HotRing.Respond(SmallStatue.Good.Statue, 2 * Sunny(rise, side, skin));
            Response hotter = HotRing.Respond(SmallStatue.Good.Statue, Sunny(2 * rise, side, 2 * skin));
            for (int i = 0; i < once.Bars.Count; i++)
            {
                Assert.Equal(2 * once.Bars[i].Stress.Pascals, twice.Bars[i].Stress.Pascals, 1e-5 * once.Bars[i].Stress.Pascals + 10);
                Assert.Equal(hotter.Bars[i].Stress.Pascals, twice.Bars[i].Stress.Pascals, 1e-5 * once.Bars[i].Stress.Pascals + 10);
            }
        }, iter: 12);

    /// <summary>Turned by whole sides of the polygon that stands for the round outline, bars in the middle of a side.</summary>
    [Fact]
    public void The_suns_side_turns_with_the_statue() =>
        Gen.Select(Gen.Double[0, 360], Gen.Int[0, 95], Gen.Double[0, 60]).Sample((side, sides, elevation) =>
        {
            const double Side = 360.0 / 96;
            TemperatureAction sun = Sunny(30, side) with { SunElevation = elevation.Degrees, TowerSunRise = K(10) };
            Response here = HotRing.Respond(HotRing.Of(8, firstAngle: 0.5 * Side * Math.PI / 180), sun);
            Response there = HotRing.Respond(HotRing.Of(8, firstAngle: (sides + 0.5) * Side * Math.PI / 180), sun with { SunSide = (side + sides * Side).Degrees });
            for (int i = 0; i < here.Bars.Count; i++)
                Assert.Equal(here.Bars[i].Stress.Pascals, there.Bars[i].Stress.Pascals, 1e-5 * here.Bars[i].Stress.Pascals + 10);
        }, iter: 12);

    [Fact]
    public void An_even_mast_with_one_warm_side_bends_away_from_the_sun_as_an_arc()
    {
        Statue mast = SmallStatue.Good.Statue with
        {
            Tower = new Tower { Levels = [new TowerLevel("base", 0.Meters), new TowerLevel("mid", 3.Meters), new TowerLevel("top", 6.Meters)], Segments = [SmallStatue.Mast, SmallStatue.Mast] },
            Skin = null,
            Standoffs = [],
            Limbs = [],
            Points = [new NamedPoint("tip", "top")],
        };
        foreach (double side in new[] { 0.0, 130 })
        {
            Movement tip = HotRing.Under(mast, new TemperatureAction { SkinChange = K(0), TowerSunRise = K(20), SunSide = side.Degrees }).Of("tip");
            double arc = 12e-6 * 20 / 0.4 * 36 / 2;
            Assert.Equal(-arc * Math.Cos(side * Math.PI / 180), tip.X.Meters, 2e-3 * arc);
            Assert.Equal(-arc * Math.Sin(side * Math.PI / 180), tip.Y.Meters, 2e-3 * arc);
        }
    }

    [Fact]
    public void Joints_stop_what_seams_pass_on()
    {
        var seams = new SeamStiffness(500.Megapascals, 500.Megapascals);
        Statue tied = HotRing.Of(8, bands: 6, seams: seams);
        Statue jointed = tied with { Skin = tied.Skin! with { Joints = [new SkinJoint(4.Meters, 10.Millimeters), new SkinJoint(8.Meters, 10.Millimeters)] } };
        double whole = HotRing.Respond(tied, Uniform(30)).WorstBar!.Stress.Pascals, parts = HotRing.Respond(jointed, Uniform(30)).WorstBar!.Stress.Pascals;
        Assert.True(whole > 1.5 * parts);
    }

    /// <summary>Far stiffer seams than bars: the skin grows as one piece, and the bars alone are the whole story.</summary>
    [Fact]
    public void With_stiff_seams_the_ring_comes_to_what_each_bar_meets_alone()
    {
        Statue tied = HotRing.Of(8, bands: 5, seams: new SeamStiffness(1e6.Megapascals, 1e6.Megapascals));
        StatueModel model = StatueModel.Build(tied);
        LoadCase found = model.Respond(new Situation { Name = "heat", Actions = [Uniform(30)] }).Cases[0];
        Span<double> ring = stackalloc double[12], alone = stackalloc double[12];
        foreach ((RingElement element, int band) in model.Rings)
        {
            found.ForcesOf(element, element.Bars[3], band, SkinAssumption.RigidRing, ring);
            found.ForcesOf(element, element.Bars[3], band, SkinAssumption.LimpSkin, alone);
            double expected = HotRing.Copper * 30 * 2 * (band - 2), k = alone[8];
            Assert.Equal(k, ring[8], 2e-3 * Math.Abs(k) + 5);
            Assert.Equal(Math.Sign(Math.Round(1e9 * expected)), Math.Abs(k) < 5 ? 0 : Math.Sign(k));
        }
    }

    [Fact]
    public void Heat_rises_with_height_as_given()
    {
        TemperatureAction heat = Uniform(10) with { ByHeight = [new HeatAtHeight(0.Meters, K(0)), new HeatAtHeight(10.Meters, K(20))] };
        Assert.Equal(10, heat.SkinAt(-3, Vector3D.UnitX), 1e-12);
        Assert.Equal(15, heat.SkinAt(2.5, Vector3D.UnitX), 1e-12);
        Assert.Equal(30, heat.SkinAt(99, Vector3D.UnitX), 1e-12);
        TemperatureAction sun = Sunny(40, 90, 5);
        Assert.Equal(45, sun.SkinAt(0, Vector3D.UnitY), 1e-12);
        Assert.Equal(5, sun.SkinAt(0, Vector3D.UnitX), 1e-12);
        Assert.Equal(5, sun.SkinAt(0, -Vector3D.UnitY), 1e-12);
        Assert.Equal(5 + 40 * Math.Cos(Math.PI / 3), sun.SkinAt(0, new Vector3D(-Math.Sin(Math.PI / 3), Math.Cos(Math.PI / 3), 0)), 1e-12);
    }
}
