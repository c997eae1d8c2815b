namespace StatueFrame.Checks;

/// <summary>
/// The rules, the kind of metal and the safety factors that bars and their fixings are checked with. Take
/// <see cref="For"/> and change what the National Annex or the client asks for.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BarDesign
{
    /// <summary>The rules.</summary>
    public required DesignCode Code { get; init; }

    /// <summary>Which rules cover the metal.</summary>
    public required MetalKind Metal { get; init; }

    /// <summary>γ_M0, resistance of cross-sections, 1 to 2.</summary>
    public double GammaM0 { get; init; } = 1.0;

    /// <summary>γ_M1, resistance of members to instability, 1 to 2.</summary>
    public double GammaM1 { get; init; } = 1.0;

    /// <summary>γ_M2, rupture, bolts and welds, 1 to 2.</summary>
    public double GammaM2 { get; init; } = 1.25;

    /// <summary>γ_M3, slip at ultimate limit state, 1 to 2.</summary>
    public double GammaM3 { get; init; } = 1.25;

    /// <summary>Allowable stress over yield strength for <see cref="DesignCode.AllowableStress"/>, above 0 to 1.</summary>
    public double AllowableFraction { get; init; } = 1 / 1.5;

    /// <summary>Safety against elastic buckling for <see cref="DesignCode.AllowableStress"/>, 1 to 5; 23/12 by default, as older allowable-stress codes took.</summary>
    public double BucklingSafety { get; init; } = 23.0 / 12;

    /// <summary>The buckling curve; null takes curve c, and <see cref="BucklingCurve.StainlessFlat"/> for stainless steel.</summary>
    public BucklingCurve? Curve { get; init; }

    /// <summary>
    /// The recommended factors for a metal: γ_M0 = γ_M1 = 1.0, and 1.1 for stainless steel. Under EN 1993, a metal that
    /// the code does not cover is checked by allowable stress.
    /// </summary>
    /// <param name="material">The metal; its family tells its kind, see <see cref="KindOf"/>.</param>
    /// <param name="code">The rules.</param>
    public static BarDesign For(Material material, DesignCode code = DesignCode.En1993)
    {
        MetalKind kind = KindOf(material);
        double gamma = kind == MetalKind.StainlessSteel ? 1.1 : 1.0;
        bool covered = kind == MetalKind.StructuralSteel || (kind == MetalKind.StainlessSteel && code == DesignCode.En1993);
        return new BarDesign
        {
            Code = covered ? code : DesignCode.AllowableStress,
            Metal = kind,
            GammaM0 = gamma,
            GammaM1 = gamma,
        };
    }

    /// <summary>The kind of a metal by its family: carbon steel, stainless steel, and others, which no code of bars covers.</summary>
    /// <param name="material">The metal.</param>
    public static MetalKind KindOf(Material material) => material.Family switch
    {
        MetalFamily.CarbonSteel => MetalKind.StructuralSteel,
        MetalFamily.StainlessSteel => MetalKind.StainlessSteel,
        _ => MetalKind.Other,
    };

    internal BucklingCurve CurveOrDefault => Curve ?? (Metal == MetalKind.StainlessSteel ? BucklingCurve.StainlessFlat : BucklingCurve.C);

    internal bool IsAisc => Code is DesignCode.AiscLrfd or DesignCode.AiscAsd;

    /// <summary>Why the code does not cover the metal; null when it does.</summary>
    internal string? Uncovered => (Code, Metal) switch
    {
        (DesignCode.En1993, MetalKind.Other) => "EN 1993 covers structural and stainless steels only; take allowable stress",
        (DesignCode.AiscLrfd or DesignCode.AiscAsd, not MetalKind.StructuralSteel) => "AISC 360 covers structural steels only; take allowable stress",
        _ => null,
    };

    /// <summary>What a nominal strength is multiplied by under AISC: φ, or 1/Ω.</summary>
    internal double Aisc(double phi, double omega) => Code == DesignCode.AiscLrfd ? phi : 1 / omega;

    internal void Validate(Validator v)
    {
        v.InRange(GammaM0, 1, 2, "Partial factors lie near 1 to 1.5; see the National Annex.");
        v.InRange(GammaM1, 1, 2, "Partial factors lie near 1 to 1.5; see the National Annex.");
        v.InRange(GammaM2, 1, 2, "Partial factors lie near 1 to 1.5; see the National Annex.");
        v.InRange(GammaM3, 1, 2, "Partial factors lie near 1 to 1.5; see the National Annex.");
        v.InRange(AllowableFraction, 0.05, 1, "It is allowable stress over yield strength.");
        v.InRange(BucklingSafety, 1, 5, "Safety factors on the Euler load lie near 2 to 3.");
        if (Curve is { } curve)
        {
            v.InRange(curve.Alpha, 0, 2, "See EN 1993-1-1, Table 6.1.");
            v.InRange(curve.Plateau, 0, 1, "The plateau ends at a slenderness near 0.2.");
        }
    }
}
