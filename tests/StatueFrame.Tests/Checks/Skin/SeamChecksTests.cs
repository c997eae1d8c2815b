using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Seams;

public class SeamChecksTests
{
    private static readonly BarDesign copper = BarDesign.For(Copper.HalfHardR240), steel = BarDesign.For(StructuralSteel.S355), lrfd = BarDesign.For(StructuralSteel.S355, DesignCode.AiscLrfd);
    private static readonly Length sheet = 2.4.Millimeters;

    private const string Butt = "solved textbook problem: double riveted double-strap butt joint, 12 mm plates, rivets 18 mm at 80 mm; 115, 80 and 160 MPa, second hand";
    private const string Gate = "GATE ME 2013: single riveted lap joint, 200 × 5 mm, 3 rivets of 10 mm in holes of 11 mm; 200, 100 and 150 MPa; problem as published, answers from memory";
    private const string Lap = "textbook problem: double riveted lap joint, 15 mm plates, rivets 25 mm at 75 mm; 400, 320 and 640 MPa; problem as published, answers from memory";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("tearing of a butt joint, per pitch", Butt, 85.56, "kN", 1e-4, () => Whole(SeamChecks.NetSection, 18, 80, 12, 115)),
        new("shear of two rivets in two planes", Butt, 81.43, "kN", 1e-4, () => 4 * Whole(SeamChecks.Shear, 18, 80, 12, 80 / 0.6)),
        new("crushing of two rivets", Butt, 69.12, "kN", 1e-4, () => 2 * Whole(SeamChecks.Bearing, 18, 80, 12, 160 / 1.5)),
        new("tearing of a lap joint between holes", Gate, 167, "kN", 1e-6, () => 3 * Whole(SeamChecks.NetSection, 11, 200.0 / 3, 5, 200), ValueKind.FromMemory),
        new("crushing of three rivets", Gate, 22.5, "kN", 1e-6, () => 3 * Whole(SeamChecks.Bearing, 10, 200.0 / 3, 5, 150 / 1.5), ValueKind.FromMemory),
        new("tearing of a lap joint, per pitch", Lap, 300, "kN", 1e-6, () => Whole(SeamChecks.NetSection, 25, 75, 15, 400), ValueKind.FromMemory),
        new("shear of two rivets, per pitch", Lap, 314.2, "kN", 2e-4, () => 2 * Whole(SeamChecks.Shear, 25, 75, 15, 320 / 0.6), ValueKind.FromMemory),
        new("crushing of two rivets, per pitch", Lap, 480, "kN", 1e-6, () => 2 * Whole(SeamChecks.Bearing, 25, 75, 15, 640 / 1.5), ValueKind.FromMemory),
        new("shear of a 20 mm rivet of 400 MPa, one plane: 0.6 f_ur A₀/γ_M2", "EN 1993-1-8:2005, Table 3.4, by hand", 60.3, "kN", 1e-3, () => 1e-3 * Capacity(SeamChecks.Shear, Steel(20), steel), ValueKind.FromMemory),
        new("tension of a 20 mm rivet of 400 MPa: 0.6 f_ur A₀/γ_M2, thick sheet", "EN 1993-1-8:2005, Table 3.4, by hand", 60.3, "kN", 1e-3, () => 1e-3 * Capacity(SeamChecks.PullThrough, Steel(20), steel, 20), ValueKind.FromMemory),
        new("bearing of 8 mm S355 at a 20 mm rivet, e 40, p 60", "EN 1993-1-8:2005, Table 3.4, by hand: 2.5·0.667·f_u·20·8/1.25", 2.5 * 2.0 / 3 * StructuralSteel.S355.UltimateStrength.Megapascals * 160 / 1.25e3, "kN", 1e-9, () => 1e-3 * Capacity(SeamChecks.Bearing, Steel(20) with { EdgeDistance = 40.Millimeters }, steel, 8), ValueKind.FromMemory),
        new("shear of a 20 mm rivet of 400 MPa, LRFD: 0.75·0.6 F_u A", "AISC 360-16, J3, by hand", 56.5, "kN", 1e-3, () => 1e-3 * Capacity(SeamChecks.Shear, Steel(20), lrfd), ValueKind.FromMemory),
        new("bearing of 8 mm plate at a 20 mm rivet, LRFD: 0.75·2.4 d t F_u", "AISC 360-16, J3.10, by hand", 0.75 * 2.4 * StructuralSteel.S355.UltimateStrength.Megapascals * 160 * 1e-3, "kN", 1e-9, () => 1e-3 * Capacity(SeamChecks.Bearing, Steel(20) with { EdgeDistance = 80.Millimeters }, lrfd, 8), ValueKind.FromMemory),
        new("greatest pitch of a tight seam in 5 mm sheet: 14 t", "EN 1993-1-8:2005, Table 3.3", 70, "mm", 1e-9, () => 70 / SeamChecks.Pitch(Copper4 with { Pitch = 70.Millimeters, EdgeDistance = 20.Millimeters }, 5.Millimeters).Utilization!.Value, ValueKind.FromMemory),
        new("least pitch: 2.2 d₀ at 4 mm", "EN 1993-1-8:2005, Table 3.3", 8.8, "mm", 1e-9, () => 10 * SeamChecks.Pitch(Copper4 with { Pitch = 10.Millimeters, EdgeDistance = 20.Millimeters }, 5.Millimeters).Utilization!.Value, ValueKind.FromMemory),
        new("membrane force of 3 kPa on a radius of 2 m", "p R, equilibrium of a ring", 6, "kN/m", 1e-12, () => SeamForces.Of(Pressure.FromKilopascals(3), 2.Meters, 0.5.Meters, Length.Zero, Copper.HalfHardR240, sheet).InPlane.KilonewtonsPerMeter, ValueKind.IndependentComputation),
        new("force of 2.4 mm copper held against 40 K: E α ΔT t", "by hand", 1e-3 * Copper.HalfHardR240.YoungsModulus.Pascals * Copper.HalfHardR240.ThermalExpansion.PerKelvin * 40 * 0.0024, "kN/m", 1e-12, () => SeamForces.Of(Pressure.Zero, Length.Zero, Length.Zero, Length.Zero, Copper.HalfHardR240, sheet, TemperatureDelta.FromKelvins(-40), 1).InPlane.KilonewtonsPerMeter, ValueKind.IndependentComputation),
    ];

    [Fact]
    public void A_closer_pitch_never_loads_a_rivet_more() =>
        Gen.Select(Gen.Double[12, 60], Gen.Double[1.01, 2], Gen.Double[0.1, 20]).Sample((pitch, wider, force) =>
        {
            double U(double p) => SeamChecks.Shear(Copper4 with { Pitch = p.Millimeters }, Copper.HalfHardR240, sheet, Forces(force), copper).Utilization!.Value;
            return U(pitch) < U(pitch * wider);
        });

    [Fact]
    public void Rows_share_the_force()
    {
        Check one = SeamChecks.Shear(Copper4, Copper.HalfHardR240, sheet, Forces(5), copper), two = SeamChecks.Shear(Copper4 with { Rows = 2 }, Copper.HalfHardR240, sheet, Forces(5), copper);
        Assert.Equal(one.Utilization!.Value, 2 * two.Utilization!.Value, 1e-12);
    }

    [Fact]
    public void Countersinking_costs_bearing_and_pull_through()
    {
        RivetedSeam sunk = Copper4 with { Rivet = Copper4.Rivet with { IsCountersunk = true } };
        Assert.True(SeamChecks.Bearing(sunk, Copper.HalfHardR240, sheet, Forces(5), copper).Capacity < SeamChecks.Bearing(Copper4, Copper.HalfHardR240, sheet, Forces(5), copper).Capacity);
        Assert.True(SeamChecks.PullThrough(sunk, Copper.HalfHardR240, 0.5.Millimeters, Forces(5), copper).Capacity < SeamChecks.PullThrough(Copper4, Copper.HalfHardR240, 0.5.Millimeters, Forces(5), copper).Capacity);
    }

    [Fact]
    public void A_thin_strap_governs_a_flush_seam()
    {
        RivetedSeam flush = Copper4 with { Kind = SeamKind.FlushWithStrap, StrapThickness = 1.2.Millimeters };
        Assert.Equal(0.5, SeamChecks.NetSection(flush, Copper.HalfHardR240, sheet, Forces(5), copper).Capacity!.Value / SeamChecks.NetSection(Copper4, Copper.HalfHardR240, sheet, Forces(5), copper).Capacity!.Value, 1e-9);
    }

    [Fact]
    public void Copper_says_that_no_code_covers_it() =>
        Assert.Contains("allowable stress", SeamChecks.Shear(Copper4, Copper.HalfHardR240, sheet, Forces(5), copper).Source.ToString());

    [Fact]
    public void Bad_seams_are_refused() =>
        Assert.Throws<InvalidStatueException>(() => SeamChecks.Pitch(Copper4 with { Pitch = 3.Meters, Rows = 0 }, sheet));

    private static RivetedSeam Copper4 => new() { Rivet = Rivet.Of(4.Millimeters, Copper.HalfHardR240), Pitch = 25.Millimeters, EdgeDistance = 10.Millimeters };

    private static RivetedSeam Steel(double d) => new()
    {
        Rivet = new Rivet { Hole = d.Millimeters, UltimateStrength = 400.Megapascals, YieldStrength = 235.Megapascals, Source = Source.User },
        Pitch = 60.Millimeters,
        EdgeDistance = 30.Millimeters,
    };

    private static SeamForces Forces(double kilonewtons) => new(ForcePerLength.FromKilonewtonsPerMeter(kilonewtons), ForcePerLength.FromKilonewtonsPerMeter(kilonewtons / 4));

    /// <summary>Capacity of one rivet or pitch by allowable stress at a whole strength, MPa, in mm; kN.</summary>
    private static double Whole(Func<RivetedSeam, Material, Length, SeamForces, BarDesign, string, string, Check> check, double hole, double pitch, double thickness, double strength)
    {
        Material metal = Copper.HalfHardR240 with { YieldStrength = strength.Megapascals, UltimateStrength = (1.5 * strength).Megapascals };
        RivetedSeam seam = new() { Rivet = Rivet.Of(hole.Millimeters, metal) with { Hole = hole.Millimeters }, Pitch = pitch.Millimeters, EdgeDistance = (2 * hole).Millimeters };
        return 1e-3 * check(seam, metal, thickness.Millimeters, Forces(1), copper with { AllowableFraction = 1 }, "", "").Capacity!.Value;
    }

    private static double Capacity(Func<RivetedSeam, Material, Length, SeamForces, BarDesign, string, string, Check> check, RivetedSeam seam, BarDesign design, double thickness = 8) =>
        check(seam, StructuralSteel.S355, thickness.Millimeters, Forces(1), design, "", "").Capacity!.Value;
}
