namespace StatueFrame;

/// <summary>How corrosive the air is: the categories of ISO 9223:2012, by what a metal loses in its first year.</summary>
public enum Corrosivity
{
    /// <summary>Very low: deserts, heated rooms.</summary>
    C1,

    /// <summary>Low: temperate country, deserts, cold regions.</summary>
    C2,

    /// <summary>Medium: towns, coasts with little salt.</summary>
    C3,

    /// <summary>High: polluted towns, industry, coasts out of the spray.</summary>
    C4,

    /// <summary>Very high: heavy industry, sheltered places on the coastline.</summary>
    C5,

    /// <summary>Extreme: offshore, occasional salt spray, humid tropics with heavy pollution.</summary>
    CX,
}
