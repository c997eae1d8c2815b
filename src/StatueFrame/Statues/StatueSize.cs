namespace StatueFrame;

/// <summary>
/// The most of everything that is accepted: far more than a statue has, and little enough that no description can run
/// out of time or memory.
/// </summary>
internal static class StatueSize
{
    public const int Levels = 5000;
    public const int Stations = 5000;
    public const int Bands = 5000;
    public const int Bars = 200_000;
    public const int Rings = 20_000;
    public const int Limbs = 200;
    public const int Fittings = 1000;
    public const int Points = 1000;
    public const int Vertices = 1000;
    public const int Actions = 100;
    public const int Headings = 720;
    public const int Situations = 1000;
    public const int TableRows = 1000;
    public const int LatticeLegs = 200;

    /// <summary>Looks at the whole statue, limbs included; the lists of each part are looked at where they are.</summary>
    public static void Validate(Validator v, Statue statue)
    {
        int levels = 0, bands = 0, bars = 0;
        Count(statue.Tower, statue.Skin, statue.Standoffs);
        foreach (Limb? limb in statue.Limbs ?? [])
            Count(limb?.Tower, limb?.Skin, limb?.Standoffs);
        v.AtMost(levels, Levels, "Tower.Levels");
        v.AtMost(bands, Bands, "Skin.BandEdges");
        v.AtMost(bars, Bars, nameof(Statue.Standoffs));

        void Count(Tower? tower, Skin? skin, ValueList<StandoffRing>? rings)
        {
            levels += Math.Min(tower?.Levels?.Count ?? 0, Levels);
            bands += Math.Min(skin?.BandCount ?? 0, Bands);
            foreach (StandoffRing? ring in rings ?? [])
                bars += Math.Clamp(ring?.BarCount ?? 0, 0, StandoffRing.MostBars);
        }
    }
}
