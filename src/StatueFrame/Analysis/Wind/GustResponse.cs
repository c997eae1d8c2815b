using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The response of the whole statue, limbs included, to the gusts of one wind heading, by random vibration: the mean
/// sway, the background that follows the gusts as in statics (exactly, all modes in it), and the resonance of several
/// modes with their correlation.
/// </summary>
/// <remarks>
/// <para>
/// Linear and quasi-steady: the drag on a band swings by ρ C_f A V u with the gusts u along the wind, which also twist it where they differ
/// across its width, and turns by v/V with the gusts v across; both are Gaussian random fields, and the statue vibrates about its
/// unloaded state. Wind alone, without load factors and weight. Vortex shedding, galloping and lift are not in it. A strength check by these peaks needs review by a wind engineer.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Source of the method: Davenport 1961 and 1967, from memory; derived in the theory page "gusts".</para>
/// </remarks>
public sealed class GustResponse
{
    private readonly StatueModel model;
    private readonly WindModes modes;
    private readonly BandWind wind;
    private readonly GustSource[] sources;
    private readonly double eccentricity;
    private readonly bool hasTwist;
    private readonly Lazy<GustBar[]> rings;

    private GustResponse(StatueModel model, WindModes modes, WindAction action, BandWind wind, DampingModel damping, GustOptions options)
    {
        (this.model, this.modes, this.wind, eccentricity, hasTwist) = (model, modes, wind, action.EccentricityInUse, options.PointsAcross > 1);
        double[] stillAir = [.. modes.Omega.Select(omega => DampingModel.RatioOf(damping.DecrementAt(omega / (2 * Math.PI), modes.Omega[0] / (2 * Math.PI))))];
        var ratios = new double[modes.Count];
        for (int i = 0; i < modes.Count; i++)
            ratios[i] = Math.Min(stillAir[i] + (options.AerodynamicDamping ? modes.AirRatio[i] : 0), GreatestRatio);
        GustSpectrum spectrum = options.Spectrum ?? DefaultSpectrum(action.Profile);
        double duration = options.Duration?.Seconds ?? action.Profile.AveragingTimeSi;
        sources = Sources(spectrum, options, ratios, duration);

        BaseShear = new(Together(s => s.OnBase(Vector3D.Zero, wind.Direction)), Force.FromNewtons);
        Overturning = new(Together(s => s.OnBase(wind.Across, Vector3D.Zero)), Torque.FromNewtonMeters);
        BaseTwist = new(Together(s => s.OnBase(Vector3D.UnitZ, Vector3D.Zero)), Torque.FromNewtonMeters);
        StructuralFactor = Overturning.Peak.NewtonMeters / PeakPressureMoment();
        Modes = [.. Enumerable.Range(0, modes.Count).Select(i => new GustMode(
            i + 1, Frequency.FromHertz(modes.Omega[i] / (2 * Math.PI)), stillAir[i], options.AerodynamicDamping ? modes.AirRatio[i] : 0,
            Torque.FromNewtonMeters(Together(s => Only(s.OnBase(wind.Across, Vector3D.Zero), wind.Bands.Length + i)).Deviation)))];
        Points = [.. model.Statue.Points.Select(p => MovementOf(p.Name, model.PlaceOf(p.On), model.PositionOf(p)))];
        rings = new Lazy<GustBar[]>(() => [.. model.Rings.Select(r => WorstOf(r.Ring))]);
    }

    /// <summary>More than this is no vibration; it keeps an absurd model within the method.</summary>
    private const double GreatestRatio = 0.9;

    /// <summary>The response to the gusts of one heading.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes; those above the last one take part as in statics.</param>
    /// <param name="wind">The wind. Its headings and its gust factor play no part.</param>
    /// <param name="heading">The plan angle that the wind blows towards.</param>
    /// <param name="damping">Damping in still air; null takes that of welded lattice towers and says so.</param>
    /// <param name="options">Defaults when null.</param>
    /// <exception cref="ArgumentException">The modes are of another model, or the statue has no skin to catch the wind.</exception>
    /// <exception cref="InvalidStatueException">The wind, the damping or the options have problems; all are listed.</exception>
    public static GustResponse Of(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping = null, GustOptions? options = null)
    {
        GustGuard.Require(model, modes, wind, heading, damping, options);
        options ??= new GustOptions();
        var assumptions = new List<Assumption>(wind.Profile.Assumptions);
        DampingModel inUse = GustGuard.DampingInUse(damping, assumptions);
        assumptions.AddRange(AssumptionsOf(model, wind, options));
        var bands = new BandWind(model, wind, heading);
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

    /// <summary>
    /// Effects of gusts, each with what the peak pressure on every single band gives to it, and its peak: cuts of trunk and limbs
    /// in shear, bending and twist, the most stressed corner of every standoff, the sway of points.
    /// </summary>
    internal IEnumerable<GustDemand> Effects()
    {
        foreach (BodyModel body in model.Bodies)
        {
            foreach (SegmentModel segment in body.Segments)
            {
                double[][][] cuts = Array.ConvertAll(sources, source => Cuts(source, segment));
                foreach (int end in (int[])[0, Mechanics.Frame.NodeSize])
                {
                    string where = $"{segment.Name}, {(end > 0 ? "top" : "bottom")}";
                    yield return InPlane(body.Name, where, "bending", i => (cuts[i][end + 3], cuts[i][end + 4]));
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
            Vector3D[][] moved = Array.ConvertAll(sources, source => Enumerable.Range(0, source.Covariance.Count).Select(k => model.Motion(source.Shape(k), place, at).Displacement).ToArray());
            yield return InPlane("points", point.Name, "sway", i => (Array.ConvertAll(moved[i], v => v.X), Array.ConvertAll(moved[i], v => v.Y)));
        }
    }

    /// <summary>What each coordinate puts on the cuts at both ends of a segment: three forces and three moments at the lower, then at the upper.</summary>
    private double[][] Cuts(GustSource source, SegmentModel segment)
    {
        double[][] rows = [.. Enumerable.Range(0, FrameElement.Size).Select(_ => new double[source.Covariance.Count])];
        Span<double> u = stackalloc double[FrameElement.Size], cut = stackalloc double[FrameElement.Size];
        for (int k = 0; k < source.Covariance.Count; k++)
        {
            segment.Element.Gather(source.Shape(k), u);
            segment.EndForces(segment.Element, u, cut);
            if (k >= wind.Bands.Length)
            {
                double omega = modes.Omega[k - wind.Bands.Length];
                for (int i = 0; i < u.Length; i++)
                    u[i] *= omega * omega;
                segment.TakeInertia(u, cut);
            }
            for (int i = 0; i < rows.Length; i++)
                rows[i][k] = cut[i];
        }
        return rows;
    }

    /// <summary>A standoff on its rigid ring that gusts stress less than this part of its yield strength is governed by its own strip of skin.</summary>
    private const double LeastStress = 0.05;

    private GustDemand Demand(string group, string where, string what, double[][] effects, GustStatistics statistics)
    {
        int sign = wind.AtPeakPressure(effects[0]) < 0 ? -1 : 1;
        (double[] byBand, double[] aside) = (new double[wind.Bands.Length], new double[wind.Bands.Length]);
        for (int a = 0; a < byBand.Length; a++)
        {
            byBand[a] = sign * effects[0][a] * wind.PeakOverMean(a);
            aside[a] = hasTwist ? eccentricity * effects[1][a] * wind.PeakOverMean(a) : 0;
        }
        return new GustDemand(group, where, what, wind.Heading, byBand, aside, Math.Abs(statistics.Peak), statistics.Deviation);
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
        List<GustSource> all = [Of(along, band => 2 * band.Intensity, band => (band.MeanForce * wind.Direction, default), hasMean: true)];
        if (hasTwist)
            all.Add(Of(new GustField(wind, spectrum, options, highest, GustKind.Twisting), band => 2 * band.Intensity, band => (default, band.SpanAcross.Cross(band.MeanForce * wind.Direction)), hasMean: false));
        if (options.AcrossIntensity > 0)
            all.Add(Of(new GustField(wind, spectrum, options, highest, GustKind.Across), band => options.AcrossIntensity * band.Intensity, band => (band.MeanForce * wind.Across, default), hasMean: false));
        return [.. all];

        GustSource Of(GustField field, Func<BandWind.Band, double> swing, Func<BandWind.Band, (Vector3D, Vector3D)> loadOf, bool hasMean) =>
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
        foreach (BandWind.Band band in wind.Bands)
            sum += band.At.Cross(band.PeakForce * wind.Direction).Dot(wind.Across);
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
            int count = source.Covariance.Count;
            (double[] along, double[] across, double[] twist) = (new double[count], new double[count], new double[count]);
            for (int i = 0; i < count; i++)
            {
                (Vector3D displacement, Vector3D rotation) = model.Motion(source.Shape(i), place, at);
                (along[i], across[i], twist[i]) = (displacement.Dot(wind.Direction), displacement.Dot(wind.Across), rotation.Z);
            }
            return (along, across, twist);
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
