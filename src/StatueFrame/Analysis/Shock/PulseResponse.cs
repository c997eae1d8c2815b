using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>
/// What a pulse does to one mass on one spring: the value of its shock spectrum. Displacements are relative to that under
/// the peak as a steady force, u_st = p₀/k, times to the period T.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Factor">Greatest displacement over u_st, without sign: the dynamic load factor when the spring is elastic.</param>
/// <param name="Time">When it is reached, over T.</param>
/// <param name="Ductility">Greatest displacement over that at first yield; zero for an elastic spring.</param>
/// <param name="Transmitted">Force of the spring at that displacement over the pulse's peak: what passes into whatever holds it.</param>
public sealed record PulseResponse(double Factor, double Time, double Ductility, double Transmitted)
{
    private const int PiecesPerPulse = 256, PiecesPerPeriod = 64;
    private const double MostPeriods = 2000;

    /// <summary>Works out the response of a mass at rest.</summary>
    /// <param name="shape">The pulse.</param>
    /// <param name="durationOverPeriod">t_d/T, 1e-4 to 1000.</param>
    /// <param name="damping">Damping ratio ζ, 0 to below 1.</param>
    /// <param name="yieldOverPeak">Yield force of the spring over the pulse's peak; null for an elastic spring.</param>
    /// <param name="hardening">Stiffness after yielding over stiffness before, 0 to below 1.</param>
    /// <exception cref="InvalidStatueException">The shape or a number is out of range; all problems are listed.</exception>
    public static PulseResponse Of(PressureShape shape, double durationOverPeriod, double damping = 0, double? yieldOverPeak = null, double hardening = 0)
    {
        ArgumentNullException.ThrowIfNull(shape);
        var v = new Validator();
        shape.Validate(v.At("Shape"));
        v.InRange(durationOverPeriod, 1e-4, 1000, "It is the pulse's duration over the period.");
        v.InRange(damping, 0, 0.999, "It is a part of critical damping.");
        if (yieldOverPeak is { } least)
            v.InRange(least, 0.01, 1e6, "It is the yield force over the pulse's peak.", nameof(yieldOverPeak));
        v.InRange(hardening, 0, 0.99, "It is stiffness after yielding over stiffness before.");
        v.ThrowIfAny();

        const double omega = 2 * Math.PI, square = omega * omega;
        var oscillator = new ElastoplasticOscillator(omega, damping, yieldOverPeak * square ?? double.PositiveInfinity, hardening);
        double end = Math.Min(shape.End * durationOverPeriod, MostPeriods);
        ReadOnlySpan<double> corners = shape.Corners;
        for (int i = 1; i < corners.Length && oscillator.Time < end; i++)
        {
            double length = (corners[i] - corners[i - 1]) * durationOverPeriod;
            int pieces = (int)Math.Ceiling(Math.Max(length * PiecesPerPeriod, Math.Min(1, corners[i] - corners[i - 1]) * PiecesPerPulse));
            if (length <= 0)
                continue;
            double h = length / pieces;
            for (int k = 0; k < pieces; k++)
            {
                double from = corners[i - 1] + (corners[i] - corners[i - 1]) * k / pieces, to = corners[i - 1] + (corners[i] - corners[i - 1]) * (k + 1) / pieces;
                (double before, double after) = shape.Line(from, to);
                oscillator.Advance(square * before, square * after, h);
            }
        }
        // After the pulse the first turn on either side is the greatest: a later one has less energy.
        int turns = oscillator.Turns;
        for (double rest = 0; oscillator.Turns < turns + 2 && rest < MostPeriods; rest += 0.05)
            oscillator.Advance(0, 0, 0.05);
        double transmitted = yieldOverPeak is { } limit && oscillator.Peak > limit ? limit + hardening * (oscillator.Peak - limit) : oscillator.Peak;
        return new PulseResponse(oscillator.Peak, oscillator.PeakTime, yieldOverPeak is null ? 0 : oscillator.Ductility, transmitted);
    }
}
