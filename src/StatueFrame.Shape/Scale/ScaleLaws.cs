using System.Globalization;
using System.Text;

namespace StatueFrame.Shape;

/// <summary>
/// What becomes of a statue's numbers when it is built s times as large of the same materials, its frame scaled in all
/// dimensions, its sheet scaled too or of the same thickness. Each member is the new value over the old.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ScaleLaws
{
    private readonly double tau;

    /// <summary>The laws for a factor.</summary>
    /// <param name="factor">New size over old, 0.001 to 1000.</param>
    /// <param name="sheet">What becomes of the sheet's thickness.</param>
    /// <param name="sheetMassFraction">Mass of the sheet over all mass before scaling, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public ScaleLaws(double factor, SheetRule sheet, double sheetMassFraction)
    {
        if (!(factor is >= 1e-3 and <= 1e3))
            throw new ArgumentOutOfRangeException(nameof(factor), factor, "must be 0.001 to 1000");
        if (!(sheetMassFraction is >= 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(sheetMassFraction), sheetMassFraction, "must be 0 to 1");
        if (!Enum.IsDefined(sheet))
            throw new ArgumentOutOfRangeException(nameof(sheet), sheet, "is no rule");
        (Factor, Sheet, SheetMassFraction) = (factor, sheet, sheetMassFraction);
        tau = sheet == SheetRule.Kept ? 1 : factor;
    }

    /// <summary>New size over old, s.</summary>
    public double Factor { get; }

    /// <summary>What becomes of the sheet's thickness.</summary>
    public SheetRule Sheet { get; }

    /// <summary>Mass of the sheet over all mass before scaling.</summary>
    public double SheetMassFraction { get; }

    /// <summary>Sheet and wind areas: s².</summary>
    public double Area => Factor * Factor;

    /// <summary>Thickness of the sheet, τ: s or 1.</summary>
    public double SheetThickness => tau;

    /// <summary>Mass of the frame: s³.</summary>
    public double FrameMass => Factor * Area;

    /// <summary>Mass of the sheet: s² τ.</summary>
    public double SheetMass => Area * tau;

    /// <summary>All mass.</summary>
    public double Mass => (1 - SheetMassFraction) * FrameMass + SheetMassFraction * SheetMass;

    /// <summary>Stiffness of the frame, force for displacement, as 3EI/L³: s.</summary>
    public double FrameStiffness => Factor;

    /// <summary>Stiffness of a sheet panel against pressure, pressure for displacement, as Et³/L⁴: τ³/s⁴.</summary>
    public double PanelStiffness => tau * tau * tau / (Area * Area);

    /// <summary>
    /// Frequency of sway, √(stiffness / mass): 1/s when the sheet is scaled, and higher when it is kept. Exact when sheet and
    /// frame share out alike over the height; else near it.
    /// </summary>
    public double Frequency => Math.Sqrt(FrameStiffness / Mass);

    /// <summary>Frequency of a sheet panel, as t/L²: τ/s².</summary>
    public double PanelFrequency => tau / Area;

    /// <summary>Wind force at the same pressure: s².</summary>
    public double WindForce => Area;

    /// <summary>Overturning moment of the wind at the same pressure: s³.</summary>
    public double WindMoment => Area * Factor;

    /// <summary>Stress in the frame under wind at the same pressure: 1.</summary>
    public double FrameStressOfWind => WindMoment / (Factor * Area);

    /// <summary>Stress in the frame under its own and the sheet's weight: mass times g over s².</summary>
    public double FrameStressOfWeight => Mass / Area;

    /// <summary>Bending stress in a sheet panel under wind at the same pressure, as p L²/t²: s²/τ².</summary>
    public double PanelStressOfWind => Area / (tau * tau);

    /// <summary>Sway under wind at the same pressure: s.</summary>
    public double WindSway => WindForce / FrameStiffness;

    /// <summary>Sag under weight.</summary>
    public double WeightSag => Mass / FrameStiffness;

    /// <summary>Moment of the weight that holds the statue down over the wind's moment that overturns it.</summary>
    public double Stability => Mass * Factor / WindMoment;

    /// <summary>The laws as a table of text.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Enlarged {Factor:g4} times, sheet thickness {(Sheet == SheetRule.Kept ? "kept" : "scaled")}, sheet {100 * SheetMassFraction:f0} % of the mass\n");
        foreach ((string name, string law, double value) in (ReadOnlySpan<(string, string, double)>)
        [
            ("areas", "s²", Area),
            ("mass of frame", "s³", FrameMass),
            ("mass of sheet", "s² τ", SheetMass),
            ("all mass", "", Mass),
            ("stiffness of frame", "s", FrameStiffness),
            ("stiffness of a panel", "τ³/s⁴", PanelStiffness),
            ("frequency of sway", "√(s/m)", Frequency),
            ("frequency of a panel", "τ/s²", PanelFrequency),
            ("wind force", "s²", WindForce),
            ("wind moment", "s³", WindMoment),
            ("frame stress, wind", "1", FrameStressOfWind),
            ("frame stress, weight", "m/s²", FrameStressOfWeight),
            ("panel stress, wind", "s²/τ²", PanelStressOfWind),
            ("sway under wind", "s", WindSway),
            ("sag under weight", "m/s", WeightSag),
            ("weight moment / wind moment", "m/s²", Stability),
        ])
        {
            text.Append(CultureInfo.InvariantCulture, $"  {name,-28} {law,-8} {value,12:g5}\n");
        }
        return text.ToString();
    }
}
