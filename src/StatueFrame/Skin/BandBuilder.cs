using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>Cuts a skin into bands.</summary>
internal static class BandBuilder
{
    /// <summary>How far, in meters, the outermost band edges may lie from the end stations that they mean.</summary>
    public const double EdgeTolerance = 1e-6;

    /// <summary>The bands from the lowest up. The skin must have passed <see cref="Skin.Validate"/>.</summary>
    public static SkinBand[] Bands(Skin skin)
    {
        var slabs = new SkinSlab[skin.Stations.Count - 1];
        PlanCurve above = skin.Stations[0].Outline.Curve();
        for (int i = 0; i < slabs.Length; i++)
        {
            PlanCurve below = above;
            above = skin.Stations[i + 1].Outline.Curve();
            slabs[i] = SkinSlab.Between(skin.Stations[i], below, skin.Stations[i + 1], above, skin);
        }
        double[] edges = Edges(skin);
        var bands = new SkinBand[edges.Length - 1];
        for (int i = 0; i < bands.Length; i++)
            bands[i] = Band(skin, i, Slices(slabs, edges[i], edges[i + 1]), skin.ClosedTop && i == bands.Length - 1);
        return bands;
    }

    private static double[] Edges(Skin skin)
    {
        double[] stations = [.. skin.Stations.Select(s => s.Elevation.Meters)];
        if (skin.BandEdges is null)
            return stations;
        double[] edges = [.. skin.BandEdges.Select(e => e.Meters)];
        edges[0] = stations[0];
        edges[^1] = stations[^1];
        return edges;
    }

    private static List<SkinSlab> Slices(SkinSlab[] slabs, double bottom, double top)
    {
        var slices = new List<SkinSlab>();
        foreach (SkinSlab slab in slabs)
        {
            double from = Math.Max(bottom, slab.Lower.Z), to = Math.Min(top, slab.Upper.Z);
            if (from < to)
                slices.Add(slab.Slice(from, to));
        }
        return slices;
    }

    private static SkinBand Band(Skin skin, int index, List<SkinSlab> slabs, bool closed)
    {
        SkinSection lower = slabs[0].Lower, upper = slabs[^1].Upper;
        double middle = 0.5 * (lower.Z + upper.Z);
        SkinSection mid = slabs.First(s => middle <= s.Upper.Z).At(middle);
        var shell = new ShellMoments(new Vector3D(mid.Curve.CentroidX, mid.Curve.CentroidY, middle),
            skin.Material.Density.KilogramsPerCubicMeter, skin.ArmatureMass.KilogramsPerSquareMeter);
        var wind = new WindSection[2 * slabs.Count];
        double taper = 0;
        for (int i = 0; i < slabs.Count; i++)
        {
            SkinSlab slab = slabs[i];
            shell.AddWall(slab);
            taper += Math.Abs(slab.Upper.Curve.Area - slab.Lower.Curve.Area);
            double offset = 0.5 / Math.Sqrt(3);
            wind[2 * i] = new WindSection(slab, 0.5 - offset, 0.5 * slab.Height);
            wind[2 * i + 1] = new WindSection(slab, 0.5 + offset, 0.5 * slab.Height);
        }
        if (closed)
            shell.AddCap(upper);
        double? own = skin.BandForceCoefficients.FirstOrDefault(c => c.Band == index + 1)?.Value;
        ForceCoefficientTable? ownTable = skin.BandHeadingCoefficients.FirstOrDefault(c => c.Band == index + 1)?.Table;
        return new SkinBand
        {
            Name = $"band {index + 1}",
            Index = index,
            Bottom = lower.Z,
            Top = upper.Z,
            OutlineArea = shell.OutlineArea,
            CapArea = closed ? upper.Curve.Area : 0,
            SheetArea = shell.SheetArea,
            Mass = shell.Mass,
            Centroid = shell.Centroid,
            Inertia = shell.Inertia,
            ForceCoefficient = own ?? (ownTable is null ? skin.ForceCoefficient : null),
            HeadingCoefficients = ownTable ?? (own is null ? skin.HeadingCoefficients : null),
            BottomOutline = lower.Curve,
            MidOutline = mid.Curve,
            TopOutline = upper.Curve,
            MidThickness = mid.Thickness,
            WindSections = wind,
            Slabs = slabs,
            TaperArea = taper,
        };
    }
}
