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
    private readonly Dictionary<SegmentModel, FrameElement>? acting;
    private readonly Resultant resultant;
    private readonly Vector3D wind;

    internal LoadCase(
        StatueModel model, Loads loads, ReadOnlyMemory<double> displacements, Dictionary<SegmentModel, FrameElement>? acting)
    {
        this.model = model;
        this.displacements = displacements;
        this.acting = acting;
        (Heading, resultant, wind, bandPressures) = (loads.Heading, loads.Resultant, loads.WindForce, loads.BandPressures);
        bandIceWeights = loads.BandIceWeights;
        WindDirection = loads.WindDirection;
        WeightFactor = loads.WeightFactor;
    }

    /// <summary>The plan angle that the wind blows towards; null without wind.</summary>
    public Angle? Heading { get; }

    /// <summary>The total wind force on skin and bare tower, factors included.</summary>
    public Force WindForce => Force.FromNewtons(wind.Length);

    /// <summary>The forces and moments that the statue puts on its base, about the base's center.</summary>
    public BaseReaction Base => new(resultant);

    internal ReadOnlySpan<double> Displacements => displacements.Span;

    internal Vector3D WindDirection { get; }

    internal double WeightFactor { get; }

    /// <summary>The movement of a named point.</summary>
    /// <param name="name">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public Movement Of(string name)
    {
        NamedPoint point = model.Statue.Points.FirstOrDefault(p => p.Name == name)
            ?? throw new ArgumentException($"The statue has no point \"{name}\". {StatueNames.Closest(name, model.Statue.Points.Select(p => p.Name))}", nameof(name));
        (Vector3D displacement, Vector3D rotation) = model.Motion(Displacements, model.PlaceOf(point.On), model.PositionOf(point));
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
        (Vector3D displacement, Vector3D rotation) = model.Motion(Displacements, place, place.Center);
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
            WindExposure exposure = body.Bands[index].Exposure(body.Axes.Axes.ToLocal(WindDirection));
            Vector3D force = exposure.ProjectedArea * bandPressures[i];
            all[i] = new BandWindForce(
                body.BandName(index), Length.FromMeters(body.Axes.ToGlobal(exposure.PressureCenter).Z),
                Force.FromNewtons(force.Dot(WindDirection)), Force.FromNewtons(force.Dot(across)));
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
        segment.SectionForces(acting?.GetValueOrDefault(segment) ?? segment.Element, Displacements);

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
        Span<double> u = stackalloc double[FrameElement.Size];
        FrameElement element = acting?.GetValueOrDefault(segment) ?? segment.Element;
        Gather(element, Displacements, u);
        segment.AxialForces(element, u, axial);
        for (int i = 0; segment.IsTensionOnly && i < axial.Length; i++)
        {
            if (segment.Members[i].Pair >= 0 && axial[i] < 0)
                axial[i] = 0;
        }
    }

    internal MemberForce ForceOf(SegmentModel segment, int member, double axial) => new(
        segment.Name, segment.Members[member].Label, Heading, Force.FromNewtons(axial), Pressure.FromPascals(axial / segment.Members[member].Section.Properties.A));

    /// <summary>The state of a bar under both bounding assumptions.</summary>
    internal BarState StateOf(RingElement ring, BarModel bar, int bandInStatue)
    {
        Span<double> u = stackalloc double[FrameElement.Size], motion = stackalloc double[Frame.NodeSize];
        Span<double> forces = stackalloc double[FrameElement.Size], limpForces = stackalloc double[FrameElement.Size];
        Gather(ring, Displacements, u);
        bar.Bar.Motion(u[..Frame.NodeSize], u[Frame.NodeSize..], motion);
        bar.Bar.Stiffness.Forces(motion, forces);
        bar.Bar.Stiffness.RemoveSlip(motion);
        double deflection = Norm(motion);
        double stress = bar.Bar.Stiffness.NormalStress(forces);
        Vector3D limpForce = LimpForce(bar, bandInStatue);
        bool stands = bar.Bar.Cantilever(limpForce, limpForces, motion);
        return new BarState(
            stress, deflection, stands ? bar.Bar.Stiffness.NormalStress(limpForces) : double.NaN, stands ? Norm(motion) : double.NaN);

        static double Norm(ReadOnlySpan<double> d) => Math.Sqrt(d[0] * d[0] + d[1] * d[1] + d[2] * d[2]);
    }

    /// <summary>The end forces of a bar, in bar axes, under one assumption; false when the bar cannot stand alone under limp skin.</summary>
    internal bool ForcesOf(RingElement ring, BarModel bar, int bandInStatue, SkinAssumption assumption, Span<double> forces)
    {
        Span<double> u = stackalloc double[FrameElement.Size], motion = stackalloc double[Frame.NodeSize];
        Gather(ring, Displacements, u);
        if (assumption == SkinAssumption.LimpSkin)
            return bar.Bar.Cantilever(LimpForce(bar, bandInStatue), forces, motion);
        bar.Bar.Forces(u[..Frame.NodeSize], u[Frame.NodeSize..], forces);
        return true;
    }

    /// <summary>How far the skin end of a bar comes nearer to the tower, square to the skin, under the worse assumption, m; zero or more.</summary>
    internal double Approach(RingElement ring, BarModel bar, int bandInStatue)
    {
        Span<double> u = stackalloc double[FrameElement.Size], motion = stackalloc double[Frame.NodeSize], forces = stackalloc double[FrameElement.Size];
        Vector3D outward = bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Outward);
        Gather(ring, Displacements, u);
        bar.Bar.Motion(u[..Frame.NodeSize], u[Frame.NodeSize..], motion);
        double asRing = -outward.Dot(new Vector3D(motion[0], motion[1], motion[2]));
        bar.Bar.Cantilever(LimpForce(bar, bandInStatue), forces, motion);
        return Math.Max(0, Math.Max(asRing, -outward.Dot(new Vector3D(motion[0], motion[1], motion[2]))));
    }

    /// <summary>
    /// The wind on the bar's own strip of skin, and the weight of the strip with its ice. What a wind along the body's
    /// axis meets, taper and cap, is shared by the strips' areas.
    /// </summary>
    private Vector3D LimpForce(BarModel bar, int bandInStatue)
    {
        (BodyModel body, int index) = model.BandAt(bandInStatue);
        SkinBand band = body.Bands[index];
        double part = bar.Share.PartOf(band.Top - band.Bottom);
        var weight = new Vector3D(0, 0, -WeightFactor * bar.Share.Mass * SelfWeight.Gravity - part * bandIceWeights[bandInStatue]);
        Vector3D pressure = bandPressures[bandInStatue];
        if (pressure == Vector3D.Zero)
            return weight;
        Vector3D wind = body.Axes.Axes.ToLocal(WindDirection);
        double area = band.ProjectedWidth(bar.Strip, wind) * bar.Share.Height + part * Math.Abs(wind.Z) * (band.TaperArea + band.CapArea);
        return weight + area * pressure;
    }

    internal static void Gather(FrameElement element, ReadOnlySpan<double> displacements, Span<double> u)
    {
        displacements.Slice(element.Start * Frame.NodeSize, Frame.NodeSize).CopyTo(u);
        displacements.Slice(element.End * Frame.NodeSize, Frame.NodeSize).CopyTo(u[Frame.NodeSize..]);
    }
}
