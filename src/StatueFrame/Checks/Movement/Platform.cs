using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>A place where people stand and feel the statue sway, and the wind they are judged by.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Point">The named point that stands for the platform.</param>
/// <param name="Use">What people do there.</param>
/// <param name="Situation">Name of the situation whose wind has a return period of one year (ISO 10137:2007, Annex D).</param>
public sealed record Platform(string Point, ComfortUse Use, string Situation);
