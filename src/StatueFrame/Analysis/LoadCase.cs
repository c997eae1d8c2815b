using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>One load case of a situation and what it does: the movement of points, the base's reactions, the bars' forces.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class LoadCase
{
    private readonly StatueModel model;
    private readonly ReadOnlyMemory<double> displacements;
    private readonly Vector3D[] bandPressures;
    private readonly double[] bandIceWeights;
    private readonly Dictionary<BarModel, Vector3D> hanging;
    private readonly Dictionary<SegmentModel, FrameElement>? acting;
    private readonly Resultant resultant;
    private readonly Vector3D wind;
    private readonly HeatField? heat;
    private readonly ReadOnlyMemory<double> moved;
    private readonly Loads loads;
    private readonly Lazy<(FactoredAction Action, LoadCase UpTo)[]> builtUp;

    internal LoadCase(
        StatueModel model, Loads loads, ReadOnlyMemory<double> displacements, Dictionary<SegmentModel, FrameElement>? acting)
    {
        this.model = model;
        this.loads = loads;
        this.displacements = displacements;
        this.acting = acting;
        (Heading, resultant, wind, bandPressures) = (loads.Heading, loads.Resultant, loads.WindForce, loads.BandPressures);
        (bandIceWeights, hanging) = (loads.BandIceWeights, loads.OnBars);
        WindDirection = loads.WindDirection;
        WeightFactor = loads.WeightFactor;
        Wind = loads.Wind;
        State = new DemandState(string.Join(", ", new[] { Heading is null ? "" : Headings.Describe(Heading), model.Variant, loads.Label }.Where(part => part.Length > 0)), this);
        builtUp = new Lazy<(FactoredAction, LoadCase)[]>(BuildUp);
        heat = loads.Heat;
        moved = heat is null ? displacements : Moved(heat, displacements.Span);
    }

    /// <summary>The plan angle that the wind blows towards; null without wind.</summary>
    public Angle? Heading { get; }

    /// <summary>The model it is of.</summary>
    internal StatueModel Model => model;

    /// <summary>The wind of its heading with its factor; null without.</summary>
    internal FactoredAction? Wind { get; }

    /// <summary>What tells it from the others of its situation, in words: the wind's heading, and what model and weights take; empty without.</summary>
    internal string When => State.When;

    /// <summary>The state of what acts steadily alone.</summary>
    internal DemandState State { get; }

    /// <summary>
    /// The actions one after the other, the wind last, each with the load case of those up to it; empty where the statue does not stand
    /// under some of them alone, as with braces that go slack.
    /// </summary>
    internal IReadOnlyList<(FactoredAction Action, LoadCase UpTo)> BuiltUp => builtUp.Value;

    /// <summary>The total wind force on skin and bare tower, factors included.</summary>
    public Force WindForce => Force.FromNewtons(wind.Length);

    /// <summary>The forces and moments that the statue puts on its base, about the base's center.</summary>
    public BaseReaction Base => new(resultant);

    /// <summary>The same as numbers.</summary>
    internal Resultant Resultant => resultant;

    /// <summary>The displacements that go with forces: without the free growth of the tower with heat.</summary>
    internal ReadOnlySpan<double> Displacements => displacements.Span;

    /// <summary>The displacements as they are seen.</summary>
    internal ReadOnlySpan<double> Movements => moved.Span;

    internal Vector3D WindDirection { get; }

    internal double WeightFactor { get; }

    private (FactoredAction, LoadCase)[] BuildUp()
    {
        FactoredAction[] steady = [.. loads.Situation.Actions.Where(a => a.Action is not (ShockAction or EarthquakeAction)).OrderBy(a => a.Action is WindAction)];
        try
        {
            return [.. steady.Select((action, i) =>
                (action, i == steady.Length - 1 ? this : new Response(model, loads.Situation with { Actions = [.. steady.Take(i + 1)] }, loads.Label).Cases[0]))];
        }
        catch (FrameException)
        {
            return [];
        }
    }

    /// <summary>The movement of a named point.</summary>
    /// <param name="name">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public Movement Of(string name)
    {
        NamedPoint point = model.Statue.Points.FirstOrDefault(p => p.Name == name)
            ?? throw new ArgumentException($"The statue has no point \"{name}\". {NearNames.Closest(name, model.Statue.Points.Select(p => p.Name))}", nameof(name));
        (Vector3D displacement, Vector3D rotation) = model.Motion(moved.Span, model.PlaceOf(point.On), model.PositionOf(point));
        return new Movement(name, Heading, displacement, rotation);
    }

    /// <summary>The movement of the center of a level or band.</summary>
    /// <param name="name">Its name, as in "L7", "band 3" or "wing/band 2".</param>
    /// <exception cref="ArgumentException">The statue has no such level or band.</exception>
    public Movement OfPart(string name)
    {
        if (!new StatueNames(model.Statue).Has(name))
            throw new ArgumentException($"The statue has no level or band \"{name}\". {new StatueNames(model.Statue).Suggest(name)}", nameof(name));
        Place place = model.PlaceOf(name);
        (Vector3D displacement, Vector3D rotation) = model.Motion(moved.Span, place, place.Center);
        return new Movement(name, Heading, displacement, rotation);
    }

    /// <summary>The wind force on every band of skin; all zero without wind.</summary>
    public IReadOnlyList<BandWindForce> BandWindForces()
    {
        var all = new BandWindForce[model.BandCount];
        Vector3D across = Vector3D.UnitZ.Cross(WindDirection);
        for (int i = 0; i < all.Length; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            Vector3D local = body.Axes.Axes.ToLocal(WindDirection);
            WindExposure exposure = body.Bands[index].Exposure(local);
            Vector3D force = exposure.ProjectedArea * bandPressures[i];
            Vector3D center = body.Axes.ToGlobal(exposure.PressureCenter);
            var wind = Wind?.Action as WindAction;
            WindProfile? profile = wind?.ProfileTowards(Heading!.Value.Radians);
            double reference = Math.Max(0, model.Statue.BaseAboveGround.Meters + (profile is null ? center.Z : body.ReferenceElevation(profile, index, center)));
            all[i] = new BandWindForce
            {
                Band = body.BandName(index),
                Elevation = Length.FromMeters(center.Z),
                ReferenceHeight = Length.FromMeters(reference),
                LoadFactor = wind is null ? 0 : Wind!.Factor * wind.MoreOffCenter(body.Bands[index], local),
                GustFactor = wind?.GustFactorOf(i) ?? 0,
                PeakPressure = Pressure.FromPascals(profile?.PeakPressureSi(reference) ?? 0),
                Coefficient = wind is not null && exposure.ProjectedArea > 0
                    ? wind.AreasOf(body.Bands[index], local, Heading!.Value.Radians, exposure.ProjectedArea).Along / exposure.ProjectedArea
                    : 0,
                Area = Area.FromSquareMeters(exposure.ProjectedArea),
                Along = Force.FromNewtons(force.Dot(WindDirection)),
                Across = Force.FromNewtons(force.Dot(across)),
            };
        }
        return all;
    }

    /// <summary>The axial force, shear, bending and torsion at both ends of every segment of the tower and of the limbs.</summary>
    public IReadOnlyList<SegmentForces> Segments()
    {
        var all = new List<SegmentForces>();
        foreach (SegmentModel segment in model.Bodies.SelectMany(body => body.Segments))
        {
            (SectionForce bottom, SectionForce top) = SectionForcesOf(segment);
            all.Add(new SegmentForces(segment.Name, Heading, bottom, top));
        }
        return all;
    }

    internal (SectionForce Bottom, SectionForce Top) SectionForcesOf(SegmentModel segment) =>
        segment.SectionForces(acting?.GetValueOrDefault(segment) ?? segment.Element, Displacements, loads.Between(segment));

    /// <summary>The axial force and stress of every lattice member, segment by segment.</summary>
    public IReadOnlyList<MemberForce> LatticeMembers()
    {
        var all = new List<MemberForce>();
        foreach (SegmentModel segment in model.LatticeSegments)
        {
            var axial = new double[segment.Members.Count];
            AxialForces(segment, axial);
            for (int i = 0; i < axial.Length; i++)
                all.Add(ForceOf(segment, i, axial[i]));
        }
        return all;
    }

    /// <summary>The axial forces of a segment's lattice members, N; zero for a tension-only brace that has gone slack.</summary>
    internal void AxialForces(SegmentModel segment, Span<double> axial)
    {
        Span<double> forces = stackalloc double[axial.Length * Analysis.MemberForces.Count];
        MemberForces(segment, forces);
        for (int i = 0; i < axial.Length; i++)
            axial[i] = forces[i * Analysis.MemberForces.Count];
    }

    /// <summary>Axial force, shears and end moments of a segment's lattice members; a tension-only brace that has gone slack carries nothing.</summary>
    /// <param name="segment">The segment.</param>
    /// <param name="forces">Receives <see cref="Analysis.MemberForces.Count"/> values a member.</param>
    internal void MemberForces(SegmentModel segment, Span<double> forces)
    {
        Span<double> u = stackalloc double[FrameElement.Size];
        FrameElement element = acting?.GetValueOrDefault(segment) ?? segment.Element;
        element.Gather(Displacements, u);
        segment.MemberForces(element, u, forces, loads.Between(segment));
        for (int i = 0; segment.IsTensionOnly && i < segment.Members.Count; i++)
        {
            if (segment.Members[i].Pair >= 0 && forces[i * Analysis.MemberForces.Count] < 0)
                forces[i * Analysis.MemberForces.Count] = 0;
        }
    }

    internal MemberForce ForceOf(SegmentModel segment, int member, double axial) => new(
        segment.Name, segment.Members[member].Label, Heading, Force.FromNewtons(axial), Pressure.FromPascals(axial / segment.Members[member].Section.Properties.A));

    /// <summary>The worst of a bar over the bounds on the skin.</summary>
    internal BarState StateOf(RingElement ring, BarModel bar, int bandInStatue)
    {
        Span<double> motion = stackalloc double[Frame.NodeSize], forces = stackalloc double[FrameElement.Size];
        (double b, double t) = (bar.Standoff.Section.Width.Meters, bar.Standoff.Section.Thickness.Meters);
        var worst = new BarState(-1, default, -1, default, true);
        foreach (SkinAssumption skin in SkinBounds.All)
        {
            if (!Find(ring, bar, bandInStatue, skin, motion, forces))
            {
                worst = worst with { StandsAlone = worst.StandsAlone && skin != SkinAssumption.LimpSkin };
                continue;
            }
            if (skin == SkinAssumption.RigidRing)
                bar.Bar.Stiffness.RemoveSlip(motion);
            double stress = BarEnds.Of(forces).NormalStress(b, t), deflection = Math.Sqrt(motion[0] * motion[0] + motion[1] * motion[1] + motion[2] * motion[2]);
            if (Extremes.Exceeds(stress, worst.Stress))
                worst = worst with { Stress = stress, AtStress = skin };
            if (Extremes.Exceeds(deflection, worst.Deflection))
                worst = worst with { Deflection = deflection, AtDeflection = skin };
        }
        return worst;
    }

    /// <summary>The end forces of a bar, in bar axes, under one bound; false when it cannot stand so, or the bound is not for it.</summary>
    internal bool ForcesOf(RingElement ring, BarModel bar, int bandInStatue, SkinAssumption assumption, Span<double> forces)
    {
        Span<double> motion = stackalloc double[Frame.NodeSize];
        return Find(ring, bar, bandInStatue, assumption, motion, forces);
    }

    /// <summary>The end forces of a bar alone under a local pressure on its strip, outward positive, Pa, with weight, ice and heat but no other wind; false when it cannot stand so.</summary>
    internal bool LocalForcesOf(RingElement ring, BarModel bar, int bandInStatue, double pressure, Span<double> forces)
    {
        Span<double> motion = stackalloc double[Frame.NodeSize];
        return UnderLocal(ring, bar, bandInStatue, pressure, motion, forces);
    }

    /// <summary>How far the skin end of a bar under a local pressure comes nearer to the tower, square to the skin, m; zero or more.</summary>
    internal double LocalApproach(RingElement ring, BarModel bar, int bandInStatue, double pressure)
    {
        Span<double> motion = stackalloc double[Frame.NodeSize], forces = stackalloc double[FrameElement.Size];
        return UnderLocal(ring, bar, bandInStatue, pressure, motion, forces) ? Math.Max(0, Towards(bar, motion)) : 0;
    }

    private bool UnderLocal(RingElement ring, BarModel bar, int bandInStatue, double pressure, Span<double> motion, Span<double> forces)
    {
        (BodyModel body, int index) = model.BandAt(bandInStatue);
        SkinBand band = body.Bands[index];
        double area = bar.Share.PartOf(band.Top - band.Bottom) * band.OutlineArea;
        return Alone(ring, bar, WeightOf(bar, bandInStatue) + pressure * area * bar.Bar.Place.Outward, motion, forces);
    }

    private static double Towards(BarModel bar, ReadOnlySpan<double> motion) =>
        -bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Outward).Dot(new Vector3D(motion[0], motion[1], motion[2]));

    /// <summary>The motion of a bar's skin end and its end forces under one bound; the motion holds the slip on a rigid ring alone.</summary>
    private bool Find(RingElement ring, BarModel bar, int bandInStatue, SkinAssumption assumption, Span<double> motion, Span<double> forces)
    {
        if (assumption == SkinAssumption.RigidRing)
        {
            OnRing(ring, bar, motion, forces);
            return true;
        }
        return SkinBounds.FactorOf(assumption, bar) is { } factor && Alone(ring, bar, factor * LimpForce(bar, bandInStatue), motion, forces);
    }

    /// <summary>How far a saddle slides along its free direction under the worse assumption, m; without sign.</summary>
    internal double SlipOf(RingElement ring, BarModel bar)
    {
        Span<double> motion = stackalloc double[Frame.NodeSize], forces = stackalloc double[FrameElement.Size];
        OnRing(ring, bar, motion, forces);
        double asRing = bar.Bar.Stiffness.Slip(motion);
        HeatAlone(ring, bar, motion);
        return Math.Max(Math.Abs(asRing), Math.Abs(bar.Bar.Stiffness.Slip(motion)));
    }

    /// <summary>A bar on its rigid ring: the motion of its skin end in bar axes, slip included, and its end forces.</summary>
    private void OnRing(RingElement ring, BarModel bar, Span<double> motion, Span<double> forces)
    {
        MotionOnRing(ring, bar, motion);
        bar.Bar.Stiffness.Forces(motion, forces);
    }

    private void MotionOnRing(RingElement ring, BarModel bar, Span<double> motion)
    {
        Span<double> u = stackalloc double[FrameElement.Size];
        ring.Gather(Displacements, u);
        BarHeat free = heat?.At(ring, bar.Index) ?? default;
        bar.Bar.Motion(u[..Frame.NodeSize], u[Frame.NodeSize..], motion, free.Move, free.Turn);
    }

    /// <summary>A bar alone under its strip of limp skin, with all the movement that heat gives its own point of skin; false when it cannot stand.</summary>
    private bool Alone(RingElement ring, BarModel bar, Vector3D strip, Span<double> motion, Span<double> forces)
    {
        bool stands = bar.Bar.Cantilever(strip, forces, motion);
        if (heat is null || !stands)
            return stands;
        Span<double> free = stackalloc double[Frame.NodeSize], more = stackalloc double[FrameElement.Size];
        HeatAlone(ring, bar, free);
        bar.Bar.Stiffness.Forces(free, more);
        for (int i = 0; i < more.Length; i++)
            forces[i] += more[i];
        bar.Bar.Stiffness.RemoveSlip(free);
        for (int i = 0; i < free.Length; i++)
            motion[i] += free[i];
        return true;
    }

    /// <summary>The force on the skin end of a bar that has to follow its point of skin, without wind and weight, N.</summary>
    internal Vector3D HeatForce(RingElement ring, BarModel bar)
    {
        Span<double> motion = stackalloc double[Frame.NodeSize], forces = stackalloc double[FrameElement.Size];
        HeatAlone(ring, bar, motion);
        bar.Bar.Stiffness.Forces(motion, forces);
        return bar.Bar.Place.Axes.ToGlobal(new Vector3D(forces[6], forces[7], forces[8]));
    }

    private void HeatAlone(RingElement ring, BarModel bar, Span<double> motion)
    {
        Vector3D free = bar.Bar.Place.Axes.ToLocal(heat?.At(ring, bar.Index).Alone ?? Vector3D.Zero);
        motion.Clear();
        (motion[0], motion[1], motion[2]) = (free.X, free.Y, free.Z);
    }

    private static double[] Moved(HeatField heat, ReadOnlySpan<double> displacements)
    {
        double[] all = displacements.ToArray();
        heat.AddMovements(all);
        return all;
    }

    /// <summary>How far the skin end of a bar comes nearer to the tower, square to the skin, under the worse assumption, m; zero or more.</summary>
    internal double Approach(RingElement ring, BarModel bar, int bandInStatue)
    {
        Span<double> motion = stackalloc double[Frame.NodeSize], forces = stackalloc double[FrameElement.Size];
        MotionOnRing(ring, bar, motion);
        double most = Math.Max(0, Towards(bar, motion));
        Vector3D strip = LimpForce(bar, bandInStatue);
        for (SkinAssumption skin = SkinAssumption.LimpSkin; skin <= SkinAssumption.SlidingSkin; skin++)
        {
            if (SkinBounds.FactorOf(skin, bar) is { } factor && Alone(ring, bar, factor * strip, motion, forces))
                most = Math.Max(most, Towards(bar, motion));
        }
        return most;
    }

    /// <summary>The force on a bar's skin end without its part square to the skin, under the worse assumption, N.</summary>
    internal double ForceAlongSkin(RingElement ring, BarModel bar, int bandInStatue)
    {
        Span<double> f = stackalloc double[FrameElement.Size];
        Vector3D outward = bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Outward);
        double worst = 0;
        foreach (SkinAssumption skin in SkinBounds.All)
        {
            if (!ForcesOf(ring, bar, bandInStatue, skin, f))
                continue;
            var force = new Vector3D(f[6], f[7], f[8]);
            worst = Math.Max(worst, (force - force.Dot(outward) * outward).Length);
        }
        return worst;
    }

    /// <summary>
    /// The wind on the bar's own strip of skin, the weight of the strip with its ice, and what hangs on the band nearest to
    /// this bar. What a wind along the body's axis meets, taper and cap, is shared by the strips' areas.
    /// </summary>
    internal Vector3D LimpForce(BarModel bar, int bandInStatue)
    {
        (BodyModel body, int index) = model.BandAt(bandInStatue);
        SkinBand band = body.Bands[index];
        Vector3D weight = WeightOf(bar, bandInStatue), pressure = bandPressures[bandInStatue];
        if (pressure == Vector3D.Zero)
            return weight;
        Vector3D wind = body.Axes.Axes.ToLocal(WindDirection);
        double part = bar.Share.PartOf(band.Top - band.Bottom);
        double area = band.ProjectedWidth(bar.Strip, wind) * bar.Share.Height + part * Math.Abs(wind.Z) * (band.TaperArea + band.CapArea);
        return weight + area * pressure;
    }

    /// <summary>Weight of a bar's own strip with its ice, and what hangs on the bar, N.</summary>
    private Vector3D WeightOf(BarModel bar, int bandInStatue)
    {
        (BodyModel body, int index) = model.BandAt(bandInStatue);
        double part = bar.Share.PartOf(body.Bands[index].Top - body.Bands[index].Bottom);
        return new Vector3D(0, 0, -WeightFactor * model.StripMass(bar) * SelfWeight.Gravity - part * bandIceWeights[bandInStatue]) + hanging.GetValueOrDefault(bar);
    }
}
