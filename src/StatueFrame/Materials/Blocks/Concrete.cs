using UnitsNet;

namespace StatueFrame;

/// <summary>Concrete, plain or reinforced.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Concrete : BlockMaterial
{
    /// <summary>Partial factor γ_C, 1 to 2.5; 1.5 by default (EN 1992-1-1, Table 2.1N).</summary>
    public double PartialFactor { get; init; } = 1.5;

    /// <summary>Whether it is taken as cracked where anchors hold in it, as it is by default.</summary>
    public bool Cracked { get; init; } = true;

    internal override double Gamma => PartialFactor;

    /// <summary>Mean tensile strength f_ctm, Pa (EN 1992-1-1, Table 3.1).</summary>
    internal double f_ctm
    {
        get
        {
            double f_ck = 1e-6 * f_k;
            return 1e6 * (f_ck <= 50 ? 0.3 * Math.Pow(f_ck, 2.0 / 3) : 2.12 * Math.Log(1 + (f_ck + 8) / 10));
        }
    }

    /// <summary>
    /// Concrete of a cylinder strength by EN 1992-1-1, Table 3.1: E_cm = 22 GPa (f_cm/10 MPa)^0.3 with f_cm = f_ck + 8 MPa;
    /// 2500 kg/m³, Poisson's ratio 0.2.
    /// </summary>
    /// <param name="strength">f_ck, 1 to 120 MPa.</param>
    /// <exception cref="ArgumentOutOfRangeException">The strength is out of range.</exception>
    public static Concrete OfStrength(Pressure strength)
    {
        double f_ck = strength.Megapascals;
        if (!(f_ck is >= 1 and <= 120))
            throw new ArgumentOutOfRangeException(nameof(strength), strength, "The strength of concrete must be from 1 to 120 MPa.");
        return new Concrete
        {
            Name = FormattableString.Invariant($"concrete C{f_ck:0.#}"),
            Density = 2500.KilogramsPerCubicMeter,
            YoungsModulus = (22 * Math.Pow((f_ck + 8) / 10, 0.3)).Gigapascals,
            CompressiveStrength = strength,
            Source = new Source("EN 1992-1-1:2004", "Table 3.1; density EN 1991-1-1, Table A.1"),
        };
    }

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        v.InRange(PartialFactor, 1, 2.5, "It is 1.5 in EN 1992-1-1; see the National Annex.");
    }
}
