using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>A damper built in for the purpose, as a tuned mass or a pendulum: it counts in the modes that it is tuned to.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record TunedDamper
{
    /// <summary>How far from its own frequency a damper still counts, relative. Common practice, no source.</summary>
    private const double Reach = 0.1;

    /// <summary>Logarithmic decrement δ_d that it adds, 0 to 2; what is 0 is not there.</summary>
    public required double Decrement { get; init; }

    /// <summary>Frequency that it is tuned to: it counts in modes within a tenth of it. Null is that of the lowest mode.</summary>
    public Frequency? Frequency { get; init; }

    internal Assumption Assumption =>
        new("dampers", Invariant($"logarithmic decrement {Decrement:0.###} in modes within {100 * Reach:0} % of {(Frequency is { } own ? Invariant($"{own.Hertz:0.##} Hz") : "the lowest")}, for as long as they are kept"), Source.User);

    internal bool ActsAt(double frequency, double lowest) => Math.Abs(frequency / (Frequency?.Hertz ?? lowest) - 1) <= Reach;

    internal void Validate(Validator v)
    {
        v.InRange(Decrement, 0, 2, "It is a logarithmic decrement; dampers reach a few tenths.");
        if (Frequency is { } own)
            v.Positive(own, own.Hertz, 0.01, 100, nameof(Frequency));
    }
}
