using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;

namespace StatueFrame.Tests.Studies.Isolation;

public class IsolationStudyTests
{
    /// <summary>A stiff tower, and a skin on bars that only flex.</summary>
    private static readonly Statue statue = new()
    {
        Name = "Study for a heron",
        Tower = new Tower
        {
            Levels = [.. new[] { 0.0, 2, 4 }.Select(z => new TowerLevel($"{z} m", z.Meters))],
            Segments = [.. Enumerable.Repeat<TowerSegment>(new MemberSegment { Section = new Tube(500.Millimeters, 12.Millimeters), Material = StructuralSteel.S355 }, 2)],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.4.Millimeters,
            Stations = [.. new[] { 1.0, 5 }.Select(z => new SkinStation { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = 2.Meters, WidthY = 2.Meters } })],
            BandEdges = [1.Meters, 3.Meters, 5.Meters],
        },
        Standoffs =
        [
            .. new[] { 2, 4 }.Select(z => new EvenRing
            {
                Level = $"{z} m", Count = 12, Lay = 60.Degrees, Length = 0.8.Meters,
                Standoff = new Standoff
                {
                    Section = new FlatBar(50.Millimeters, 16.Millimeters), Material = StainlessSteel.Duplex2205,
                    TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid, Slide = SaddleSlide.AlongBar,
                },
            }),
        ],
        Points = [new NamedPoint("tip", "band 2")],
    };

    private static readonly PressurePulse wave = new() { Name = "wave", Shape = new TrianglePulse(), Peak = 5.Kilopascals, Duration = 0.012.Seconds, Heading = 40.Degrees };

    private static readonly IsolationOptions options = new()
    {
        Variants = [IsolationVariant.RigidLinks, IsolationVariant.AsIs, IsolationVariant.Thickness(6.Millimeters)],
        Damping = DampingModel.OfRatio(0.02),
        Limits = new ShockLimits { BaseWidth = 1.5.Meters, Clearance = 100.Millimeters },
    };

    private static readonly IsolationStudy study = IsolationStudy.Of(statue, wave, options);

    [Fact]
    public void Blow_that_lifts_the_statue_on_thick_bars_leaves_it_standing_on_thin_ones()
    {
        Assert.Equal([true, true, false], study.Rows.Select(r => r.Lifts));
        Assert.True(study.Rows[2].Response.BarForce.Value < 0.5 * study.Rows[1].Response.BarForce.Value);
        Assert.True(study.Rows[2].Response.MostMovedBar!.Movement.Value > study.Rows[1].Response.MostMovedBar!.Movement.Value);
        Assert.True(study.Rows[2].SkinFrequency < study.Rows[1].SkinFrequency);
    }

    [Fact]
    public void Rigid_links_hold_the_skin_still_against_the_tower()
    {
        IsolationRow rigid = study.Rows[0];
        Assert.True(rigid.Response.MostMovedBar!.Movement.Value.Meters < 1e-5);
        Assert.Null(rigid.WorstBar);
        // The skin's mass then rides on the levels themselves; its turning inertia adds little.
        StatueModel model = rigid.Response.Model;
        Statue bare = statue with
        {
            Skin = null,
            Standoffs = [],
            Points = [],
            Fittings = model.Bodies[0].Bands.Select((band, i) => new Fitting
            {
                Name = band.Name,
                On = statue.Tower.Levels[i + 1].Name,
                At = Point3.FromMeters(0, 0, band.Centroid.Z),
                Mass = (band.Mass + 0.5 * model.Masses.Of(MassGroup.Standoffs).Kilograms).Kilograms,
            }).ToValueList(),
        };
        Assert.Equal(StatueModel.Build(bare).Modes(1).First.Frequency.Hertz, model.Modes(1).First.Frequency.Hertz, 0.05 * model.Modes(1).First.Frequency.Hertz);
    }

    [Fact]
    public void Two_masses_tell_the_force_of_soft_bars()
    {
        foreach (IsolationRow row in study.Rows.Skip(1))
        {
            double whole = row.Response.BarForce.Value.Newtons;
            Assert.Equal(whole, row.BarForceOfTwoMasses!.Value.Newtons, 0.1 * whole);
        }
        // Bars soft against the tower: the skin's frequency by itself is the lower one of both masses.
        IsolationRow soft = study.Rows[2];
        Assert.Equal(soft.SkinFrequency!.Value.Hertz, soft.TwoMasses!.LowerFrequency, 0.05 * soft.SkinFrequency.Value.Hertz);
        ModeResult[] sways = [.. soft.Response.Model.Modes(6).Modes.Where(m => m.Description.StartsWith("sway", StringComparison.Ordinal))];
        Assert.InRange(soft.TwoMasses.LowerFrequency, sways[0].Frequency.Hertz, sways[^1].Frequency.Hertz);
    }

    [Fact]
    public void Spectrum_and_transmissibility_fall_with_softer_bars()
    {
        var spectrum = study.ShockSpectrum(1.Hertz, 3.Hertz, 9.Hertz);
        Assert.True(spectrum[0].Response.Factor < spectrum[1].Response.Factor && spectrum[1].Response.Factor < spectrum[2].Response.Factor);
        double own = study.Rows[2].SkinFrequency!.Value.Hertz;
        var points = study.Transmissibility(study.Rows[2], (0.01 * own).Hertz, (4 * own).Hertz);
        Assert.Equal(1, points[0].Bars, 0.01);
        Assert.True(points[1].Bars < 0.1 && points[1].OneMass < 0.1);
    }

    [Fact]
    public void Text_and_values_say_the_same()
    {
        string text = study.Print();
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 110, line));
        Assert.Contains("LIFTS", text);
        Assert.Contains("stands", text);
        Assert.Contains(IsolationStudy.Caution[..40], text);
        string[][] csv = Figures.Parse(study.ToCsv());
        Assert.Equal(4, csv.Length);
        Assert.All(csv, line => Assert.Equal(csv[0].Length, line.Length));
        Assert.Equal("stands", csv[3][Array.IndexOf(csv[0], "base")]);
        int stress = Array.FindIndex(csv[0], head => head.StartsWith("bar stress, greatest", StringComparison.Ordinal));
        Assert.Equal(study.Rows[2].WorstBar!.Stress.Value.Megapascals, double.Parse(csv[3][stress], System.Globalization.CultureInfo.InvariantCulture), 1e-9);
        Assert.Equal("", csv[1][stress]);
        Assert.NotEqual(text, study.Print(DisplayUnits.UsCustomary));
    }

    [Fact]
    public void Blow_without_duration_on_the_tower_has_no_two_masses()
    {
        var blow = new Blow { Name = "ram", On = "4 m", Impulse = Impulse.FromNewtonSeconds(200) };
        IsolationStudy onTower = IsolationStudy.Of(statue, blow, options with { Limits = new ShockLimits() });
        Assert.All(onTower.Rows, row => Assert.Null(row.Lifts));
        Assert.All(onTower.Rows, row => Assert.Null(row.TwoMasses));
        Assert.Contains("not known", onTower.ToString());
        Assert.Throws<InvalidOperationException>(() => onTower.ShockSpectrum(1.Hertz));
        Assert.Throws<InvalidOperationException>(() => onTower.Transmissibility(onTower.Rows[0], 1.Hertz));
    }

    [Fact]
    public void What_cannot_be_compared_is_refused()
    {
        var e = Assert.Throws<InvalidStatueException>(() => IsolationStudy.Of(statue, wave with { Peak = 0.Pascals }, options with { Variants = [IsolationVariant.AsIs], Limits = new ShockLimits { Clearance = 0.Meters } }));
        Assert.Equal(3, e.Problems.Count);
        Assert.Throws<InvalidStatueException>(() => IsolationStudy.Of(statue, wave, options with { Variants = [IsolationVariant.AsIs, IsolationVariant.AsIs] }));
        Assert.Throws<InvalidStatueException>(() => IsolationStudy.Of(statue with { Skin = null, Standoffs = [] }, wave, options));
    }
}
