using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A wave of pressure that travels along its heading and pushes the skin: on every band the force p(t)·C·A along the way
/// it travels, at the band's pressure center, with A the band's area across that way. Unless bands are named, it also pushes tower
/// that no skin covers, by its drag in a wind of that pressure, and fittings by their wind area.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The wave is plane, and reaches each band when it reaches its pressure center. Pressure that runs round the band from front to back within the pulse is for
/// <see cref="Coefficient"/> to account for.
/// </remarks>
public sealed record PressurePulse : ShockAction
{
    /// <summary>How the pressure runs in time.</summary>
    public required PressureShape Shape { get; init; }

    /// <summary>Peak pressure on a face across the way it travels, 1 Pa to 10 MPa.</summary>
    public required Pressure Peak { get; init; }

    /// <summary>Duration of the pulse, 1e-5 s to 1000 s: the time that the shape's own is relative to.</summary>
    public required Duration Duration { get; init; }

    /// <summary>Force over peak pressure and projected area, 0.01 to 10; 1 unless given.</summary>
    public double Coefficient { get; init; } = 1;

    /// <summary>Speed at which the wave travels, 1 m/s to 10 km/s; null reaches all bands at once.</summary>
    public Speed? WaveSpeed { get; init; }

    /// <summary>The bands it meets, as in "band 3" or "wing/band 2"; empty for the whole statue.</summary>
    public ValueList<string> Bands { get; init; } = [];

    private protected override void ValidateSize(Validator v)
    {
        v.Required(Shape)?.Validate(v.At(nameof(Shape)));
        v.Positive(Peak, Peak.Pascals, 1, 1e7);
        v.Positive(Duration, Duration.Seconds, 1e-5, 1000);
        v.InRange(Coefficient, 0.01, 10, "It is force over peak pressure and projected area.");
        if (WaveSpeed is { } speed)
            v.Positive(speed, speed.MetersPerSecond, 1, 1e4, nameof(WaveSpeed));
    }

    internal override void ValidatePlaces(Validator v, StatueNames names)
    {
        if (names.SkinnedBodies.Count == 0)
            v.Add("", "meets no skin", "A pressure pulse acts on the skin; use a Blow on a bare tower.");
        foreach ((int i, string band, _) in v.Items(Bands, StatueSize.Bands))
        {
            names.Require(v, $"{nameof(Bands)}[{i}]", band);
            if (names.Has(band) && StatueNames.BandOf(band[(band.LastIndexOf('/') + 1)..]) is null)
                v.Add($"{nameof(Bands)}[{i}]", $"\"{band}\" is a level, not a band", "Pressure acts on the skin's bands.");
        }
    }
}
