namespace StatueFrame;

/// <summary>The section on which the stress of a fatigue detail is taken.</summary>
public enum FatigueSection
{
    /// <summary>The whole flat.</summary>
    Gross,

    /// <summary>The flat less its bolt holes; the whole flat at an end that is not bolted.</summary>
    Net,

    /// <summary>The throat of the fillet welds.</summary>
    Throat,
}
