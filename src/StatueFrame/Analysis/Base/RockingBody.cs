namespace StatueFrame.Analysis;

/// <summary>
/// The mechanics of a rocking block on one of its edges: side 0 leans to the front, side 1 to the back; φ is the rotation
/// on that side, zero or more. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class RockingBody
{
    private const double g = SelfWeight.Gravity;

    private readonly double m, h, pretension, stiffness, arm;
    private readonly double[] R = new double[2], alpha = new double[2], I = new double[2], restitution = new double[2], b;

    public RockingBody(RockingBlock block)
    {
        (m, h, b) = (block.Mass.Kilograms, block.CenterHeight.Meters, [block.HalfWidth.Meters, block.Behind]);
        double center = block.Inertia.KilogramSquareMeters;
        (pretension, stiffness) = (block.Tendon?.Pretension.Newtons ?? 0, block.Tendon?.Stiffness.NewtonsPerMeter ?? 0);
        arm = 0.5 * (b[0] + b[1]);
        for (int side = 0; side < 2; side++)
        {
            R[side] = Math.Sqrt(b[side] * b[side] + h * h);
            alpha[side] = Math.Atan2(b[side], h);
            I[side] = center + m * R[side] * R[side];
        }
        for (int side = 0; side < 2; side++)
            restitution[side] = block.Restitution ?? Math.Max(0, (center + m * (h * h - b[0] * b[1])) / I[1 - side]);
    }

    public double Slenderness(int side) => alpha[side];

    /// <summary>p = √(mgR/I), rad/s.</summary>
    public double FrequencyParameter(int side) => Math.Sqrt(m * g * R[side] / I[side]);

    /// <summary>Angular velocity after the impact that ends a swing on a side, over that before.</summary>
    public double Restitution(int side) => restitution[side];

    /// <summary>The horizontal acceleration without sign that lifts the block onto a side while the ground accelerates upwards.</summary>
    public double Uplift(int side, double up = 0) => ((g + up) * b[side] + pretension * arm / m) / h;

    /// <summary>φ̈ on a side; ahead is the ground's acceleration to the front.</summary>
    public double Acceleration(int side, double phi, double ahead, double up)
    {
        (double sin, double cos) = Math.SinCos(alpha[side] - phi);
        double push = side == 0 ? -ahead : ahead;
        return (m * R[side] * (push * cos - (g + up) * sin) - TendonForce(phi) * arm * Math.Cos(0.5 * phi)) / I[side];
    }

    /// <summary>Kinetic energy, and that of weight and tendon above rest.</summary>
    public double Energy(int side, double phi, double velocity)
    {
        double stretch = Stretch(phi);
        return 0.5 * I[side] * velocity * velocity + Potential(side, phi) + pretension * stretch + 0.5 * stiffness * stretch * stretch;
    }

    public double TendonForce(double phi) => pretension + stiffness * Stretch(phi);

    private double Stretch(double phi) => 2 * arm * Math.Sin(0.5 * phi);

    /// <summary>mg(R cos(α − φ) − R cos α), written so that small rotations keep their digits.</summary>
    private double Potential(int side, double phi) =>
        2 * m * g * R[side] * Math.Sin(alpha[side] - 0.5 * phi) * Math.Sin(0.5 * phi);
}
