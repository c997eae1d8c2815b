using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// A pre-tensioned bar and what it clamps, as two springs side by side: the joint diagram. An outer pull F goes into the
/// bar by the part Φ = k_b/(k_b + k_c) until the joint separates, and then whole.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Source: any textbook on bolted joints; VDI 2230 calls Φ the load factor.</remarks>
public sealed record AnchorJoint
{
    private static readonly Source diagram = new("joint diagram of two springs", "textbook; VDI 2230 part 1, load factor, from memory");

    /// <summary>Stiffness k_b of the bar.</summary>
    public required ForcePerLength BarStiffness { get; init; }

    /// <summary>Stiffness k_c of what is clamped.</summary>
    public required ForcePerLength ClampStiffness { get; init; }

    /// <summary>Pre-tension P without outer pull, zero or more.</summary>
    public required Force PreTension { get; init; }

    /// <summary>Φ = k_b/(k_b + k_c): the part of an outer pull that the bar feels while the joint is closed.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A stiffness is not positive.</exception>
    public double LoadFactor
    {
        get
        {
            double k_b = CheckInput.Positive(BarStiffness.NewtonsPerMeter, nameof(BarStiffness)), k_c = CheckInput.Positive(ClampStiffness.NewtonsPerMeter, nameof(ClampStiffness));
            return k_b / (k_b + k_c);
        }
    }

    /// <summary>The pull at which the joint separates, P/(1 − Φ).</summary>
    public Force SeparationLoad => PreTension / (1 - LoadFactor);

    /// <summary>Force in the bar under an outer pull: P + ΦF while closed, F once separated. A push, negative, slackens the bar, to zero at most.</summary>
    /// <param name="pull">The outer force F, positive as a pull.</param>
    public Force BarForce(Force pull)
    {
        double F = CheckInput.Finite(pull.Newtons, nameof(pull)), P = CheckInput.NotNegative(PreTension.Newtons, nameof(PreTension)), Phi = LoadFactor;
        return Force.FromNewtons(Math.Max(0, Math.Max(P + Phi * F, F)));
    }

    /// <summary>Force left in the joint under an outer pull: P − (1 − Φ)F, zero once separated.</summary>
    /// <param name="pull">The outer force F, positive as a pull.</param>
    public Force ClampForce(Force pull) => Force.FromNewtons(BarForce(pull).Newtons - pull.Newtons);

    /// <summary>The same joint after a loss of length δ that the bar springs back by, as by embedding or a bar that grows with heat: P falls by δ k_b k_c/(k_b + k_c), to zero at most.</summary>
    /// <param name="shortening">δ, positive slackens.</param>
    public AnchorJoint AfterSetting(Length shortening)
    {
        double k_b = BarStiffness.NewtonsPerMeter, loss = CheckInput.Finite(shortening.Meters, nameof(shortening)) * k_b * (1 - LoadFactor);
        return this with { PreTension = Force.FromNewtons(Math.Max(0, PreTension.Newtons - loss)) };
    }

    /// <summary>
    /// The same joint after creep of what is clamped, by the age-adjusted modulus: P falls by the part
    /// φΦ/(1 + χφΦ), as the clamped part wants to shorten by φP/k_c.
    /// </summary>
    /// <param name="creep">Creep coefficient φ, zero or more.</param>
    /// <param name="aging">Aging coefficient χ, 0 to 1; 0.8 is usual.</param>
    public AnchorJoint AfterCreep(double creep, double aging = 0.8)
    {
        CheckInput.NotNegative(creep, nameof(creep));
        CheckInput.Within(aging, 0, 1, nameof(aging));
        double Phi = LoadFactor;
        return this with { PreTension = Force.FromNewtons(PreTension.Newtons * Math.Max(0, 1 - creep * Phi / (1 + aging * creep * Phi))) };
    }

    /// <summary>The bar against separation: the outer pull against P/(1 − Φ).</summary>
    /// <param name="pull">The outer force F, a pull.</param>
    /// <param name="where">Where.</param>
    /// <param name="situation">The situation.</param>
    public Check Separation(Force pull, string where = "", string situation = "")
    {
        double k_b = CheckInput.Positive(BarStiffness.NewtonsPerMeter, nameof(BarStiffness)), k_c = CheckInput.Positive(ClampStiffness.NewtonsPerMeter, nameof(ClampStiffness));
        double P = CheckInput.NotNegative(PreTension.Newtons, nameof(PreTension)), F = CheckInput.Finite(pull.Newtons, nameof(pull));
        return Check.Of(new CheckSubject("base.separation", "separation of a pre-tensioned joint", where, situation), Dimension.Force, diagram, w =>
        {
            w.Given(k_b, Dimension.Stiffness, "bar");
            w.Given(k_c, Dimension.Stiffness, "clamped part");
            w.Given(P, Dimension.Force, "pre-tension");
            double Phi = w.Let("Phi", k_b / (k_b + k_c), Dimension.Number, diagram, "load factor");
            return (w.Given("F", Math.Max(0, F), Dimension.Force, "outer pull"), w.Let("F_sep", P / (1 - Phi), Dimension.Force, diagram));
        });
    }
}
