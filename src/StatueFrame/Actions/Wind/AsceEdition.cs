namespace StatueFrame;

/// <summary>Edition of ASCE/SEI 7, Minimum Design Loads. The exposure constants differ.</summary>
public enum AsceEdition
{
    /// <summary>ASCE/SEI 7-16.</summary>
    Asce7_16,

    /// <summary>ASCE/SEI 7-22.</summary>
    Asce7_22,
}
