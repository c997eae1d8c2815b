namespace StatueFrame;

/// <summary>Which value is taken from the range of a category of <see cref="Corrosivity"/>.</summary>
public enum CategoryValue
{
    /// <summary>The middle of the range.</summary>
    Average,

    /// <summary>The lower limit.</summary>
    Lower,

    /// <summary>The upper limit.</summary>
    Upper,
}
