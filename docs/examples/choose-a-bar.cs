#:project ../../src/StatueFrame/StatueFrame.csproj

// Which bar? The window of thickness and length in which a standoff of the Saltmere Heron is strong enough for a gust and
// soft enough for the heat of the skin. All data are invented for this example.

using StatueFrame;
using StatueFrame.Checks;
using StatueFrame.Studies;
using UnitsNet;

Material metal = StainlessSteel.Duplex2205;
BarDesign design = BarDesign.For(metal);
Force gust = 1.1.Kilonewtons;
Length heat = 2.5.Millimeters;

// Both limits are those of a bar that stays square at both ends while its skin end moves: by the gust's force, by the heat's
// movement.
IReadOnlyList<(string, double)> Limits(double t, double L)
{
    double b = 0.060, I = b * t * t * t / 12, W = b * t * t / 6, E = metal.YoungsModulus.Pascals, f = metal.YieldStrength.Pascals / design.GammaM0;
    double fromGust = gust.Newtons * L / 2 / W, fromHeat = 6 * E * I * heat.Meters / (L * L) / W;
    double sway = gust.Newtons * L * L * L / (12 * E * I);
    return [("gust", fromGust / f), ("heat", fromHeat / (0.5 * f)), ("sway of the skin", sway / 0.004)];
}

DesignWindow window = DesignWindow.Of(
    new WindowInput("thickness", Dimension.SmallLength, 0.005, 0.025), new WindowInput("length", Dimension.SmallLength, 0.15, 0.9), Limits);

Console.WriteLine("thickness   lengths at which all limits hold");
foreach (WindowInterval i in window.Intervals)
    Console.WriteLine(FormattableString.Invariant($"{1e3 * i.X,6:0.0} mm   {1e3 * i.From,4:0} to {1e3 * i.To,4:0} mm"));
if (window.Widest is { } widest)
    Console.WriteLine(FormattableString.Invariant($"Widest margin {100 * widest.Margin:0} %: {1e3 * widest.X:0.0} mm by {1e3 * widest.Y:0} mm."));
Console.WriteLine(CheckSheet.Caution);
