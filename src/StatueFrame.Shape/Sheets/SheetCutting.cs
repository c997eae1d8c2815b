using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>The sheet to be used and how large a piece may be.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SheetCutting
{
    /// <summary>The metal.</summary>
    public required Material Metal { get; init; }

    /// <summary>Thickness, 0.2 to 30 mm.</summary>
    public required Length Thickness { get; init; }

    /// <summary>Longest side of a sheet, flat before shaping: 0.1 to 20 m.</summary>
    public required Length GreatestLength { get; init; }

    /// <summary>Other side of a sheet, flat before shaping: 0.1 m to <see cref="GreatestLength"/>.</summary>
    public required Length GreatestWidth { get; init; }

    /// <summary>Heaviest sheet, at least 0.1 kg; no limit by default.</summary>
    public Mass GreatestMass { get; init; } = Mass.FromKilograms(1e6);

    /// <summary>Greatest angle between a sheet's middle direction and any part of it, 10° to 90°; 60° by default.</summary>
    public Angle GreatestTurn { get; init; } = Angle.FromDegrees(60);

    /// <summary>Distance of rivets in a row, 5 mm to 1 m; 50 mm by default.</summary>
    public Length RivetPitch { get; init; } = Length.FromMillimeters(50);

    /// <summary>Where seams are flush; elsewhere they are lapped.</summary>
    public ValueList<FlushRegion> Flush { get; init; } = [];

    internal double SurfaceDensity => Thickness.Meters * Metal.Density.KilogramsPerCubicMeter;

    internal void Validate()
    {
        ArgumentNullException.ThrowIfNull(Metal);
        Within(Thickness.Millimeters, 0.2, 30, nameof(Thickness), "mm");
        Within(GreatestLength.Meters, 0.1, 20, nameof(GreatestLength), "m");
        Within(GreatestWidth.Meters, 0.1, GreatestLength.Meters, nameof(GreatestWidth), "m");
        Within(GreatestMass.Kilograms, 0.1, 1e6, nameof(GreatestMass), "kg");
        Within(GreatestTurn.Degrees, 10, 90, nameof(GreatestTurn), "°");
        Within(RivetPitch.Millimeters, 5, 1000, nameof(RivetPitch), "mm");

        static void Within(double value, double least, double most, string member, string unit)
        {
            if (!(value >= least * (1 - 1e-12) && value <= most * (1 + 1e-12)))
                throw new ArgumentOutOfRangeException(member, value, $"must be {least} to {most} {unit}");
        }
    }
}
