using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>
/// Frequency and damping from a free decay, as after a pull on a rope is let go: the logarithmic decrement of the swing,
/// filtered around its frequency.
/// </summary>
/// <remarks>Stateless; safe to use from many threads. See the theory page "site-records".</remarks>
public static class FreeDecay
{
    private const int FewestCycles = 12, Cycles = 3;

    /// <summary>Logarithmic decrement δ = ln(a₀/a_n)/n from two amplitudes.</summary>
    /// <param name="first">Amplitude of one peak, above zero.</param>
    /// <param name="later">Amplitude of a later peak on the same side, above zero.</param>
    /// <param name="cycles">Cycles between the two, 1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double Decrement(double first, double later, int cycles)
    {
        if (!(first > 0 && later > 0 && double.IsFinite(first) && double.IsFinite(later)))
            throw new ArgumentOutOfRangeException(nameof(first), Invariant($"Amplitudes must be above zero, are {first} and {later}."));
        ArgumentOutOfRangeException.ThrowIfLessThan(cycles, 1);
        return Math.Log(first / later) / cycles;
    }

    /// <summary>Frequency and damping of a decay.</summary>
    /// <param name="record">A record that starts with the release or before it.</param>
    /// <param name="near">About the frequency; null takes the highest peak of the spectrum.</param>
    /// <exception cref="InvalidStatueException">The record has problems; all of them are listed.</exception>
    /// <exception cref="SiteRecordException">The record is too short or sampled too slowly, or nothing in it decays.</exception>
    public static MeasuredMode Of(SiteRecord record, Frequency? near = null)
    {
        ArgumentNullException.ThrowIfNull(record);
        record.Require();
        double f = near?.Hertz ?? Strongest(record);
        record.RequireCycles(f, FewestCycles, "a decay");
        DecayFit.Result fit = DecayFit.Of(record.Values.AsSpan(), record.SampleRate.Hertz, f, Cycles)
            ?? throw new SiteRecordException(Invariant($"\"{record.Name}\" has no decay near {f:0.###} Hz that lasts for {4 * Cycles} cycles above the noise."));
        double omega = Math.Sqrt(fit.Omega * fit.Omega + fit.Rate * fit.Rate), zeta = fit.Rate / omega;
        if (!(zeta < 1 && zeta > -0.1))
            throw new SiteRecordException(Invariant($"\"{record.Name}\" grows near {f:0.###} Hz instead of decaying."));
        return new MeasuredMode
        {
            Method = "free decay",
            Frequency = Frequency.FromHertz(omega / (2 * Math.PI)),
            FrequencyError = Frequency.FromHertz(fit.OmegaError / (2 * Math.PI)),
            DampingRatio = Math.Max(0, zeta),
            DampingError = fit.RateError / omega,
            Warnings = [.. Warn(f, omega, zeta, fit)],
        };
    }

    private static IEnumerable<string> Warn(double f, double omega, double zeta, DecayFit.Result fit)
    {
        if (zeta < 2 * fit.RateError / omega)
            yield return "The damping is hardly above its error.";
        if (Math.Abs(omega / (2 * Math.PI * f) - 1) > 0.1)
            yield return Invariant($"The frequency found is far from the {f:0.###} Hz it was looked for at.");
        if (fit.Blocks < 6)
            yield return "Few cycles stand above the noise.";
    }

    private static double Strongest(SiteRecord record)
    {
        WelchSpectrum spectrum = WelchSpectrum.Of(record, record.Duration * (record.Values.Count >= 1024 ? 0.5 : 1));
        return spectrum.Peaks(1, 2) is [Frequency first, ..] ? first.Hertz : throw new SiteRecordException($"\"{record.Name}\" has no clear peak in its spectrum.");
    }
}
