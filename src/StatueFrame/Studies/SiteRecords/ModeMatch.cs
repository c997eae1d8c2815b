using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>A measured mode beside the model's mode of the nearest frequency.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Measured">The measured mode.</param>
/// <param name="Number">The model's mode, from 1; null when none is near.</param>
/// <param name="Model">Its frequency.</param>
/// <param name="Description">What moves in it.</param>
public sealed record ModeMatch(MeasuredMode Measured, int? Number, Frequency? Model, string Description)
{
    /// <summary>The model's frequency over the measured one, less 1; null without a match.</summary>
    public double? Difference => Model is { } model ? model.Hertz / Measured.Frequency.Hertz - 1 : null;

    /// <summary>The difference in standard errors of the measurement; null without a match.</summary>
    public double? Errors => Model is { } model && Measured.FrequencyError.Hertz > 0
        ? Math.Abs(model.Hertz - Measured.Frequency.Hertz) / Measured.FrequencyError.Hertz
        : null;
}
