namespace StatueFrame;

/// <summary>How much hangs on a structure by ASCE 7; it chooses the map of the wind. Source: ASCE/SEI 7-22, Table 1.5-1.</summary>
public enum RiskCategory
{
    /// <summary>Low risk to people; winds of 300 years.</summary>
    I,

    /// <summary>All others; winds of 700 years.</summary>
    II,

    /// <summary>Many people could be harmed; winds of 1700 years.</summary>
    III,

    /// <summary>Essential structures; winds of 3000 years.</summary>
    IV,
}
