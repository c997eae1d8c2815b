using UnitsNet;

namespace StatueFrame;

/// <summary>The wind of some headings, where ground, hills or the map's factor by direction make it milder than elsewhere.</summary>
/// <remarks>Immutable and safe to share between threads. Source: EN 1991-1-4:2005, 4.2 (2) and 4.3.2 (2).</remarks>
public sealed record WindSector
{
    /// <summary>The first heading of the sector: a plan angle that the wind blows towards, anticlockwise from +x, −360° to 720°.</summary>
    public required Angle From { get; init; }

    /// <summary>Its last heading, above <see cref="From"/> by less than a turn; both belong to it.</summary>
    public required Angle To { get; init; }

    /// <summary>The wind there, of the same kind as <see cref="WindAction.Profile"/> and nowhere harder.</summary>
    public required WindProfile Profile { get; init; }

    /// <summary>Heights above ground at which it must not be harder, m.</summary>
    private static readonly double[] heights = [0, 1, 2, 5, 10, 20, 40, 80, 160];

    /// <summary>Whether it has a heading, rad.</summary>
    internal bool Has(double heading)
    {
        const double slack = 1e-9;
        double beyond = (heading - From.Radians) % (2 * Math.PI);
        if (beyond < -slack)
            beyond += 2 * Math.PI;
        return beyond <= To.Radians - From.Radians + slack || beyond >= 2 * Math.PI - slack;
    }

    internal void Validate(Validator v, WindProfile? whole)
    {
        v.Within(From, From.Degrees, -360, 720);
        v.Within(To, To.Degrees, -360, 720);
        double span = (To - From).Degrees;
        if (!(span is > 0 and < 360))
            v.Add(nameof(To), "must be above From by less than a turn", "A sector over north, say, is from −30° to 30°.");
        Validator at = v.At(nameof(Profile));
        int before = v.Problems.Count;
        if (v.Required(Profile) is null)
            return;
        Profile.Validate(at);
        if (whole is null || v.Problems.Count > before)
            return;
        if (Profile.GetType() != whole.GetType())
            at.Add("", $"must be of the same kind as the wind's own profile, {whole.GetType().Name}, is {Profile.GetType().Name}", "Sectors differ by speed, ground and hills, not by code.");
        else if (heights.FirstOrDefault(IsHarder, -1) is >= 0 and double z)
            at.Add("", FormattableString.Invariant($"must nowhere be harder than the wind's own profile, is at {z} m above ground"), "Give the hardest as Profile: it also serves where no heading is looked at. Sectors are those that are milder.");

        bool IsHarder(double z)
        {
            const double same = 1 + 1e-9;
            return Profile.PeakPressureSi(z) > same * whole.PeakPressureSi(z) || Profile.MeanSpeedSi(z) > same * whole.MeanSpeedSi(z);
        }
    }
}
