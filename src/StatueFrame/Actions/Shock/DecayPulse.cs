using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// A pulse that jumps to its peak and dies away: (1 − t/t_d) exp(−b t/t_d). After its duration t_d it turns into suction,
/// whose greatest part is exp(−(1 + b))/b of the peak, at t = (1 + 1/b) t_d.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Known as the modified Friedlander shape. Peak, duration and decay are
/// for the user to give: nothing here works them out from a cause.
/// </remarks>
/// <param name="Decay">b: with suction 0.2 to 20, else 0 to 20. Below 1, the suction has more impulse than the push.</param>
public sealed record DecayPulse(double Decay) : PressureShape
{
    /// <summary>Suction below this part of the peak is left out.</summary>
    private const double Negligible = 1e-9;

    /// <summary>Whether the suction acts; true unless given. Without it the pulse ends at its duration.</summary>
    public bool HasSuction { get; init; } = true;

    /// <inheritdoc/>
    public override string Name => Invariant($"decay b = {Decay:0.###}, {(HasSuction ? "with" : "without")} suction");

    /// <inheritdoc/>
    /// <remarks>1/b − (1 − e^(−b))/b² to its duration, 1/b − 1/b² in all.</remarks>
    public override double Area => HasSuction ? 1 / Decay - 1 / (Decay * Decay) : PushArea;

    internal override ReadOnlySpan<double> Corners => HasSuction ? new[] { 0, 1, LastSuction } : [0, 1];

    internal override double Inside(double x) => (1 - x) * Math.Exp(-Decay * x);

    internal override void Validate(Validator v) =>
        v.InRange(Decay, HasSuction ? 0.2 : 0, 20, "The decay lies near 0.5 to 4; without decay there is no end to the suction.");

    /// <summary>∫₀¹ (1 − x) e^(−bx) dx, by series where b is small.</summary>
    private double PushArea
    {
        get
        {
            if (Decay > 0.1)
                return 1 / Decay - (1 - Math.Exp(-Decay)) / (Decay * Decay);
            double sum = 0, term = 0.5;
            for (int k = 1; k <= 12; k++)
            {
                sum += term;
                term *= -Decay / (k + 2);
            }
            return sum;
        }
    }

    /// <summary>Where (x − 1) e^(−bx) has become negligible, from x = (ln(x − 1) − ln(negligible))/b.</summary>
    private double LastSuction
    {
        get
        {
            double x = 1 - Math.Log(Negligible) / Decay;
            for (int i = 0; i < 8; i++)
                x = Math.Max(2, (Math.Log(x - 1) - Math.Log(Negligible)) / Decay);
            return x;
        }
    }
}
