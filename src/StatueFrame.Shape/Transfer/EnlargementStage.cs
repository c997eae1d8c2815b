using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>One step from a model to the next larger one.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Factor">Next size over present size, 0.01 to 100.</param>
/// <param name="SettingOutError">Standard error with which a point is set out on the next model, along each axis, at that model's size; zero to 1 m.</param>
/// <param name="ScaleError">Standard error of the factor, relative; common to all points; zero to 0.1.</param>
public sealed record EnlargementStage(double Factor, Length SettingOutError, double ScaleError = 0)
{
    internal void Validate()
    {
        if (!(Factor is >= 0.01 and <= 100))
            throw new ArgumentException($"A stage's factor must be 0.01 to 100, is {Factor}.");
        if (!(SettingOutError.Meters is >= 0 and <= 1))
            throw new ArgumentException($"A stage's setting-out error must be zero to 1 m, is {SettingOutError}.");
        if (!(ScaleError is >= 0 and <= 0.1))
            throw new ArgumentException($"A stage's scale error must be zero to 0.1, is {ScaleError}.");
    }
}
