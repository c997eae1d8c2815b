namespace StatueFrame;

/// <summary>The ground below a statue. Source: EN 1998-1:2004, Table 3.1.</summary>
public enum GroundType
{
    /// <summary>Rock.</summary>
    A,

    /// <summary>Very dense sand or gravel, or very stiff clay.</summary>
    B,

    /// <summary>Deep dense sand or gravel, or stiff clay.</summary>
    C,

    /// <summary>Loose to medium soil without cohesion, or soft to firm soil with it.</summary>
    D,

    /// <summary>A thin layer of C or D above rock.</summary>
    E,
}
