using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Tests.Standoffs;

/// <summary>Bars, rings and generators that the tests of the standoffs share.</summary>
internal static class Bars
{
    public static Material Steel { get; } = new()
    {
        Name = "steel",
        YoungsModulus = Pressure.FromGigapascals(200),
        ShearModulus = Pressure.FromGigapascals(77),
        Density = Density.FromKilogramsPerCubicMeter(7850),
        YieldStrength = Pressure.FromMegapascals(235),
        UltimateStrength = Pressure.FromMegapascals(360),
        ThermalExpansion = CoefficientOfThermalExpansion.FromPerKelvin(12e-6),
        Source = Source.User,
    };

    public static Standoff Flat { get; } = new()
    {
        Section = new FlatBar(Length.FromMillimeters(60), Length.FromMillimeters(8)),
        Material = Steel,
        TowerFixity = EndFixity.Rigid,
        SkinFixity = EndFixity.Pinned,
    };

    public static EvenRing Ring { get; } = new() { Level = "L3", Count = 12, Standoff = Flat };

    public static Vector3D[] Ends => [Vector3D.UnitX, Vector3D.UnitY, Vector3D.UnitZ];

    public static Gen<Vector3D> Vector(double size) =>
        Gen.Select(Gen.Double[-size, size], Gen.Double[-size, size], Gen.Double[-size, size], (x, y, z) => new Vector3D(x, y, z));

    public static Gen<Vector3D> Direction { get; } = Vector(1).Where(v => v.Length > 0.3).Select(v => v.Normalized());

    public static Gen<FlatRectangle> Section { get; } =
        Gen.Select(Gen.Double[0.02, 0.1], Gen.Double[0.1, 1], (b, r) => new FlatRectangle(b, r * b));

    /// <summary>A hinge, rigid, or anything from a thousandth to a million N·m/rad.</summary>
    public static Gen<double> Spring { get; } =
        Gen.Frequency((1, Gen.Const(0.0)), (1, Gen.Const(double.PositiveInfinity)), (3, Gen.Double[-3, 6].Select(p => Math.Pow(10, p))));

    public static Gen<double> Twist { get; } =
        Gen.OneOf(Gen.Const(double.PositiveInfinity), Gen.Double[-1, 6].Select(p => Math.Pow(10, p)));

    public static Gen<double> Firm { get; } =
        Gen.OneOf(Gen.Const(double.PositiveInfinity), Gen.Double[2, 6].Select(p => Math.Pow(10, p)));

    public static Gen<EndSprings> Springs { get; } = Gen.Select(Spring, Spring, Twist, (w, s, t) => new EndSprings(w, s, t));

    public static Gen<Standoff> Standoff { get; } =
        Gen.Select(Section, Springs, Springs, Gen.Int[0, 4], Direction, Gen.Double[-3, 3], (section, tower, skin, slide, direction, roll) => Flat with
        {
            Section = new FlatBar(Length.FromMeters(section.b), Length.FromMeters(section.t)),
            TowerFixity = Fixity(tower),
            SkinFixity = Fixity(skin),
            Roll = Angle.FromRadians(roll),
            Slide = slide switch
            {
                0 => SaddleSlide.None,
                1 => SaddleSlide.AlongBar,
                2 => SaddleSlide.AlongAxis,
                3 => SaddleSlide.AlongSkin,
                _ => SaddleSlide.Along(direction.X, direction.Y, direction.Z),
            },
        });

    public static Gen<Bracket> Bracket { get; } = Gen.Select(Gen.Double[0.03, 0.1], Gen.Double[0.1, 1], Gen.Double[-3, 3], Gen.Double[2, 6], (b, r, roll, spring) => new Bracket
    {
        Section = new FlatBar(Length.FromMeters(b), Length.FromMeters(r * b)),
        Material = Steel,
        TowerFixity = Fixity(new EndSprings(Math.Pow(10, spring), double.PositiveInfinity, double.PositiveInfinity)),
        Roll = Angle.FromRadians(roll),
    });

    /// <summary>Bars on the tower itself and on brackets.</summary>
    public static Gen<BarPlacement> Placement { get; } =
        Gen.Select(Standoff, Vector(2), Direction, Gen.Double[0.3, 2], Gen.Double[-3, 3], Gen.Select(Bracket, Vector(1).Where(v => v.Length > 0.05), Gen.Bool), (s, tower, along, L, normal, stand) =>
            BarPlacement.Between(tower, tower + L * along, new Vector3D(Math.Cos(normal), Math.Sin(normal), 0), 0, s) with
            {
                Bracket = stand.Item3 ? PlacedBracket.Between(tower + stand.Item2, tower, stand.Item1) : null,
            });

    public static Gen<PlacedBar> Placed { get; } =
        Gen.Select(Placement, Vector(1), Vector(3), (place, level, band) => new PlacedBar(place, level, band));

    /// <summary>Springs that keep a bar from nearly being a mechanism, where rounding would drown a comparison.</summary>
    public static Gen<EndSprings> FirmSprings { get; } =
        Gen.Select(Firm, Firm, Twist, (w, s, t) => new EndSprings(w, s, t));

    public static EndFixity Fixity(EndSprings springs) =>
        new() { WeakAxis = Of(springs.Weak), StrongAxis = Of(springs.Strong), Twist = Of(springs.Twist) };

    /// <summary>The axial stiffness of the bar, N/m, at an arm of 7 m: the measure of rounding.</summary>
    public static double Scale(PlacedBar bar) =>
        bar.Place.Standoff.Material.YoungsModulus.Pascals * bar.Place.Standoff.Section.Area.SquareMeters / bar.Place.Length * 50;

    public static double[] Full(PlacedBar bar)
    {
        var k = new double[36];
        bar.AddTo(k);
        var full = new double[144];
        RigidPair.AddTo(k, bar.Link, full);
        return full;
    }

    public static double[] Matrix(BarStiffness bar)
    {
        var k = new double[36];
        bar.CopyTo(k);
        return k;
    }

    public static double[] Times(double[] k, double[] u) => [.. Enumerable.Range(0, 12).Select(i => Enumerable.Range(0, 12).Sum(j => k[12 * i + j] * u[j]))];

    public static Matrix<double> Square(ReadOnlySpan<double> values)
    {
        int n = (int)Math.Sqrt(values.Length);
        return Matrix<double>.Build.DenseOfRowMajor(n, n, values.ToArray());
    }

    public static double LeastEigenvalue(Matrix<double> m) => m.Evd(Symmetricity.Symmetric).EigenValues.Real().Minimum();

    private static RotationalStiffness? Of(double k) => double.IsFinite(k) ? RotationalStiffness.FromNewtonMetersPerRadian(k) : null;
}
