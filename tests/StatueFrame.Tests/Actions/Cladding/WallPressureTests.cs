using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Cladding;

public class WallPressureTests
{
    private static readonly WallPressure tower = new() { SideA = Length.FromMeters(4), SideB = Length.FromMeters(3), Height = Length.FromMeters(15) };

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Zone(WallZone.A, 1, -1.4, -1.2), .. Zone(WallZone.B, 1, -1.1, -0.8), .. Zone(WallZone.C, 1, -0.5, -0.5),
        .. Zone(WallZone.D, 1, 1.0, 0.8), .. Zone(WallZone.D, 0.25, 1.0, 0.7),
        .. Zone(WallZone.E, 5, -0.7, -0.7), .. Zone(WallZone.E, 1, -0.5, -0.5), .. Zone(WallZone.E, 0.25, -0.3, -0.3),
        new("c_pe of zone A on 3.16 m² (half-way in the logarithm)", "EN 1991-1-4:2005, Figure 7.2", -1.3, "-", 1e-3, () => WallPressure.ByArea(-1.4, -1.2, Math.Sqrt(10)), ValueKind.FromMemory),
        new("C(α) of a bin facing the wind", "AS/NZS 1170.2:2002, bins, silos and tanks (series as quoted by a public forum, summed by hand)", 0.85, "-", 1e-9, () => BinPressure.Series(0)),
        new("C(α) of a bin at 90°", "AS/NZS 1170.2:2002, bins, silos and tanks (series as quoted by a public forum, summed by hand)", -1.4, "-", 1e-9, () => BinPressure.Series(Math.PI / 2)),
    ];

    private static PublishedValue[] Zone(WallZone zone, double slenderness, double one, double ten) =>
    [
        new($"c_pe,1 of zone {zone}, h/d {slenderness}", "EN 1991-1-4:2005, Table 7.1, as reproduced in a public program", one, "-", 1e-9, () => WallPressure.Table(zone, slenderness).One),
        new($"c_pe,10 of zone {zone}, h/d {slenderness}", "EN 1991-1-4:2005, Table 7.1, as reproduced in a public program", ten, "-", 1e-9, () => WallPressure.Table(zone, slenderness).Ten),
    ];

    [Fact]
    public void A_larger_area_is_never_pressed_harder() =>
        Gen.Select(Gen.Enum<WallZone>(), Gen.Double[0.1, 50], Gen.Double[1, 3]).Sample((zone, area, more) =>
            Math.Abs(tower.CoefficientOf(zone, Area.FromSquareMeters(area * more))) <= Math.Abs(tower.CoefficientOf(zone, Area.FromSquareMeters(area))) + 1e-12);

    [Fact]
    public void Zones_follow_the_wind()
    {
        Assert.Equal(WallZone.D, tower.ZoneAt(Angle.FromDegrees(30)));
        Assert.Equal(WallZone.A, tower.ZoneAt(Angle.FromDegrees(-90)));
        Assert.Equal(WallZone.E, tower.ZoneAt(Angle.FromDegrees(180)));
        Assert.Equal(WallZone.B, (tower with { EdgeDistance = Length.FromMeters(1) }).ZoneAt(Angle.FromDegrees(90)));
        Assert.Equal(WallZone.C, (tower with { EdgeDistance = Length.FromMeters(4.5) }).ZoneAt(Angle.FromDegrees(90)));
        Assert.Empty((tower with { EdgeDistance = Length.FromMeters(1) }).Assumptions);
        Assert.Single(tower.Assumptions);
    }

    [Fact]
    public void Swapping_the_sides_changes_nothing() =>
        Gen.Select(Gen.Double[1, 9], Gen.Double[1, 9], Gen.Double[0, 180]).Sample((a, b, degrees) =>
        {
            WallPressure one = tower with { SideA = Length.FromMeters(a), SideB = Length.FromMeters(b) };
            WallPressure other = one with { SideA = one.SideB, SideB = one.SideA };
            return one.At(double.DegreesToRadians(degrees), 2, 30) == other.At(double.DegreesToRadians(degrees), 2, 30);
        });

    [Fact]
    public void Warns_outside_the_tables()
    {
        Assert.Contains("h/d is 10", Assert.Single((tower with { Height = Length.FromMeters(30) }).RangeWarnings(30)));
        Assert.Empty(tower.RangeWarnings(30));
        var bin = new BinPressure { Diameter = Length.FromMeters(4), Height = Length.FromMeters(20) };
        Assert.Contains("outside 0.25 to 4", Assert.Single(bin.RangeWarnings(30)));
    }
}
