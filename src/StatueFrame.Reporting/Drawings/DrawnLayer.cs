namespace StatueFrame.Reporting;

/// <summary>What a line of a <see cref="Drawing"/> shows; decides its width and dash.</summary>
public enum DrawnLayer
{
    /// <summary>Edges of sheets, plates and blocks: thick lines.</summary>
    Edge,

    /// <summary>Members of tower and level frames.</summary>
    Member,

    /// <summary>Standoffs.</summary>
    Standoff,

    /// <summary>Brackets.</summary>
    Bracket,

    /// <summary>Rivet, bolt and anchor holes.</summary>
    Hole,

    /// <summary>Levels, axes and sections: thin dashed lines.</summary>
    Axis,

    /// <summary>Dimension lines.</summary>
    Dimension,

    /// <summary>Marks and other words.</summary>
    Text,
}
