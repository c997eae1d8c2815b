using System.Globalization;
using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>The geometry of rings of standoffs: where each bar's ends are.</summary>
/// <remarks>Safe to call from any number of threads.</remarks>
internal static class RingLayout
{
    /// <summary>
    /// Lays out an even ring. The first bar that cannot be laid is added to <paramref name="v"/>, the validator of the
    /// ring, and no bars are returned: the others mostly fail for the same reason.
    /// </summary>
    public static BarPlacement[] Place(EvenRing ring, in RingSite site, Validator v)
    {
        if (ring.Length is null && site.Tower is null)
        {
            v.Add(nameof(EvenRing.Length), "is needed, as the tower is given by its stiffness and has no outline", "Give the bars' Length.");
            return [];
        }
        var bars = new BarPlacement[ring.Count];
        for (int k = 0; k < bars.Length; k++)
        {
            if (Lay(ring, k, site, v) is not { } bar)
                return [];
            bars[k] = bar;
        }
        return bars;
    }

    /// <summary>
    /// Places the bars of an explicit ring; the skin's normal is taken at the nearest point of its outline. Bars that end
    /// far from it are added to <paramref name="v"/>, and then no bars are returned.
    /// </summary>
    public static BarPlacement[] Place(ExplicitRing ring, in RingSite site, Validator v)
    {
        double farthest = 0.5 + 0.25 * Math.Sqrt(site.Skin.Area);
        bool allReach = true;
        var bars = new BarPlacement[ring.Bars.Count];
        for (int k = 0; k < bars.Length; k++)
        {
            StandoffBar bar = ring.Bars[k];
            Vector3D skinEnd = bar.SkinEnd.Meters;
            (double position, Vector3D outward, double gap) = Nearest(site.Skin, skinEnd.X, skinEnd.Y);
            if (gap > farthest)
            {
                v.At(nameof(ExplicitRing.Bars), k).Add(nameof(StandoffBar.SkinEnd), string.Create(CultureInfo.InvariantCulture, $"lies {gap:g4} m off the outline of the skin"), "Place it on the skin, in the axes of the body that the ring belongs to.");
                allReach = false;
            }
            bars[k] = BarPlacement.Between(bar.TowerEnd.Meters, skinEnd, outward, position, bar.Standoff);
        }
        return allReach ? bars : [];
    }

    private static BarPlacement? Lay(EvenRing ring, int k, in RingSite site, Validator v)
    {
        double angle = ring.FirstAngle.Radians + 2 * Math.PI * k / ring.Count;
        (double rayY, double rayX) = Math.SinCos(angle);
        (double reach, double nx, double ny, double position) = site.Skin.Cast(site.CenterX, site.CenterY, rayX, rayY);
        if (!(nx * rayX + ny * rayY > 0))
        {
            v.Add(nameof(EvenRing.FirstAngle), $"bar {k} finds no skin from the tower's center outward", "The tower's center must lie inside the skin at this height.");
            return null;
        }
        (double x, double y) = (site.CenterX + reach * rayX, site.CenterY + reach * rayY);
        (double sin, double cos) = Math.SinCos(ring.Lay.Radians);
        (double dx, double dy) = (-cos * nx - sin * ny, -cos * ny + sin * nx);
        double rise = ring.Rise.Meters;
        if (PlanLength(ring, k, rise, x, y, dx, dy, site.Tower, v) is not { } run)
            return null;
        if (!ring.Standoff.ValidateLength(v, nameof(EvenRing.Length), $"bar {k}", Math.Sqrt(run * run + rise * rise)))
            return null;
        return BarPlacement.Between(
            new Vector3D(x + run * dx, y + run * dy, site.SkinElevation - rise), new Vector3D(x, y, site.SkinElevation),
            new Vector3D(nx, ny, 0), position, ring.Standoff);
    }

    /// <summary>The bar's length in plan: from the length given and the rise, or to where the bar meets the tower.</summary>
    private static double? PlanLength(EvenRing ring, int k, double rise, double x, double y, double dx, double dy, PlanCurve? tower, Validator v)
    {
        if (ring.Length is { } length)
            return Math.Sqrt((length.Meters - rise) * (length.Meters + rise));
        (double run, double nx, double ny, _) = tower!.Cast(x, y, dx, dy);
        string bar = string.Create(CultureInfo.InvariantCulture, $"bar {k} at lay {ring.Lay.Degrees:g4}°");
        if (double.IsNaN(run))
            v.Add(nameof(EvenRing.Length), $"{bar} misses the tower", "Give Length.");
        else if (nx * dx + ny * dy > 0)
            v.Add(nameof(EvenRing.Length), $"{bar} starts inside the tower's outline", "The skin must lie outside the tower at this height; if it does not, give Length.");
        else
            return run;
        return null;
    }

    /// <summary>The point of an outline nearest to (x, y): its position along the outline, the outward normal there, and how far off it is.</summary>
    private static (double Position, Vector3D Outward, double Gap) Nearest(PlanCurve outline, double x, double y)
    {
        ReadOnlySpan<double> X = outline.X, Y = outline.Y;
        double least = double.PositiveInfinity, position = 0, along = 0;
        Vector3D outward = Vector3D.UnitX;
        for (int i = 0; i < X.Length; i++)
        {
            int j = i + 1 == X.Length ? 0 : i + 1;
            double ex = X[j] - X[i], ey = Y[j] - Y[i], length = Math.Sqrt(ex * ex + ey * ey);
            if (length == 0)
                continue;
            double s = Math.Clamp(((x - X[i]) * ex + (y - Y[i]) * ey) / length, 0, length);
            double gapX = X[i] + s / length * ex - x, gapY = Y[i] + s / length * ey - y;
            double gap = gapX * gapX + gapY * gapY;
            if (gap < least)
                (least, position, outward) = (gap, along + s, new Vector3D(ey / length, -ex / length, 0));
            along += length;
        }
        return (position, outward, Math.Sqrt(least));
    }
}
