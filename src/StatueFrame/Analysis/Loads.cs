using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The loads of one load case: nodal forces, their resultant, and the wind on each band. SI units.</summary>
internal sealed class Loads
{
    private readonly Dictionary<SegmentModel, BetweenLevels> onSegments = new(ReferenceEqualityComparer.Instance);

    public required Angle? Heading { get; init; }

    public required Vector3D WindDirection { get; init; }

    /// <summary>What acts.</summary>
    public required Situation Situation { get; init; }

    /// <summary>The wind with its factor; null without.</summary>
    public FactoredAction? Wind => Heading is null ? null : Situation.Wind;

    /// <summary>Sum of the factors on self-weight.</summary>
    public required double WeightFactor { get; init; }

    /// <summary>What is changed in the situation, in words; empty when it is as given.</summary>
    public string Label { get; init; } = "";

    public Resultant Resultant { get; private set; }

    /// <summary>Total wind force, N.</summary>
    public Vector3D WindForce { get; private set; }

    /// <summary>Wind force per projected area of each band of the statue, factors included, Pa.</summary>
    public required Vector3D[] BandPressures { get; init; }

    /// <summary>Weight of the ice on each band of the statue, factor included, N.</summary>
    public required double[] BandIceWeights { get; init; }

    /// <summary>What imposed loads on bands put on single bars when the skin is limp, factors included, N.</summary>
    public Dictionary<BarModel, Vector3D> OnBars { get; } = new(ReferenceEqualityComparer.Instance);

    /// <summary>What acts on a segment between its levels.</summary>
    public BetweenLevels Between(SegmentModel segment) => onSegments.GetValueOrDefault(segment) with { WeightFactor = WeightFactor };

    /// <summary>The situation's heat; null without.</summary>
    public required HeatField? Heat { get; init; }

    /// <summary>The loads of a situation for one wind heading, or for none.</summary>
    /// <param name="model">The model.</param>
    /// <param name="situation">A valid situation.</param>
    /// <param name="heading">The heading; null when the situation has no wind.</param>
    /// <param name="heat">The situation's heat, which is the same for all headings; null without.</param>
    /// <param name="nodal">Receives the nodal forces: a full vector of the frame.</param>
    /// <param name="label">What is changed in the situation, in words.</param>
    public static Loads Of(StatueModel model, Situation situation, Angle? heading, HeatField? heat, Span<double> nodal, string label = "")
    {
        double angle = heading?.Radians ?? 0, weight = 0;
        foreach (FactoredAction action in situation.Actions.AsSpan())
        {
            if (action.Action is SelfWeight)
                weight += action.Factor;
        }
        var loads = new Loads
        {
            Heading = heading,
            Situation = situation,
            WindDirection = heading is null ? Vector3D.Zero : new Vector3D(Math.Cos(angle), Math.Sin(angle), 0),
            WeightFactor = weight,
            BandPressures = new Vector3D[model.BandCount],
            BandIceWeights = new double[model.BandCount],
            Heat = heat,
            Label = label,
        };
        loads.AddWeight(model, nodal);
        heat?.AddLoads(nodal);
        double ice = situation.Ice?.ThicknessSi ?? 0;
        foreach (FactoredAction action in situation.Actions.AsSpan())
        {
            if (action.Action is WindAction wind)
            {
                loads.AddWind(model, wind, action.Factor, nodal);
                loads.AddBareWind(model, wind, ice, action.Factor, nodal);
                loads.AddFittingWind(model, wind, action.Factor, nodal);
            }
            else if (action.Action is ImposedLoad imposed)
                loads.AddImposed(model, imposed, action.Factor, nodal);
            else if (action.Action is IceAction coat)
                loads.AddIce(model, coat, action.Factor, nodal);
        }
        loads.AddStiffJoints(nodal);
        return loads;
    }

    /// <summary>What bends lattices between their levels.</summary>
    private void AddStiffJoints(Span<double> nodal)
    {
        Span<double> own = stackalloc double[2 * Frame.NodeSize];
        foreach ((SegmentModel segment, BetweenLevels between) in onSegments)
        {
            own.Clear();
            segment.AddStiffJoints(between.Lower + between.Upper, own);
            for (int i = 0; i < Frame.NodeSize; i++)
            {
                nodal[segment.Lower.Node * Frame.NodeSize + i] += own[i];
                nodal[segment.Upper.Node * Frame.NodeSize + i] += own[Frame.NodeSize + i];
            }
        }
    }

    private void AddWeight(StatueModel model, Span<double> nodal)
    {
        ReadOnlySpan<double> unit = model.SelfWeightLoads;
        for (int i = 0; i < nodal.Length; i++)
            nodal[i] = WeightFactor * unit[i];
        var force = new Vector3D(0, 0, -WeightFactor * model.Masses.TotalKilograms * SelfWeight.Gravity);
        Resultant = Resultant.Of(force, model.Masses.CenterMeters - model.BaseCenter);
    }

    private void AddImposed(StatueModel model, ImposedLoad load, double factor, Span<double> nodal)
    {
        Place place = model.PlaceOf(load.On);
        var force = factor * new Vector3D(load.AlongX.Newtons, load.AlongY.Newtons, -load.Down.Newtons);
        AddForce(model, nodal, place, force, load.At?.Meters ?? place.Center);
        model.Hang(load.On, force, load.At, OnBars);
    }

    private void AddWind(StatueModel model, WindAction wind, double factor, Span<double> nodal)
    {
        double baseHeight = model.Statue.BaseAboveGround.Meters;
        WindProfile profile = wind.ProfileTowards(Heading!.Value.Radians);
        Vector3D across = Vector3D.UnitZ.Cross(WindDirection);
        for (int i = 0; i < model.BandCount; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            SkinBand band = body.Bands[index];
            WindExposure exposure = band.Exposure(body.Axes.Axes.ToLocal(WindDirection));
            Vector3D center = body.Axes.ToGlobal(exposure.PressureCenter), at = center;
            double q = profile.PeakPressureSi(Math.Max(0, baseHeight + body.ReferenceElevation(profile, index, center)));
            Vector3D local = body.Axes.Axes.ToLocal(WindDirection);
            if (wind.Side != 0 && band.MeetsWind(local, out double width))
                at += wind.Side * wind.OffCenter(band, local).Eccentricity * width * across;
            WindAreas areas = wind.AreasOf(band, local, Heading!.Value.Radians, exposure.ProjectedArea);
            double pressure = factor * wind.MoreOffCenter(band, local) * wind.GustFactorOf(i) * q;
            Vector3D force = pressure * (areas.Along * WindDirection + areas.Across * across);
            WindForce += force;
            force += pressure * areas.Up * Vector3D.UnitZ;
            if (wind.LiftWay != 0 && body.Prefix.Length > 0 && exposure.ProjectedArea > 0 && !areas.HasUp)
                force += pressure * wind.LiftWay * wind.LiftCoefficientInUse * LiftArea(body, band);
            BandPressures[i] = exposure.ProjectedArea > 0 ? 1 / exposure.ProjectedArea * force : Vector3D.Zero;
            AddForce(model, nodal, body.BandPlaces[index], force, at, pressure * areas.Twist * Vector3D.UnitZ);
        }
    }

    /// <summary>The area of a limb's band seen square to the wind and to the limb's axis, m², along that direction, upward.</summary>
    private Vector3D LiftArea(BodyModel body, SkinBand band)
    {
        Vector3D square = WindDirection.Cross(body.Axes.Axes.Z);
        if (square.Length < 1e-6)
            return Vector3D.Zero;
        Vector3D way = (square.Z < 0 ? -1 : 1) / square.Length * square;
        // A wind that blows along the limb has nothing to lift it by: only its part across the axis counts.
        return square.Length * square.Length * band.Exposure(body.Axes.Axes.ToLocal(way)).ProjectedArea * way;
    }

    private void AddBareWind(StatueModel model, WindAction wind, double ice, double factor, Span<double> nodal)
    {
        double baseHeight = model.Statue.BaseAboveGround.Meters;
        foreach (BareSlice slice in model.BareSlices)
        {
            double area = slice.DragArea(wind, Heading!.Value, baseHeight, ice);
            if (area == 0)
                continue;
            Vector3D force = factor * wind.GustFactorOfRest * wind.ProfileTowards(Heading!.Value.Radians).PeakPressureSi(Math.Max(0, baseHeight + slice.At.Z)) * area * WindDirection;
            WindForce += force;
            AddToLevels(model, nodal, slice, force);
            if (wind.Side != 0)
                AddTwist(model, nodal, slice, wind.Side * wind.OffCenterOfRest * slice.WidthAcross(WindDirection) * Vector3D.UnitZ.Cross(WindDirection).Cross(force));
        }
    }

    /// <summary>A couple on a slice of tower goes to the levels below and above.</summary>
    private void AddTwist(StatueModel model, Span<double> nodal, BareSlice slice, Vector3D couple)
    {
        Place lower = slice.Body.Levels[slice.Segment], upper = slice.Body.Levels[slice.Segment + 1];
        AddForce(model, nodal, lower, Vector3D.Zero, lower.Center, (1 - slice.T) * couple);
        AddForce(model, nodal, upper, Vector3D.Zero, upper.Center, slice.T * couple);
    }

    private void AddFittingWind(StatueModel model, WindAction wind, double factor, Span<double> nodal)
    {
        foreach ((Fitting fitting, Place place, Vector3D at, double area) in model.FittingsInWind)
        {
            double q = wind.ProfileTowards(Heading!.Value.Radians).PeakPressureSi(Math.Max(0, model.Statue.BaseAboveGround.Meters + at.Z));
            Vector3D force = factor * wind.GustFactorOfRest * q * area * WindDirection;
            WindForce += force;
            AddForce(model, nodal, place, force, at);
            model.Hang(fitting.On, force, fitting.At, OnBars);
        }
    }

    private void AddIce(StatueModel model, IceAction ice, double factor, Span<double> nodal)
    {
        double perMass = factor * SelfWeight.Gravity;
        for (int i = 0; i < model.BandCount; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            SkinBand band = body.Bands[index];
            BandIceWeights[i] = perMass * band.SheetArea * ice.ThicknessSi * ice.DensitySi;
            AddForce(model, nodal, body.BandPlaces[index], new Vector3D(0, 0, -BandIceWeights[i]), body.BandPlaces[index].Center);
        }
        foreach (BareSlice slice in model.BareSlices.Where(s => s.HasShape))
        {
            double mass = slice.Length * BareDrag.IcePerLength(slice.Part, slice.Lower, slice.Upper, slice.T, ice.ThicknessSi, ice.DensitySi);
            AddToLevels(model, nodal, slice, new Vector3D(0, 0, -perMass * mass));
        }
    }

    /// <summary>A force on a slice of tower goes to the levels below and above by the law of the lever.</summary>
    private void AddToLevels(StatueModel model, Span<double> nodal, BareSlice slice, Vector3D force)
    {
        Place lower = slice.Body.Levels[slice.Segment], upper = slice.Body.Levels[slice.Segment + 1];
        SegmentModel segment = slice.Body.Segments[slice.Segment];
        onSegments[segment] = onSegments.GetValueOrDefault(segment).And((1 - slice.T) * force, slice.T * force);
        AddForce(model, nodal, lower, (1 - slice.T) * force, lower.Center);
        AddForce(model, nodal, upper, slice.T * force, upper.Center);
    }

    private void AddForce(StatueModel model, Span<double> nodal, Place place, Vector3D force, Vector3D at, Vector3D couple = default)
    {
        Vector3D moment = (at - place.NodeAt).Cross(force) + couple;
        Span<double> node = nodal.Slice(place.Node * Frame.NodeSize, Frame.NodeSize);
        node[0] += force.X;
        node[1] += force.Y;
        node[2] += force.Z;
        node[3] += moment.X;
        node[4] += moment.Y;
        node[5] += moment.Z;
        Resultant += Resultant.Of(force, at - model.BaseCenter) + new Resultant(Vector3D.Zero, couple);
    }
}
