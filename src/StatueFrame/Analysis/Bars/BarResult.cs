using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// One standoff in a situation: its worst normal stress and its greatest deflection over all headings, each under the
/// worst of the bounds on how the skin shares its load, which is named.
/// </summary>
/// <remarks>
/// <para>
/// The stress is |N|/A + |M_weak|/W_weak + |M_strong|/W_strong at the worse end. The deflection is the movement of the
/// skin end relative to the place where the tower end would carry it rigidly, without the travel of a sliding saddle.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed class BarResult
{
    private readonly RingElement ring;
    private readonly BarModel bar;
    private readonly int bandInStatue;
    private readonly BarEnvelope.Extremum worst;
    private readonly LoadCase[] cases;

    internal BarResult(RingElement ring, int number, int bandInStatue, BarEnvelope.Extremum worst, LoadCase[] cases)
    {
        (this.ring, bar, this.bandInStatue, this.worst, this.cases) = (ring, ring.Bars[number], bandInStatue, worst, cases);
        Number = bar.Number;
    }

    /// <summary>The level it stands on, as in "L7" or "wing/elbow".</summary>
    public string Level => ring.Level;

    /// <summary>The band it carries, as in "band 3" or "wing/band 2".</summary>
    public string Band => ring.BandName;

    /// <summary>Its number in its ring, from 1.</summary>
    public int Number { get; }

    /// <summary>What it is made of and how it is fastened.</summary>
    public Standoff Standoff => bar.Bar.Place.Standoff;

    /// <summary>Its length.</summary>
    public Length Length => Length.FromMeters(bar.Bar.Place.Length);

    /// <summary>Worst normal stress.</summary>
    public Pressure Stress => Pressure.FromPascals(worst.AtStress.Stress);

    /// <summary>The assumption under which the stress is worst.</summary>
    public SkinAssumption StressAssumption => worst.AtStress.AtStress;

    /// <summary>The wind's heading for the worst stress; null without wind.</summary>
    public Angle? StressHeading => cases[worst.StressCase].Heading;

    /// <summary>Greatest deflection.</summary>
    public Length Deflection => Length.FromMeters(worst.AtDeflection.Deflection);

    /// <summary>The assumption under which the deflection is greatest.</summary>
    public SkinAssumption DeflectionAssumption => worst.AtDeflection.AtDeflection;

    /// <summary>The wind's heading for the greatest deflection; null without wind.</summary>
    public Angle? DeflectionHeading => cases[worst.DeflectionCase].Heading;

    /// <summary>
    /// False when, for at least one heading, hinges at both ends leave the bar unable to stand alone, so that only the rigid
    /// ring was looked at.
    /// </summary>
    public bool StandsAlone => worst.AtStress.StandsAlone;

    /// <summary>The end forces that go with the worst stress.</summary>
    public BarForces Forces => new(Ends);

    internal BarEnds Ends
    {
        get
        {
            Span<double> forces = stackalloc double[12];
            cases[worst.StressCase].ForcesOf(ring, bar, bandInStatue, StressAssumption, forces);
            return BarEnds.Of(forces);
        }
    }

    /// <summary>Where it is, as in "band 3, bar 2".</summary>
    public string Where => bar.Where;

    internal FlatBar Section => Standoff.Section;

    /// <summary>The bar and its stress on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Where}: {Stress.Megapascals:0.0} MPa, {Deflection.Millimeters:0.0} mm");
}
