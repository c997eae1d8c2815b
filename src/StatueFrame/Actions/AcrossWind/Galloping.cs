using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A section that is not round may be pulled sideways the way it moves; above an onset speed the wind feeds more into the
/// motion than damping takes out, and it grows without resonance.
/// </summary>
/// <remarks>
/// Stateless; safe to use from many threads. The onset follows from ½ρ a_G v ∫b φ² ds = 2 δ n M: a body of one width has
/// (E.18), others take the mean width weighted with φ². The wind speed is that at the greatest amplitude all along.
/// Source: EN 1991-1-4:2005, E.2.2.
/// </remarks>
public static class Galloping
{
    private static readonly Source onset = Source.En1991_1_4("(E.18)");

    /// <summary>Onset of galloping of a body in a mode.</summary>
    /// <param name="input">The body in its mode.</param>
    /// <exception cref="InvalidStatueException">The input has problems; all of them are listed.</exception>
    public static GallopingResult Evaluate(VortexInput input)
    {
        var v = new Validator();
        input.Validate(v.At(nameof(VortexInput)));
        v.ThrowIfAny();
        double square = 0, width = 0, factor = 0;
        int greatest = 0;
        bool assumes = false;
        for (int i = 0; i < input.Strips.Count; i++)
        {
            VortexStrip strip = input.Strips[i];
            double weight = strip.Amplitude * strip.Amplitude * strip.Length.Meters;
            square += weight;
            width += weight * strip.Width.Meters;
            factor += weight * strip.Width.Meters * (strip.Section.GallopingFactor ?? BluffSection.UnknownGallopingFactor);
            assumes |= strip.Section.GallopingFactor is null;
            if (Math.Abs(strip.Amplitude) > Math.Abs(input.Strips[greatest].Amplitude))
                greatest = i;
        }
        VortexStrip top = input.Strips[greatest];
        double b = width / square, a_G = factor / width, n = input.Frequency.Hertz;
        double m_e = input.EquivalentMass.KilogramsPerMeter, rho = input.AirDensity.KilogramsPerCubicMeter;
        double Sc = VortexShedding.Scruton(null, input.LogDecrement, m_e, rho, b);
        return new GallopingResult
        {
            Frequency = input.Frequency,
            LogDecrement = input.LogDecrement,
            EquivalentMass = input.EquivalentMass,
            AirDensity = input.AirDensity,
            Width = Length.FromMeters(b),
            GallopingFactor = a_G,
            AssumesFactor = assumes,
            ScrutonNumber = Sc,
            OnsetSpeed = a_G > 0 ? Speed.FromMetersPerSecond(OnsetSpeed(null, Sc, a_G, n, b)) : null,
            MeanSpeed = top.MeanSpeed,
            VortexSpeed = Speed.FromMetersPerSecond(VortexShedding.CriticalSpeed(null, top.Width.Meters, n, top.Section.StrouhalNumber)),
        };
    }

    /// <summary>Onset speed of interference galloping of two free-standing cylinders, v_IG = 3.5 n b √((a/b) Sc / 3), (E.23).</summary>
    /// <param name="frequency">Natural frequency n.</param>
    /// <param name="width">Width b.</param>
    /// <param name="spacing">Spacing of the axes a, at least the width.</param>
    /// <param name="scrutonNumber">Scruton number Sc.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static Speed InterferenceOnset(Frequency frequency, Length width, Length spacing, double scrutonNumber)
    {
        double b = GustInput.Positive(width.Meters, 500, nameof(width)), a = GustInput.Positive(spacing.Meters, 1e4, nameof(spacing));
        ArgumentOutOfRangeException.ThrowIfLessThan(a, b, nameof(spacing));
        double n = GustInput.Positive(frequency.Hertz, 1000, nameof(frequency));
        return Speed.FromMetersPerSecond(3.5 * n * b * Math.Sqrt(a / b * GustInput.Positive(scrutonNumber, 1e9, nameof(scrutonNumber)) / 3));
    }

    internal static double OnsetSpeed(Working? w, double Sc, double a_G, double n, double b)
    {
        w.Given(a_G, Dimension.Number, "factor of galloping instability");
        return w.Let("v_CG", 2 * Sc / a_G * n * b, Dimension.Speed, onset, "onset speed of galloping");
    }
}
