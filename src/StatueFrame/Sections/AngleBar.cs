using UnitsNet;

namespace StatueFrame;

/// <summary>
/// An angle (L-shape) with equal or unequal legs of one thickness and sharp corners. Its principal axes are turned
/// against the legs by <see cref="PrincipalRotation"/>.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Rolled angles have a fillet and rounded toes, which change area,
/// inertia and centroid by one or two percent. Torsion as of thin walls, J = (a + b − t) t³/3. Shear areas from the
/// energy of the shear flow along the middle line; 5/6 of one leg for equal legs. Moduli are the least of all corners.
/// The shear center lies where the legs meet, not at the centroid: that a force through the centroid also twists the bar
/// is not in these numbers.
/// </remarks>
/// <param name="LongLeg">Outer length a of the longer leg; 5 mm to 2 m.</param>
/// <param name="ShortLeg">Outer length b of the shorter leg, at most the longer; 5 mm to 2 m.</param>
/// <param name="Thickness">Thickness t of both legs, less than the shorter leg; 0.2 mm to 0.2 m.</param>
public sealed record AngleBar(Length LongLeg, Length ShortLeg, Length Thickness) : Section
{
    /// <summary>Creates an angle with equal legs.</summary>
    /// <param name="leg">Outer length of both legs.</param>
    /// <param name="thickness">Thickness of both legs.</param>
    public AngleBar(Length leg, Length thickness) : this(leg, leg, thickness)
    {
    }

    internal override (double Width, double Depth) Envelope => (LongLeg.Meters, ShortLeg.Meters);

    /// <inheritdoc/>
    public override string Designation => Describe("angle", LongLeg, ShortLeg, Thickness);

    /// <summary>Distance of the centroid from the back of the short leg, measured along the long leg.</summary>
    /// <exception cref="InvalidStatueException">The dimensions are impossible.</exception>
    public Length CentroidAlongLongLeg => Length.FromMeters(ValidLegs().Z);

    /// <summary>Distance of the centroid from the back of the long leg, measured along the short leg.</summary>
    /// <exception cref="InvalidStatueException">The dimensions are impossible.</exception>
    public Length CentroidAlongShortLeg => Length.FromMeters(ValidLegs().Y);

    /// <summary>
    /// Angle from the direction of the short leg to the strong axis y, turning towards the long leg: 45° for equal legs,
    /// less for unequal ones.
    /// </summary>
    /// <exception cref="InvalidStatueException">The dimensions are impossible.</exception>
    public Angle PrincipalRotation => Angle.FromRadians(ValidLegs().Rotation);

    private protected override SectionProperties Compute()
    {
        double a = LongLeg.Meters, b = ShortLeg.Meters, t = Thickness.Meters;
        LegAxes legs = Legs();
        double middle = (legs.IYY + legs.IZZ) / 2, radius = Math.Sqrt(Square((legs.IYY - legs.IZZ) / 2) + Square(legs.IYZ));
        double Iy = middle + radius, Iz = middle - radius;
        double c = Math.Cos(legs.Rotation), s = Math.Sin(legs.Rotation);

        double fiberOfY = 0, fiberOfZ = 0;
        ReadOnlySpan<(double Y, double Z)> corners = [(0, 0), (b, 0), (b, t), (t, a), (0, a)];
        foreach ((double Y, double Z) in corners)
        {
            double dY = Y - legs.Y, dZ = Z - legs.Z;
            fiberOfY = Math.Max(fiberOfY, Math.Abs(c * dZ - s * dY));
            fiberOfZ = Math.Max(fiberOfZ, Math.Abs(c * dY + s * dZ));
        }

        double la = a - t / 2, lb = b - t / 2;
        double Ym = lb * lb / 2 / (la + lb), Zm = la * la / 2 / (la + lb);
        double ToY(double Y, double Z) => c * (Z - Zm) - s * (Y - Ym);
        double ToZ(double Y, double Z) => c * (Y - Ym) + s * (Z - Zm);
        return new SectionProperties(
            legs.A, Iy, Iz, J: (a + b - t) * t * t * t / 3,
            Asy: ShearArea(la, lb, t, ToZ(0, la), ToZ(lb, 0), ToZ(0, 0)),
            Asz: ShearArea(la, lb, t, ToY(0, la), ToY(lb, 0), ToY(0, 0)),
            Wy: Iy / fiberOfY, Wz: Iz / fiberOfZ);
    }

    /// <summary>
    /// β_w = |∫z (w² + z²) dA/I_w − 2 z₀| about the principal axes w, z with the shear center, where the legs' middles meet, at z₀; zero for
    /// equal legs. AISC 360, F10, with thin legs.
    /// </summary>
    internal double SidewaysProperty
    {
        get
        {
            double t = Thickness.Meters, la = LongLeg.Meters - t / 2, lb = ShortLeg.Meters - t / 2, Iw = Properties.Iy, sum = 0;
            if (la == lb)
                return 0;
            LegAxes legs = Legs();
            double c = Math.Cos(legs.Rotation), s = Math.Sin(legs.Rotation), Ym = lb * lb / 2 / (la + lb), Zm = la * la / 2 / (la + lb);
            const int Pieces = 200;
            for (int i = 0; i < Pieces; i++)
            {
                double u = (i + 0.5) / Pieces;
                Add(u * lb, 0, t * lb / Pieces);
                Add(0, u * la, t * la / Pieces);
            }
            return Math.Abs(sum / Iw - 2 * (s * Ym - c * Zm));

            // Along the strong axis w, and along z square to it.
            void Add(double Y, double Z, double area)
            {
                double w = c * (Y - Ym) + s * (Z - Zm), z = c * (Z - Zm) - s * (Y - Ym);
                sum += z * (w * w + z * z) * area;
            }
        }
    }

    internal override Section Blend(Section other, double t)
    {
        AngleBar end = TaperEnd<AngleBar>(other);
        return new AngleBar(
            Between(LongLeg, end.LongLeg, t), Between(ShortLeg, end.ShortLeg, t), Between(Thickness, end.Thickness, t));
    }

    internal override void Validate(Validator v)
    {
        bool positive = v.Positive(LongLeg, LongLeg.Meters, 5e-3, 2) & v.Positive(ShortLeg, ShortLeg.Meters, 5e-3, 2)
            & v.Positive(Thickness, Thickness.Meters, 2e-4, 0.2);
        if (positive && ShortLeg.Meters > LongLeg.Meters)
            v.Add(nameof(ShortLeg), $"must not exceed the long leg ({Designation})", "Were the two swapped?");
        if (positive && Thickness.Meters >= ShortLeg.Meters)
            v.Add(nameof(Thickness), $"must be less than the short leg ({Designation})", "An angle without a gap between its legs is a Rectangle.");
    }

    private LegAxes ValidLegs()
    {
        _ = Properties;
        return Legs();
    }

    /// <summary>The long leg, a × t, and the rest of the short leg, (b − t) × t, about axes along the legs: Y short, Z long.</summary>
    private LegAxes Legs()
    {
        double a = LongLeg.Meters, b = ShortLeg.Meters, t = Thickness.Meters;
        double A1 = a * t, A2 = (b - t) * t, A = A1 + A2;
        double Y1 = t / 2, Z1 = a / 2, Y2 = (b + t) / 2, Z2 = t / 2;
        double Y = (A1 * Y1 + A2 * Y2) / A, Z = (A1 * Z1 + A2 * Z2) / A;
        double IYY = t * a * a * a / 12 + A1 * Square(Z1 - Z) + (b - t) * t * t * t / 12 + A2 * Square(Z2 - Z);
        double IZZ = a * t * t * t / 12 + A1 * Square(Y1 - Y) + t * (b - t) * (b - t) * (b - t) / 12 + A2 * Square(Y2 - Y);
        double IYZ = A1 * (Y1 - Y) * (Z1 - Z) + A2 * (Y2 - Y) * (Z2 - Z);
        return new LegAxes(A, Y, Z, IYY, IZZ, IYZ, Rotation: Math.Atan2(-2 * IYZ, IYY - IZZ) / 2);
    }

    /// <summary>
    /// I²/∫(S²/t)ds along the middle lines of the legs, from the distances of both toes and the corner to the bending
    /// axis: over a leg of length L, at x L from its toe, S = t L (d x + k x²/2) with k the corner's distance less the toe's, d.
    /// </summary>
    private static double ShearArea(double la, double lb, double t, double toeA, double toeB, double corner)
    {
        (double I, double Energy) Leg(double L, double d)
        {
            double k = corner - d;
            return (t * L * (d * d + d * k + k * k / 3), t * L * L * L * (d * d / 3 + d * k / 4 + k * k / 20));
        }

        var (Ia, energyA) = Leg(la, toeA);
        var (Ib, energyB) = Leg(lb, toeB);
        return Square(Ia + Ib) / (energyA + energyB);
    }

    private static double Square(double x) => x * x;

    /// <summary>Area, centroid from the outer corner, second moments ∫Z², ∫Y², ∫YZ about the centroid, turn of the principal axes.</summary>
    private readonly record struct LegAxes(double A, double Y, double Z, double IYY, double IZZ, double IYZ, double Rotation);
}
