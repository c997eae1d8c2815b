namespace StatueFrame.Works;

/// <summary>How softly a crane takes up its load (EN 1991-3:2006, Annex B).</summary>
public enum HoistingClass
{
    /// <summary>Softest, as hand-operated and assembly cranes.</summary>
    HC1,

    /// <summary>As workshop cranes and mobile cranes with hook.</summary>
    HC2,

    /// <summary>As grab or magnet cranes of yards.</summary>
    HC3,

    /// <summary>Hardest.</summary>
    HC4,
}
