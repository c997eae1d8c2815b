namespace StatueFrame.Reporting;

/// <summary>A section of a calculation package that figures can stand in.</summary>
public enum PackageSection
{
    /// <summary>The description of the statue.</summary>
    Statue,

    /// <summary>Actions and limits.</summary>
    Actions,

    /// <summary>What the model is made of.</summary>
    Model,

    /// <summary>The greatest results.</summary>
    Results,

    /// <summary>The wind band by band.</summary>
    Wind,

    /// <summary>What acts and what the ground carries.</summary>
    Equilibrium,

    /// <summary>Forces in tower and bars.</summary>
    Forces,

    /// <summary>The checks.</summary>
    Checks,
}
