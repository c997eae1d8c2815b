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
/// Linear and quasi-steady: the drag on a band swings by ρ C_f A V u, the gusts u along the wind are a Gaussian random
/// field, and the statue vibrates about its unloaded state. Wind alone, without load factors and weight. Vortex shedding,
/// galloping and gusts across the wind are not in it. A strength check by these peaks needs review by a wind engineer.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Source of the method: Davenport 1961 and 1967, from memory; derived in the theory page "gusts".</para>
/// </remarks>
public sealed class GustResponse
{
    private readonly StatueModel model;
    private readonly WindModes modes;
    private readonly BandWind wind;
    private readonly double[] staticShapes;
    private readonly GustCovariance covariance;
    private readonly Lazy<GustBar[]> rings;

    private GustResponse(StatueModel model, WindModes modes, WindAction action, BandWind wind, DampingModel damping, GustOptions options)
    {
        (this.model, this.modes, this.wind) = (model, modes, wind);
        staticShapes = StaticShapes();
        int bands = wind.Bands.Length;
        double[] stillAir = [.. modes.Omega.Select(omega => DampingModel.RatioOf(damping.DecrementAt(omega / (2 * Math.PI), modes.Omega[0] / (2 * Math.PI))))];
        var ratios = new double[modes.Count];
        var modalForces = new double[bands * modes.Count];
        for (int i = 0; i < modes.Count; i++)
        {
            ratios[i] = Math.Min(stillAir[i] + (options.AerodynamicDamping ? modes.AirRatio[i] : 0), GreatestRatio);
            for (int a = 0; a < bands; a++)
                modalForces[i * bands + a] = wind.Bands[a].MeanForce * modes.MotionAlong(i)[a];
        }
        GustSpectrum spectrum = options.Spectrum ?? DefaultSpectrum(action.Profile);
        double duration = options.Duration?.Seconds ?? action.Profile.AveragingTimeSi;
        var field = new GustField(wind, spectrum, options, modes.Omega[^1] / (2 * Math.PI));
        covariance = new GustCovariance(field, wind.Bands, modalForces, modes.Omega, ratios, duration);

        BaseShear = new(covariance.Of(Base(Vector3D.Zero, wind.Direction)), Force.FromNewtons);
        double[] overturning = Base(wind.Across, Vector3D.Zero);
        Overturning = new(covariance.Of(overturning), Torque.FromNewtonMeters);
        BaseTwist = new(covariance.Of(Base(Vector3D.UnitZ, Vector3D.Zero)), Torque.FromNewtonMeters);
        StructuralFactor = Overturning.Peak.NewtonMeters / PeakPressureMoment();
        Modes = [.. Enumerable.Range(0, modes.Count).Select(i => new GustMode(
            i + 1, Frequency.FromHertz(modes.Omega[i] / (2 * Math.PI)), stillAir[i], options.AerodynamicDamping ? modes.AirRatio[i] : 0,
            Torque.FromNewtonMeters(covariance.Of(Only(overturning, bands + i)).Deviation)))];
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
    /// in shear and bending, the most stressed corner of every standoff, the sway of points.
    /// </summary>
    internal IEnumerable<GustDemand> Effects()
    {
        foreach (BodyModel body in model.Bodies)
        {
            foreach (SegmentModel segment in body.Segments)
            {
                double[][] cuts = Cuts(segment);
                foreach (int end in (int[])[0, Mechanics.Frame.NodeSize])
                {
                    string where = $"{segment.Name}, {(end > 0 ? "top" : "bottom")}";
                    yield return InPlane(body.Name, where, "bending", cuts[end + 3], cuts[end + 4]);
                    yield return InPlane(body.Name, where, "shear", cuts[end], cuts[end + 1]);
                }
            }
        }
        foreach ((RingElement ring, _) in model.Rings)
        {
            var stresses = new GustBarStress(model, ring, covariance, wind, Shape);
            foreach (BarModel bar in ring.Bars)
            {
                (GustStatistics stress, double[] effects) = stresses.OfWorstCorner(bar.Bar);
                GustDemand demand = Demand("standoffs", ring.BandName, "stress", effects, stress);
                if (demand.Peak > LeastStress * bar.Standoff.Material.YieldStrength.Pascals)
                    yield return demand;
            }
        }
        foreach (NamedPoint point in model.Statue.Points)
        {
            Place place = model.PlaceOf(point.On);
            Vector3D at = model.PositionOf(point);
            Vector3D[] moved = [.. Enumerable.Range(0, covariance.Count).Select(k => model.Motion(Shape(k), place, at).Displacement)];
            yield return InPlane("points", point.Name, "sway", Array.ConvertAll(moved, v => v.X), Array.ConvertAll(moved, v => v.Y));
        }
    }

    /// <summary>What each coordinate puts on the cuts at both ends of a segment: three forces and three moments at the lower, then at the upper.</summary>
    private double[][] Cuts(SegmentModel segment)
    {
        double[][] rows = [.. Enumerable.Range(0, FrameElement.Size).Select(_ => new double[covariance.Count])];
        Span<double> u = stackalloc double[FrameElement.Size], cut = stackalloc double[FrameElement.Size];
        for (int k = 0; k < covariance.Count; k++)
        {
            segment.Element.Gather(Shape(k), u);
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

    private GustDemand Demand(string group, string where, string what, double[] effects, GustStatistics? known = null)
    {
        int sign = wind.AtPeakPressure(effects) < 0 ? -1 : 1;
        var byBand = new double[wind.Bands.Length];
        for (int a = 0; a < byBand.Length; a++)
            byBand[a] = sign * effects[a] * wind.PeakOverMean(a);
        GustStatistics statistics = known ?? covariance.Of(effects);
        return new GustDemand(group, where, what, wind.Heading, byBand, Math.Abs(statistics.Peak), statistics.Deviation);
    }

    /// <summary>A vector of two components, along the way it has under the peak pressure on all bands.</summary>
    private GustDemand InPlane(string group, string where, string what, double[] cx, double[] cy)
    {
        double sx = wind.AtPeakPressure(cx), sy = wind.AtPeakPressure(cy), length = double.Hypot(sx, sy);
        return Demand(group, where, what, length > 0 ? [.. cx.Zip(cy, (a, b) => (a * sx + b * sy) / length)] : cx);
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
        if (options.Duration is null)
            yield return new Assumption("time of the peak response", $"{wind.Profile.AveragingTimeSi} s, that of the profile's mean speed", Source.Assumed("gusts"));
        if (model.HasTensionOnly)
            yield return new Assumption("tension-only braces in gusts", "one diagonal of each pair acts, half from each", Source.Assumed("gusts"));
    }

    /// <summary>For every band, the static displacements under its mean wind force: full vectors one after the other.</summary>
    private double[] StaticShapes()
    {
        int size = model.Frame.FreedomCount;
        var loads = new double[wind.Bands.Length * size];
        for (int a = 0; a < wind.Bands.Length; a++)
            wind.AddMeanForce(a, loads.AsSpan(a * size, size));
        return model.Statics.Solve(loads);
    }

    private ReadOnlySpan<double> Shape(int coordinate)
    {
        int size = model.Frame.FreedomCount, bands = wind.Bands.Length;
        return coordinate < bands ? staticShapes.AsSpan(coordinate * size, size) : modes.Shape(coordinate - bands);
    }

    /// <summary>What each coordinate puts on the base along a force direction or about a moment axis through its center.</summary>
    private double[] Base(Vector3D axis, Vector3D direction)
    {
        var c = new double[covariance.Count];
        for (int a = 0; a < wind.Bands.Length; a++)
        {
            Vector3D force = wind.Bands[a].MeanForce * wind.Direction;
            c[a] = force.Dot(direction) + wind.Bands[a].At.Cross(force).Dot(axis);
        }
        for (int i = 0; i < modes.Count; i++)
        {
            double w = modes.Omega[i];
            double Part(int d) => modes.Participation(i, d);
            c[wind.Bands.Length + i] = w * w * (
                direction.Dot(new Vector3D(Part(0), Part(1), Part(2))) + axis.Dot(new Vector3D(Part(3), Part(4), Part(5))));
        }
        return c;
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
        double[] along = new double[covariance.Count], across = new double[covariance.Count], twist = new double[covariance.Count];
        for (int i = 0; i < covariance.Count; i++)
        {
            (Vector3D displacement, Vector3D rotation) = model.Motion(Shape(i), place, at);
            (along[i], across[i], twist[i]) = (displacement.Dot(wind.Direction), displacement.Dot(wind.Across), rotation.Z);
        }
        return new GustMovement
        {
            Point = name,
            Sway = new(covariance.Of(along), Length.FromMeters),
            SwayAcross = new(covariance.Of(across), Length.FromMeters),
            Twist = new(covariance.Of(twist), Angle.FromRadians),
            Acceleration = new(covariance.AccelerationOf(along), Acceleration.FromMetersPerSecondSquared),
            AccelerationAcross = new(covariance.AccelerationOf(across), Acceleration.FromMetersPerSecondSquared),
        };
    }

    private GustBar WorstOf(RingElement ring)
    {
        (int Bar, GustStatistics Stress, GustStatistics Axial, double OfYield) worst = (-1, default, default, 0);
        var stresses = new GustBarStress(model, ring, covariance, wind, Shape);
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
