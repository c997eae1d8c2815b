namespace StatueFrame;

/// <summary>The shape of a spectrum. Source: EN 1998-1:2004, 3.2.2.2 (2).</summary>
public enum En1998SpectrumType
{
    /// <summary>Type 1: earthquakes with a surface-wave magnitude above 5.5 count most.</summary>
    Type1,

    /// <summary>Type 2: earthquakes with a surface-wave magnitude of 5.5 or less count most.</summary>
    Type2,
}
