using System.Globalization;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>A frequency and a damping ratio found from a record, each with its standard error.</summary>
/// <remarks>
/// Standard errors hold for noise and for the length of the record. They do not know of other modes nearby, of damping that
/// changes with the amplitude, or of a sensor that is not calibrated. Immutable and safe to share between threads.
/// </remarks>
public sealed record MeasuredMode
{
    internal MeasuredMode()
    {
    }

    /// <summary>How it was found.</summary>
    public required string Method { get; init; }

    /// <summary>Natural frequency, undamped.</summary>
    public required Frequency Frequency { get; init; }

    /// <summary>Standard error of the frequency.</summary>
    public required Frequency FrequencyError { get; init; }

    /// <summary>Damping ratio ζ.</summary>
    public required double DampingRatio { get; init; }

    /// <summary>Standard error of the damping ratio.</summary>
    public required double DampingError { get; init; }

    /// <summary>Logarithmic decrement δ = 2πζ/√(1 − ζ²).</summary>
    public double LogDecrement => DampingModel.DecrementOf(DampingRatio);

    /// <summary>What the reader should know before trusting the numbers.</summary>
    public ValueList<string> Warnings { get; init; } = [];

    /// <summary>The damping as the description of a statue takes it.</summary>
    /// <exception cref="InvalidOperationException">The damping ratio is not above zero.</exception>
    public DampingModel AsDamping() => DampingRatio > 0
        ? DampingModel.OfRatio(DampingRatio)
        : throw new InvalidOperationException("A damping ratio that is not above zero is no damping.");

    /// <summary>The values with their errors on one line.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Frequency.Hertz:0.0000} ± {FrequencyError.Hertz:0.0000} Hz, damping {100 * DampingRatio:0.00} ± {100 * DampingError:0.00} % ({Method})");
}
