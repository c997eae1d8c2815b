namespace StatueFrame;

/// <summary>Force coefficients of lattices on the solid area of the face that faces the wind most.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class LatticeDrag
{
    public static readonly Source En1993Source = new("EN 1993-3-1:2006", "B.2.2.2, Figure B.2.2");
    public static readonly Source Asce7Source = Source.Asce7_22("29.4, Figure 29.4-3, trussed towers");

    /// <summary>c_f,S = K_θ (c_f,0,f A_f/A + c_f,0,c A_c/A).</summary>
    /// <param name="legs">3 for a triangle; 4 and more as a square.</param>
    /// <param name="phi">Solidity, 0 to 1.</param>
    /// <param name="round">Share of round members in the solid area.</param>
    /// <param name="theta">Angle between wind and face normal.</param>
    public static double En1993(int legs, double phi, double round, double theta)
    {
        (double C1, double C2) = legs == 3 ? (1.9, 1.4) : (2.25, 1.5);
        double flat = 1 - round;
        double flatCoefficient = 1.76 * C1 * (1 - C2 * phi + phi * phi);
        double roundCoefficient = C1 * (1 - C2 * phi) + (C1 + 0.875) * phi * phi;
        return DirectionFactor(legs, phi, round, theta) * (flatCoefficient * flat + roundCoefficient * round);
    }

    /// <summary>4.0ε² − 5.9ε + 4.0 (square) or 3.4ε² − 4.7ε + 3.4 (triangle); round members 0.51ε² + 0.57, at most 1.</summary>
    /// <remarks>
    /// The factor 1 + 0.75ε, at most 1.2, is for wind on a square's diagonal; between face and diagonal it grows here as
    /// sin² 2θ, which the standard does not say.
    /// </remarks>
    public static double Asce7(int legs, double epsilon, double round, double theta)
    {
        double e2 = epsilon * epsilon;
        double flat = legs == 3 ? 3.4 * e2 - 4.7 * epsilon + 3.4 : 4.0 * e2 - 5.9 * epsilon + 4.0;
        double mixed = 1 - round + round * Math.Min(1, 0.51 * e2 + 0.57);
        double diagonal = legs == 3 ? 1 : 1 + (Math.Min(1.2, 1 + 0.75 * epsilon) - 1) * Square(Math.Sin(2 * theta));
        return flat * mixed * diagonal;
    }

    /// <summary>K_θ, B.2.2.2 (4).</summary>
    private static double DirectionFactor(int legs, double phi, double round, double theta)
    {
        double flat = 1 - round;
        if (legs == 3)
            return round + flat * (1 - 0.1 * Square(Math.Sin(1.5 * theta)));
        double K1 = 0.55 * flat + 0.8 * round;
        double K2 = phi is <= 0.2 or >= 0.8 ? 0.2 : Math.Min(phi, 1 - phi);
        return 1 + K1 * K2 * Square(Math.Sin(2 * theta));
    }

    private static double Square(double x) => x * x;
}
