using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The response of the whole statue, limbs included, to the gusts of one wind heading, by random vibration: the mean
/// sway, the background that follows the gusts as in statics (exactly, all modes in it), and the resonance of several
/// modes with their correlation.
/// </summary>
/// <remarks>
/// <para>
/// Linear and quasi-steady: the drag on a band, on bare tower and on a fitting swings by ρ C_f A V u with the gusts u along the wind, which also
/// twist a band where they differ across its width, and turns by v/V with the gusts v across; both are Gaussian random fields, and the statue vibrates about its
/// unloaded state. Wind alone, without load factors and weight. Vortex shedding, galloping and lift are not in it. A strength check by these peaks needs review by a wind engineer.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Source of the method: Davenport 1961 and 1967, from memory; derived in the theory page "gusts".</para>
/// </remarks>
public sealed class GustResponse
{
    private readonly StatueModel model;
    private readonly WindModes modes;
    private readonly StatueWind wind;
    private readonly GustSource[] sources;
    private readonly bool hasTwist;
    private readonly Lazy<GustBar[]> rings;

    private GustResponse(StatueModel model, WindModes modes, WindAction action, StatueWind wind, DampingModel damping, GustOptions options)
    {
        (this.model, this.modes, this.wind, hasTwist) = (model, modes, wind, options.PointsAcross > 1);
        double[] stillAir = [.. modes.Omega.Select(omega => DampingModel.RatioOf(damping.DecrementAt(omega / (2 * Math.PI), modes.Omega[0] / (2 * Math.PI))))];
        var ratios = new double[modes.Count];
        for (int i = 0; i < modes.Count; i++)
            ratios[i] = Math.Min(stillAir[i] + (options.AerodynamicDamping ? modes.AirRatio[i] : 0), GreatestRatio);
        WindProfile profile = action.ProfileTowards(wind.Heading.Radians);
        GustSpectrum spectrum = options.Spectrum ?? DefaultSpectrum(profile);
        double duration = options.Duration?.Seconds ?? profile.AveragingTimeSi;
        sources = Sources(spectrum, options, ratios, duration);

        BaseShear = new(Together(s => s.OnBase(Vector3D.Zero, wind.Direction)), Force.FromNewtons);
        Overturning = new(Together(s => s.OnBase(wind.Across, Vector3D.Zero)), Torque.FromNewtonMeters);
        BaseTwist = new(Together(s => s.OnBase(Vector3D.UnitZ, Vector3D.Zero)), Torque.FromNewtonMeters);
        StructuralFactor = Overturning.Peak.NewtonMeters / PeakPressureMoment();
        Modes = [.. Enumerable.Range(0, modes.Count).Select(i => new GustMode(
            i + 1, Frequency.FromHertz(modes.Omega[i] / (2 * Math.PI)), stillAir[i], options.AerodynamicDamping ? modes.AirRatio[i] : 0,
            Torque.FromNewtonMeters(Together(s => Only(s.OnBase(wind.Across, Vector3D.Zero), wind.Parts.Length + i)).Deviation)))];
        Points = [.. model.Statue.Points.Select(p => MovementOf(p.Name, model.PlaceOf(p.On), model.PositionOf(p)))];
        rings = new Lazy<GustBar[]>(() => [.. model.Rings.Select(r => WorstOf(r.Ring))]);
    }

    /// <summary>Where the six forces of a segment's ends begin.</summary>
    private const int Lower = 0, Upper = Mechanics.Frame.NodeSize;

    /// <summary>More than this is no vibration; it keeps an absurd model within the method.</summary>
    private const double GreatestRatio = 0.9;

    /// <summary>The response to the gusts of one heading.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes; those above the last one take part as in statics.</param>
    /// <param name="wind">The wind. Its headings and its gust factor play no part.</param>
    /// <param name="heading">The plan angle that the wind blows towards.</param>
    /// <param name="damping">Damping in still air; null takes that of welded lattice towers and says so.</param>
    /// <param name="options">Defaults when null.</param>
    /// <exception cref="ArgumentException">The modes are of another model, or the statue has nothing that catches the wind.</exception>
    /// <exception cref="InvalidStatueException">The wind, the damping or the options have problems; all are listed.</exception>
    public static GustResponse Of(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping = null, GustOptions? options = null)
    {
        GustGuard.Require(model, modes, wind, heading, damping, options);
        options ??= new GustOptions();
        var assumptions = new List<Assumption>(wind.ProfileTowards(heading.Radians).Assumptions);
        DampingModel inUse = GustGuard.DampingInUse(damping, assumptions);
        assumptions.AddRange(AssumptionsOf(model, wind, options));
        var bands = new StatueWind(model, wind, heading);
        return new GustResponse(model, new WindModes(model, modes.Set, bands), wind, bands, inUse, options)
        {
            Assumptions = assumptions,
        };
    }

    /// <summary>The wind's heading.</summary>
    public Angle Heading => wind.Heading;

    /// <summary>The named points of the statue.</summary>
    public IReadOnlyList<GustMovement> Points { get; }

    /// <summary>Base shear along the wind.</summary>
    public GustEffect<Force> BaseShear { get; }

    /// <summary>Overturning moment about the horizontal axis across the wind, at the base's center.</summary>
    public GustEffect<Torque> Overturning { get; }

    /// <summary>Twisting moment about z at the base's center.</summary>
    public GustEffect<Torque> BaseTwist { get; }

    /// <summary>
    /// The factor on the load of the profile's peak pressure, acting on all bands at once, that gives the peak overturning
    /// moment: what c_s c_d of EN 1991-1-4 and G of ASCE 7 stand for. Used as <see cref="WindAction.GustEffectFactor"/> it
    /// makes the static analysis reach this moment.
    /// </summary>
    public double StructuralFactor { get; }

    /// <summary>Peak over mean of the overturning moment.</summary>
    public double GustFactor => Overturning.GustFactor ?? 1;

    /// <summary>The modes with their damping.</summary>
    public IReadOnlyList<GustMode> Modes { get; }

    /// <summary>The most stressed standoff of each ring.</summary>
    public IReadOnlyList<GustBar> Rings => rings.Value;

    /// <summary>Every value taken for the user, the profile's included.</summary>
    public IReadOnlyList<Assumption> Assumptions { get; private init; } = [];

    /// <summary>The movement of a named point.</summary>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public GustMovement Of(string point) =>
        Points.FirstOrDefault(p => p.Point == point)
        ?? throw new ArgumentException($"The statue has no point \"{point}\". {NearNames.Closest(point, Points.Select(p => p.Point))}", nameof(point));

    /// <summary>The movement of the center of a level or band.</summary>
    /// <param name="name">Its name, as in "L7", "band 3" or "wing/band 2".</param>
    /// <exception cref="ArgumentException">The statue has no such level or band.</exception>
    public GustMovement OfPart(string name)
    {
        var names = new StatueNames(model.Statue);
        if (!names.Has(name))
            throw new ArgumentException($"The statue has no level or band \"{name}\". {names.Suggest(name)}", nameof(name));
        Place place = model.PlaceOf(name);
        return MovementOf(name, place, place.Center);
    }

    /// <summary>The forces at both ends of every segment of the tower and of the limbs, roots included.</summary>
    public IReadOnlyList<GustSegmentForces> Segments() => [.. model.Segments.Select(segment =>
    {
        double[][][] cuts = Array.ConvertAll(sources, source => source.Cuts(segment));
        return new GustSegmentForces(segment.Name, Heading, At(Lower), At(Upper));

        GustSectionForce At(int end) => new()
        {
            ShearX = new(Row(end), Force.FromNewtons),
            ShearY = new(Row(end + 1), Force.FromNewtons),
            Axial = new(Row(end + 2), Force.FromNewtons),
            MomentX = new(Row(end + 3), Torque.FromNewtonMeters),
            MomentY = new(Row(end + 4), Torque.FromNewtonMeters),
            Torsion = new(Row(end + 5), Torque.FromNewtonMeters),
        };

        GustStatistics Row(int i) => Together(Array.ConvertAll(cuts, c => c[i]));
    })];

    /// <summary>The axial forces of all lattice members, legs at the base among them.</summary>
    public IReadOnlyList<GustMemberForce> LatticeMembers()
    {
        var all = new List<GustMemberForce>();
        foreach (SegmentModel segment in model.Segments.Where(segment => segment.Members.Count > 0))
        {
            double[][] units = DynamicPeaks.AxialByUnitMotions(segment);
            double[][][] motions = Array.ConvertAll(sources, source => source.MotionsWithin(segment.Element));
            for (int i = 0; i < units.Length; i++)
            {
                GustStatistics axial = Together(Array.ConvertAll(motions, rows =>
                {
                    var effects = new double[rows[0].Length];
                    for (int k = 0; k < rows.Length; k++)
                        DenseVector.AddScaled(effects, units[i][k], rows[k]);
                    return effects;
                }));
                all.Add(new GustMemberForce(segment.Name, segment.Members[i].Label, Heading, new(axial, Force.FromNewtons)));
            }
        }
        return all;
    }

    /// <summary>
    /// Effects of gusts, each with what the peak pressure on every single part gives to it, and its peak: cuts of trunk and limbs
    /// in shear, bending and twist, the most stressed corner of every standoff, the sway of points.
    /// </summary>
    internal IEnumerable<GustDemand> Effects()
    {
        foreach (BodyModel body in model.Bodies)
        {
            foreach (SegmentModel segment in body.Segments)
            {
                double[][][] cuts = Array.ConvertAll(sources, source => source.Cuts(segment));
                foreach (int end in (int[])[Lower, Upper])
                {
                    string where = $"{segment.Name}, {(end > 0 ? "top" : "bottom")}";
                    yield return InPlane(body.Name, where, GustDemand.Bending, i => (cuts[i][end + 3], cuts[i][end + 4]));
                    yield return InPlane(body.Name, where, "shear", i => (cuts[i][end], cuts[i][end + 1]));
                    double[][] twist = Array.ConvertAll(cuts, c => c[end + 5]);
                    yield return Demand(body.Name, where, GustDemand.Twist, twist, Together(twist));
                }
            }
        }
        foreach ((RingElement ring, _) in model.Rings)
        {
            var stresses = new GustBarStress(model, ring, sources, wind);
            foreach (BarModel bar in ring.Bars)
            {
                (GustStatistics stress, double[][] effects) = stresses.OfWorstCorner(bar.Bar);
                GustDemand demand = Demand(GustDemand.Standoffs, ring.BandName, "stress", effects, stress);
                if (demand.Peak > LeastStress * bar.Standoff.Material.YieldStrength.Pascals)
                    yield return demand;
            }
        }
        foreach (NamedPoint point in model.Statue.Points)
        {
            Place place = model.PlaceOf(point.On);
            Vector3D at = model.PositionOf(point);
            Vector3D[][] moved = Array.ConvertAll(sources, source => Array.ConvertAll(source.Motions(place, at), m => m.Displacement));
            yield return InPlane("points", point.Name, "sway", i => (Array.ConvertAll(moved[i], v => v.X), Array.ConvertAll(moved[i], v => v.Y)));
        }
    }

    /// <summary>A standoff on its rigid ring that gusts stress less than this part of its yield strength is governed by its own strip of skin.</summary>
    private const double LeastStress = 0.05;

    private GustDemand Demand(string group, string where, string what, double[][] effects, GustStatistics statistics)
    {
        int sign = wind.AtPeakPressure(effects[0]) < 0 ? -1 : 1;
        int count = wind.Parts.Length;
        (double[] byPart, double[] offCenter, double[] aside) = (new double[count], new double[count], new double[count]);
        for (int a = 0; a < count; a++)
        {
            StatueWind.Part part = wind.Parts[a];
            byPart[a] = sign * effects[0][a] * part.PeakOverMean;
            offCenter[a] = part.OffCenterShare * byPart[a];
            aside[a] = hasTwist ? part.OffCenterShare * part.Eccentricity * effects[1][a] * part.PeakOverMean : 0;
        }
        return new GustDemand(group, where, what, wind.Heading, byPart, offCenter, aside, Math.Abs(statistics.Peak), statistics.Deviation);
    }

    /// <summary>A vector of two components, along the way it has under the peak pressure on all bands.</summary>
    private GustDemand InPlane(string group, string where, string what, Func<int, (double[] X, double[] Y)> effects)
    {
        (double[] cx, double[] cy) = effects(0);
        double sx = wind.AtPeakPressure(cx), sy = wind.AtPeakPressure(cy), length = double.Hypot(sx, sy);
        double[][] along = [.. Enumerable.Range(0, sources.Length).Select(i => Along(effects(i)))];
        return Demand(group, where, what, along, Together(along));

        double[] Along((double[] X, double[] Y) c) => length > 0 ? [.. c.X.Zip(c.Y, (a, b) => (a * sx + b * sy) / length)] : c.X;
    }

    /// <summary>What all gusts do to a quantity.</summary>
    private GustStatistics Together(Func<GustSource, double[]> effect) => Together(Array.ConvertAll(sources, source => effect(source)));

    private GustStatistics Together(double[][] effects) => GustStatistics.Sum([.. sources.Zip(effects, (source, c) => source.Covariance.Of(c))]);

    /// <summary>Along the wind; against one another on both sides of each band, which twists it; and across the wind.</summary>
    private GustSource[] Sources(GustSpectrum spectrum, GustOptions options, double[] ratios, double duration)
    {
        double highest = modes.Omega[^1] / (2 * Math.PI);
        var along = new GustField(wind, spectrum, options, highest, GustKind.Along);
        var transfer = new ModalTransfer(along.Frequencies, modes.Omega, ratios);
        List<GustSource> all = [Of(along, part => 2 * part.Intensity, part => (Push(part), part.MeanTwist * Vector3D.UnitZ), hasMean: true)];
        if (hasTwist)
            all.Add(Of(new GustField(wind, spectrum, options, highest, GustKind.Twisting), part => 2 * part.Intensity, part => (default, part.SpanAcross.Cross(Push(part))), hasMean: false));
        if (options.AcrossIntensity > 0)
            all.Add(Of(new GustField(wind, spectrum, options, highest, GustKind.Across), part => options.AcrossIntensity * part.Intensity, part => (part.MeanForce * wind.Across - part.MeanAside * wind.Direction, default), hasMean: false));
        return [.. all];

        Vector3D Push(StatueWind.Part part) => part.MeanForce * wind.Direction + part.MeanAside * wind.Across + part.MeanUp * Vector3D.UnitZ;

        GustSource Of(GustField field, Func<StatueWind.Part, double> swing, Func<StatueWind.Part, (Vector3D, Vector3D)> loadOf, bool hasMean) =>
            new(model, modes, wind, field, swing, loadOf, transfer, duration, hasMean);
    }

    internal static GustSpectrum DefaultSpectrum(WindProfile profile) => profile.AveragingTimeSi > 600 ? GustSpectrum.Kaimal : GustSpectrum.En1991;

    private static IEnumerable<Assumption> AssumptionsOf(StatueModel model, WindAction wind, GustOptions options)
    {
        if (wind.CoefficientAssumption(model.AllBandsHaveCoefficient) is { } coefficient)
            yield return coefficient;
        if (options.Spectrum is null)
            yield return new Assumption("spectrum of gusts", $"{DefaultSpectrum(wind.Profile)}", wind.Profile.SpectrumSource);
        if (options.DecayAcross == new GustOptions().DecayAcross && options.DecayVertical == new GustOptions().DecayVertical)
            yield return new Assumption("decay constants of the coherence of gusts", "11.5 across and 11.5 over the height", Source.En1991_1_4("C.2 (C.3)"));
        if (options.AcrossIntensity == new GustOptions().AcrossIntensity)
            yield return new Assumption("gusts across the wind", "three quarters of the intensity and a quarter of the length scale of those along it", new Source("Joint Committee on Structural Safety, Probabilistic Model Code", "2.13, from memory; isotropy of small eddies"));
        if (options.Duration is null)
            yield return new Assumption("time of the peak response", $"{wind.Profile.AveragingTimeSi} s, that of the profile's mean speed", Source.Assumed("gusts"));
        if (model.HasTensionOnly)
            yield return new Assumption("tension-only braces in gusts", "one diagonal of each pair acts, half from each", Source.Assumed("gusts"));
    }

    private double PeakPressureMoment()
    {
        double sum = 0;
        foreach (StatueWind.Part part in wind.Parts)
            sum += (part.At - model.BaseCenter).Cross(part.PeakOverMean * part.MeanForce * wind.Direction).Dot(wind.Across);
        return sum;
    }

    private static double[] Only(double[] c, int coordinate)
    {
        var one = new double[c.Length];
        one[coordinate] = c[coordinate];
        return one;
    }

    private GustMovement MovementOf(string name, Place place, Vector3D at)
    {
        (double[] Along, double[] Across, double[] Twist)[] moved = Array.ConvertAll(sources, source =>
        {
            (Vector3D Displacement, Vector3D Rotation)[] motions = source.Motions(place, at);
            return (Array.ConvertAll(motions, m => m.Displacement.Dot(wind.Direction)), Array.ConvertAll(motions, m => m.Displacement.Dot(wind.Across)), Array.ConvertAll(motions, m => m.Rotation.Z));
        });
        return new GustMovement
        {
            Point = name,
            Sway = new(Sum((covariance, i) => covariance.Of(moved[i].Along)), Length.FromMeters),
            SwayAcross = new(Sum((covariance, i) => covariance.Of(moved[i].Across)), Length.FromMeters),
            Twist = new(Sum((covariance, i) => covariance.Of(moved[i].Twist)), Angle.FromRadians),
            Acceleration = new(Sum((covariance, i) => covariance.AccelerationOf(moved[i].Along)), Acceleration.FromMetersPerSecondSquared),
            AccelerationAcross = new(Sum((covariance, i) => covariance.AccelerationOf(moved[i].Across)), Acceleration.FromMetersPerSecondSquared),
        };

        GustStatistics Sum(Func<GustCovariance, int, GustStatistics> of) => GustStatistics.Sum([.. sources.Select((source, i) => of(source.Covariance, i))]);
    }

    private GustBar WorstOf(RingElement ring)
    {
        (int Bar, GustStatistics Stress, GustStatistics Axial, double OfYield) worst = (-1, default, default, 0);
        var stresses = new GustBarStress(model, ring, sources, wind);
        for (int i = 0; i < ring.Bars.Length; i++)
        {
            (GustStatistics stress, GustStatistics axial) = stresses.Of(ring.Bars[i].Bar);
            double ofYield = Math.Abs(stress.Peak) / ring.Bars[i].Bar.Place.Standoff.Material.YieldStrength.Pascals;
            if (worst.Bar < 0 || Extremes.Exceeds(ofYield, worst.OfYield))
                worst = (i, stress, axial, ofYield);
        }
        return new GustBar
        {
            Level = ring.Level,
            Band = ring.BandName,
            Number = ring.Bars[worst.Bar].Number,
            Stress = new(worst.Stress, Pressure.FromPascals),
            Axial = new(worst.Axial, Force.FromNewtons),
        };
    }
}
