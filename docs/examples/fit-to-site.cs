#:project ../../src/StatueFrame/StatueFrame.csproj

// What was built? The Saltmere Heron's model is fitted to what was measured on its mole: two modes with their shapes, two
// frequencies, a sway. The measurements are invented: they come from a model with other numbers, rounded.

using System.Runtime.CompilerServices;
using StatueFrame;
using StatueFrame.Studies;
using UnitsNet;

Statue heron = StatueFile.Load(Path.Combine(Here(), "saltmere-heron.json")).Statue;
StatueAdjustment[] adjustments =
[
    StatueAdjustment.TowerStiffness(),
    StatueAdjustment.BaseRocking(6e9.NewtonMetersPerRadian, 1e8.NewtonMetersPerRadian, 1e12.NewtonMetersPerRadian),
    StatueAdjustment.SkinMass(),
];
var breeze = new Situation
{
    Name = "measured wind", LimitState = LimitState.Service,
    Actions = [new WindAction { Profile = new En1991Wind { FundamentalVelocity = 12.MetersPerSecond, Terrain = TerrainCategory.Zero }, GustEffectFactor = 1, Headings = [0.Degrees] }],
};

// On site, truly: a tower of 0.9 times the stiffness, a base of half, a skin of 1.1 times the mass.
Statue built = StatueFit.Adjusted(heron, adjustments, [0.9, 3e9, 1.1]);
var site = StatueFrame.Analysis.StatueModel.Build(built);
Frequency[] f = [.. site.Modes(5).Modes.Select(m => Frequency.FromHertz(Math.Round(m.Frequency.Hertz, 2)))];
Length sway = Math.Round(site.Respond(breeze).GreatestSway("tip").Sway.Millimeters, 1).Millimeters;
SiteMeasurement[] measured =
[
    .. new[] { 1, 2, 3, 5 }.Select(mode => SiteMeasurement.ModeFrequency(mode, f[mode - 1], 0.01.Hertz)),
    SiteMeasurement.Sway("tip", breeze, sway, 0.5.Millimeters),
];

Console.WriteLine("WITH FREQUENCIES AND SWAY");
Console.WriteLine(StatueFit.Of(heron, adjustments, measured));

// Without the sway nothing weighs stiffness against mass: the fit says what it cannot tell.
Console.WriteLine("WITH ONE FREQUENCY ALONE");
Console.WriteLine(StatueFit.Of(heron, adjustments, measured[..1]));
Console.WriteLine(CheckSheet.Caution);

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
