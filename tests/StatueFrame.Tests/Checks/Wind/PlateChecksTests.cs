using StatueFrame.Checks;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Wind;

public class PlateChecksTests
{
    private const double Height = 10, Chord = 2;

    private static readonly WindAction wind = new() { Profile = new PowerLawWind { ReferenceSpeed = 20.MetersPerSecond, ReferenceHeight = 10.Meters, Exponent = 0, TurbulenceIntensityAtReference = 0.1, SpeedIs = WindSpeedBasis.MeanSpeed }, GustEffectFactor = 1.2 };

    private static CheckSheet Leaf(double thickness = 0.2, double wall = 4, bool lies = false, double turned = 0, double height = Height) =>
        LeafOnMast(thickness, wall, lies, turned, height).Check(new Criteria(), new Situation { Name = "storm", Actions = [new SelfWeight(), 1.5 * wind] });

    /// <summary>A leaf of sheet on a mast; all invented.</summary>
    internal static Statue LeafOnMast(double thickness = 0.2, double wall = 4, bool lies = false, double turned = 0, double height = Height)
    {
        int count = (int)(2 * height);
        Tower mast = new()
        {
            Levels = [.. Enumerable.Range(0, count + 1).Select(i => new TowerLevel($"P{i}", (height * Math.Max(0, i - 0.5) / count).Meters))],
            Segments = [.. Enumerable.Repeat((TowerSegment)new MemberSegment { Section = new Tube(0.1.Meters, wall.Millimeters), Material = StructuralSteel.S355 }, count)],
        };
        SkinStation Station(double z) => new() { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = Chord.Meters, WidthY = thickness.Meters, Rotation = turned.Degrees } };
        var skin = new Skin { Material = Copper.HalfHardR240, Thickness = 2.Millimeters, Stations = [Station(0), Station(height)], BandEdges = [.. Enumerable.Range(0, count + 1).Select(i => (height * i / count).Meters)] };
        ValueList<StandoffRing> rings = [.. Enumerable.Range(1, count).Select(i => (StandoffRing)new EvenRing
        {
            Level = $"P{i}", Count = 12, Length = 0.04.Meters,
            Standoff = new Standoff { Section = new FlatBar(60.Millimeters, 10.Millimeters), Material = StainlessSteel.Grade316L, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid },
        })];
        return lies
            ? new Statue
            {
                Name = "leaf on a post",
                Tower = new Tower { Levels = [new TowerLevel("foot", 0.Meters), new TowerLevel("head", 6.Meters)], Segments = [new MemberSegment { Section = new Tube(0.6.Meters, 20.Millimeters), Material = StructuralSteel.S355 }] },
                Limbs = [new Limb { Name = "leaf", From = "head", Heading = 0.Degrees, Inclination = 0.Degrees, Tower = mast, Skin = skin, Standoffs = rings }],
            }
            : new Statue { Name = "leaf", Tower = mast, Skin = skin, Standoffs = rings };
    }

    private static Check Of(CheckSheet sheet, string id) => Assert.Single(sheet.Checks, check => check.Id == id);

    /// <summary>GJ Θ″ + ½ρ v² d² c′ Θ = 0, held below and free above: ½ρ v² d² c′ = GJ (π/2L)².</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(35)]
    public void A_leaf_on_a_mast_diverges_where_the_twisted_rod_does(double turned)
    {
        double slope = 1.6 - 0.38 * 0.1 - 6.3 * 0.01, J = 0.25 * Math.PI * (Math.Pow(0.1, 4) - Math.Pow(0.092, 4)) / 8, G = StructuralSteel.S355.ShearModulus.Pascals;
        double v = Math.PI / 2 / Height * Math.Sqrt(G * J / (0.5 * 1.25 * Chord * Chord * slope));
        Check divergence = Of(Leaf(turned: turned), "wind.divergence");
        Assert.Equal(v, divergence.Capacity!.Value, 0.03 * v);
        Assert.Equal(40, divergence.Demand!.Value, 1e-9);
        Assert.Contains(divergence.AssumedInputs, assumed => assumed.StartsWith("moment of the wind on a flat body edge on", StringComparison.Ordinal));
    }

    [Fact]
    public void A_softer_mast_diverges_sooner() =>
        Assert.True(Of(Leaf(wall: 3), "wind.divergence").Capacity < Of(Leaf(), "wind.divergence").Capacity);

    [Fact]
    public void A_leaf_that_twists_about_as_fast_as_it_bends_can_flutter()
    {
        // Bending falls with the square of the height, twist with the height.
        Assert.Equal(Verdict.Pass, Of(Leaf(), "wind.flutter").Verdict);
        Check flutter = Of(Leaf(height: 2), "wind.flutter");
        Assert.Equal(Verdict.NotChecked, flutter.Verdict);
        Assert.Contains("can flutter", flutter.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_level_leaf_is_looked_at_edge_on_and_an_upright_one_across_the_wind_is_not()
    {
        // The limb's local x is upright: with its chord along it the leaf is never met edge on.
        Assert.Equal("leaf", Of(Leaf(lies: true, turned: 90), "wind.divergence").Where);
        Assert.DoesNotContain(Leaf(lies: true).Checks, check => check.Id == "wind.divergence");
    }

    [Fact]
    public void A_thick_body_is_none() =>
        Assert.DoesNotContain(Leaf(thickness: 0.6).Checks, check => check.Id is "wind.divergence" or "wind.flutter");
}
