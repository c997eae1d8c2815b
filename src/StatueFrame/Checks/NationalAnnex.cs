using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>The values that a country chooses under the Eurocodes, given once: they reach every check in place of the recommended ones.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record NationalAnnex
{
    /// <summary>Its name, as the sheet prints it.</summary>
    public required string Name { get; init; }

    /// <summary>γ_M0 of structural steel, cross-sections, 1 to 2.</summary>
    public double GammaM0 { get; init; } = 1.0;

    /// <summary>γ_M1 of structural steel, instability, 1 to 2.</summary>
    public double GammaM1 { get; init; } = 1.0;

    /// <summary>γ_M2, rupture, bolts and welds, 1 to 2.</summary>
    public double GammaM2 { get; init; } = 1.25;

    /// <summary>γ_M3, slip, 1 to 2.</summary>
    public double GammaM3 { get; init; } = 1.25;

    /// <summary>γ_M0 of stainless steel, 1 to 2.</summary>
    public double StainlessGammaM0 { get; init; } = 1.1;

    /// <summary>γ_M1 of stainless steel, 1 to 2.</summary>
    public double StainlessGammaM1 { get; init; } = 1.1;

    /// <summary>γ_Mf on fatigue strength, 1 to 2.</summary>
    public double GammaMf { get; init; } = 1.35;

    /// <summary>γ_Mc of anchors in concrete, 1 to 3.</summary>
    public double GammaMc { get; init; } = 1.5;

    internal Assumption AsAssumption() => new("national annex", $"{Name}: partial factors as given", Source.User);

    internal BarDesign Apply(BarDesign design) => design.Code != DesignCode.En1993 ? design : design with
    {
        GammaM0 = design.Metal == MetalKind.StainlessSteel ? StainlessGammaM0 : GammaM0,
        GammaM1 = design.Metal == MetalKind.StainlessSteel ? StainlessGammaM1 : GammaM1,
        GammaM2 = GammaM2,
        GammaM3 = GammaM3,
    };

    internal BaseDesign Apply(BaseDesign design) => design.IsAmerican ? design : design with { GammaM0 = GammaM0, GammaM2 = GammaM2, GammaMc = GammaMc };

    internal void Validate(Validator v)
    {
        v.Named(Name);
        foreach ((double gamma, string member) in new[]
        {
            (GammaM0, nameof(GammaM0)), (GammaM1, nameof(GammaM1)), (GammaM2, nameof(GammaM2)), (GammaM3, nameof(GammaM3)),
            (StainlessGammaM0, nameof(StainlessGammaM0)), (StainlessGammaM1, nameof(StainlessGammaM1)), (GammaMf, nameof(GammaMf)),
        })
        {
            v.InRange(gamma, 1, 2, "Partial factors lie near 1 to 1.5.", member);
        }
        v.InRange(GammaMc, 1, 3, "It is 1.5 in EN 1992-4.");
    }
}
