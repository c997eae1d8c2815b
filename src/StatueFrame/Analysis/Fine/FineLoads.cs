using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The loads of a load case on a fine model. Levels bear what they bear in the other model; what a band bears there is laid on its
/// triangles, and what its sum and its moment still lack is spread as inertia would be, so that both models carry the same.
/// </summary>
internal static class FineLoads
{
    /// <summary>Fills in the loads of one heading, or of none.</summary>
    public static Loads Fill(FineModel model, Situation situation, Angle? heading, HeatField? heat, Span<double> nodal)
    {
        StatueModel reduced = model.Reduced;
        var theirs = new double[reduced.Frame.FreedomCount];
        Loads loads = Loads.Of(reduced, situation, heading, null, theirs);
        theirs.CopyTo(nodal);
        double ice = situation.Ice is null ? 0 : 1;
        var own = new double[3 * Frame.NodeSize];
        foreach (BandMesh band in model.Bands)
        {
            Place place = band.Body.BandPlaces[band.Band];
            Span<double> theirBand = nodal.Slice(place.Node * Frame.NodeSize, Frame.NodeSize);
            Vector3D force = new(theirBand[0], theirBand[1], theirBand[2]), moment = new(theirBand[3], theirBand[4], theirBand[5]);
            theirBand.Clear();
            // The bands beside it share its outermost nodes.
            (Vector3D before, Vector3D turningBefore) = band.Sum(nodal, place.NodeAt);
            Weigh(band, loads, ice, nodal, own);
            Blow(band, loads, nodal, own);
            foreach (FineBar bar in model.Bars)
            {
                if (bar.Ring.Band == band.Band && bar.Ring.End == place.Node)
                    BandMesh.Add(nodal, bar.End, new Vector3D(0, 0, -loads.WeightFactor * SelfWeight.Gravity * 0.5 * bar.Bar.Mass) + Hung(reduced, loads, bar));
            }
            (Vector3D present, Vector3D turning) = band.Sum(nodal, place.NodeAt);
            band.Spread(force - (present - before), moment - (turning - turningBefore), place.NodeAt, nodal);
        }
        if (heat is not null)
            AddHeat(model, heat, nodal, own);
        return loads;
    }

    /// <summary>What hangs on a bar: fittings by their mass, imposed loads as they are.</summary>
    private static Vector3D Hung(StatueModel reduced, Loads loads, FineBar bar) =>
        new Vector3D(0, 0, -loads.WeightFactor * SelfWeight.Gravity * (reduced.StripMass(bar.Bar) - bar.Bar.Share.Mass)) + loads.OnBars.GetValueOrDefault(bar.Bar);

    private static void Weigh(BandMesh band, Loads loads, double ice, Span<double> nodal, double[] own)
    {
        double area = band.Triangles.Sum(t => t.Area), icePerArea = ice * loads.BandIceWeights[band.BandInStatue] / area;
        foreach (ShellElement triangle in band.Triangles)
        {
            Array.Clear(own);
            triangle.AddSurfaceLoad(new Vector3D(0, 0, -loads.WeightFactor * SelfWeight.Gravity * triangle.Section.Mass - icePerArea), own);
            Scatter(triangle, own, nodal);
        }
    }

    /// <summary>The wind on the triangles that face it, by the area that they show.</summary>
    private static void Blow(BandMesh band, Loads loads, Span<double> nodal, double[] own)
    {
        Vector3D pressure = loads.BandPressures[band.BandInStatue];
        if (pressure == Vector3D.Zero)
            return;
        double shown = band.Triangles.Sum(t => t.Area * Facing(t)), expected = band.Body.Bands[band.Band].Exposure(band.Body.Axes.Axes.ToLocal(loads.WindDirection)).ProjectedArea;
        if (!(shown > 0))
            return;
        foreach (ShellElement triangle in band.Triangles)
        {
            double facing = Facing(triangle);
            if (facing <= 0)
                continue;
            Array.Clear(own);
            triangle.AddSurfaceLoad(facing * expected / shown * pressure, own);
            Scatter(triangle, own, nodal);
        }

        double Facing(ShellElement triangle) => Math.Max(0, -triangle.Axes.Z.Dot(loads.WindDirection));
    }

    private static void AddHeat(FineModel model, HeatField heat, Span<double> nodal, double[] own)
    {
        foreach (BandMesh band in model.Bands)
        {
            double alpha = HeatField.ExpansionOf(band.Body);
            foreach (ShellElement triangle in band.Triangles)
            {
                Array.Clear(own);
                triangle.AddStrainLoad(alpha * heat.SkinChange(triangle.Center, OutwardOf(band, triangle)), 0, own);
                Scatter(triangle, own, nodal);
            }
        }
        Span<double> load = stackalloc double[FrameElement.Size];
        foreach (FineBar bar in model.Bars)
        {
            (Vector3D move, Vector3D turn) = bar.Freely(heat);
            load.Clear();
            bar.Placed.AddLoad(move, load, turn);
            for (int i = 0; i < load.Length; i++)
                nodal[(i < Frame.NodeSize ? bar.Start : bar.End) * Frame.NodeSize + i % Frame.NodeSize] += load[i];
        }
    }

    /// <summary>The outward normal of a triangle across its body's axis, as heat is given for.</summary>
    internal static Vector3D OutwardOf(BandMesh band, ShellElement triangle)
    {
        Vector3D axis = band.Body.Axes.Axes.Z, across = triangle.Axes.Z - triangle.Axes.Z.Dot(axis) * axis;
        return across.Length > 1e-9 ? across.Normalized() : triangle.Axes.Z;
    }

    private static void Scatter(ShellElement triangle, double[] own, Span<double> nodal)
    {
        for (int i = 0; i < own.Length; i++)
            nodal[triangle.Nodes[i / Frame.NodeSize] * Frame.NodeSize + i % Frame.NodeSize] += own[i];
    }
}
