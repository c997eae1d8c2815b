using UnitsNet;

namespace StatueFrame;

/// <summary>The strengths of a metal in products thicker than a limit, which are weaker than thin ones.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Above">The thickness above which they hold.</param>
/// <param name="YieldStrength">Yield or proof strength there.</param>
/// <param name="UltimateStrength">Ultimate strength there.</param>
public sealed record StrengthStep(Length Above, Pressure YieldStrength, Pressure UltimateStrength)
{
    internal void Validate(Validator v)
    {
        v.Positive(Above, Above.Meters, 1e-3, 1);
        v.Positive(YieldStrength, YieldStrength.Pascals, 1e6, 3e9);
        v.Positive(UltimateStrength, UltimateStrength.Pascals, 1e6, 4e9);
    }
}
