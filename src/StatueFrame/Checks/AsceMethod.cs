namespace StatueFrame;

/// <summary>Which of the two methods of ASCE 7 and AISC 360 a design follows.</summary>
public enum AsceMethod
{
    /// <summary>Strength design (LRFD), ASCE/SEI 7-22, 2.3.</summary>
    Strength,

    /// <summary>Allowable stress design (ASD), ASCE/SEI 7-22, 2.4.</summary>
    Allowable,
}
