using StatueFrame.Analysis;
using StatueFrame.Tests.Validation;

namespace StatueFrame.Tests.Analyses;

/// <summary>The stiffness of bars and rings as a user reads it.</summary>
public class SupportStiffnessTests
{
    private const double L = 0.8, b = 0.06, t = 0.01;

    private static readonly Standoff flat = SmallStatue.Flat with { Section = new FlatBar(b.Meters, t.Meters), TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid };

    private static StatueModel Model(int count, Bracket? bracket = null) => StatueModel.Build(new Statue
    {
        Name = "ring",
        Tower = new Tower
        {
            Levels = [new TowerLevel("base", 0.Meters) { Plan = TowerPlan.Square(0.8.Meters) }, new TowerLevel("top", 2.Meters) { Plan = TowerPlan.Square(0.8.Meters) }],
            Segments = [SmallStatue.Panel],
        },
        Skin = new Skin
        {
            Material = Copper.HalfHardR240,
            Thickness = 2.Millimeters,
            Stations = [.. new[] { 1.0, 3.0 }.Select(z => new SkinStation { Elevation = z.Meters, Outline = new EllipseOutline { WidthX = 4.Meters, WidthY = 4.Meters } })],
        },
        Standoffs = [new EvenRing { Level = "top", Count = count, Length = L.Meters, Standoff = flat, Bracket = bracket }],
    });

    /// <summary>Roark, 8th ed., Table 8.1: E A/L and, for ends that do not turn, 12 E I/L³ (shear adds under 1 %).</summary>
    [Theory]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(24)]
    public void A_ring_of_radial_bars_is_that_of_the_handbook(int count)
    {
        StatueModel model = Model(count);
        double E = flat.Material.YoungsModulus.Pascals, along = E * b * t / L, across = 12 * E * b * t * t * t / 12 / (L * L * L), upright = 12 * E * t * b * b * b / 12 / (L * L * L);
        SupportStiffness bar = model.StiffnessOf("band 1", 2), ring = model.StiffnessOf("band 1");
        Assert.Equal("band 1, bar 2", bar.Where);
        Assert.Equal(along, bar.X.NewtonsPerMeter, 1e-3 * along);
        Assert.Equal(across, bar.Y.NewtonsPerMeter, 0.01 * across);
        Assert.Equal(upright, bar.Z.NewtonsPerMeter, 0.03 * upright);
        Assert.Equal(0.5 * count * (along + across), ring.X.NewtonsPerMeter, 0.002 * count * along);
        Assert.Equal(ring.X.NewtonsPerMeter, ring.Y.NewtonsPerMeter, 0.002 * count * along);
        Assert.Equal(count * bar.Z.NewtonsPerMeter, ring.Z.NewtonsPerMeter, 1e-6 * count * upright);
    }

    [Fact]
    public void Brackets_are_in_it_and_names_are_asked_for()
    {
        Bracket bracket = new() { Section = new Tube(60.Millimeters, 4.Millimeters), Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid };
        Assert.True(Model(8, bracket).StiffnessOf("band 1").Z.NewtonsPerMeter < 0.8 * Model(8).StiffnessOf("band 1").Z.NewtonsPerMeter);
        Assert.Contains("No standoffs carry", Assert.Throws<ArgumentException>(() => Model(8).StiffnessOf("band 9")).Message);
        Assert.Contains("has no bar 9", Assert.Throws<ArgumentException>(() => Model(8).StiffnessOf("band 1", 9)).Message);
        Assert.Equal(36, Model(8).StiffnessOf("band 1").Matrix.Length);
        Assert.Equal(Model(8).StiffnessOf("band 1"), Model(8).StiffnessOf("band 1"));
    }
}
