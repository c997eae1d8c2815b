using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// Static stiffness of a rigid rectangular footing on the surface of an elastic half-space. Depth in the ground makes it
/// stiffer and is not counted.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Along and about the tower's x and y.</remarks>
public sealed record FootingStiffness
{
    private FootingStiffness()
    {
    }

    /// <summary>Force for a sinking.</summary>
    public required ForcePerLength Vertical { get; init; }

    /// <summary>Force for a slide along x.</summary>
    public required ForcePerLength SlideX { get; init; }

    /// <summary>Force for a slide along y.</summary>
    public required ForcePerLength SlideY { get; init; }

    /// <summary>Moment for a tilt about x.</summary>
    public required RotationalStiffness RockingX { get; init; }

    /// <summary>Moment for a tilt about y.</summary>
    public required RotationalStiffness RockingY { get; init; }

    /// <summary>Moment for a turn about z.</summary>
    public required RotationalStiffness Turning { get; init; }

    /// <summary>
    /// Gazetas: with half sides L ≥ B, K_z = 2GL/(1−ν)(0.73 + 1.54χ^0.75), χ = B/L; K_B = 2GL/(2−ν)(2 + 2.5χ^0.85),
    /// K_L = K_B − 0.2/(0.75−ν) GL(1 − B/L); rocking about L: G/(1−ν) I^0.75 (L/B)^0.25 (2.4 + 0.5B/L), about B:
    /// 3G/(1−ν) I^0.75 (L/B)^0.15; turning 3.5 G I^0.75 (B/L)^0.4 (I/B⁴)^0.2.
    /// </summary>
    /// <param name="widthX">Full width along x.</param>
    /// <param name="widthY">Full width along y.</param>
    /// <param name="shearModulus">G of the ground.</param>
    /// <param name="poissonRatio">ν of the ground, 0 to 0.5.</param>
    /// <remarks>Source: G. Gazetas, Foundation vibrations, in Foundation Engineering Handbook, 2nd ed., 1991, Table 15.1, from memory; 1 ≤ L/B ≤ 10 or so.</remarks>
    public static FootingStiffness Gazetas(Length widthX, Length widthY, Pressure shearModulus, double poissonRatio)
    {
        (double L, double B, double G, double nu, bool xIsLong) = Inputs(widthX, widthY, shearModulus, poissonRatio);
        double r = L / B, aboutLong = 16.0 / 12 * L * B * B * B, aboutShort = 16.0 / 12 * B * L * L * L, polar = aboutLong + aboutShort;
        double alongShort = 2 * G * L / (2 - nu) * (2 + 2.5 * Math.Pow(1 / r, 0.85));
        double alongLong = alongShort - 0.2 / (0.75 - nu) * G * L * (1 - 1 / r);
        return Of(xIsLong,
            2 * G * L / (1 - nu) * (0.73 + 1.54 * Math.Pow(1 / r, 0.75)), alongLong, alongShort,
            G / (1 - nu) * Math.Pow(aboutLong, 0.75) * Math.Pow(r, 0.25) * (2.4 + 0.5 / r),
            3 * G / (1 - nu) * Math.Pow(aboutShort, 0.75) * Math.Pow(r, 0.15),
            3.5 * G * Math.Pow(polar, 0.75) * Math.Pow(1 / r, 0.4) * Math.Pow(polar / (B * B * B * B), 0.2));
    }

    /// <summary>
    /// Pais and Kausel: K_z = GB/(1−ν)(3.1r^0.75 + 1.6), K_B = GB/(2−ν)(6.8r^0.65 + 0.8r + 1.6),
    /// K_L = GB/(2−ν)(6.8r^0.65 + 2.4), about L: GB³/(1−ν)(3.2r + 0.8), about B: GB³/(1−ν)(3.73r^2.4 + 0.27), turning
    /// GB³(4.25r^2.45 + 4.06), with half sides and r = L/B.
    /// </summary>
    /// <param name="widthX">Full width along x.</param>
    /// <param name="widthY">Full width along y.</param>
    /// <param name="shearModulus">G of the ground.</param>
    /// <param name="poissonRatio">ν of the ground, 0 to 0.5.</param>
    /// <remarks>Source: A. Pais, E. Kausel, Approximate formulas for dynamic stiffnesses of rigid foundations, Soil Dyn. Earthq. Eng. 7, 1988; as in NIST GCR 12-917-21, Table 2-2a, from memory.</remarks>
    public static FootingStiffness PaisKausel(Length widthX, Length widthY, Pressure shearModulus, double poissonRatio)
    {
        (double L, double B, double G, double nu, bool xIsLong) = Inputs(widthX, widthY, shearModulus, poissonRatio);
        double r = L / B, B3 = B * B * B;
        return Of(xIsLong,
            G * B / (1 - nu) * (3.1 * Math.Pow(r, 0.75) + 1.6),
            G * B / (2 - nu) * (6.8 * Math.Pow(r, 0.65) + 2.4),
            G * B / (2 - nu) * (6.8 * Math.Pow(r, 0.65) + 0.8 * r + 1.6),
            G * B3 / (1 - nu) * (3.2 * r + 0.8),
            G * B3 / (1 - nu) * (3.73 * Math.Pow(r, 2.4) + 0.27),
            G * B3 * (4.25 * Math.Pow(r, 2.45) + 4.06));
    }

    /// <summary>On independent springs: k_s times the area and its second moments; sliding is taken as rigid as it sinks.</summary>
    /// <param name="widthX">Full width along x.</param>
    /// <param name="widthY">Full width along y.</param>
    /// <param name="subgradeModulus">k_s, pressure for a sinking.</param>
    public static FootingStiffness Winkler(Length widthX, Length widthY, SpecificWeight subgradeModulus)
    {
        double x = CheckInput.Positive(widthX.Meters, nameof(widthX)), y = CheckInput.Positive(widthY.Meters, nameof(widthY)), k = CheckInput.Positive(subgradeModulus.NewtonsPerCubicMeter, nameof(subgradeModulus));
        double area = k * x * y, aboutX = area * y * y / 12, aboutY = area * x * x / 12;
        return Of(true, area, area, area, aboutX, aboutY, aboutX + aboutY);
    }

    /// <summary>A circle of radius R, exact: K_z = 4GR/(1−ν), rocking 8GR³/(3(1−ν)); sliding 8GR/(2−ν), turning 16GR³/3.</summary>
    /// <param name="diameter">Diameter.</param>
    /// <param name="shearModulus">G of the ground.</param>
    /// <param name="poissonRatio">ν of the ground, 0 to 0.5.</param>
    public static FootingStiffness Circle(Length diameter, Pressure shearModulus, double poissonRatio)
    {
        (double R, _, double G, double nu, _) = Inputs(diameter, diameter, shearModulus, poissonRatio);
        double rocking = 8 * G * R * R * R / (3 * (1 - nu)), slide = 8 * G * R / (2 - nu);
        return Of(true, 4 * G * R / (1 - nu), slide, slide, rocking, rocking, 16.0 / 3 * G * R * R * R);
    }

    private static (double L, double B, double G, double nu, bool XIsLong) Inputs(Length widthX, Length widthY, Pressure shearModulus, double poissonRatio)
    {
        double x = 0.5 * CheckInput.Positive(widthX.Meters, nameof(widthX)), y = 0.5 * CheckInput.Positive(widthY.Meters, nameof(widthY));
        return (Math.Max(x, y), Math.Min(x, y), CheckInput.Positive(shearModulus.Pascals, nameof(shearModulus)), CheckInput.Within(poissonRatio, 0, 0.5, nameof(poissonRatio)), x >= y);
    }

    private static FootingStiffness Of(bool xIsLong, double vertical, double alongLong, double alongShort, double aboutLong, double aboutShort, double turning) => new()
    {
        Vertical = ForcePerLength.FromNewtonsPerMeter(vertical),
        SlideX = ForcePerLength.FromNewtonsPerMeter(xIsLong ? alongLong : alongShort),
        SlideY = ForcePerLength.FromNewtonsPerMeter(xIsLong ? alongShort : alongLong),
        RockingX = RotationalStiffness.FromNewtonMetersPerRadian(xIsLong ? aboutLong : aboutShort),
        RockingY = RotationalStiffness.FromNewtonMetersPerRadian(xIsLong ? aboutShort : aboutLong),
        Turning = RotationalStiffness.FromNewtonMetersPerRadian(turning),
    };
}
