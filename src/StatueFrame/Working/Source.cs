namespace StatueFrame;

/// <summary>Where a number or a formula comes from: a document with its edition, and the place in it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Document">The document with its edition, as in "EN 1991-1-4:2005".</param>
/// <param name="Place">The clause, table, figure or chapter, as in "4.5 (4.8)"; may be empty.</param>
public sealed record Source(string Document, string Place = "")
{
    /// <summary>A fact of the trade that no document was found for.</summary>
    public static Source CommonPractice { get; } = new("common practice, no source");

    /// <summary>A value that the user gave.</summary>
    public static Source User { get; } = new("given by the user");

    /// <summary>An assumption of this library, explained in its theory pages.</summary>
    public static Source Assumed(string page) => new("StatueFrame assumption", page);

    /// <summary>EN 1990:2002+A1, Basis of structural design.</summary>
    public static Source En1990(string place) => new("EN 1990:2002+A1:2005", place);

    /// <summary>EN 1991-1-4:2005+A1, Wind actions, with its recommended values.</summary>
    public static Source En1991_1_4(string place) => new("EN 1991-1-4:2005+A1:2010", place);

    /// <summary>EN 1993-1-1:2005+A1, Design of steel structures.</summary>
    public static Source En1993_1_1(string place) => new("EN 1993-1-1:2005+A1:2014", place);

    /// <summary>ASCE/SEI 7-16, Minimum Design Loads.</summary>
    public static Source Asce7_16(string place) => new("ASCE/SEI 7-16", place);

    /// <summary>ASCE/SEI 7-22, Minimum Design Loads.</summary>
    public static Source Asce7_22(string place) => new("ASCE/SEI 7-22", place);

    /// <summary>Roark's Formulas for Stress and Strain, 7th edition.</summary>
    public static Source Roark(string place) => new("Roark's Formulas for Stress and Strain, 7th ed.", place);

    /// <summary>The document and the place, as in "EN 1991-1-4:2005+A1:2010, 4.5".</summary>
    public override string ToString() => string.IsNullOrEmpty(Place) ? Document : $"{Document}, {Place}";
}
