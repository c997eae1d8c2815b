using UnitsNet;

namespace StatueFrame;

/// <summary>A round tube with a wall of any thickness; every axis is a principal axis.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Exact for area, bending and torsion. The shear coefficient is Cowper's
/// for a hollow circle with ν = 0.3, from 0.89 for a solid bar to 0.53 for a thin wall (G. R. Cowper, The shear
/// coefficient in Timoshenko's beam theory, J. Appl. Mech. 33, 1966).
/// </remarks>
/// <param name="OuterDiameter">The outer diameter; 2 mm to 30 m.</param>
/// <param name="Wall">The wall thickness, less than half the outer diameter; 0.2 mm to 1 m.</param>
public sealed record Tube(Length OuterDiameter, Length Wall) : Section
{
    internal override double? OutlineDiameter => OuterDiameter.Meters;

    internal override (double Width, double Depth) Envelope => (OuterDiameter.Meters, OuterDiameter.Meters);

    /// <inheritdoc/>
    public override string Designation => Describe("tube", OuterDiameter, Wall);

    private protected override SectionProperties Compute()
    {
        double D = OuterDiameter.Meters;
        return Ring(D, D - 2 * Wall.Meters);
    }

    internal override Section Blend(Section other, double t)
    {
        Tube end = TaperEnd<Tube>(other);
        return new Tube(Between(OuterDiameter, end.OuterDiameter, t), Between(Wall, end.Wall, t));
    }

    internal override void Validate(Validator v)
    {
        if (v.Positive(OuterDiameter, OuterDiameter.Meters, 2e-3, 30) & v.Positive(Wall, Wall.Meters, 2e-4, 1)
            && 2 * Wall.Meters >= OuterDiameter.Meters)
        {
            v.Add(nameof(Wall), $"must be less than half the outer diameter ({Designation})", "A bar without a bore is a RoundBar.");
        }
    }

    /// <summary>The ring between the diameters <paramref name="D"/> and <paramref name="d"/>, d from 0.</summary>
    internal static SectionProperties Ring(double D, double d)
    {
        // In factors of D² − d², which keep their digits when the wall is thin.
        double difference = (D - d) * (D + d), sum = D * D + d * d;
        double A = Math.PI / 4 * difference, I = Math.PI / 64 * difference * sum;
        double As = A * ShearCoefficient(d / D);
        return new SectionProperties(A, I, I, J: 2 * I, As, As, Wy: I / (D / 2), Wz: I / (D / 2));
    }

    /// <summary>
    /// Cowper's coefficient of a hollow circle whose diameters have the ratio <paramref name="m"/>:
    /// κ = 6 (1+ν)(1+m²)² / ((7+6ν)(1+m²)² + (20+12ν) m²).
    /// </summary>
    internal static double ShearCoefficient(double m)
    {
        const double nu = 0.3;
        double m2 = m * m, s = (1 + m2) * (1 + m2);
        return 6 * (1 + nu) * s / ((7 + 6 * nu) * s + (20 + 12 * nu) * m2);
    }
}
