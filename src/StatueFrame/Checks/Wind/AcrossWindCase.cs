using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>One body in one mode across the wind, in the headings that are worst for vortices and for galloping.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record AcrossWindCase
{
    internal AcrossWindCase() { }

    /// <summary>"trunk", or the name of a limb.</summary>
    public required string Body { get; init; }

    /// <summary>The mode.</summary>
    public required ModeResult Mode { get; init; }

    /// <summary>The body's bands, and what of its tower stands bare, in the mode, in the heading that is worst for vortices.</summary>
    public required VortexInput Input { get; init; }

    /// <summary>Where the wind of that heading blows towards.</summary>
    public required Angle VortexHeading { get; init; }

    /// <summary>Vibration by vortices in that heading.</summary>
    public required VortexResult Vortex { get; init; }

    /// <summary>Greatest displacement of any band or bare tower of the statue when this body's vortices shake it in the mode.</summary>
    public required Length GreatestDisplacement { get; init; }

    /// <summary>Where the wind blows towards that is worst for galloping.</summary>
    public required Angle GallopingHeading { get; init; }

    /// <summary>Onset of galloping in that heading.</summary>
    public required GallopingResult Galloping { get; init; }

    /// <summary>The amplitude of the mass-normalized mode at which the statue moves by <see cref="GreatestDisplacement"/>.</summary>
    internal double ModalAmplitude(StatueModel model, Mechanics.Vibration.ModeSet set)
    {
        double greatest = AcrossWindBody.GreatestMotion(model, set.Shape(Mode.Number - 1)).Middle;
        return greatest > 0 ? GreatestDisplacement.Meters / greatest : 0;
    }

    /// <summary>The place on a check sheet, as in "wing, mode 3".</summary>
    public string Where => $"{Body}, mode {Mode.Number}";
}
