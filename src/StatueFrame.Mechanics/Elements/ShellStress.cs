namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// What a shell carries at a place, per length, in its element's axes: membrane forces, tension positive, N/m, and bending and
/// twisting moments, N·m/m, positive with tension on the side of the element's normal.
/// </summary>
/// <param name="Nx">Membrane force along x, N/m.</param>
/// <param name="Ny">Membrane force along y, N/m.</param>
/// <param name="Nxy">Membrane shear, N/m.</param>
/// <param name="Mx">Moment of the stresses along x, N·m/m.</param>
/// <param name="My">Moment of the stresses along y, N·m/m.</param>
/// <param name="Mxy">Twisting moment, N·m/m.</param>
public readonly record struct ShellStress(double Nx, double Ny, double Nxy, double Mx, double My, double Mxy)
{
    /// <summary>The stresses at a height of the thickness, Pa.</summary>
    /// <param name="thickness">Thickness, m.</param>
    /// <param name="side">From −1, the face against the normal, over 0, the middle, to 1, the face on the normal's side.</param>
    /// <remarks>σ = N/t ± 6 M/t². Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., 1959, Art. 10.</remarks>
    public (double X, double Y, double XY) At(double thickness, double side)
    {
        double membrane = 1 / thickness, bending = 6 * side / (thickness * thickness);
        return (Nx * membrane + Mx * bending, Ny * membrane + My * bending, Nxy * membrane + Mxy * bending);
    }

    /// <summary>The greatest equivalent stress of von Mises over the thickness, Pa; zero or more.</summary>
    public double VonMises(double thickness)
    {
        double worst = 0;
        foreach (int side in (ReadOnlySpan<int>)[-1, 0, 1])
        {
            (double x, double y, double xy) = At(thickness, side);
            worst = Math.Max(worst, Math.Sqrt(x * x - x * y + y * y + 3 * xy * xy));
        }
        return worst;
    }

    /// <summary>The greatest and the least principal stress over the thickness, Pa, tension positive.</summary>
    public (double Greatest, double Least) Principal(double thickness)
    {
        double greatest = double.NegativeInfinity, least = double.PositiveInfinity;
        foreach (int side in (ReadOnlySpan<int>)[-1, 0, 1])
        {
            (double x, double y, double xy) = At(thickness, side);
            double middle = 0.5 * (x + y), radius = double.Hypot(0.5 * (x - y), xy);
            (greatest, least) = (Math.Max(greatest, middle + radius), Math.Min(least, middle - radius));
        }
        return (greatest, least);
    }
}
