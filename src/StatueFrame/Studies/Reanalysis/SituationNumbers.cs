using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What one situation does to a variant: the worst of all wind headings.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SituationNumbers
{
    internal SituationNumbers()
    {
    }

    /// <summary>The name of the situation.</summary>
    public required string Situation { get; init; }

    /// <summary>Base shear for the heading with the greatest overturning moment.</summary>
    public required Force BaseShear { get; init; }

    /// <summary>Vertical force on the base for that heading; downwards is positive.</summary>
    public required Force BaseVertical { get; init; }

    /// <summary>The greatest overturning moment at the base.</summary>
    public required Torque BaseOverturning { get; init; }

    /// <summary>The greatest sway of each named point, in the order of <see cref="Statue.Points"/>.</summary>
    public required ValueList<Length> Sways { get; init; }

    /// <summary>The greatest normal stress of a standoff; null without standoffs.</summary>
    public Pressure? BarStress => Sheet.Value.Of(Number).Stress;

    /// <summary>The greatest deflection of a standoff; null without standoffs.</summary>
    public Length? BarDeflection => Sheet.Value.Of(Number).Deflection;

    /// <summary>Second-order over first-order sway; null when the statue does not stand, and in service situations.</summary>
    public required double? Amplification { get; init; }

    /// <summary>The multiple of the loads at which the statue buckles; null above 10 000, and in service situations.</summary>
    public required double? BucklingFactor { get; init; }

    /// <summary>The governing utilization of each kind of check of the situation, those that do not apply left out.</summary>
    public ValueList<CheckUtilization> Utilizations => Sheet.Value.Of(Number).Utilizations;

    internal SheetOnDemand Sheet { get; init; } = null!;

    internal int Number { get; init; }

    /// <summary>The governing utilization of a kind of check; null when none was checked.</summary>
    /// <param name="id">The kind, as in "bars.bending".</param>
    public double? UtilizationOf(string id)
    {
        foreach (CheckUtilization check in Utilizations.AsSpan())
        {
            if (check.Id == id)
                return check.Utilization;
        }
        return null;
    }
}
