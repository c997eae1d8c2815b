using CsCheck;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Base;

/// <summary>Base plates bent up by their bars: "feet.plate-uplift" and "base.plate-uplift".</summary>
public class PlateUpliftTests
{
    private static readonly BasePlate plate = new()
    {
        WidthX = 0.5.Meters,
        WidthY = 0.5.Meters,
        Thickness = 30.Millimeters,
        FootX = 0.2.Meters,
        FootY = 0.2.Meters,
        Material = StructuralSteel.S355,
    };

    private static readonly double f_y = plate.Material.For(0.03).YieldStrength.Pascals;

    private static AnchorBar At(double x, double y, double free = 1) => new()
    {
        X = x.Meters,
        Y = y.Meters,
        Diameter = 30.Millimeters,
        Material = StructuralSteel.S355,
        FreeLength = free.Meters,
        Embedment = 1.Meters,
    };

    private static PlatePull Pull(AnchorBar bar, params AnchorBar[] others) => new("bar 1", plate, bar, [bar, .. others], false, 1e5, 1, new BaseDesign());

    private static double Bears(PlatePull pull) => PlateUplift.OfBase.With(pull, "storm").Capacity!.Value;

    /// <summary>EN 1993-1-8, Table 6.2 without prying, by hand: l_eff = min(2π·100, π·100 + 2·50, 400 + 62.5, 200 + 81.25) mm, M_pl = l t²/4 f_y, F = M_pl/m.</summary>
    [Fact]
    public void A_long_bar_bends_a_stub_of_the_length_of_the_code()
    {
        Check check = PlateUplift.OfFeet.With(Pull(At(0.2, 0), At(-0.2, 0)) with { Pull = 2e5, Sharing = 2 }, "storm");
        double M_pl = 0.28125 * 0.03 * 0.03 / 4 * f_y;
        Assert.Equal(1e5, check.Demand!.Value, 1e-6);
        Assert.Equal(M_pl / 0.1, check.Capacity!.Value, 1e-6 * M_pl / 0.1);
    }

    /// <summary>Table 6.2 with prying, by virtual work: hinge at the foot and bar (M + e F_t)/(m + e), or two hinges 2M/m. What passes as plate and as bar passes so too.</summary>
    [Fact]
    public void What_bears_without_prying_bears_with_it() => Gen.Select(Gen.Double[1e3, 1e6], Gen.Double[1e4, 1e6], Gen.Double[0.02, 0.3], Gen.Double[0.01, 1.25]).Sample((M, F_t, m, n) =>
    {
        double e = n * m, alone = Math.Min(M / m, F_t);
        Assert.True(alone <= Math.Min(2 * M / m, (M + e * F_t) / (m + e)) * (1 + 1e-12));
    });

    /// <summary>A full row of bars bends the plate over its whole width as a strip: Σ T m = W t²/4 f_y.</summary>
    [Fact]
    public void A_row_of_bars_bends_the_plate_across_its_width()
    {
        AnchorBar[] row = [.. Enumerable.Range(0, 9).Select(i => At(0.2, -0.2 + 0.05 * i))];
        double strip = 0.5 * 0.03 * 0.03 / 4 * f_y / (9 * 0.1);
        Assert.Equal(strip, Bears(Pull(row[4], [.. row[..4], .. row[5..]])), 1e-6 * strip);
    }

    /// <summary>Bars close together share the plate about them: no group bears more than the plate about the group.</summary>
    [Fact]
    public void Bars_close_together_share_their_plate()
    {
        double three = Bears(Pull(At(0.2, 0), At(0.2, 0.001), At(0.2, -0.001))), group = (4 * 0.1 + 1.25 * 0.05 + 0.002) * 0.03 * 0.03 / 4 * f_y / 0.1;
        Assert.Equal(group / 3, three, 1e-9 * group);
    }

    /// <summary>Eight bars round a tube: the lever runs from the tube, not from the square about it, and each has an eighth of its wall.</summary>
    [Fact]
    public void Round_a_tube_the_lever_is_radial()
    {
        const double r = 0.2;
        AnchorBar[] ring = [.. Enumerable.Range(0, 8).Select(i => At(r * Math.Cos(i * Math.PI / 4), r * Math.Sin(i * Math.PI / 4)))];
        PlateStub stub = PlateStub.Of(plate, ring[1], ring, isRound: true);
        double m = r - 0.1, l = 2 * r * Math.Sin(Math.PI / 8) * 0.1 / r;
        Assert.Equal(l / m, stub.l / stub.m, 1e-9);
        Assert.True(PlateStub.Of(plate, ring[1], ring, isRound: false) is var square && square.l / square.m > stub.l / stub.m);
    }

    /// <summary>A neighbor more, a thinner plate, a bar farther out, a weaker metal: none helps.</summary>
    [Fact]
    public void Weakening_never_helps()
    {
        Gen<double> place = Gen.Double[-0.24, 0.24];
        Gen.Select(Gen.Select(place, place).Array[2, 7], Gen.Double[0.3, 0.99], Gen.Bool, Gen.Double[0.02, 3]).Sample((places, k, round, free) =>
        {
            AnchorBar[] bars = [.. places.Select(p => At(p.Item1, p.Item2, free))];
            PlatePull all = Pull(bars[0], bars[1..]) with { IsRound = round }, fewer = all with { Bars = [.. bars[..^1]] };
            double? Use(PlatePull of) => PlateUplift.OfBase.Utilization(of);
            Assert.True(Use(fewer) <= Use(all) * (1 + 1e-9));
            Assert.True(Use(all) <= Use(all with { Plate = plate with { Thickness = k * plate.Thickness } }) * (1 + 1e-9));
            Assert.True(Use(all) <= Use(all with { Pull = all.Pull / k }) * (1 + 1e-9));
        });
    }

    [Fact]
    public void A_bar_through_no_plate_is_open()
    {
        Check check = PlateUplift.OfBase.With(Pull(At(2, 0)) with { Plate = null }, "storm");
        Assert.Equal(Verdict.NotChecked, check.Verdict);
    }

    /// <summary>On a sheet the plate bears the greatest pull that bars have without pre-tension, and a thin one fails.</summary>
    [Fact]
    public void A_sheet_asks_every_bar()
    {
        SmallStatue whole = SmallWhole.Of(wind: 32);
        HoldDown outside = whole.Statue.HoldDown! with { Bars = [.. whole.Statue.HoldDown.Bars.Select(b => b with { X = b.X + (b.X.Meters > 0 ? 0.15 : -0.15).Meters, Embedment = 0.8.Meters })] };
        Check thick = Of(outside), thin = Of(outside with { Plates = [.. outside.Plates.Select(p => p with { Thickness = 8.Millimeters })] });
        Assert.True(thick.Demand > 0);
        Assert.True(thin.Utilization > 5 * thick.Utilization);

        Check Of(HoldDown holdDown) => (whole.Statue with { HoldDown = holdDown }).Check(whole.Criteria, whole.Situations).Checks.Where(check => check.Id == "base.plate-uplift").MaxBy(check => check.Utilization)!;
    }
}
