using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Analysis;

/// <summary>
/// The shocks of a situation as numbers: patterns of nodal forces that each run in time, impulses at the start, and pulls
/// that are let go at the start. SI units.
/// </summary>
internal sealed class ShockLoads
{
    private readonly StatueModel model;

    private ShockLoads(StatueModel model)
    {
        this.model = model;
        Impulse = new double[model.Frame.FreedomCount];
        Pull = new double[model.Frame.FreedomCount];
    }

    /// <summary>A pattern of nodal forces at the peak of its pulse.</summary>
    public sealed class Pattern(double[] nodal, PressureShape shape, double duration, double start)
    {
        public double[] Nodal { get; } = nodal;

        public PressureShape Shape { get; } = shape;

        public double Duration { get; } = duration;

        public double Start { get; } = start;

        public Resultant Resultant { get; set; }

        public double End => Start + Duration * Shape.End;

        public double At(double time) => Shape.At((time - Start) / Duration);

        public (double Before, double After) Line(double from, double to) => Shape.Line((from - Start) / Duration, (to - Start) / Duration);
    }

    public List<Pattern> Patterns { get; } = [];

    public double[] Impulse { get; }

    public double[] Pull { get; }

    /// <summary>The resultant of the pulls.</summary>
    public Resultant PullResultant { get; private set; }

    public bool HasImpulse { get; private set; }

    public bool HasPull { get; private set; }

    public List<StrikeImpulse> Strikes { get; } = [];

    /// <summary>When the last pulse is over, s.</summary>
    public double End => Patterns.Count == 0 ? 0 : Patterns.Max(p => p.End);

    /// <summary>The shortest pulse, s; infinite when there is none.</summary>
    public double Shortest => Patterns.Count == 0 ? double.PositiveInfinity : Patterns.Min(p => p.Duration);

    public static ShockLoads Of(StatueModel model, Situation situation)
    {
        var loads = new ShockLoads(model);
        foreach (FactoredAction factored in situation.Actions.AsSpan())
        {
            switch (factored.Action)
            {
                case PressurePulse pulse:
                    loads.AddPressure(pulse, factored.Factor);
                    break;
                case Blow blow:
                    loads.AddBlow(blow, factored.Factor);
                    break;
                case Strike strike:
                    loads.AddStrike(strike, factored.Factor);
                    break;
                case SuddenRelease release:
                    loads.PullResultant += loads.Add(loads.Pull, release, factored.Factor * release.Pull.Newtons);
                    loads.HasPull = true;
                    break;
                default:
                    break;
            }
        }
        return loads;
    }

    /// <summary>What pulses do to what no band of skin is.</summary>
    public static Assumption BareParts { get; } = new("pressure pulse on bare tower and fittings", "its drag in a wind of the peak pressure, air of 1.25 kg/m³, lattices by EN 1993-3-1; fittings by their wind area", Source.Assumed("shock"));

    /// <summary>Whether a pulse meets any of it.</summary>
    public bool MeetsBareParts { get; private set; }

    /// <summary>For the speed that a pressure stands for, kg/m³.</summary>
    private const double AirDensity = 1.25;

    private void AddPressure(PressurePulse pulse, double factor)
    {
        Vector3D along = pulse.Direction;
        var chosen = pulse.Bands.ToHashSet();
        double size = factor * pulse.Peak.Pascals;
        var met = new List<(Place Place, Vector3D At, double Area, double Reached)>();
        for (int i = 0; i < model.BandCount; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            if (chosen.Count > 0 && !chosen.Contains(body.BandName(index)))
                continue;
            WindExposure exposure = body.Bands[index].Exposure(body.Axes.Axes.ToLocal(along));
            Vector3D at = body.Axes.ToGlobal(exposure.PressureCenter);
            met.Add((body.BandPlaces[index], at, pulse.Coefficient * exposure.ProjectedArea, at.Dot(along)));
        }
        if (chosen.Count == 0)
        {
            int skin = met.Count;
            met.AddRange(OnBareParts(pulse));
            MeetsBareParts |= met.Count > skin;
        }
        double first = met.Min(m => m.Reached);
        var byStart = new SortedDictionary<double, Pattern>();
        foreach ((Place place, Vector3D at, double area, double reached) in met)
        {
            double start = pulse.WaveSpeed is { } speed ? Math.Round((reached - first) / speed.MetersPerSecond, 12) : 0;
            if (!byStart.TryGetValue(start, out Pattern? pattern))
                byStart[start] = pattern = new Pattern(new double[model.Frame.FreedomCount], pulse.Shape, pulse.Duration.Seconds, start);
            pattern.Resultant += AddForce(pattern.Nodal, place, size * area * along, at);
        }
        Patterns.AddRange(byStart.Values);
    }

    /// <summary>Bare tower, its drag shared by the levels below and above, and fittings with a wind area.</summary>
    private IEnumerable<(Place Place, Vector3D At, double Area, double Reached)> OnBareParts(PressurePulse pulse)
    {
        Vector3D along = pulse.Direction;
        double gust = Math.Sqrt(2 * pulse.Peak.Pascals / AirDensity);
        foreach (BareSlice slice in model.BareSlices)
        {
            double area = slice.DragArea(along, gust, LatticeRule.En1993_3_1, 0), reached = slice.At.Dot(along);
            (Place lower, Place upper) = (slice.Body.Levels[slice.Segment], slice.Body.Levels[slice.Segment + 1]);
            if (area == 0)
                continue;
            yield return (lower, lower.Center, (1 - slice.T) * area, reached);
            yield return (upper, upper.Center, slice.T * area, reached);
        }
        foreach ((_, Place place, Vector3D at, double area) in model.FittingsInWind)
            yield return (place, at, area, at.Dot(along));
    }

    private void AddBlow(Blow blow, double factor)
    {
        double impulse = factor * blow.Impulse.NewtonSeconds;
        if (blow.ContactTime is not { } time)
        {
            Add(Impulse, blow, impulse);
            HasImpulse = true;
            return;
        }
        var shape = new HalfSinePulse();
        var pattern = new Pattern(new double[model.Frame.FreedomCount], shape, time.Seconds, 0);
        pattern.Resultant = Add(pattern.Nodal, blow, impulse / (shape.Area * time.Seconds));
        Patterns.Add(pattern);
    }

    private void AddStrike(Strike strike, double factor)
    {
        var unit = new double[model.Frame.FreedomCount];
        Add(unit, strike, 1);
        double mobility = Mobility(model, unit, 0);
        if (!(mobility > 0) || !double.IsFinite(1 / mobility))
            throw new InvalidStatueException([new Problem($"{strike.Name}.{nameof(Strike.On)}", $"\"{strike.On}\" is held in the direction of the strike and cannot take up its energy", "Strike a level or a band that can move, or a base that can rock.")]);
        double impulse = Strike.ImpulseOf(strike.Mass.Kilograms, strike.Speed.MetersPerSecond, strike.Restitution, 1 / mobility);
        Add(Impulse, strike, factor * impulse);
        HasImpulse = true;
        Strikes.Add(new StrikeImpulse(strike.Name, UnitsNet.Mass.FromKilograms(1 / mobility), UnitsNet.Impulse.FromNewtonSeconds(factor * impulse)));
    }

    private Resultant Add(double[] nodal, PlacedShock shock, double size)
    {
        Place place = model.PlaceOf(shock.On);
        return AddForce(nodal, place, size * shock.Direction, shock.At?.Meters ?? place.Center);
    }

    private Resultant AddForce(Span<double> nodal, Place place, Vector3D force, Vector3D at)
    {
        Vector3D moment = (at - place.NodeAt).Cross(force);
        Span<double> node = nodal.Slice(place.Node * Frame.NodeSize, Frame.NodeSize);
        (node[0], node[1], node[2]) = (node[0] + force.X, node[1] + force.Y, node[2] + force.Z);
        (node[3], node[4], node[5]) = (node[3] + moment.X, node[4] + moment.Y, node[5] + moment.Z);
        return Resultant.Of(force, at - model.BaseCenter);
    }

    /// <summary>
    /// fᵀ(M + εK)⁻¹f: twice the energy that a unit impulse f brings in, where modes far above 1/√ε count little. With the
    /// least ε only the masses count, and freedoms without mass are held by a trace of stiffness.
    /// </summary>
    public static double Mobility(StatueModel model, ReadOnlySpan<double> f, double epsilon)
    {
        const double TraceFrequency = 2 * Math.PI * 1e5;
        Frame frame = model.Frame;
        double trace = Math.Max(epsilon, 1 / (TraceFrequency * TraceFrequency));
        var x = new double[frame.EquationCount];
        frame.Reduce(f, x);
        double[] right = [.. x];
        Pivots.FactorPositive(frame, SymmetricMatrix.Combine(1, frame.Mass, trace, frame.Stiffness)).Solve(x);
        return DenseVector.Dot(right, x);
    }
}
