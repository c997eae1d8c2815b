namespace StatueFrame;

/// <summary>The models of EN 1991-1-4, Annex E, for the amplitude of vortex resonance; the national annex may choose.</summary>
public enum VortexApproach
{
    /// <summary>The greater amplitude of both, where both apply.</summary>
    Both,

    /// <summary>Approach 1, E.1.5.2, the vortex resonance model: forces in step over a correlation length. For any body and mode.</summary>
    VortexResonance,

    /// <summary>
    /// Approach 2, E.1.5.3, the spectral model: chance forces, which the motion feeds as negative damping. For round and square
    /// cantilevers in the mode without nodes; anything else is worked out by approach 1.
    /// </summary>
    Spectral,
}
