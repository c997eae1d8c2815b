using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>What is enough: the limits that a check sheet compares the response with.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Criteria
{
    /// <summary>The greatest sway allowed at named points.</summary>
    public ValueList<SwayLimit> Sway { get; init; } = [];

    /// <summary>
    /// The fraction of the yield or proof strength that a standoff's stress may reach in a strength situation; null takes
    /// 1/1.5, which the sheet lists as assumed. With factored actions use 1/γ_M.
    /// </summary>
    public double? BarStressFraction { get; init; }

    /// <summary>The least buckling factor at which forces without second-order effects are good enough; 10 by default.</summary>
    public double LeastBucklingFactor { get; init; } = 10;

    /// <summary>
    /// The set of codes, the class of consequences and the wind's return period, which factors on actions and resistances
    /// follow; the Eurocodes with their recommended values by default.
    /// </summary>
    public DesignBasis Basis { get; init; } = new EurocodeBasis();

    /// <summary>The code that standoffs are checked by; null follows <see cref="Basis"/>. Metals it does not cover are checked by allowable stress.</summary>
    public DesignCode? BarCode { get; init; }

    /// <summary>The code that members of the tower and of limbs are checked by; null follows <see cref="Basis"/>. Metals it does not cover are checked by allowable stress.</summary>
    public DesignCode? TowerCode { get; init; }

    /// <summary>
    /// The fraction of the yield strength that a tower member of a metal that no code covers may reach; null takes 1/1.5,
    /// which the sheet lists as assumed.
    /// </summary>
    public double? TowerStressFraction { get; init; }

    /// <summary>What is enough for sheet, armature and seams.</summary>
    public SkinDesign Skin { get; init; } = new();

    /// <summary>Damping of the structure; null takes that of welded lattice towers for gusts, listed as assumed, and leaves vortices unchecked.</summary>
    public DampingModel? Damping { get; init; }

    /// <summary>Cross-sections and limits for vortex shedding and galloping; null leaves them unchecked.</summary>
    public AcrossWindInput? AcrossWind { get; init; }

    /// <summary>Rules and factors for cores, hold-down, pedestal and foundation; those of the Eurocodes by default.</summary>
    public BaseDesign Base { get; init; } = new();

    /// <summary>What must hold in a shock; null takes the tower's plan as the base, and leaves clearance unchecked.</summary>
    public ShockLimits? Shock { get; init; }

    /// <summary>Where people stand and feel the sway.</summary>
    public ValueList<Platform> Platforms { get; init; } = [];

    /// <summary>How long the metal must last; null leaves its loss unchecked.</summary>
    public DurabilityLimit? Durability { get; init; }

    /// <summary>The base that resists earthquakes by weight; null leaves overturning and sliding in them unchecked.</summary>
    public EarthquakeCriteria? Earthquake { get; init; }

    /// <summary>How long the statue must last in years, 0.01 (a stage of building) to 1000; null takes 100, which the sheet lists as assumed.</summary>
    public double? DesignLife { get; init; }

    /// <summary>Partial factor γ_Mf on fatigue strength, 1 to 2; null takes 1.35, which the sheet lists as assumed.</summary>
    public double? FatigueFactor { get; init; }

    /// <summary>
    /// How finely a fine model of the skin is meshed, whose forces in standoffs and tower are checked beside those of the
    /// reduced model, and which alone gives the stress of the sheet; null leaves it out, as it takes seconds.
    /// </summary>
    public FineMesh? Fine { get; init; }

    /// <summary>How many modes the sheet lists, 1 to 100.</summary>
    public int Modes { get; init; } = 6;

    internal DesignCode BarCodeInUse => BarCode ?? Basis.Resistance;

    internal DesignCode TowerCodeInUse => TowerCode ?? Basis.Resistance;

    internal NationalAnnex? Annex => Basis.AnnexInUse;

    internal BaseDesign BaseInUse
    {
        get
        {
            BaseDesign own = Base with { Code = Base.Code ?? (Basis is AsceBasis ? BaseCode.American : BaseCode.Eurocode) };
            return Annex?.Apply(own) ?? own;
        }
    }

    internal BarDesign Apply(BarDesign design) => Annex?.Apply(design) ?? design;

    /// <summary>
    /// The criteria as far as they concern a stage of the statue: without limits of points, platforms and sections of bodies
    /// that the stage does not have. A stage's own values, such as a lower life, are set on top.
    /// </summary>
    /// <param name="stage">The statue while it is built, as of <see cref="CladdingStages.CladUpTo"/>.</param>
    public Criteria ForStage(Statue stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        var points = stage.Points.Select(point => point.Name).ToHashSet();
        var names = new StatueNames(stage);
        return this with
        {
            Sway = Sway.Where(limit => points.Contains(limit.Point)).ToValueList(),
            Platforms = Platforms.Where(platform => points.Contains(platform.Point)).ToValueList(),
            AcrossWind = AcrossWind is { } across ? across with { Sections = [.. across.Sections.Where(section => names.SkinnedBodies.Contains(section.Body))] } : null,
        };
    }

    internal void Validate(Validator v, StatueNames names)
    {
        v.Required(Basis)?.Validate(v.At(nameof(Basis)));
        foreach ((_, SwayLimit sway, Validator at) in v.Items(Sway, StatueSize.Points))
        {
            at.Positive(sway.Limit, sway.Limit.Meters, 1e-6, 10, nameof(SwayLimit.Limit));
            at.Required(sway.Source, nameof(SwayLimit.Source));
            names.RequirePoint(at, nameof(SwayLimit.Point), sway.Point);
        }
        if (BarStressFraction is { } fraction)
            v.InRange(fraction, 0.05, 1, "It is allowable stress over yield strength.", nameof(BarStressFraction));
        foreach ((_, Platform platform, Validator at) in v.Items(Platforms, StatueSize.Points))
        {
            names.RequirePoint(at, nameof(Platform.Point), platform.Point);
            at.Named(platform.Situation, nameof(Platform.Situation));
            at.Defined(platform.Use, nameof(Platform.Use));
        }
        Durability?.Validate(v.At(nameof(Durability)));
        Damping?.Validate(v.At(nameof(Damping)));
        AcrossWind?.Validate(v.At(nameof(AcrossWind)), names.SkinnedBodies);
        Earthquake?.Validate(v.At(nameof(Earthquake)));
        Shock?.Validate(v.At(nameof(Shock)));
        if (BarCode is { } barCode)
            v.Defined(barCode, nameof(BarCode));
        if (TowerCode is { } towerCode)
            v.Defined(towerCode, nameof(TowerCode));
        v.Required(Skin)?.Validate(v.At(nameof(Skin)));
        if (TowerStressFraction is { } towerFraction)
            v.InRange(towerFraction, 0.05, 1, "It is allowable stress over yield strength.", nameof(TowerStressFraction));
        if (DesignLife is { } life)
            v.InRange(life, 0.01, 1000, "It is in years, as in 100; that of a stage of building may be days.", nameof(DesignLife));
        if (FatigueFactor is { } gammaMf)
            v.InRange(gammaMf, 1, 2, "See EN 1993-1-9, Table 3.1: 1.0 to 1.35.", nameof(FatigueFactor));
        Fine?.Validate(v.At(nameof(Fine)));
        v.Required(Base)?.Validate(v.At(nameof(Base)));
        v.InRange(LeastBucklingFactor, 1, 100, "10 is usual for elastic analysis.");
        v.InRange(Modes, 1, 100, "It is how many modes the sheet lists.");
    }
}
