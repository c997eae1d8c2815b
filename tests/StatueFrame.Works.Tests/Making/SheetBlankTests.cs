using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Mechanics;
using StatueFrame.Shape;

namespace StatueFrame.Works.Tests.Making;

public class SheetBlankTests
{
    private const double R = 2, Cap = 0.8;

    private static readonly SheetBlank Round = SheetBlank.Of(SheetOf(CapMesh(40, 96)));

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("sheet of a cylinder, 1 m by 90° of radius 0.8: blank's longer side", "arc πR/2", 0.4 * Math.PI, "m", 1e-3, () => SheetBlank.Of(SheetOf(Cylinder(0.8, 1, 60))).Length.Meters, ValueKind.IndependentComputation),
        new("spherical cap of 0.8 rad: thickness left in the middle of the blank of least distortion", "the problem in one dimension, ρ(φ) by finite differences", OneDimension().Middle, "-", 0.004, () => Round.LeastThickness, ValueKind.IndependentComputation),
        new("spherical cap of 0.8 rad: thickness gathered at the rim", "the problem in one dimension, ρ(φ) by finite differences", OneDimension().Rim, "-", 0.012, () => Round.GreatestThickness, ValueKind.IndependentComputation),
        new("spherical cap of 0.8 rad: area of the blank", "closed form 2πR²(1 − cos φ)", 2 * Math.PI * R * R * (1 - Math.Cos(Cap)), "m²", 0.002, () => Round.FlatArea, ValueKind.IndependentComputation),
    ];

    /// <summary>
    /// Of all round blanks ρ(φ) the one that makes ∫((ρ'/R − 1)² + (ρ/(R sin φ) − 1)²) R² sin φ dφ least, then brought to the true
    /// area: by finite differences, as thickness over that of the blank.
    /// </summary>
    private static (double Middle, double Rim) OneDimension()
    {
        const int n = 4000;
        double h = Cap / n;
        Vector<double> right = Vector<double>.Build.Dense(n), diagonal = Vector<double>.Build.Dense(n), below = Vector<double>.Build.Dense(n);
        // ρ_0 = 0; unknowns ρ_1 to ρ_n. Each element adds (Δρ/(hR) − 1)² and each node (ρ/(R sin φ) − 1)², both times R² sin φ h.
        for (int i = 0; i < n; i++)
        {
            double w = Math.Sin((i + 0.5) * h) * h * R * R, k = w / (h * R * h * R), f = w / (h * R);
            diagonal[i] += k;
            right[i] += f;
            if (i > 0)
            {
                diagonal[i - 1] += k;
                below[i] -= k;
                right[i - 1] -= f;
            }
            double s = Math.Sin((i + 1) * h), v = s * h * R * R * (i == n - 1 ? 0.5 : 1);
            diagonal[i] += v / (R * s * R * s);
            right[i] += v / (R * s);
        }
        for (int i = 1; i < n; i++)
        {
            double m = below[i] / diagonal[i - 1];
            diagonal[i] -= m * below[i];
            right[i] -= m * right[i - 1];
        }
        var rho = new double[n];
        for (int i = n - 1; i >= 0; i--)
            rho[i] = (right[i] - (i + 1 < n ? below[i + 1] * rho[i + 1] : 0)) / diagonal[i];
        double scale = Math.Sqrt(2 * R * R * (1 - Math.Cos(Cap))) / rho[^1];
        return (Thickness(40), Thickness(n - 21));

        // Area on the blank over area on the sphere: metal that spreads out becomes thinner.
        double Thickness(int i) => scale * (rho[i + 1] - rho[i - 1]) / (2 * h * R) * scale * rho[i] / (R * Math.Sin((i + 1) * h));
    }

    [Fact]
    public void A_sheet_that_is_only_bent_needs_no_hammering()
    {
        SheetBlank blank = SheetBlank.Of(SheetOf(Cylinder(0.8, 1, 60)));
        Assert.InRange(blank.GreatestStrain, 0, 1e-6);
        Assert.Equal(1, blank.Width.Meters, 1e-6);
        Assert.Equal(0, blank.Hammered(new HammeringLimits { Elongation = 0.35 }).Anneals);
    }

    [Fact]
    public void The_blank_has_the_area_of_the_sheet_and_does_not_care_how_the_sheet_lies() => Gen.Select(Gen.Double[0.1, 1.2], Gen.Double[0, 6], Gen.Double[0, 6]).Sample((phi, a, b) =>
    {
        Mesh mesh = CapMesh(6, 12, phi);
        Axes3D turn = Axes3D.Along(new Vector3D(Math.Cos(a) * Math.Cos(b), Math.Sin(a) * Math.Cos(b), Math.Sin(b)), Math.Abs(Math.Sin(b)) < 0.9 ? Vector3D.UnitZ : Vector3D.UnitX);
        SheetBlank one = SheetBlank.Of(SheetOf(mesh)), other = SheetBlank.Of(SheetOf(mesh.Mapped(turn.ToGlobal)));
        Assert.Equal(mesh.SurfaceArea().SquareMeters, one.FlatArea, 1e-9);
        Assert.Equal(one.GreatestStrain, other.GreatestStrain, 1e-4);
        Assert.Equal(one.LeastThickness, other.LeastThickness, 1e-4);
    }, iter: 30);

    [Fact]
    public void A_deeper_bowl_asks_for_more_hammering_and_more_annealing()
    {
        SheetBlank[] deeper = [.. new[] { 0.2, 0.5, 0.9, 1.3 }.Select(phi => SheetBlank.Of(SheetOf(CapMesh(8, 24, phi))))];
        Assert.Equal(deeper.Select(b => b.GreatestStrain).Order(), deeper.Select(b => b.GreatestStrain));
        var limits = new HammeringLimits { Elongation = 0.1, LeastThickness = 0.9 };
        Assert.Equal(deeper.Select(b => b.Hammered(limits).Anneals).Order(), deeper.Select(b => b.Hammered(limits).Anneals));
        Assert.Equal(Checks.Verdict.Fail, deeper[^1].Hammered(limits).Verdict);
        Assert.Equal(Checks.Verdict.NotChecked, deeper[0].Hammered(limits).Verdict);
    }

    [Fact]
    public void Limits_out_of_range_are_refused() =>
        Assert.Throws<InvalidStatueException>(() => Round.Hammered(new HammeringLimits { Elongation = 35 }));

    private static MetalSheet SheetOf(Mesh mesh) => Assert.Single(SheetPlan.Of(mesh, new SheetCutting { Metal = Copper.HalfHardR240, Thickness = 2.Millimeters, GreatestLength = 10.Meters, GreatestWidth = 10.Meters, GreatestTurn = 90.Degrees }).Sheets);

    private static Mesh Cylinder(double radius, double height, int steps)
    {
        var coordinates = new List<double>();
        var corners = new List<int>();
        for (int i = 0; i <= steps; i++)
        {
            double a = 0.5 * Math.PI * i / steps;
            coordinates.AddRange([radius * Math.Cos(a), radius * Math.Sin(a), 0, radius * Math.Cos(a), radius * Math.Sin(a), height]);
            if (i > 0)
                corners.AddRange([2 * i - 2, 2 * i, 2 * i + 1, 2 * i - 2, 2 * i + 1, 2 * i - 1]);
        }
        return Mesh.Of([.. coordinates], [.. corners]);
    }

    private static Mesh CapMesh(int rings, int round, double phi = Cap)
    {
        var coordinates = new List<double> { 0, 0, R };
        var corners = new List<int>();
        for (int r = 1; r <= rings; r++)
        {
            for (int i = 0; i < round; i++)
            {
                double p = phi * r / rings, a = 2 * Math.PI * i / round;
                coordinates.AddRange([R * Math.Sin(p) * Math.Cos(a), R * Math.Sin(p) * Math.Sin(a), R * Math.Cos(p)]);
                int at = 1 + (r - 1) * round + i, next = 1 + (r - 1) * round + (i + 1) % round;
                if (r == 1)
                    corners.AddRange([0, at, next]);
                else
                    corners.AddRange([at - round, at, next, at - round, next, next - round]);
            }
        }
        return Mesh.Of([.. coordinates], [.. corners]);
    }
}
