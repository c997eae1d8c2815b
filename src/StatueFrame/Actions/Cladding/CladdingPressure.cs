using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The net pressure on a piece of skin, over all headings: the greatest inward and the greatest outward. Characteristic
/// values: partial factors are still to be applied.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record CladdingPressure
{
    internal CladdingPressure() { }

    /// <summary>Peak velocity pressure q_p.</summary>
    public required Pressure VelocityPressure { get; init; }

    /// <summary>Greatest net pressure inward, q_p (c_pe − c_pi); negative when every heading sucks.</summary>
    public required Pressure Inward { get; init; }

    /// <summary>Greatest net suction outward, as a positive value; negative when every heading presses.</summary>
    public required Pressure Suction { get; init; }

    /// <summary>The wind's heading at the greatest inward pressure.</summary>
    public required Angle InwardHeading { get; init; }

    /// <summary>The wind's heading at the greatest suction.</summary>
    public required Angle SuctionHeading { get; init; }

    /// <summary>External coefficient c_pe at the greatest inward pressure.</summary>
    public required double InwardCoefficient { get; init; }

    /// <summary>External coefficient c_pe at the greatest suction.</summary>
    public required double SuctionCoefficient { get; init; }

    /// <summary>Where the coefficients and the velocity pressure come from.</summary>
    public required ValueList<Source> Sources { get; init; }

    /// <summary>What was taken for the user.</summary>
    public required ValueList<Assumption> Assumptions { get; init; }

    /// <summary>What is outside the range of the clauses, one sentence each.</summary>
    public required ValueList<string> Warnings { get; init; }

    /// <summary>Both pressures on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"inward {Inward.Kilopascals:0.00} kPa, suction {Suction.Kilopascals:0.00} kPa");
}
