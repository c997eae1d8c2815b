using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>How gusts are described for <see cref="GustResponse"/>. The defaults serve.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record GustOptions
{
    /// <summary>The spectrum; null takes Kaimal's for an <see cref="AsceWind"/> and that of EN 1991-1-4 for all others.</summary>
    public GustSpectrum? Spectrum { get; init; }

    /// <summary>
    /// Decay constant C_y of the coherence across the wind: two gusts a distance Δ apart are alike by exp(−C n Δ / V). 0
    /// to 100; 11.5 is what EN 1991-1-4, (C.3) has. Zero makes gusts act all at once, which is an upper bound.
    /// </summary>
    public double DecayAcross { get; init; } = 11.5;

    /// <summary>Decay constant C_z of the coherence over the height.</summary>
    public double DecayVertical { get; init; } = 11.5;

    /// <summary>
    /// Time over which the peak is expected, 60 s to 6 h; null takes the time over which the profile's mean speed is
    /// taken: an hour for an <see cref="AsceWind"/>, ten minutes for all others.
    /// </summary>
    public Duration? Duration { get; init; }

    /// <summary>Whether the air damps the sway. It does; false is on the safe side.</summary>
    public bool AerodynamicDamping { get; init; } = true;

    /// <summary>Number of frequencies, 50 to 5000.</summary>
    public int FrequencyCount { get; init; } = 200;

    /// <summary>
    /// Number of points across each band at which gusts are compared, 1 to 8. More points give wide bodies less load; with
    /// 1, a gust strikes a band over its whole width at once.
    /// </summary>
    public int PointsAcross { get; init; } = 3;

    /// <summary>
    /// Number of points along the height of each band (along the axis of a limb), 1 to 8; null takes as many as give the
    /// statue 24 in all, at most 3.
    /// </summary>
    public int? PointsAlong { get; init; }

    /// <summary>
    /// Intensity of the gusts across the wind over that of those along it, 0 to 1; they swing the drag sideways by F u_v/V. Near 0.75
    /// over flat ground (Joint Committee on Structural Safety, Probabilistic Model Code, 2.13, from memory); 0 leaves them out.
    /// </summary>
    public double AcrossIntensity { get; init; } = 0.75;

    internal void Validate(Validator v)
    {
        if (Spectrum is { } spectrum)
            v.Defined(spectrum, nameof(Spectrum));
        v.InRange(DecayAcross, 0, 100, "Values lie near 8 to 16.");
        v.InRange(DecayVertical, 0, 100, "Values lie near 7 to 12.");
        if (Duration is { } time)
            v.Within(time, time.Seconds, 60, 6 * 3600, nameof(Duration));
        v.InRange(FrequencyCount, 50, 5000, "200 do for most statues.");
        v.InRange(PointsAcross, 1, 8, "Points across a band; 3 do for most.");
        v.InRange(AcrossIntensity, 0, 1, "Near 0.75 over flat ground.");
        if (PointsAlong is { } along)
            v.InRange(along, 1, 8, "Points along a band; null takes as many as its height needs.", nameof(PointsAlong));
    }
}
