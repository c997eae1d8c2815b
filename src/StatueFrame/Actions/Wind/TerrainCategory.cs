namespace StatueFrame;

/// <summary>Terrain upwind of the site. Source: EN 1991-1-4:2005, Table 4.1.</summary>
public enum TerrainCategory
{
    /// <summary>Category 0: sea, or coast open to the sea. z₀ = 0.003 m, z_min = 1 m.</summary>
    Zero,

    /// <summary>Category I: lakes, or flat ground with hardly any vegetation. z₀ = 0.01 m, z_min = 1 m.</summary>
    I,

    /// <summary>Category II: grass and single obstacles at least 20 of their heights apart. z₀ = 0.05 m, z_min = 2 m.</summary>
    II,

    /// <summary>Category III: villages, suburbs, forest. z₀ = 0.3 m, z_min = 5 m.</summary>
    III,

    /// <summary>Category IV: at least 15 % built over, buildings higher than 15 m on average. z₀ = 1 m, z_min = 10 m.</summary>
    IV,
}
