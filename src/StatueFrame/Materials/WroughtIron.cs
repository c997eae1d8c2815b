namespace StatueFrame;

/// <summary>Wrought iron of the nineteenth century.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public static class WroughtIron
{
    /// <summary>
    /// Puddled iron, stressed along its grain: 220/300 MPa. Old iron varies widely (yield from about 180 to 300 MPa, E
    /// from about 170 to 200 GPa) and is much weaker and more brittle across the grain; test the iron in hand.
    /// </summary>
    public static Material Puddled { get; } = new()
    {
        Name = "puddled wrought iron",
        Family = MetalFamily.WroughtIron,
        YoungsModulus = 190.Gigapascals,
        ShearModulus = Material.ShearModulusOf(190.Gigapascals, 0.28),
        Density = 7700.KilogramsPerCubicMeter,
        YieldStrength = 220.Megapascals,
        UltimateStrength = 300.Megapascals,
        ThermalExpansion = 12.PpmPerKelvin,
        Source = new Source(
            "values from memory",
            "yield strength and density as BD 21/01, The assessment of highway bridges; the rest the common range of historical tests"),
    };
}
