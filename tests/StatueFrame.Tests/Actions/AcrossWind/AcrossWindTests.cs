using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Actions.AcrossWind;

public class AcrossWindTests
{
    private static readonly WindAction wind = new()
    {
        Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero },
    };

    private static readonly AcrossWindInput input = new()
    {
        Damping = DampingModel.Of(DampingCategory.WeldedSteelTube),
        Sections = [new("trunk", BluffShape.Round), new("wing", BluffShape.Round)],
    };

    private static readonly StatueModel model = StatueModel.Build(Figure());
    private static readonly ModalResponse modes = model.Modes(12);

    private static AcrossWindReport Report(AcrossWindInput? with) => StatueFrame.Checks.AcrossWind.Of(model, modes, wind, with, "storm");

    private static SkinStation Station(double z, double width) => new()
    {
        Elevation = z.Meters,
        Outline = new EllipseOutline { WidthX = width.Meters, WidthY = width.Meters },
    };

    private static Skin Copper(double from, double to, double bottom, double top, int bands) => new()
    {
        Material = StatueFrame.Copper.HalfHardR240,
        Thickness = 2.Millimeters,
        Stations = [Station(from, bottom), Station(to, top)],
        BandEdges = Enumerable.Range(0, bands + 1).Select(i => (from + (to - from) * i / bands).Meters).ToValueList(),
    };

    /// <summary>A round mast in a skin with a level wing at the top quarter; all invented.</summary>
    private static Statue Figure()
    {
        var flat = new Standoff
        {
            Section = new FlatBar(60.Millimeters, 10.Millimeters),
            Material = StainlessSteel.Grade316L,
            TowerFixity = EndFixity.Rigid,
            SkinFixity = EndFixity.Rigid,
        };
        Tower Mast(int segments, double step, double diameter) => new()
        {
            Levels = Enumerable.Range(0, segments + 1).Select(i => new TowerLevel($"P{i}", (step * i).Meters)).ToValueList(),
            Segments = Enumerable.Repeat((TowerSegment)new MemberSegment { Section = new Tube(diameter.Meters, 12.Millimeters), Material = StructuralSteel.S355 }, segments).ToValueList(),
        };
        ValueList<StandoffRing> Rings(int count, double length) => Enumerable.Range(0, count).Select(i => (StandoffRing)new EvenRing
        {
            Level = $"P{i + 1}",
            Rise = Length.Zero,
            Count = 8,
            Lay = 30.Degrees,
            Length = length.Meters,
            Standoff = flat,
        }).ToValueList();
        return new Statue
        {
            Name = "Saltmere Heron, leg",
            Tower = Mast(10, 2, 0.5),
            Skin = Copper(1, 21, 1.2, 1.2, 10),
            Standoffs = Rings(10, 0.4),
            Limbs =
            [
                new Limb
                {
                    Name = "wing", From = "P7", Heading = 0.Degrees, Inclination = 0.Degrees, Root = new Point3(0.7.Meters, 0.Meters, 0.Meters),
                    Tower = Mast(5, 1, 0.15), Skin = Copper(0.5, 5.5, 0.5, 0.5, 5), Standoffs = Rings(5, 0.2),
                },
            ],
        };
    }

    [Fact]
    public void The_mode_of_a_mast_gives_the_formula_of_the_standard()
    {
        AcrossWindCase trunk = Report(input).Cases.First(c => c.Body == "trunk");
        VortexResult r = trunk.Vortex;
        double n = modes.First.Frequency.Hertz;
        Assert.Equal(1.2 * n / 0.18, r.CriticalSpeed.MetersPerSecond, 1e-3 * r.CriticalSpeed.MetersPerSecond);
        Assert.InRange(r.ModeFactor, 0.10, 0.15);
        Assert.InRange(trunk.Input.EquivalentMass.KilogramsPerMeter, 150, 600);
        Assert.True(trunk.GreatestDisplacement >= r.Amplitude * (1 - 0.05));
    }

    [Fact]
    public void A_round_mast_does_not_care_where_x_points()
    {
        AcrossWindInput trunkOnly = input with { Sections = [new("trunk", BluffShape.Round)] };
        StatueModel bare = StatueModel.Build(Figure() with { Limbs = [] });
        AcrossWindReport all = StatueFrame.Checks.AcrossWind.Of(bare, bare.Modes(4), wind, trunkOnly, "");
        AcrossWindReport one = StatueFrame.Checks.AcrossWind.Of(bare, bare.Modes(4), wind with { Headings = [17.Degrees] }, trunkOnly, "");
        double expected = all.Cases[0].Vortex.Amplitude.Meters;
        Assert.Equal(expected, one.Cases[0].Vortex.Amplitude.Meters, 1e-3 * expected);
        Assert.Equal(expected, all.Cases[1].Vortex.Amplitude.Meters, 1e-2 * expected);
    }

    [Fact]
    public void A_mode_that_only_twists_a_body_or_sways_along_the_wind_is_no_problem()
    {
        AcrossWindInput trunkOnly = input with { Sections = [new("trunk", BluffShape.Round)] };
        Statue figure = Figure();
        EllipseOutline oval = new() { WidthX = 1.2.Meters, WidthY = 1.3.Meters };
        StatueModel bare = StatueModel.Build(figure with
        {
            Limbs = [],
            Skin = figure.Skin! with { Stations = [.. figure.Skin!.Stations.Select(s => s with { Outline = oval })] },
        });
        ModalResponse found = bare.Modes(12);
        Assert.Contains(found.Modes, m => m.TwistFraction > 0.1);
        AcrossWindReport report = StatueFrame.Checks.AcrossWind.Of(bare, found, wind with { Headings = [.. Headings.Evenly(4).SelectMany(h => new[] { h, h + 0.1.Degrees })] }, trunkOnly, "");
        Assert.All(report.Cases, c => Assert.True(c.Mode.TwistFraction < 0.1));
        Assert.InRange(report.Cases[0].Input.EquivalentMass.KilogramsPerMeter, 150, 600);
    }

    [Fact]
    public void A_level_limb_is_lifted_up_and_down_by_wind_across_it()
    {
        AcrossWindCase[] wing = [.. Report(input).Cases.Where(c => c.Body == "wing")];
        Assert.NotEmpty(wing);
        AcrossWindCase worst = wing.MaxBy(c => c.Vortex.Amplitude)!;
        // The limb runs along x: a wind along x never shakes it, one along y does.
        Assert.True(wing.All(c => Math.Abs(Math.Sin(c.VortexHeading.Radians)) >= 0.5));
        Assert.Equal(1, Math.Abs(Math.Sin(worst.VortexHeading.Radians)), 1e-9);
        Assert.Equal(0.5, worst.Vortex.Width.Meters, 1e-2);
    }

    [Fact]
    public void Checks_say_what_they_lack()
    {
        Assert.All(Report(null).Checks, c => Assert.Equal("the structural damping is not given", c.Reason));
        Assert.Equal(["wind.vortex", "wind.galloping"], Report(null).Checks.Select(c => c.Id));
        AcrossWindReport trunkOnly = Report(input with { Sections = [new("trunk", BluffShape.Round)] });
        Assert.Equal(2, trunkOnly.Checks.Count(c => c.Where == "wing" && c.Reason == "its cross-section is not given"));
        Check vortex = Report(input).Checks.First(c => c is { Id: "wind.vortex", Where: "trunk, mode 1" });
        Assert.Equal(Verdict.NotChecked, vortex.Verdict);
        Assert.Contains("no limit on the amplitude was given", vortex.Reason, StringComparison.Ordinal);
    }

    /// <summary>Which approach an amplitude comes from is said of the very checks that rest on it, and only where it does.</summary>
    [Fact]
    public void Amplitudes_name_the_approach_they_rest_on()
    {
        const string Greater = "the greater of approaches 1 and 2", Alone = "approach 1 alone", Smooth = "K_a,max";
        AcrossWindInput asked = input with { AmplitudeLimit = 5.Meters };
        AcrossWindReport both = Report(asked), first = Report(asked with { Approach = VortexApproach.VortexResonance }), measured = Report(asked with { TurbulenceReduction = 1 });
        Assert.Contains(both.Checks, check => Names(check, Greater) && Names(check, Smooth) && !Names(check, Alone));
        Assert.Contains(both.Checks, check => Names(check, Alone) && !Names(check, Greater));
        Assert.All([Greater, Alone, Smooth], words => Assert.Single(both.Assumptions, assumed => assumed.Value.StartsWith(words, StringComparison.Ordinal)));
        Assert.All([Greater, Alone, Smooth], words => Assert.DoesNotContain(first.Checks, check => Names(check, words)));
        Assert.DoesNotContain(first.Assumptions, assumed => assumed.Subject.Contains("vortex resonance", StringComparison.Ordinal));
        Assert.Contains(measured.Checks, check => Names(check, Greater));
        Assert.DoesNotContain(measured.Checks, check => Names(check, Smooth));

        static bool Names(Check check, string words) => check.AssumedInputs.Any(assumed => assumed.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_pass_on_table_damping_is_marked_and_shows_its_working()
    {
        AcrossWindReport report = Report(input with { AmplitudeLimit = 5.Meters });
        Check vortex = report.Checks.First(c => c is { Id: "wind.vortex", Where: "trunk, mode 1" });
        Assert.Equal(Verdict.Pass, vortex.Verdict);
        Assert.Contains("structural damping", vortex.AssumedInputs[0], StringComparison.Ordinal);
        string working = vortex.Working().ToText();
        Assert.Contains("v_crit", working, StringComparison.Ordinal);
        Assert.Contains("(E.7)", working, StringComparison.Ordinal);
        Assert.Equal(report.Cases[0].GreatestDisplacement.Meters, vortex.Demand!.Value, 1e-9);
        Check damped = Report(input with { AmplitudeLimit = 5.Meters, Damping = DampingModel.Of(DampingCategory.WeldedSteelTube) with { Dampers = [new TunedDamper { Decrement = 0.1 }] } }).Checks.First(c => c.Id == "wind.vortex" && c.Where == "trunk, mode 1");
        Assert.Equal(["structural damping", "dampers"], damped.AssumedInputs.Select(text => text.Split(':')[0]).Intersect(["structural damping", "dampers"]));
        Check measured = Report(input with { AmplitudeLimit = 5.Meters, Approach = VortexApproach.VortexResonance, Damping = DampingModel.OfRatio(0.002) }).Checks.First(c => c.Id == "wind.vortex" && c.Where == "trunk, mode 1");
        Assert.Empty(measured.AssumedInputs);
        Assert.Equal(Verdict.Fail, Report(input with { AmplitudeLimit = 0.01.Millimeters }).Checks.First(c => c.Id == "wind.vortex" && c.Where == "trunk, mode 1").Verdict);
    }

    [Fact]
    public void Modes_beyond_the_range_pass_with_the_critical_speed_as_capacity()
    {
        Check[] beyond = [.. Report(input).Checks.Where(c => c is { Id: "wind.vortex", Verdict: Verdict.Pass })];
        Assert.NotEmpty(beyond);
        Assert.All(beyond, c => Assert.Equal(Dimension.Speed, c.Dimension));
        AcrossWindReport few = Report(input with { CutOff = 3.Hertz });
        Assert.Contains(few.Checks, c => c.Where == "trunk, higher modes" && c.Verdict == Verdict.NotChecked);
    }

    [Fact]
    public void Galloping_of_sharp_edges_is_checked_and_of_round_ones_passes_without_ice()
    {
        Check round = Report(input).Checks.First(c => c.Id == "wind.galloping");
        Assert.Equal(0, round.Utilization);
        Assert.Contains("no ice on the round section", round.AssumedInputs);
        AcrossWindReport sharp = Report(input with { Sections = [new("trunk", BluffShape.SharpEdged)] });
        AcrossWindCase first = sharp.Cases[0];
        Assert.Equal(1.2, first.Galloping.GallopingFactor, 2e-2);
        Check check = sharp.Checks.First(c => c.Id == "wind.galloping");
        Assert.True(check.Verdict == Verdict.NotChecked || Math.Abs(check.Capacity!.Value - first.Galloping.OnsetSpeed!.Value.MetersPerSecond) < 1e-9);
    }

    [Fact]
    public void The_limits_of_the_standard_are_told_with_clause_and_reason()
    {
        ValueList<string> warnings = Report(input).Warnings;
        Assert.Contains(warnings, w => w.Contains("E.1.5.2.7", StringComparison.Ordinal) && w.Contains("wing", StringComparison.Ordinal));
        Assert.Contains(warnings, w => w.Contains("ovals", StringComparison.Ordinal));
        Assert.DoesNotContain(warnings, w => w.Contains("E.4", StringComparison.Ordinal));
        Assert.Contains(Report(input).Assumptions, a => a.Subject == "structural damping");
    }

    [Fact]
    public void Modes_that_no_wind_can_excite_are_left_out()
    {
        ModalResponse many = model.Modes(150);
        Assert.True(many.Modes[^1].Frequency.Hertz > 1000);
        AcrossWindReport report = StatueFrame.Checks.AcrossWind.Of(model, many, wind, input, "storm");
        Assert.NotEmpty(report.Cases);
        Assert.All(report.Cases, c => Assert.True(c.Mode.Frequency.Hertz < 1000));
        Assert.DoesNotContain(report.Checks, c => c.Where.Contains("higher modes", StringComparison.Ordinal));
    }

    [Fact]
    public void Bad_input_is_listed_in_full()
    {
        AcrossWindInput bad = new()
        {
            Damping = new DampingModel { StructuralDecrement = double.NaN },
            Sections = [new("arm", BluffShape.Round), new("trunk", (BluffShape)9), new("trunk", BluffShape.Round)],
            AmplitudeLimit = Length.Zero,
            CutOff = Frequency.Zero,
            LifeYears = 0,
            BandwidthFactor = 0,
        };
        Assert.Equal(8, Assert.Throws<InvalidStatueException>(() => Report(bad)).Problems.Count);
    }

    private static Tower Tube(double length, double diameter, double wall, int segments, string prefix) => new()
    {
        Levels = [.. Enumerable.Range(0, segments + 1).Select(i => new TowerLevel($"{prefix}{i}", (length * i / segments).Meters))],
        Segments = [.. Enumerable.Repeat((TowerSegment)new MemberSegment { Section = new Tube(diameter.Meters, wall.Meters), Material = StructuralSteel.S355 }, segments)],
    };

    /// <summary>
    /// A tube that no skin covers sheds vortices as any chimney: n₁ of a uniform cantilever, v_crit = b n/St (E.2), Sc = 2δm/(ρb²) (E.4).
    /// </summary>
    [Fact]
    public void A_bare_tube_has_its_vortices()
    {
        const double L = 20, b = 0.4, wall = 0.008;
        var pole = new Statue { Name = "pole", Tower = Tube(L, b, wall, 10, "P") };
        StatueModel bare = StatueModel.Build(pole);
        double d = b - 2 * wall, A = Math.PI / 4 * (b * b - d * d), I = Math.PI / 64 * (Math.Pow(b, 4) - Math.Pow(d, 4));
        double m = StructuralSteel.S355.Density.KilogramsPerCubicMeter * A, n = 3.516 / (2 * Math.PI) * Math.Sqrt(StructuralSteel.S355.YoungsModulus.Pascals * I / m) / (L * L);
        AcrossWindReport report = StatueFrame.Checks.AcrossWind.Of(bare, bare.Modes(6), wind, input with { Sections = [] }, "storm");
        AcrossWindCase first = report.Cases.Where(found => found.Mode.Number <= 2).MaxBy(found => found.GreatestDisplacement)!;
        Assert.Equal(n, first.Mode.Frequency.Hertz, 0.01 * n);
        Assert.Equal(b * n / 0.18, first.Vortex.CriticalSpeed.MetersPerSecond, 0.02 * b * n / 0.18);
        double delta = input.Damping!.DecrementAt(n, n), scruton = 2 * delta * m / (1.25 * b * b);
        Assert.Equal(scruton, first.Vortex.ScrutonNumber, 0.03 * scruton);
        Assert.True(first.GreatestDisplacement.Meters > 0.01);
        // On the sheet, without a word of skin.
        CheckSheet sheet = pole.Check(new Criteria { Damping = input.Damping }, new Situation { Name = "storm", Actions = [new SelfWeight(), wind with { GustEffectFactor = 3 }] });
        Assert.Contains(sheet.Checks, check => check.Id == "wind.vortex" && check.Where.StartsWith("trunk", StringComparison.Ordinal));
    }

    /// <summary>A box is as wide to a wind as it lies: its wide side along x at roll 0, so that a wind along x meets the narrow one.</summary>
    [Theory]
    [InlineData(0, 0, 0.2)]
    [InlineData(0, 90, 0.4)]
    [InlineData(90, 0, 0.4)]
    [InlineData(30, 30, 0.2)]
    public void A_bare_box_has_the_width_that_it_shows(double roll, double heading, double width)
    {
        Tower box = Tube(12, 0.4, 0.01, 4, "P") with
        {
            Segments = [.. Enumerable.Repeat((TowerSegment)new MemberSegment { Section = new RectangularTube(0.4.Meters, 0.2.Meters, 10.Millimeters), Material = StructuralSteel.S355, Roll = roll.Degrees }, 4)],
        };
        StatueModel model = StatueModel.Build(new Statue { Name = "box", Tower = box });
        AcrossWindStrip[] strips = AcrossWindStrip.Of(model, model.Bodies[0]);
        Assert.NotEmpty(strips);
        (double sin, double cos) = Math.SinCos(heading.Degrees.Radians);
        Assert.All(strips, strip => Assert.Equal(width, strip.WidthAcross(new Mechanics.Vector3D(cos, sin, 0)), 1e-9));
    }

    /// <summary>A spear in the figure's hand is looked at beside the trunk, and one that is thicker or stiffer is not silent either.</summary>
    [Fact]
    public void A_limb_without_a_skin_is_looked_at()
    {
        Statue armed = Figure() with { Limbs = [new Limb { Name = "spear", From = "P9", Heading = 0.Degrees, Inclination = 60.Degrees, Tower = Tube(9, 0.1, 0.004, 6, "S") }] };
        StatueModel held = StatueModel.Build(armed);
        AcrossWindReport report = StatueFrame.Checks.AcrossWind.Of(held, held.Modes(20), wind, input with { Sections = [new("trunk", BluffShape.Round)] }, "storm");
        AcrossWindCase[] spear = [.. report.Cases.Where(found => found.Body == "spear")];
        Assert.NotEmpty(spear);
        Assert.Contains(spear, found => !found.Vortex.IsBeyondRange && found.GreatestDisplacement.Meters > 1e-3);
        // Its own mode moves it, and the skin hardly: the greatest displacement is the spear's.
        AcrossWindCase worst = spear.MaxBy(found => found.GreatestDisplacement)!;
        Assert.Equal(worst.Vortex.Amplitude.Meters, worst.GreatestDisplacement.Meters, 0.2 * worst.GreatestDisplacement.Meters);
    }
}
