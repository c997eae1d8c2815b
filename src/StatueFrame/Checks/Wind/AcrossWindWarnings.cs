using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Where a statue leaves the limits of the standard for wind across it, each with clause and reason.</summary>
internal static class AcrossWindWarnings
{
    private const double NearbyWidths = 15;

    public static IEnumerable<string> Of(StatueModel model, IEnumerable<AcrossWindBody> bodies, IEnumerable<BodySection> sections)
    {
        BodyModel trunk = model.Bodies[0];
        foreach (AcrossWindBody across in bodies)
        {
            BodyModel body = across.Body;
            if (body != trunk && body.Bands.Length > 0 && trunk.Bands.Length > 0 && Nearby(trunk, body) is { } near)
                yield return near;
            if (sections.Any(s => s.Body == body.Name && s.Section is null && s.Shape != BluffShape.SharpEdged) && Ovalling(across) is { } oval)
                yield return oval;
        }
    }

    /// <summary>Vortices of one body strike another within 15 widths.</summary>
    private static string? Nearby(BodyModel trunk, BodyModel limb)
    {
        Vector3D middle = limb.BandPlaces[limb.BandPlaces.Length / 2].Center;
        int nearest = Enumerable.Range(0, trunk.Bands.Length).MinBy(i => Math.Abs(trunk.BandPlaces[i].Center.Z - middle.Z));
        Vector3D away = middle - trunk.BandPlaces[nearest].Center, inPlan = trunk.Axes.Axes.ToLocal(new Vector3D(away.X, away.Y, 0));
        double a = inPlan.Length, b = trunk.Bands[nearest].ProjectedWidth(a > 0 ? inPlan : Vector3D.UnitX);
        return a < NearbyWidths * b
            ? Invariant($"EN 1991-1-4, E.1.5.2.7 and E.3: {limb.Name} is {a / b:0.0} widths from the trunk, nearer than {NearbyWidths}; vortices of the one strike the other, and interference galloping may occur; the values for bodies alone do not cover it.")
            : null;
    }

    private static string? Ovalling(AcrossWindBody across)
    {
        BodyModel body = across.Body;
        for (int i = 0; i < body.Bands.Length && body.Skin is not null; i++)
        {
            SkinBand band = body.Bands[i];
            var width = Length.FromMeters(0.5 * (band.ProjectedWidth(Vector3D.UnitX) + band.ProjectedWidth(Vector3D.UnitY)));
            Frequency n0 = ShellOvalling.LowestFrequency(
                Length.FromMeters(band.MidThickness), body.Skin.Material.YoungsModulus, AreaDensity.FromKilogramsPerSquareMeter(band.Mass / band.SheetArea), width);
            double v = ShellOvalling.CriticalSpeed(n0, width).MetersPerSecond;
            if (v <= VortexShedding.RangeFactor * across.SpeedAt(body.BandPlaces[i].Center.Z))
                return Invariant($"EN 1991-1-4, E.1.3.1 (2): as a bare shell {body.BandName(i)} ovals at {n0.Hertz:0.00} Hz, critical at {v:0.0} m/s; armature and standoffs stiffen it, and the standard has no procedure for it.");
        }
        return null;
    }
}
