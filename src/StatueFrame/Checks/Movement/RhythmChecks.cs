using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Checks of the vibration that people or machinery cause by themselves.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class RhythmChecks
{
    /// <summary>The peak acceleration of a point against a limit.</summary>
    /// <param name="point">Name of the point.</param>
    /// <param name="peak">Peak acceleration, zero or more.</param>
    /// <param name="limit">The limit, as from ISO 10137 for the use of the place.</param>
    /// <param name="source">Where the limit comes from.</param>
    /// <param name="rhythm">What causes it, in words.</param>
    /// <param name="assumed">Inputs that nobody gave.</param>
    public static Check Acceleration(string point, Acceleration peak, Acceleration limit, Source source, string rhythm, params ReadOnlySpan<string> assumed)
    {
        double a = peak.MetersPerSecondSquared, most = limit.MetersPerSecondSquared;
        return Check.Of(new CheckSubject("comfort.rhythm", "vibration by people in a rhythm", point), Dimension.Acceleration, source, w =>
        {
            w?.Note($"Caused by {rhythm}.");
            return (w.Given(a, Dimension.Acceleration, "peak acceleration, harmonics added"), most);
        }, assumed);
    }
}
