namespace StatueFrame;

/// <summary>What a metal is as far as weather and other metals care: how it corrodes, and how noble it is.</summary>
public enum MetalFamily
{
    /// <summary>Unalloyed and low-alloy structural steel.</summary>
    CarbonSteel,

    /// <summary>Wrought (puddled) iron.</summary>
    WroughtIron,

    /// <summary>Gray cast iron.</summary>
    CastIron,

    /// <summary>Stainless steel, passive: it pits rather than thins.</summary>
    StainlessSteel,

    /// <summary>Copper.</summary>
    Copper,

    /// <summary>Tin and silicon bronzes, gunmetal.</summary>
    Bronze,

    /// <summary>Brass.</summary>
    Brass,

    /// <summary>Aluminum and its alloys.</summary>
    Aluminum,

    /// <summary>Zinc, and zinc coatings.</summary>
    Zinc,

    /// <summary>Lead.</summary>
    Lead,
}
