namespace StatueFrame.Analysis;

/// <summary>What comes down at the base at one time, with everything that acts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Reaction">Forces and moments on the base.</param>
/// <param name="Case">The load case of what acts steadily.</param>
/// <param name="State">The state they are of.</param>
internal readonly record struct BaseForces(BaseReaction Reaction, LoadCase Case, DemandState State);
