using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Cladding;

public class CylinderPressureTests
{
    private static CylinderPressure Round(double diameter, double? length = null) =>
        new() { Diameter = Length.FromMeters(diameter), BodyLength = length is { } l ? Length.FromMeters(l) : null };

    /// <summary>The coefficient at an angle, with the gust that gives a Reynolds number on 4 m.</summary>
    private static double At(double degrees, double reynolds, double? length = null) =>
        Round(4, length).At(double.DegreesToRadians(degrees), 1, reynolds * CylinderDrag.Viscosity / 4);

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Table(5e5, 85, -2.2, 135, -0.4),
        .. Table(2e6, 80, -1.9, 120, -0.7),
        .. Table(1e7, 75, -1.5, 105, -0.8),
        new("end-effect factor, λ = 10, solid", "EN 1991-1-4:2005, Figure 7.36, as read in a public program", 0.70, "-", 0.006, () => EndEffect.Factor(10)),
        new("end-effect factor, λ = 70, solid", "EN 1991-1-4:2005, Figure 7.36, as read in a public program", 0.918, "-", 0.006, () => EndEffect.Factor(70)),
        .. Drag(5e5, 1e-5, 0.40, 0.05), .. Drag(2e6, 1e-5, 0.56, 0.12), .. Drag(1e7, 1e-5, 0.686, 0.13),
    ];

    private static PublishedValue[] Table(double reynolds, double alphaMin, double least, double alphaA, double rear)
    {
        string source = "EN 1991-1-4:2005, Table 7.12";
        return
        [
            new($"c_p0 at α_min = {alphaMin}°, Re {reynolds:g2}", source, least, "-", 1e-9, () => At(alphaMin, reynolds), ValueKind.FromMemory),
            new($"c_p0 behind α_A = {alphaA}°, Re {reynolds:g2}", source, rear, "-", 1e-9, () => At(alphaA, reynolds), ValueKind.FromMemory),
        ];
    }

    /// <summary>The pressures summed to a drag should come near the drag that the same standard gives for smooth cylinders.</summary>
    private static PublishedValue[] Drag(double reynolds, double roughness, double expected, double tolerance)
    {
        const string drag = "formulas of EN 1991-1-4:2005, Figure 7.28, from memory, at k/b = 1e-5, by hand";
        return
        [
            new($"drag from the pressures round a smooth cylinder, Re {reynolds:g2}", drag, expected, "-", tolerance,
                () => PressureDrag(reynolds), ValueKind.IndependentComputation),
            new($"c_f,0 of a smooth cylinder, Re {reynolds:g2}", drag, expected, "-", 0.01,
                () => CylinderDrag.Coefficient(reynolds, roughness), ValueKind.FromMemory),
        ];
    }

    private static double PressureDrag(double reynolds)
    {
        const int n = 2000;
        double sum = 0;
        for (int i = 0; i < n; i++)
        {
            double degrees = 180 * (i + 0.5) / n;
            sum += At(degrees, reynolds) * Math.Cos(double.DegreesToRadians(degrees)) * Math.PI / n;
        }
        return sum;
    }

    [Fact]
    public void Presses_with_1_where_it_faces_the_wind_and_never_more() =>
        Gen.Select(Gen.Double[0, 180], Gen.Double[1e5, 5e7]).Sample((degrees, reynolds) =>
            At(0, reynolds) == 1 && At(degrees, reynolds) <= 1 && At(degrees, reynolds) >= -2.2);

    [Fact]
    public void Runs_without_steps() =>
        Gen.Select(Gen.Double[0, 179.9], Gen.Double[1e5, 5e7], Gen.Double[2, 40]).Sample((degrees, reynolds, length) =>
            Math.Abs(At(degrees + 0.1, reynolds, length) - At(degrees, reynolds, length)) < 0.02
            && Math.Abs(At(degrees, 1.001 * reynolds, length) - At(degrees, reynolds, length)) < 0.01);

    [Fact]
    public void A_short_body_sucks_less_behind_and_the_same_before() =>
        Gen.Select(Gen.Double[0, 180], Gen.Double[4, 400]).Sample((degrees, length) =>
        {
            double endless = At(degrees, 1e7), real = At(degrees, 1e7, length);
            return degrees <= 75 ? real == endless : Math.Abs(real) <= Math.Abs(endless) + 1e-12;
        });

    [Fact]
    public void The_public_coefficient_takes_any_angle() =>
        Gen.Select(Gen.Double[-720, 720], Gen.Double[1, 60]).Sample((degrees, gust) =>
        {
            double c = Round(4).Coefficient(Angle.FromDegrees(degrees), Area.FromSquareMeters(1), Speed.FromMetersPerSecond(gust));
            double mirrored = Round(4).Coefficient(Angle.FromDegrees(-degrees), Area.FromSquareMeters(1), Speed.FromMetersPerSecond(gust));
            return Math.Abs(c - mirrored) < 1e-9;
        });

    [Fact]
    public void Warns_outside_the_table()
    {
        Assert.Contains("Table 7.12", Assert.Single(Round(0.1).RangeWarnings(10)));
        Assert.Empty(Round(2).RangeWarnings(30));
        Assert.Contains("above 1e7", Assert.Single(Round(10).RangeWarnings(60)));
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.Throws<InvalidStatueException>(() => Round(0).Coefficient(Angle.Zero, Area.FromSquareMeters(1), Speed.FromMetersPerSecond(30)));
        Assert.Throws<InvalidStatueException>(() => Round(1, -1).Coefficient(Angle.Zero, Area.FromSquareMeters(1), Speed.FromMetersPerSecond(30)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Round(1).Coefficient(Angle.Zero, Area.Zero, Speed.FromMetersPerSecond(30)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Round(1).Coefficient(Angle.Zero, Area.FromSquareMeters(1), Speed.Zero));
    }
}
