using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// What the heat of a situation would do to a statue that does not resist: the movements of levels, of the skin ends of
/// bars, and of fields of skin along their axis. The frame's displacements are counted from there.
/// </summary>
/// <remarks>Immutable and safe to share between threads. SI units, factors included.</remarks>
internal sealed class HeatField
{
    private const int Directions = 16;

    private readonly FactoredAction[] actions;
    private readonly StatueModel model;
    private readonly Dictionary<RingElement, BarHeat[]> bars = [];
    private readonly Dictionary<SkinField, double> offsets = [];

    private HeatField(StatueModel model, FactoredAction[] actions)
    {
        (this.model, this.actions) = (model, actions);
        Tower = new TowerGrowth(model, actions);
        foreach (BodyModel body in model.Bodies)
            AddBody(body);
    }

    /// <summary>The heat of a situation; null when it has none.</summary>
    public static HeatField? Of(StatueModel model, Situation situation)
    {
        FactoredAction[] heat = [.. situation.Actions.Where(a => a.Action is TemperatureAction)];
        return heat.Length == 0 ? null : new HeatField(model, heat);
    }

    public TowerGrowth Tower { get; }

    /// <summary>The fields of skin of all bodies.</summary>
    public IEnumerable<SkinField> Fields => offsets.Keys;

    public BarHeat At(RingElement ring, int bar) => bars[ring][bar];

    /// <summary>How much warmer the skin is at a point, K.</summary>
    public double SkinChange(Vector3D at, Vector3D outward)
    {
        double T = 0;
        foreach (FactoredAction action in actions)
            T += action.Factor * ((TemperatureAction)action.Action).SkinAt(at.Z, outward);
        return T;
    }

    /// <summary>How much warmer tower and inner structure are, K.</summary>
    public double TowerChange => actions.Sum(a => a.Factor * ((TemperatureAction)a.Action).TowerChange.Kelvins);

    /// <summary>
    /// The skin's change on the side of a band where its strain differs most from that of the tower, K, and the tower's
    /// expansion beside it, 1/K.
    /// </summary>
    public (double Skin, double TowerExpansion) MostHeld(BodyModel body, int band)
    {
        Vector3D center = body.BandPlaces[band].Center;
        double alpha = ExpansionOf(body), most = -1;
        (double Skin, double Tower) held = default;
        foreach (double tower in TowerExpansionsAt(body, body.Bands[band]))
        {
            for (int i = 0; i < Directions; i++)
            {
                (double sin, double cos) = Math.SinCos(2 * Math.PI * i / Directions);
                double there = SkinChange(center, body.Axes.Axes.ToGlobal(new Vector3D(cos, sin, 0))), apart = Math.Abs(alpha * there - tower * TowerChange);
                if (apart > most)
                    (held, most) = ((there, tower), apart);
            }
        }
        return held;
    }

    /// <summary>The expansions, 1/K, of the segments beside a band; beyond the tower's ends, that of the nearest.</summary>
    private IEnumerable<double> TowerExpansionsAt(BodyModel body, SkinBand band)
    {
        Tower tower = body.Tower;
        var heat = (TemperatureAction)actions[0].Action;
        int last = tower.Segments.Count - 1;
        return Enumerable.Range(0, last + 1)
            .Where(i => (i == 0 || tower.Levels[i].Center.Z < band.Top) && (i == last || tower.Levels[i + 1].Center.Z > band.Bottom))
            .Select(i => TowerGrowth.ExpansionOf(tower.Segments[i], heat));
    }

    /// <summary>The temperature of a band's skin beyond that at which it would be as long as the tower, on its worst side, K.</summary>
    public double MostBeyondTower(BodyModel body, int band)
    {
        (double skin, double towerExpansion) = MostHeld(body, band);
        double alpha = ExpansionOf(body);
        return alpha > 0 ? skin - towerExpansion * TowerChange / alpha : 0;
    }

    /// <summary>Adds the loads, in balance among themselves, by which the heat drives the frame.</summary>
    public void AddLoads(Span<double> nodal)
    {
        Span<double> load = stackalloc double[FrameElement.Size];
        foreach ((RingElement ring, _) in model.Rings)
        {
            load.Clear();
            foreach (BarModel bar in ring.Bars)
                bar.Bar.AddLoad(bars[ring][bar.Index].Move, load, bars[ring][bar.Index].Turn);
            Scatter(ring, load, nodal);
        }
        foreach (BodyModel body in model.Bodies.Where(b => b.HasSeams))
        {
            var nodes = body.BandPlaces.Select(p => p.Node).ToHashSet();
            foreach (SeamElement seam in model.Frame.Elements.ToArray().OfType<SeamElement>().Where(s => nodes.Contains(s.Start)))
            {
                load.Clear();
                (double[] strain, double mean) = StrainRound(body, seam.Edge, seam.Elevation);
                seam.AddLoad(strain, mean, load);
                Scatter(seam, load, nodal);
            }
        }
    }

    /// <summary>Adds the free movements of the levels to a full vector of displacements.</summary>
    public void AddMovements(Span<double> displacements)
    {
        foreach (BodyModel body in model.Bodies)
        {
            for (int i = 0; i < body.Levels.Length; i++)
            {
                Place place = body.Levels[i];
                // A limb that is joined rigidly shares the node of its root.
                if (i == 0 && body.Prefix.Length > 0 && body.Tower.Base.IsFixed)
                    continue;
                (Vector3D move, Vector3D turn, _) = Tower.At(body.Prefix + body.Tower.Levels[i].Name);
                move += turn.Cross(place.NodeAt - place.Center);
                Span<double> u = displacements.Slice(place.Node * Frame.NodeSize, Frame.NodeSize);
                (u[0], u[1], u[2]) = (u[0] + move.X, u[1] + move.Y, u[2] + move.Z);
                (u[3], u[4], u[5]) = (u[3] + turn.X, u[4] + turn.Y, u[5] + turn.Z);
            }
        }
    }

    /// <summary>
    /// The greatest closing or opening of the joint between two neighboring fields round the plan, when the skin is free
    /// but for the balance of each field, m; closing is positive.
    /// </summary>
    public double Closing(SkinField below, SkinField above)
    {
        double worst = 0;
        for (int i = 0; i < Directions; i++)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * i / Directions);
            Vector3D outward = below.Body.Axes.Axes.ToGlobal(new Vector3D(cos, sin, 0));
            double closing = Growth(below, below.Top, outward) - offsets[below] + offsets[above];
            if (Extremes.Exceeds(Math.Abs(closing), Math.Abs(worst)))
                worst = closing;
        }
        return worst;
    }

    private void AddBody(BodyModel body)
    {
        if (body.Bands.Length == 0)
            return;
        foreach (RingElement ring in body.Rings)
        {
            (double[] strain, double mean) = StrainRound(body, ring.Outline, body.Axes.ToLocal(ring.Bars[0].Bar.Place.SkinEnd).Z);
            bool even = Array.TrueForAll(strain, e => e == strain[0]) || ring.Outline.Area <= 0;
            HeatedRing? shape = even ? null : new HeatedRing(ring.Outline, Array.ConvertAll(strain, e => e - mean));
            bars[ring] = Array.ConvertAll(ring.Bars, bar => OnRing(body, ring, bar, mean, shape));
        }
        foreach (SkinField field in SkinField.Of(body))
            Balance(field);
    }

    /// <summary>What a bar meets on a ring that is free to move as a whole; alone, what it meets across the axis.</summary>
    /// <param name="body">The body.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="bar">The bar.</param>
    /// <param name="mean">The skin's mean strain round the ring.</param>
    /// <param name="shape">What the strain beyond the mean makes of the ring; null for nothing.</param>
    private BarHeat OnRing(BodyModel body, RingElement ring, BarModel bar, double mean, HeatedRing? shape)
    {
        BarPlacement place = bar.Bar.Place;
        Vector3D p = place.SkinEnd, axis = body.Axes.Axes.Z;
        (Vector3D bent, double bentTurn) = shape?.At(place.Position) ?? default;
        Vector3D arm = p - body.BandPlaces[ring.Band].Center;
        Vector3D skin = mean * arm + (ExpansionOf(body) * SkinChange(p, place.Outward) - mean) * arm.Dot(axis) * axis + body.Axes.Axes.ToGlobal(bent);
        (Vector3D own, Vector3D carried, Vector3D turn) = BesideSkin(ring, bar);
        return new BarHeat(skin - own - carried, bentTurn * axis - turn, skin - skin.Dot(axis) * axis - own - carried.Dot(axis) * axis);
    }

    /// <summary>How far heat would move a bar's skin end by the bar's own growth and as its level carries it, and how it would turn it.</summary>
    public (Vector3D Own, Vector3D Carried, Vector3D Turn) BesideSkin(RingElement ring, BarModel bar)
    {
        BarPlacement place = bar.Bar.Place;
        (Vector3D move, Vector3D turn, double towerStrain) = Tower.At(ring.Level);
        Vector3D level = model.PlaceOf(ring.Level).Center, p = place.SkinEnd, t = place.TowerEnd;
        double T = SkinChange(p, place.Outward);
        Vector3D own = towerStrain * (t - level) + place.Standoff.Material.ThermalExpansion.PerKelvin * 0.5 * (T + TowerChange) * (p - t);
        return (own, move + turn.Cross(p - level), turn);
    }

    /// <summary>The skin's free strain on each edge of an outline across a body's axis, and its mean.</summary>
    private (double[] PerEdge, double Mean) StrainRound(BodyModel body, PlanCurve outline, double z)
    {
        double alpha = ExpansionOf(body), sum = 0, perimeter = 0;
        var strain = new double[outline.Count];
        for (int i = 0; i < strain.Length; i++)
        {
            (Vector3D middle, Vector3D outward, double length) = body.Axes.Edge(outline, i, z);
            strain[i] = alpha * SkinChange(middle, outward);
            (sum, perimeter) = (sum + strain[i] * length, perimeter + length);
        }
        return (strain, perimeter > 0 ? sum / perimeter : strain[0]);
    }

    /// <summary>Adds the growth of a field along the axis to its bars, from where their forces along the axis, each alone, are in balance.</summary>
    private void Balance(SkinField field)
    {
        Vector3D axis = field.Body.Axes.Axes.Z;
        RingElement[] rings = [.. field.Body.Rings.Where(r => r.Band >= field.First && r.Band <= field.Last)];
        double stiff = 0, force = 0, plain = 0;
        int count = 0;
        Span<double> d = stackalloc double[Frame.NodeSize], f = stackalloc double[FrameElement.Size];
        foreach (RingElement ring in rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                BarPlacement place = bar.Bar.Place;
                double grown = Growth(field, field.Body.Axes.ToLocal(place.SkinEnd).Z, place.Outward);
                BarHeat heat = bars[ring][bar.Index];
                heat = bars[ring][bar.Index] = heat with { Alone = heat.Alone + grown * axis };
                force += AxialForce(bar, heat.Alone, axis, d, f);
                stiff += AxialForce(bar, axis, axis, d, f);
                (plain, count) = (plain + heat.Alone.Dot(axis), count + 1);
            }
        }
        double offset = stiff > 0 ? force / stiff : count > 0 ? plain / count : 0;
        offsets[field] = offset;
        foreach (RingElement ring in rings)
        {
            for (int i = 0; i < ring.Bars.Length; i++)
                bars[ring][i] = bars[ring][i] with { Alone = bars[ring][i].Alone - offset * axis };
        }
    }

    /// <summary>How far a point of a field grows along the axis from the field's lower edge.</summary>
    private double Growth(SkinField field, double z, Vector3D outward)
    {
        double sum = 0;
        for (int i = field.First; i <= field.Last; i++)
        {
            SkinBand band = field.Body.Bands[i];
            double bottom = band.Bottom, top = i == field.Last ? z : Math.Min(z, band.Top);
            sum += (top - bottom) * SkinChange(field.Body.Axes.ToGlobal(new Vector3D(0, 0, 0.5 * (bottom + top))), outward);
            if (z <= band.Top)
                break;
        }
        return ExpansionOf(field.Body) * sum;
    }

    private static double AxialForce(BarModel bar, Vector3D move, Vector3D axis, Span<double> d, Span<double> f)
    {
        Vector3D local = bar.Bar.Place.Axes.ToLocal(move);
        d.Clear();
        (d[0], d[1], d[2]) = (local.X, local.Y, local.Z);
        bar.Bar.Stiffness.Forces(d, f);
        return bar.Bar.Place.Axes.ToGlobal(new Vector3D(f[6], f[7], f[8])).Dot(axis);
    }

    internal static double ExpansionOf(BodyModel body) => body.Skin!.Material.ThermalExpansion.PerKelvin;

    private static void Scatter(FrameElement element, ReadOnlySpan<double> load, Span<double> nodal)
    {
        for (int i = 0; i < FrameElement.Size; i++)
            nodal[(i < Frame.NodeSize ? element.Start : element.End) * Frame.NodeSize + i % Frame.NodeSize] += load[i];
    }
}
