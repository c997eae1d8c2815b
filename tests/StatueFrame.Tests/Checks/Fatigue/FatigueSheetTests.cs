using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Checks.Heat;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Fatigue;

/// <summary>What the sheet says of the fatigue of standoffs.</summary>
public class FatigueSheetTests
{
    private static readonly DetailCategory weak = new("weak", 40.Megapascals, false, Source.User);

    private static Statue Ring(Standoff flat) => HotRing.Of(8, bands: 2, flat: flat);

    private static Check Fatigue(Statue statue, Criteria criteria, params Situation[] situations) =>
        statue.Check(criteria, situations).Checks.Where(c => c.Id == "bars.fatigue").MaxBy(c => c.Demand ?? -1)!;

    [Fact]
    public void Damage_of_gusts_is_that_of_the_standards_formula_on_the_wind_alone()
    {
        Standoff flat = HotRing.Flat with { FatigueDetail = weak };
        // Damage by an integral of its own: n(s) from B.3 on a fine grid, times 2 for a hundred years.
        Statue statue = Ring(flat);
        StatueModel model = StatueModel.Build(statue);
        Response windy = model.Respond(SmallStatue.Sway), calm = model.Respond(new Situation { Name = "calm", Actions = [new SelfWeight()] });
        double range = 0;
        var wind = new double[12];
        var weight = new double[12];
        foreach ((RingElement ring, int band) in model.Rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                foreach (LoadCase heading in windy.Cases)
                {
                    foreach (SkinAssumption skin in new[] { SkinAssumption.RigidRing, SkinAssumption.LimpSkin })
                    {
                        heading.ForcesOf(ring, bar, band, skin, wind);
                        calm.Cases[0].ForcesOf(ring, bar, band, skin, weight);
                        double N = wind[6] - weight[6], b = HotRing.Width, t = HotRing.Thickness;
                        double tower = Math.Abs(wind[5] - weight[5]) * 6 / (b * t * t) + Math.Abs(wind[4] - weight[4]) * 6 / (t * b * b);
                        double atSkin = Math.Abs(wind[11] - weight[11]) * 6 / (b * t * t) + Math.Abs(wind[10] - weight[10]) * 6 / (t * b * b);
                        range = Math.Max(range, Math.Abs(N) / (b * t) + Math.Max(tower, atSkin));
                    }
                }
            }
        }
        double D = 0;
        for (double log = 0; log < 9; log += 1e-4)
        {
            double share = (0.7 * log * log - 17.4 * log + 100) / 100, n = Math.Pow(10, log + 1e-4) - Math.Pow(10, log);
            double s = share * range * 1.15, limit = 40e6 * Math.Pow(0.4, 1 / 3.0);
            double N = s >= limit ? 2e6 * Math.Pow(40e6 / s, 3) : s >= limit * Math.Pow(0.05, 0.2) ? 5e6 * Math.Pow(limit / s, 5) : double.PositiveInfinity;
            D += 2 * n / N;
        }
        Check check = Fatigue(statue, new Criteria { DesignLife = 100, FatigueFactor = 1.15 }, SmallStatue.Sway);
        Assert.InRange(check.Demand!.Value, D, 1.035 * D);
        Assert.Equal(1, check.Capacity);
    }

    [Fact]
    public void Lift_tires_bars_and_wind_off_the_middle_spares_none()
    {
        Criteria hundred = new() { DesignLife = 100, FatigueFactor = 1.15 };
        Statue armed = SmallStatue.Good.Statue;
        armed = armed with { Standoffs = [.. armed.Standoffs.Select(Weak)], Limbs = [.. armed.Limbs.Select(limb => limb with { Standoffs = [.. limb.Standoffs.Select(Weak)] })] };
        double plain = Damage(0, 0);
        Assert.True(plain > 0);
        Assert.True(Damage(0.5, 0) >= plain);
        Assert.True(Damage(0, 3) > plain);

        double Damage(double aside, double lift) =>
            armed.Check(hundred, SmallStatue.Sway with { Actions = [new SelfWeight(), SmallStatue.Wind with { Eccentricity = aside, LiftCoefficient = lift }] }).Checks.Where(c => c.Id == "bars.fatigue").Sum(c => c.Demand ?? 0);

        static StandoffRing Weak(StandoffRing ring) => ring is EvenRing even ? even with { Standoff = even.Standoff with { FatigueDetail = weak } } : ring;
    }

    /// <summary>With a fine model the greater range of both counts, here from its own forces in the wind alone; it never lowers a damage.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(3)]
    public void The_fine_model_is_one_more_source(int bars)
    {
        Statue statue = HotRing.Of(bars, bands: 2, flat: HotRing.Flat with { FatigueDetail = weak });
        FineMesh mesh = new() { Size = 0.3.Meters };
        Criteria plain = new() { DesignLife = 100, FatigueFactor = 1.15 };
        FineResponse wind = FineModel.Build(StatueModel.Build(statue), mesh).Respond(SmallStatue.Sway with { Actions = [new FactoredAction(0, new SelfWeight()), SmallStatue.Wind] });
        double range = wind.Bars.Max(bar => bar.Stress.Pascals);
        double damage = FatigueChecks.Damage(GustStressSpectrum.Blocks(Pressure.FromPascals(range), 100), weak, 1.15);
        double reduced = Fatigue(statue, plain, SmallStatue.Sway).Demand!.Value, both = Fatigue(statue, plain with { Fine = mesh }, SmallStatue.Sway).Demand!.Value;
        Assert.True(damage > 0);
        Assert.Equal(Math.Max(damage, reduced), both, 1e-6 * both);
    }

    [Fact]
    public void The_factor_of_the_service_wind_does_not_count()
    {
        Statue statue = Ring(HotRing.Flat with { FatigueDetail = weak });
        Situation frequent = SmallStatue.Sway with { Actions = [new SelfWeight(), 0.2 * SmallStatue.Wind] };
        double whole = Fatigue(statue, new Criteria(), SmallStatue.Sway).Demand!.Value, part = Fatigue(statue, new Criteria(), frequent).Demand!.Value;
        Assert.Equal(whole, part, 1e-6 * whole);
    }

    [Fact]
    public void Damage_rises_with_life_wind_and_heat_and_falls_with_strength()
    {
        Statue statue = Ring(HotRing.Flat with { FatigueDetail = weak });
        double D = Fatigue(statue, new Criteria { DesignLife = 50 }, SmallStatue.Sway).Demand!.Value;
        Assert.Equal(2 * D, Fatigue(statue, new Criteria { DesignLife = 100 }, SmallStatue.Sway).Demand!.Value, 1e-9 * D);
        Assert.True(Fatigue(Ring(HotRing.Flat with { FatigueDetail = weak with { Strength = 60.Megapascals } }), new Criteria { DesignLife = 50 }, SmallStatue.Sway).Demand < D);
        var heat = new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(25), SunRise = TemperatureDelta.FromKelvins(20), SunSide = 200.Degrees };
        Assert.True(Fatigue(statue, new Criteria { DesignLife = 50 }, SmallStatue.Sway with { Actions = [new SelfWeight(), SmallStatue.Wind, heat] }).Demand > D);
        Assert.True(Fatigue(statue, new Criteria { DesignLife = 50 }, SmallStatue.Sway, new Situation { Name = "hot", Actions = [heat] }).Demand > D);
    }

    [Fact]
    public void Daily_heat_damages_as_by_hand()
    {
        Statue statue = HotRing.Of(8, flat: HotRing.Flat with { FatigueDetail = weak });
        var heat = new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(30) };
        double sigma = HotRing.Axial * (HotRing.Copper * 30 * HotRing.Radius - HotRing.Steel * 15 * HotRing.Length) / (HotRing.Width * HotRing.Thickness);
        double D = 365.25 * 60 / (2e6 * Math.Pow(40e6 / (1.35 * sigma), 3));
        Check check = Fatigue(statue, new Criteria { DesignLife = 60 }, breeze, new Situation { Name = "hot", Actions = [heat] });
        Assert.Equal(D, check.Demand!.Value, 1e-4 * D);
        Assert.Contains("1.35", check.VerdictText);
    }

    private static readonly Situation breeze = new() { Name = "breeze", LimitState = LimitState.Service, Actions = [new SelfWeight(), new WindAction { Profile = new En1991Wind { FundamentalVelocity = 5.MetersPerSecond, Terrain = TerrainCategory.IV } }] };

    /// <summary>
    /// Saddles that slide along radial bars rub there and back every day: 2 · 0.3 · 20 kN on 60 by 8 mm; of a heat so small that the saddles
    /// never slide, no more than what stretches the bars.
    /// </summary>
    [Theory]
    [InlineData(30)]
    [InlineData(0.6)]
    [InlineData(0)]
    public void Saddles_that_slide_rub_every_day(double kelvins)
    {
        DetailCategory thin = weak with { Strength = 5.Megapascals };
        Standoff flat = HotRing.Flat with { FatigueDetail = thin, Slide = SaddleSlide.AlongBar, Saddle = new Saddle { Clamp = 20.Kilonewtons, Friction = 0.3 } };
        Situation hot = new() { Name = "hot", Actions = [new TemperatureAction { SkinChange = TemperatureDelta.FromKelvins(kelvins) }] };
        double rubbing = Fatigue(Ring(flat), new Criteria { DesignLife = 60 }, breeze, hot).Demand!.Value;
        double smooth = Fatigue(Ring(flat with { Saddle = flat.Saddle with { Clamp = Force.Zero } }), new Criteria { DesignLife = 60 }, breeze, hot).Demand!.Value;
        StatueModel model = StatueModel.Build(Ring(flat));
        double slip = model.Respond(hot).Cases[0].SlipOf(model.Rings[0].Ring, model.Rings[0].Ring.Bars[0]);
        double F = Math.Min(2 * 0.3 * 20e3, HotRing.Axial * slip), sigma = F / (HotRing.Width * HotRing.Thickness);
        double D = sigma * 1.35 < thin.CutOff.Pascals ? 0 : 365.25 * 60 / thin.CyclesToFailure(Pressure.FromPascals(sigma), 1.35);
        Assert.Equal(D, rubbing - smooth, 1e-3 * D + 1e-9);
        Assert.True(kelvins > 0 == D > 0);
    }

    /// <summary>A bar alone under the local suction on its strip, by hand: the strip's force bends a cantilever that lies along the skin.</summary>
    [Fact]
    public void Local_gusts_on_a_lone_bar_count()
    {
        SmallStatue whole = SmallWhole.Of(wind: 32);
        Standoff flat = ((EvenRing)whole.Statue.Standoffs[0]).Standoff with { FatigueDetail = weak with { Strength = 5.Megapascals } };
        Statue statue = whole.Statue with { Limbs = [], Points = [.. whole.Statue.Points.Where(point => !point.On.Contains('/'))], Standoffs = [.. whole.Statue.Standoffs.Cast<EvenRing>().Select(ring => ring with { Standoff = flat })] };
        StatueModel model = StatueModel.Build(statue);
        LocalWind local = LocalWind.Of(model, whole.Situations[1])!;
        double range = 0;
        var forces = new double[12];
        var tip = new double[6];
        foreach ((RingElement ring, int band) in model.Rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                double p = Math.Max(local.Suction(band), local.Inward(band));
                Assert.True(bar.Bar.Cantilever(p * AreaOf(model, bar, band) * bar.Bar.Place.Outward, forces, tip));
                range = Math.Max(range, FatigueStress.Range(bar.Bar, BarEnds.Of(forces), weak)!.Value);
            }
        }
        double damage = FatigueChecks.Damage(GustStressSpectrum.Blocks(Pressure.FromPascals(range), 100), flat.FatigueDetail!, 1.35);
        Assert.True(damage > 0);
        // The figure as a whole catches next to no wind.
        Situation sheltered = whole.Situations[1] with { Actions = [new SelfWeight(), ((WindAction)whole.Situations[1].Wind!.Action) with { ForceCoefficient = 0.2 }] };
        Assert.Equal(damage, Fatigue(statue, new Criteria(), sheltered).Demand!.Value, 1e-6 * damage);
    }

    private static double AreaOf(StatueModel model, BarModel bar, int number)
    {
        (BodyModel body, int index) = model.BandAt(number);
        SkinBand band = body.Bands[index];
        return bar.Share.PartOf(band.Top - band.Bottom) * band.OutlineArea;
    }

    [Fact]
    public void Vortices_add_their_cycles()
    {
        Statue statue = HotRing.Of(8, bands: 8, flat: HotRing.Flat with { FatigueDetail = weak });
        statue = statue with { Tower = statue.Tower with { Segments = [.. statue.Tower.Segments.Select(_ => SmallStatue.Mast)] } };
        var quiet = new Criteria { DesignLife = 50 };
        Criteria shaken = quiet with
        {
            Damping = DampingModel.Of(DampingCategory.WeldedLattice),
            AcrossWind = new AcrossWindInput { Sections = [new BodySection("trunk", BluffShape.Round)] },
        };
        CheckSheet with = statue.Check(shaken, SmallStatue.Sway);
        Check vortex = with.Checks.Where(c => c.Id == "bars.fatigue").MaxBy(c => c.Demand ?? -1)!;
        Assert.Contains("vortices of trunk, mode", vortex.Working().ToString());
        Assert.True(vortex.Demand > Fatigue(statue, quiet, SmallStatue.Sway).Demand);
        Assert.Contains(statue.Check(quiet, SmallStatue.Sway).Assumptions, a => a.Subject == "vortices in fatigue");
    }

    [Fact]
    public void What_lacks_is_named()
    {
        Assert.Contains("Standoff.FatigueDetail", Fatigue(Ring(HotRing.Flat), new Criteria(), SmallStatue.Sway).Reason);
        Assert.Contains("no service situation has wind", Fatigue(Ring(HotRing.Flat with { FatigueDetail = weak }), new Criteria(), SmallStatue.Storm).Reason);
        Assert.Contains("EN 1993-1-9 does not cover", Fatigue(Ring(HotRing.Flat with { FatigueDetail = DetailCategory.FilletToe, Material = WroughtIron.Puddled }), new Criteria(), SmallStatue.Sway).Reason);
        Assert.Contains("welds", Fatigue(Ring(HotRing.Flat with { FatigueDetail = DetailCategory.FilletRoot }), new Criteria(), SmallStatue.Sway).Reason);
        Check iron = Fatigue(Ring(HotRing.Flat with { FatigueDetail = DetailCategory.PuddledIron, Material = WroughtIron.Puddled }), new Criteria(), SmallStatue.Sway);
        Assert.Contains("puddled iron", iron.VerdictText);
        Check stainless = Fatigue(Ring(HotRing.Flat with { FatigueDetail = DetailCategory.FilletToe, Material = StainlessSteel.Grade316L }), new Criteria(), SmallStatue.Sway);
        Assert.Contains("stainless", stainless.VerdictText);
    }

    [Fact]
    public void Net_section_and_throat_raise_the_range()
    {
        StatueModel model = StatueModel.Build(Ring(HotRing.Flat with { TowerFixing = new WeldedFixing { Throat = 4.Millimeters }, SkinFixing = new BoltedFixing { Bolt = new Bolt { Diameter = 12.Millimeters, Grade = BoltGrade.Class88 }, EndDistance = 30.Millimeters } }));
        PlacedBar bar = model.Rings[0].Ring.Bars[0].Bar;
        BarEnds pull = BarEnds.Of([-1000, 0, 0, 0, 0, 0, 1000, 0, 0, 0, 0, 0]);
        Assert.Equal(1000 / (0.06 * 0.008), FatigueStress.Range(bar, pull, weak)!.Value, 1e-6);
        Assert.Equal(1000 / ((0.06 - 0.013) * 0.008), FatigueStress.Range(bar, pull, DetailCategory.FlatWithHoles)!.Value, 1e-6);
        Assert.Equal(1000 / (2 * 0.052 * 0.004), FatigueStress.Range(bar, pull, DetailCategory.FilletRoot)!.Value, 1e-6);
        Assert.Equal(0, FatigueStress.Range(bar, pull, DetailCategory.FilletShear)!.Value, 1e-6);
    }

    /// <summary>All six forces on a throat, by adding up many short pieces of the two welds: q at the end of a weld, where all parts agree.</summary>
    [Fact]
    public void Range_on_a_throat_is_that_of_two_lines_of_many_pieces()
    {
        StatueModel model = StatueModel.Build(Ring(HotRing.Flat with { TowerFixing = new WeldedFixing { Throat = 4.Millimeters } }));
        var f = new FlatForces(N: 900, Weak: 30, Strong: -250, T: 45, AlongThickness: -300, AlongWidth: 700);
        const int Pieces = 20_000;
        const double a = 0.004, l = 0.052, t = 0.008;
        double yy = 0, zz = 0;
        for (int i = 0; i < Pieces; i++)
        {
            double z = l * ((i + 0.5) / Pieces - 0.5);
            (yy, zz) = (yy + 2 * t * t / 4 * l / Pieces, zz + 2 * z * z * l / Pieces);
        }
        double along = f.N / (2 * l) + f.Weak * t / 2 / yy + Math.Abs(f.Strong) * l / 2 / zz;
        double across = Math.Abs(f.AlongThickness) / (2 * l) + f.T * l / 2 / (yy + zz), inPlane = f.AlongWidth / (2 * l) + f.T * t / 2 / (yy + zz);
        BarEnds ends = new(f, default);
        PlacedBar bar = model.Rings[0].Ring.Bars[0].Bar;
        // EN 1993-1-9, 5 (6): σ_wf = √(σ⊥² + τ⊥²) and τ_wf = τ∥ of the throat.
        Assert.Equal(double.Hypot(along, across) / a, FatigueStress.Range(bar, ends, DetailCategory.FilletRoot)!.Value, 1e-4 * along / a);
        Assert.Equal(inPlane / a, FatigueStress.Range(bar, ends, DetailCategory.FilletShear)!.Value, 1e-4 * inPlane / a);
    }
}
