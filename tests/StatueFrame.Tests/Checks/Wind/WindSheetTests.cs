using StatueFrame.Analysis;
using StatueFrame.Checks;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks;

/// <summary>What the sheet says of gusts, vortices, platforms and local pressure.</summary>
public class WindSheetTests
{
    private const double Height = 8, Diameter = 2, BarLength = 0.3;

    private static readonly WindAction wind = new()
    {
        Profile = new En1991Wind { FundamentalVelocity = 26.MetersPerSecond, Terrain = TerrainCategory.II },
        ForceCoefficient = 1.1,
        GustEffectFactor = 1.3,
    };

    private static readonly Situation storm = new() { Name = "storm", Actions = [new SelfWeight(), 1.5 * wind] };
    private static readonly Situation year = new() { Name = "wind of a year", LimitState = LimitState.Service, Actions = [new SelfWeight(), wind] };

    private static Statue Drum(EndFixity? towerFixity = null, EndFixity? skinFixity = null) => new()
    {
        Name = "drum",
        Tower = new Tower
        {
            Levels = [new TowerLevel("base", 0.Meters), new TowerLevel("L1", 2.Meters), new TowerLevel("L2", 6.Meters)],
            Segments = [.. Enumerable.Repeat(new MemberSegment { Section = new Tube(300.Millimeters, 10.Millimeters), Material = StructuralSteel.S355 }, 2)],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.Millimeters,
            Stations = [Station(0), Station(Height)],
            BandEdges = [0.Meters, 4.Meters, Height.Meters],
        },
        Standoffs = [.. new[] { "L1", "L2" }.Select(level => new EvenRing
        {
            Level = level, Count = 12, Lay = 90.Degrees, Length = BarLength.Meters,
            Standoff = new Standoff
            {
                Section = new FlatBar(60.Millimeters, 15.Millimeters), Material = StainlessSteel.Duplex2205,
                TowerFixity = towerFixity ?? EndFixity.Rigid, SkinFixity = skinFixity ?? EndFixity.Rigid,
            },
        })],
        Points = [new NamedPoint("gallery", "band 2")],
    };

    private static SkinStation Station(double z) =>
        new() { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = Diameter.Meters, WidthY = Diameter.Meters } };

    private static Check[] Of(CheckSheet sheet, string id) => [.. sheet.Checks.Where(c => c.Id == id)];

    [Fact]
    public void The_gust_factor_in_use_is_held_against_that_of_the_standard()
    {
        CheckSheet sheet = Drum().Check(new Criteria(), storm);
        Check check = Assert.Single(Of(sheet, "wind.gust-factor"));
        var model = StatueModel.Build(Drum());
        Response response = model.Respond(storm);
        En1991StatueGust gust = GustFactors.En1991(model, model.Modes(6), wind, response.OverturningGoverns.Heading!.Value)!;
        Assert.Equal(gust.AnnexB.Factor, check.Demand!.Value, 1e-9);
        Assert.Equal(1.3, check.Capacity);
        Assert.Contains(check.AssumedInputs, input => input.StartsWith("structural damping", StringComparison.Ordinal));
        Situation weak = storm with { Actions = [new SelfWeight(), 1.5 * (wind with { GustEffectFactor = 0.9 * gust.AnnexB.Factor })] };
        Assert.Equal(Verdict.Fail, Assert.Single(Of(Drum().Check(new Criteria(), weak), "wind.gust-factor")).Verdict);
    }

    /// <summary>A bar laid along the skin takes the pressure square to its flat: p·A·L over b·t²/6.</summary>
    [Fact]
    public void A_bar_along_the_skin_bends_under_the_local_pressure_on_its_strip()
    {
        CheckSheet sheet = Drum().Check(new Criteria(), storm);
        double suction = sheet.Results.Single(r => r.Name == "greatest local suction on the skin").Value;
        double pressure = sheet.Results.Single(r => r.Name == "greatest local pressure on the skin").Value;
        double area = Math.PI * Diameter * 4 / 12, modulus = 0.06 * 0.015 * 0.015 / 6;
        Check worst = Of(sheet, "bars.local").MaxBy(c => c.Demand)!;
        // The weight of the strip acts too.
        Assert.InRange(worst.Demand!.Value / (Math.Max(suction, pressure) * area * BarLength / modulus), 1 - 2e-3, 1.05);
        Assert.Contains("sigma", worst.Working().ToText().Replace("σ", "sigma", StringComparison.Ordinal));
        // Bars that are hinged at both ends hold no skin that is limp between them.
        CheckSheet unheld = (Drum() with { Standoffs = [.. Drum().Standoffs, .. Drum(EndFixity.Pinned, EndFixity.Pinned).Standoffs.Cast<EvenRing>().Select(ring => ring with { Count = 7 })] }).Check(new Criteria(), storm);
        Assert.Equal(Verdict.NotChecked, Of(unheld, "bars.local").First(check => check.Utilization is null).Verdict);
    }

    /// <summary>Suction on its strip lifts the skin off a saddle that slides along a radial bar: F = s·A, however little wind the body catches as a whole.</summary>
    [Fact]
    public void A_saddle_that_slides_holds_the_local_suction()
    {
        Statue drum = Drum();
        Statue sliding = drum with
        {
            Standoffs = [.. drum.Standoffs.Cast<EvenRing>().Select(ring => ring with
            {
                Lay = 0.Degrees,
                Standoff = ring.Standoff with { Slide = SaddleSlide.AlongBar, Saddle = new Saddle { Clamp = 20.Kilonewtons, Friction = 0.3, LeastFriction = 0.2 } },
            })],
        };
        CheckSheet sheet = sliding.Check(new Criteria(), storm with { Actions = [new SelfWeight(), 1.5 * (wind with { ForceCoefficient = 0.2 })] });
        double suction = sheet.Results.Single(r => r.Name == "greatest local suction on the skin").Value, area = Math.PI * Diameter * 4 / 12;
        Assert.Equal(suction * area, Of(sheet, "bars.saddle-hold").Max(c => c.Demand)!.Value, 2e-3 * suction * area);
        // Friction at its least, 0.2 · 20 kN/1.25, and what a stop holds beside it; a stop is no pass by itself.
        Assert.Equal(3200, Of(sheet, "bars.saddle-hold").Max(c => c.Capacity)!.Value, 1e-6);
        Statue Stopped(UnitsNet.Force stop) => sliding with { Standoffs = [.. sliding.Standoffs.Cast<EvenRing>().Select(ring => ring with { Standoff = ring.Standoff with { Saddle = ring.Standoff.Saddle! with { Clamp = 0.Newtons, Stop = stop } } })] };
        Check[] held = Of(Stopped(5.Kilonewtons).Check(new Criteria(), storm), "bars.saddle-hold"), loose = Of(Stopped(1.Newtons).Check(new Criteria(), storm), "bars.saddle-hold");
        Assert.Equal(5000, held.Max(c => c.Capacity)!.Value, 1e-6);
        Assert.All(loose, check => Assert.Equal(Verdict.Fail, check.Verdict));
    }

    [Fact]
    public void Platforms_are_judged_by_the_wind_that_their_criterion_names()
    {
        var criteria = new Criteria { Platforms = [new Platform("gallery", ComfortUse.Office, "wind of a year")], Damping = DampingModel.OfRatio(0.01) };
        Check check = Assert.Single(Of(Drum().Check(criteria, storm, year), "comfort.sway"));
        var model = StatueModel.Build(Drum());
        // Alike all round: the worst of all headings is each of them, at the platform's own frequency.
        GustResponse gusts = GustResponse.Of(model, model.Modes(12), wind, model.Respond(year).GreatestSway("gallery").Heading!.Value, criteria.Damping);
        GustMovement moved = gusts.Of("gallery");
        Assert.True(moved.Acceleration.Peak > moved.AccelerationAcross.Peak);
        double expected = double.Hypot(moved.Acceleration.Peak.MetersPerSecondSquared, moved.AccelerationAcross.Peak.MetersPerSecondSquared);
        Assert.Equal(expected, check.Demand!.Value, 1e-6 * expected);
        Assert.Equal(ComfortCurves.YearlyPeak(gusts.Of("gallery").Acceleration.UpcrossingFrequency, ComfortUse.Office).MetersPerSecondSquared, check.Capacity!.Value, 1e-6);
        CheckSheet without = Drum().Check(criteria, storm);
        Assert.Equal(Verdict.NotChecked, Assert.Single(Of(without, "comfort.sway")).Verdict);
    }

    /// <summary>The gallery is the band that moves most: (2πn)² times the amplitude of vortex resonance.</summary>
    [Fact]
    public void Platforms_feel_vortices()
    {
        Statue slender = Drum() with { Tower = Drum().Tower with { Segments = [.. Enumerable.Repeat(new MemberSegment { Section = new Tube(150.Millimeters, 8.Millimeters), Material = StructuralSteel.S355 }, 2)] } };
        var criteria = new Criteria
        {
            Platforms = [new Platform("gallery", ComfortUse.Office, "wind of a year")],
            Damping = DampingModel.OfRatio(0.01),
            AcrossWind = new AcrossWindInput { Sections = [new("trunk", BluffShape.Round)] },
        };
        Check felt = Assert.Single(Of(slender.Check(criteria, year), "comfort.sway"), check => check.Where.Contains("vortices in mode", StringComparison.Ordinal));
        StatueModel model = StatueModel.Build(slender);
        AcrossWindReport report = AcrossWind.Of(model, model.Modes(20), wind, criteria.AcrossWind with { Damping = criteria.Damping }, "");
        AcrossWindCase worst = report.Cases.Single(found => felt.Where.EndsWith($"mode {found.Mode.Number}", StringComparison.Ordinal));
        double expected = Math.Pow(2 * Math.PI * worst.Mode.Frequency.Hertz, 2) * worst.GreatestDisplacement.Meters;
        Assert.Equal(expected, felt.Demand!.Value, 0.02 * expected);
        Assert.Contains(felt.AssumedInputs, assumed => assumed.StartsWith("life for cycles of vortex vibration", StringComparison.Ordinal));
        Assert.DoesNotContain(Of(Drum().Check(criteria with { AcrossWind = null }, year), "comfort.sway"), check => check.Where.Contains("vortices", StringComparison.Ordinal));
    }

    [Fact]
    public void Vortices_are_looked_at_once_for_each_wind()
    {
        var criteria = new Criteria
        {
            Damping = DampingModel.Of(DampingCategory.WeldedSteelTube),
            AcrossWind = new AcrossWindInput { Sections = [new BodySection("trunk", BluffShape.Round)], AmplitudeLimit = 50.Millimeters },
        };
        CheckSheet sheet = Drum().Check(criteria, storm, year);
        Assert.NotEmpty(Of(sheet, "wind.vortex"));
        Assert.All(Of(sheet, "wind.vortex"), check => Assert.Equal("storm", check.Situation));
        Check missing = Assert.Single(Of(Drum().Check(new Criteria(), storm), "wind.vortex"));
        Assert.Equal(Verdict.NotChecked, missing.Verdict);
    }

    [Fact]
    public void Without_a_strength_situation_the_sheet_says_what_it_leaves_out()
    {
        CheckSheet sheet = Drum().Check(new Criteria(), year);
        foreach (string id in (string[])["bars.bending", "bars.local", "bars.strut", "stability.second-order"])
            Assert.Equal(Verdict.NotChecked, Assert.Single(Of(sheet, id)).Verdict);
    }

    /// <summary>Nobody gave the air's density or the orography, so nothing that the wind makes may pass without saying so.</summary>
    [Fact]
    public void Whatever_rests_on_the_wind_says_what_was_assumed_of_it()
    {
        var criteria = new Criteria
        {
            Damping = new DampingModel { StructuralDecrement = 0.05 },
            AcrossWind = new AcrossWindInput { Sections = [new BodySection("trunk", BluffShape.Round)] },
            Platforms = [new Platform("gallery", ComfortUse.Office, "wind of a year")],
            Sway = [new SwayLimit("gallery", 1.Meters)],
        };
        CheckSheet sheet = Drum().Check(criteria, storm, year);
        Check[] done = [.. sheet.Checks.Where(c => c.Verdict != Verdict.NotChecked && c.Id != "wind.rigid")];
        Assert.Superset(new HashSet<string> { "bars.local", "bars.shear", "wind.gust-factor", "comfort.sway", "sway.limit" }, done.Select(c => c.Id).ToHashSet());
        Assert.All(done, check => Assert.Contains(check.AssumedInputs, input => input.StartsWith("density of air", StringComparison.Ordinal)));
        Assert.All(sheet.Checks, check => Assert.Equal(check.AssumedInputs.Distinct().Count(), check.AssumedInputs.Count));
    }

    /// <summary>EN 1993 does not cover bronze: then the user's own fraction of the proof strength counts, and the sheet says so.</summary>
    [Fact]
    public void A_metal_that_the_code_does_not_cover_is_held_to_the_fraction_given()
    {
        Statue bronze = Drum();
        bronze = bronze with { Standoffs = [.. bronze.Standoffs.Select(r => (EvenRing)r with { Standoff = ((EvenRing)r).Standoff with { Material = Bronze.TinCuSn8R450 } })] };
        CheckSheet sheet = bronze.Check(new Criteria { BarStressFraction = 0.5 }, storm);
        Assert.All(Of(sheet, "bars.shear"), check => Assert.Equal(0.5 * Bronze.TinCuSn8R450.YieldStrength.Pascals, check.Capacity!.Value, 1));
        Assert.All(Of(sheet, "bars.shear"), check => Assert.Contains(check.AssumedInputs, input => input.StartsWith("rules for standoffs", StringComparison.Ordinal)));
    }
}
