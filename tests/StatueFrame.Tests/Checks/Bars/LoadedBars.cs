using CsCheck;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Tests.Checks.Bars;

/// <summary>Bars for the tests of their checks.</summary>
internal static class LoadedBars
{
    public static readonly Gen<double> Spring = Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 100], Gen.Const(double.PositiveInfinity));

    public static LoadedBar Steel(double N = 0, double weak = 0, double strong = 0, double T = 0, double thickness = 0, double width = 0) => new()
    {
        Section = new FlatBar(60.Millimeters, 8.Millimeters),
        Material = StructuralSteel.S355,
        Length = 600.Millimeters,
        AtTower = End(N, weak, strong, T, thickness, width),
        AtSkin = new() { Axial = Force.FromNewtons(N) },
    };

    public static BarSectionForces End(double N = 0, double weak = 0, double strong = 0, double T = 0, double thickness = 0, double width = 0) => new()
    {
        Axial = Force.FromNewtons(N),
        WeakMoment = Torque.FromNewtonMeters(weak),
        StrongMoment = Torque.FromNewtonMeters(strong),
        Torsion = Torque.FromNewtonMeters(T),
        ShearAlongThickness = Force.FromNewtons(thickness),
        ShearAlongWidth = Force.FromNewtons(width),
    };

    public static BarDesign En { get; } = BarDesign.For(StructuralSteel.S355);

    public static BarDesign Lrfd { get; } = BarDesign.For(StructuralSteel.S355, DesignCode.AiscLrfd);

    public static BarDesign Asd { get; } = BarDesign.For(StructuralSteel.S355, DesignCode.AiscAsd);

    public static readonly Gen<LoadedBar> Any =
        Gen.Select(Gen.Double[-3e4, 3e4], Gen.Double[-300, 300], Gen.Double[-800, 800], Gen.Double[-100, 100], Gen.Double[-2e3, 2e3], Gen.Double[-2e3, 2e3], Gen.Double[0.1, 2])
            .Select((N, weak, strong, T, Vt, Vb, L) => Steel(N, weak, strong, T, Vt, Vb) with { Length = L.Meters });
}
