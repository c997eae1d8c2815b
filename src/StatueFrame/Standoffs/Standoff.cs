using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// What a standoff is made of and how it is fastened, wherever it stands: the flat, its metal, the fixity of its two
/// ends. The fixities have no default, since the bar's stiffness may change twelvefold with them. One
/// <see cref="Standoff"/> may serve a whole ring, or all rings.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Standoff
{
    internal const double LeastLength = 0.02;
    internal const double GreatestLength = 20;

    /// <summary>Length over thickness below which it is a block, and above which it is a ribbon.</summary>
    internal const double LeastSlenderness = 3, GreatestSlenderness = 1500;

    private const double LeastThickness = 0.001;
    private const double GreatestThickness = 0.06;

    /// <summary>The flat: 5 to 500 mm wide, 1 to 60 mm thick.</summary>
    public required FlatBar Section { get; init; }

    /// <summary>The metal of the bar.</summary>
    public required Material Material { get; init; }

    /// <summary>How the tower end is held against turning.</summary>
    public required EndFixity TowerFixity { get; init; }

    /// <summary>How the skin end is held against turning by its saddle.</summary>
    public required EndFixity SkinFixity { get; init; }

    /// <summary>
    /// The turn of the flat about its length, right-handed looking from the tower to the skin, from −180° to 180°. At
    /// zero the width stands as near to the body's axis as it can, so that a radial bar flexes sideways and a bar along
    /// the skin flexes in and out. A bar parallel to the body's axis has its width along the skin's outward normal.
    /// </summary>
    public Angle Roll { get; init; }

    /// <summary>The direction in which the saddle lets the skin slide.</summary>
    public SaddleSlide Slide { get; init; } = SaddleSlide.None;

    /// <summary>How the tower end is fastened; null when it is not described, which leaves it unchecked.</summary>
    public StandoffFixing? TowerFixing { get; init; }

    /// <summary>How the skin end is fastened to its saddle; null when it is not described, which leaves it unchecked.</summary>
    public StandoffFixing? SkinFixing { get; init; }

    /// <summary>The saddle at the skin end; null when it is not described, which leaves slip and travel unchecked.</summary>
    public Saddle? Saddle { get; init; }

    /// <summary>
    /// Free distance from the bar's skin end, or what hangs there, to the tower in the unloaded statue, along the skin's
    /// normal, less what must be left; null when it is not described, which leaves it unchecked. No more counts than there is
    /// from the skin to the tower at the level.
    /// </summary>
    public Length? Clearance { get; init; }

    /// <summary>The detail that tires first, at the end with the greater stress; null when it is not described, which leaves fatigue unchecked.</summary>
    public DetailCategory? FatigueDetail { get; init; }

    /// <summary>
    /// The statue's age when the bar was put in, from which it corrodes anew; zero, with the statue, by default, at most 1000
    /// years. A bar put in later than the age described is as thick as described until then.
    /// </summary>
    public Duration PutIn { get; init; }

    internal FlatRectangle Rectangle => new(Section.Width.Meters, Section.Thickness.Meters);

    internal void Validate(Validator v)
    {
        if (v.Required(Section) is not null
            && v.Positive(Section.Width, Section.Width.Meters, 0.005, 0.5) & v.Positive(Section.Thickness, Section.Thickness.Meters, LeastThickness, GreatestThickness)
            && Section.Thickness > Section.Width)
        {
            v.Add("Section.Thickness", $"is greater than the width ({Section.Designation})", "Were the two swapped?");
        }
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        v.Required(TowerFixity)?.Validate(v.At(nameof(TowerFixity)));
        v.Required(SkinFixity)?.Validate(v.At(nameof(SkinFixity)));
        v.Within(Roll, Roll.Radians, -Math.PI * (1 + 1e-9), Math.PI * (1 + 1e-9));
        v.Required(Slide)?.Validate(v, nameof(Slide));
        v.NotNegative(PutIn, PutIn.Seconds, Atmosphere.LongestExposure);
        ValidateFixings(v, Section?.Width.Meters ?? 0);
    }

    private void ValidateFixings(Validator v, double width)
    {
        if (width > 0)
        {
            TowerFixing?.Validate(v.At(nameof(TowerFixing)), width);
            SkinFixing?.Validate(v.At(nameof(SkinFixing)), width);
        }
        Saddle?.Validate(v.At(nameof(Saddle)));
        FatigueDetail?.Validate(v.At(nameof(FatigueDetail)));
        if (Clearance is { } clearance)
            v.NotNegative(clearance, clearance.Meters, 10, nameof(Clearance));
    }

    /// <summary>Asks for a length that makes a bar of this flat: neither a block, nor a ribbon, nor a slip of units.</summary>
    internal bool ValidateLength(Validator v, string member, string bar, double L)
    {
        if (!(L >= LeastLength && L <= GreatestLength))
        {
            v.Add(member, string.Create(CultureInfo.InvariantCulture, $"{bar} is {L:g4} m long; a standoff is {LeastLength} m to {GreatestLength} m"), L > 0 && L / 1000 is >= LeastLength and <= GreatestLength ? "Were millimeters meant?" : "Is the unit right?");
            return false;
        }
        if (Section?.Thickness.Meters is not (>= LeastThickness and <= GreatestThickness) || Section.Thickness > Section.Width)
            return true;
        double slenderness = L / Section.Thickness.Meters;
        if (slenderness < LeastSlenderness)
            v.Add(member, string.Create(CultureInfo.InvariantCulture, $"{bar} is only {slenderness:g2} times as long as thick"), "That is a block, not a bar: make it longer or thinner.");
        else if (slenderness > GreatestSlenderness)
            v.Add(member, string.Create(CultureInfo.InvariantCulture, $"{bar} is {slenderness:g4} times as long as thick"), "That is a ribbon, not a bar: make it shorter or thicker.");
        else
            return true;
        return false;
    }
}
