using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Fatigue;

/// <summary>The fatigue of sheet, seams, armature and straps under local gusts.</summary>
public class SkinFatigueTests
{
    private static readonly DetailCategory weak = new("12, weak sheet", 12.Megapascals, false, Source.User);

    private static readonly SaddleStrap strap = new()
    {
        Distance = 0.25.Meters,
        Width = 40.Millimeters,
        Thickness = 2.Millimeters,
        Material = Copper.HalfHardR240,
        Rivet = Rivet.Of(4.Millimeters, Copper.HalfHardR240),
        Reach = 15.Millimeters,
        FatigueDetail = weak,
    };

    private static readonly SmallStatue whole = SmallWhole.Of(wind: 32);

    private static Skin Tiring => whole.Statue.Skin! with
    {
        Thickness = 1.2.Millimeters,
        FatigueDetail = weak,
        Armature = whole.Statue.Skin.Armature! with { FatigueDetail = weak with { Strength = 40.Megapascals }, Straps = strap },
    };

    private static Statue With(Skin skin) => whole.Statue with { Skin = skin, Limbs = [], Points = [.. whole.Statue.Points.Where(point => !point.On.Contains('/'))] };

    private static CheckSheet Sheet(Skin skin, params Situation[] situations) => With(skin).Check(whole.Criteria, situations.Length > 0 ? situations : [.. whole.Situations]);

    private static Check Of(CheckSheet sheet, string kind) => sheet.Checks.Single(check => check.Id == $"fatigue.{kind}");

    /// <summary>Damage by an integral of its own: n(s) from B.3 on a fine grid, in a hundred years, each gust with the stress of its own pressure.</summary>
    private static double Integral(Func<double, double> stress, double strength)
    {
        double D = 0;
        for (double log = 0; log < 9; log += 1e-3)
        {
            double share = (0.7 * log * log - 17.4 * log + 100) / 100, n = Math.Pow(10, log + 1e-3) - Math.Pow(10, log);
            double s = stress(share) * 1.35, limit = strength * Math.Pow(0.4, 1 / 3.0);
            D += 2 * n / (s >= limit ? 2e6 * Math.Pow(strength / s, 3) : s >= limit * Math.Pow(0.05, 0.2) ? 5e6 * Math.Pow(limit / s, 5) : double.PositiveInfinity);
        }
        return D;
    }

    [Fact]
    public void Damage_is_that_of_the_standards_formula_gust_by_gust()
    {
        Skin tiring = Tiring with { SheetSeam = Tiring.SheetSeam! with { Pitch = 80.Millimeters } };
        CheckSheet sheet = Sheet(tiring);
        StatueModel model = StatueModel.Build(With(tiring));
        LocalWind local = LocalWind.Of(model, whole.Situations[1])!;
        (double sheetD, double barD, double strapD, double seamD) = (0, 0, 0, 0);
        for (int i = 0; i < model.BandCount; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            SkinBand band = body.Bands[index];
            double inward = local.Inward(i), suction = local.Suction(i), greater = Math.Max(inward, suction), R = band.MidOutline.Perimeter / (2 * Math.PI);
            SheetPanel panel = new() { Length = 0.6.Meters, Width = 0.4.Meters, Thickness = 1.2.Millimeters, Material = Copper.HalfHardR240, Edges = PanelEdges.Supported, EdgesHeldInPlane = whole.Criteria.Skin.PanelsHeldInPlane };
            sheetD = Math.Max(sheetD, Integral(share => SheetChecks.PanelBending(panel, Pressure.FromPascals(share * inward), Pressure.FromPascals(share * suction), 1).Demand!.Value, 12e6));
            // Three spans of 0.8 m, bars of 40 by 8 mm every 0.4 m.
            barD = Math.Max(barD, Integral(share => 0.1 * share * greater * 0.4 * 0.64 / (0.04 * 0.008 * 0.008 / 6), 40e6));
            double F = suction * 0.4 * 0.25;
            strapD = Math.Max(strapD, Integral(share => share * (F / 2 * 0.015 / (0.036 * 0.002 * 0.002 / 6) + F / 2 / (0.036 * 0.002)), 12e6));
            double A = Math.PI * 0.004 * 0.004 / 4, shear = greater * R * 0.08 / A, pull = suction * 0.2 * 0.08 / A, net = greater * R * 80 / 76 / 0.0012;
            seamD = Math.Max(seamD, Integral(share => share * Math.Max(net, Math.Sqrt(pull * pull + 3 * shear * shear)), 12e6));
        }
        Assert.All([sheetD, barD, strapD, seamD], D => Assert.True(D > 1e-3));
        // Rounded up by at most 3 % of stress, to the fifth power, and the blocks' own 3 %.
        Assert.InRange(Of(sheet, "sheet").Demand!.Value, sheetD, 1.2 * sheetD);
        Assert.InRange(Of(sheet, "armature").Demand!.Value, barD, 1.2 * barD);
        Assert.InRange(Of(sheet, "straps").Demand!.Value, strapD, 1.2 * strapD);
        Assert.InRange(Of(sheet, "seams").Demand!.Value, seamD, 1.2 * seamD);
    }

    /// <summary>A panel that stretches is stressed by a small gust more than in proportion to a great one.</summary>
    [Fact]
    public void Small_gusts_count_for_more_on_thin_panels()
    {
        Skin thin = Tiring with { Thickness = 0.5.Millimeters };
        StatueModel model = StatueModel.Build(With(thin));
        LocalWind local = LocalWind.Of(model, whole.Situations[1])!;
        double most = Enumerable.Range(0, model.BandCount).Max(i => Math.Max(local.Inward(i), local.Suction(i)));
        SheetPanel panel = new() { Length = 0.6.Meters, Width = 0.4.Meters, Thickness = 0.5.Millimeters, Material = Copper.HalfHardR240, Edges = PanelEdges.Supported, EdgesHeldInPlane = whole.Criteria.Skin.PanelsHeldInPlane };
        double greatest = SheetChecks.PanelBending(panel, Pressure.FromPascals(most), Pressure.Zero, 1).Demand!.Value;
        Assert.True(Of(Sheet(thin), "sheet").Demand > 1.5 * Integral(share => share * greatest, 12e6));
    }

    [Fact]
    public void Weaker_skin_never_tires_less()
    {
        CheckSheet before = Sheet(Tiring);
        (string Kind, Skin Weaker)[] all =
        [
            ("sheet", Tiring with { Thickness = 1.Millimeters }), ("sheet", Tiring with { Armature = Tiring.Armature! with { Spacing = 0.5.Meters } }), ("sheet", Tiring with { FatigueDetail = weak with { Strength = 10.Megapascals } }),
            ("seams", Tiring with { SheetSeam = Tiring.SheetSeam! with { Pitch = 60.Millimeters } }), ("seams", Tiring with { SheetSeam = Tiring.SheetSeam! with { Rivet = Rivet.Of(3.Millimeters, Copper.HalfHardR240) } }),
            ("armature", Tiring with { Armature = Tiring.Armature! with { Span = 1.Meters } }), ("armature", Tiring with { Armature = Tiring.Armature! with { Bar = new FlatBar(40.Millimeters, 6.Millimeters) } }),
            ("straps", Tiring with { Armature = Tiring.Armature! with { Straps = strap with { Thickness = 1.5.Millimeters } } }), ("straps", Tiring with { Armature = Tiring.Armature! with { Straps = strap with { Rivet = Rivet.Of(8.Millimeters, Copper.HalfHardR240) } } }),
        ];
        Assert.All(all, change => Assert.True(Of(Sheet(change.Weaker), change.Kind).Demand > Of(before, change.Kind).Demand, change.Kind));
    }

    /// <summary>A seam that holds the skin against heat has it once a day, with or without wind to speak of.</summary>
    [Fact]
    public void Seams_that_hold_heat_tire_of_it()
    {
        Situation hot = new() { Name = "sun", Actions = [1.35 * new SelfWeight(), 1.5 * new TemperatureAction { Name = "sun", SkinChange = 30.Kelvins, TowerChange = Temperature(5) }] };
        double free = Of(Sheet(Tiring, [.. whole.Situations, hot]), "seams").Demand!.Value, held = Of(Sheet(Tiring with { SheetSeam = Tiring.SheetSeam! with { HeatRestraint = 0.5 } }, [.. whole.Situations, hot]), "seams").Demand!.Value;
        Assert.True(held > free + 0.01, $"{held} {free}");

        static TemperatureDelta Temperature(double kelvins) => TemperatureDelta.FromKelvins(kelvins);
    }

    [Fact]
    public void What_is_not_described_is_open_by_name()
    {
        CheckSheet none = Sheet(whole.Statue.Skin! with { Armature = whole.Statue.Skin.Armature! with { Straps = strap with { FatigueDetail = null } } });
        foreach ((string kind, string member) in new[] { ("sheet", "Skin.FatigueDetail"), ("seams", "Skin.FatigueDetail"), ("armature", "Armature.FatigueDetail"), ("straps", "SaddleStrap.FatigueDetail") })
            Assert.Contains(member, Of(none, kind).Reason, StringComparison.Ordinal);
        Assert.Equal(3, none.OpenLinks.Count(link => link.Link == "fatigue" && (link.What.Contains("sheet", StringComparison.Ordinal) || link.What.Contains("seams", StringComparison.Ordinal) || link.What.StartsWith("straps", StringComparison.Ordinal))));
        Assert.Contains("EN 1993-1-9 does not cover", Of(Sheet(Tiring with { FatigueDetail = DetailCategory.Riveted with { Source = DetailCategory.RolledFlat.Source } }), "sheet").Reason, StringComparison.Ordinal);
        Assert.Equal("no service situation has wind", Of(Sheet(Tiring, whole.Situations[0]), "sheet").Reason);
        Assert.DoesNotContain(Sheet(whole.Statue.Skin! with { Armature = null, SheetSeam = null }).Checks, check => check.Id is "fatigue.sheet" or "fatigue.seams" or "fatigue.armature" or "fatigue.straps");
    }

    [Fact]
    public void Workings_can_be_followed()
    {
        Check[] all = [.. Sheet(Tiring).Checks.Where(check => check.Id is "fatigue.sheet" or "fatigue.seams" or "fatigue.armature" or "fatigue.straps" or "straps.bearing" or "straps.distances" or "straps.bending")];
        Assert.Equal(7, all.Select(check => check.Id).Distinct().Count());
        PrintedWorkings.CanBeFollowed(all);
    }
}
