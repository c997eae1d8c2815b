using UnitsNet;

namespace StatueFrame.Works;

/// <summary>A state in which the work stands for a while.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record RaisingStage
{
    /// <summary>Name, as in "tower to L12, clad to 8 m".</summary>
    public required string Name { get; init; }

    /// <summary>The highest level of the tower that stands, as in "L12"; null for all of it.</summary>
    public string? TowerTo { get; init; }

    /// <summary>The limbs that are not up yet.</summary>
    public ValueList<string> WithoutLimbs { get; init; } = [];

    /// <summary>Height up to which the trunk is clad, by whole bands; zero for a bare tower.</summary>
    public required Length CladTo { get; init; }

    /// <summary>How long it stands so, 1 hour to 5 years: it tells the return period of its wind.</summary>
    public required Duration Stands { get; init; }

    /// <summary>
    /// Return period of the wind by how long the stage stands: 2 years to 3 days, 5 years to 3 months, 10 years to a year, 50
    /// years beyond. Source: EN 1991-1-6:2005, Table 3.1 (from memory).
    /// </summary>
    public double ReturnPeriod => Stands.Days <= 3 ? 2 : Stands.Days <= 92 ? 5 : Stands.Days <= 366 ? 10 : 50;

    internal void Validate(Validator v)
    {
        v.Named(Name);
        v.NotNegative(CladTo, CladTo.Meters, 2000);
        v.Positive(Stands, Stands.Seconds, 3600, 5 * 366 * 86_400.0);
    }
}
