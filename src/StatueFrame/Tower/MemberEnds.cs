namespace StatueFrame;

/// <summary>How the ends of a member meet their gussets, which sets how a single angle is loaded off its axis.</summary>
public enum MemberEnds
{
    /// <summary>Through the centroid: both legs of an angle, a tube with a flange, a welded joint about the axis.</summary>
    Centered,

    /// <summary>One leg of an angle, with two or more fasteners or a weld at each end.</summary>
    OneLeg,

    /// <summary>One leg of an angle, with a single fastener at each end.</summary>
    OneLegOneFastener,
}
