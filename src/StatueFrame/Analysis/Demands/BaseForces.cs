namespace StatueFrame.Analysis;

/// <summary>What comes down at the base at one time, with everything that acts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Reaction">Forces and moments on the base.</param>
/// <param name="Case">The load case of what acts steadily.</param>
/// <param name="When">The wind's heading, the earthquake's direction or the time, in words.</param>
internal readonly record struct BaseForces(BaseReaction Reaction, LoadCase Case, string When);
