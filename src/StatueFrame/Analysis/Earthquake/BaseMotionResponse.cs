using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The response of a statue in time to a record of the ground's acceleration, up to three components at once. Modes are
/// stepped exactly for accelerations that run straight between samples; mass beyond the modes follows the ground as a rigid
/// body.
/// </summary>
/// <remarks>
/// Linear, from rest; one damping ratio for all modes; without weight. Displacements are relative to the base, accelerations
/// absolute. Base forces are those of the springs, without dampers. Steps are refined to a sixteenth of the period of the
/// highest mode that matters. Immutable and safe to share between threads.
/// </remarks>
public sealed class BaseMotionResponse
{
    private const int PerPeriod = 16, MostRefined = 8, MostSamples = 400_000;
    private const double Matters = 0.01;

    private readonly StatueModel model;
    private readonly BaseMotionModes motion;

    /// <summary>The coordinates in time: relative displacements, and absolute accelerations as what they do by inertia.</summary>
    private readonly double[][] displaced, accelerated;
    private readonly Lazy<BaseMotionBar[]> rings;

    private BaseMotionResponse(StatueModel model, ModalResponse modes, BaseMotionRecord record, double damping)
    {
        (this.model, Record, DampingRatio) = (model, record, damping);
        motion = new BaseMotionModes(model, modes.Set);
        int refined = Refinement(record);
        StepSeconds = record.Step.Seconds / refined;
        double[][] ground = [.. Enumerable.Range(0, 3).Select(axis => Refine(record.Component(axis), refined))];
        SampleCount = ground[0].Length;
        ForceHistory[] forces = [.. Enumerable.Range(0, 3).Select(axis => ForceHistory.BaseAcceleration(model.Frame, axis, ground[axis]))];
        ModalTimeHistory history = ModalTimeHistory.Run(motion.Set, damping, forces, StepSeconds, SampleCount - 1);
        displaced = new double[motion.Count][];
        accelerated = new double[motion.Count][];
        for (int i = 0; i < motion.ModeCount; i++)
        {
            double omega = motion.Set.CircularFrequency(i);
            displaced[i] = history.Coordinate(i).ToArray();
            accelerated[i] = history.Coordinate(i, Motion.Acceleration).ToArray();
            for (int axis = 0; axis < 3; axis++)
                DenseVector.AddScaled(accelerated[i], motion.Participation(i, axis), ground[axis]);
            DenseVector.Scale(accelerated[i], -1 / (omega * omega));
        }
        for (int axis = 0; axis < 3; axis++)
        {
            DenseVector.Scale(ground[axis], -1);
            displaced[motion.ModeCount + axis] = accelerated[motion.ModeCount + axis] = ground[axis];
        }
        Resultant[] atBase = motion.Base();
        BaseShear = Force.FromNewtons(PeakOf(Array.ConvertAll(atBase, r => r.Force.X), Array.ConvertAll(atBase, r => r.Force.Y)));
        VerticalForce = Force.FromNewtons(PeakOf(Array.ConvertAll(atBase, r => r.Force.Z), new double[motion.Count]));
        Overturning = Torque.FromNewtonMeters(PeakOf(Array.ConvertAll(atBase, r => r.Moment.X), Array.ConvertAll(atBase, r => r.Moment.Y)));
        rings = new Lazy<BaseMotionBar[]>(() => [.. model.Rings.Select(r => WorstOf(r.Ring, r.BandInStatue))]);
    }

    /// <summary>The response with as many modes as hold nine tenths of the mass in all three directions, at most 192.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="record">The motion of the ground.</param>
    /// <param name="dampingRatio">Damping ratio of all modes, 0 to 0.5.</param>
    /// <exception cref="ArgumentOutOfRangeException">The damping ratio is out of range.</exception>
    /// <exception cref="InvalidStatueException">The record has problems; all are listed.</exception>
    public static BaseMotionResponse Of(StatueModel model, BaseMotionRecord record, double dampingRatio)
    {
        ArgumentNullException.ThrowIfNull(model);
        return Of(model, BaseMotionModes.Enough(model), record, dampingRatio);
    }

    /// <summary>The response with given modes.</summary>
    /// <inheritdoc cref="Of(StatueModel, BaseMotionRecord, double)" path="/*[self::exception or self::remarks]"/>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes.</param>
    /// <param name="record">The motion of the ground.</param>
    /// <param name="dampingRatio">Damping ratio of all modes, 0 to 0.5.</param>
    /// <exception cref="ArgumentException">The modes are of another model.</exception>
    public static BaseMotionResponse Of(StatueModel model, ModalResponse modes, BaseMotionRecord record, double dampingRatio)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(modes);
        ArgumentNullException.ThrowIfNull(record);
        if (modes.Set.Frame != model.Frame)
            throw new ArgumentException("The modes are of another model.", nameof(modes));
        if (!(dampingRatio is >= 0 and <= 0.5))
            throw new ArgumentOutOfRangeException(nameof(dampingRatio), FormattableString.Invariant($"Must be from 0 to 0.5, is {dampingRatio}."));
        var v = new Validator();
        record.Validate(v.At("Record"));
        if (record.SampleCount > MostSamples)
            v.Add("Record", $"has {record.SampleCount} samples, of at most {MostSamples}", "Cut it into parts, or take every second sample.");
        v.ThrowIfAny();
        return new BaseMotionResponse(model, modes, record, dampingRatio);
    }

    /// <summary>The motion of the ground.</summary>
    public BaseMotionRecord Record { get; }

    /// <summary>Damping ratio of all modes.</summary>
    public double DampingRatio { get; }

    /// <summary>Time between samples of the histories; a whole part of the record's.</summary>
    public Duration Step => Duration.FromSeconds(StepSeconds);

    /// <summary>Number of samples of the histories, which end with the record.</summary>
    public int SampleCount { get; }

    /// <summary>Greatest horizontal force on the base, without direction.</summary>
    public Force BaseShear { get; }

    /// <summary>Greatest vertical force on the base, without sign and without weight.</summary>
    public Force VerticalForce { get; }

    /// <summary>Greatest moment on the base about a horizontal axis, without direction.</summary>
    public Torque Overturning { get; }

    /// <summary>The most stressed standoff of each ring, by the shaking alone.</summary>
    public IReadOnlyList<BaseMotionBar> Rings => rings.Value;

    private double StepSeconds { get; }

    /// <summary>The movement of a named point.</summary>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public BaseMotionMovement Of(string point)
    {
        NamedPoint named = model.Statue.Points.FirstOrDefault(p => p.Name == point)
            ?? throw new ArgumentException($"The statue has no point \"{point}\". {NearNames.Closest(point, model.Statue.Points.Select(p => p.Name))}", nameof(point));
        (Vector3D Displacement, Vector3D Rotation)[] moved = motion.Motions(model.PlaceOf(named.On), model.PositionOf(named));
        (Vector3D Displacement, Vector3D Rotation)[] shaken = motion.Motions(model.PlaceOf(named.On), model.PositionOf(named), accelerations: true);
        return new BaseMotionMovement
        {
            Point = point,
            X = Sum(Array.ConvertAll(moved, m => m.Displacement.X), displaced, 1),
            Y = Sum(Array.ConvertAll(moved, m => m.Displacement.Y), displaced, 1),
            Z = Sum(Array.ConvertAll(moved, m => m.Displacement.Z), displaced, 1),
            AccelerationX = Sum(Array.ConvertAll(shaken, m => m.Displacement.X), accelerated, -1),
            AccelerationY = Sum(Array.ConvertAll(shaken, m => m.Displacement.Y), accelerated, -1),
            AccelerationZ = Sum(Array.ConvertAll(shaken, m => m.Displacement.Z), accelerated, -1),
        };
    }

    private ValueList<double> Sum(double[] c, double[][] series, double sign)
    {
        var sum = new double[SampleCount];
        Sum(c, series, sign, sum);
        return ValueList.Create<double>(sum);
    }

    private static void Sum(ReadOnlySpan<double> c, double[][] series, double sign, Span<double> sum)
    {
        sum.Clear();
        for (int k = 0; k < c.Length; k++)
        {
            if (c[k] != 0)
                DenseVector.AddScaled(sum, sign * c[k], series[k]);
        }
    }

    private double PeakOf(double[] x, double[] y)
    {
        double[] a = new double[SampleCount], b = new double[SampleCount];
        Sum(x, displaced, 1, a);
        Sum(y, displaced, 1, b);
        double most = 0;
        for (int i = 0; i < a.Length; i++)
            most = Math.Max(most, a[i] * a[i] + b[i] * b[i]);
        return Math.Sqrt(most);
    }

    private BaseMotionBar WorstOf(RingElement ring, int band)
    {
        double[] stress = new double[BarEnds.Corners * motion.Count], axial = new double[motion.Count], history = new double[SampleCount];
        (int Bar, SkinAssumption Assumption, double Stress, int Sample, double OfYield) worst = (0, SkinAssumption.RigidRing, 0, 0, -1);
        for (int i = 0; i < ring.Bars.Length; i++)
        {
            double yield = ring.Bars[i].Bar.Place.Standoff.Material.YieldStrength.Pascals;
            foreach (SkinAssumption assumption in SkinBounds.All)
            {
                if (!BaseMotionBars.Stresses(model, motion, ring, ring.Bars[i], band, assumption, stress, axial))
                    continue;
                for (int corner = 0; corner < BarEnds.Corners; corner++)
                {
                    Sum(stress.AsSpan(corner * motion.Count, motion.Count), assumption == SkinAssumption.RigidRing ? displaced : accelerated, 1, history);
                    for (int sample = 0; sample < history.Length; sample++)
                    {
                        double size = Math.Abs(history[sample]);
                        if (Extremes.Exceeds(size / yield, worst.OfYield))
                            worst = (i, assumption, size, sample, size / yield);
                    }
                }
            }
        }
        return new BaseMotionBar(ring.Level, ring.BandName, ring.Bars[worst.Bar].Number, worst.Assumption, Pressure.FromPascals(worst.Stress), Duration.FromSeconds(worst.Sample * StepSeconds));
    }

    /// <summary>Into how many steps one of the record is cut.</summary>
    private int Refinement(BaseMotionRecord record)
    {
        double highest = 0;
        for (int i = 0; i < motion.ModeCount; i++)
        {
            for (int axis = 0; axis < 3; axis++)
            {
                if (motion.Set.EffectiveMass(i, axis) > Matters * motion.Set.MovingMass(axis))
                    highest = motion.Set.Frequency(i);
            }
        }
        int wanted = (int)Math.Clamp(Math.Ceiling(PerPeriod * highest * record.Step.Seconds), 1, MostRefined);
        return Math.Max(1, Math.Min(wanted, MostSamples / record.SampleCount));
    }

    private static double[] Refine(double[] samples, int parts)
    {
        var refined = new double[parts * (samples.Length - 1) + 1];
        for (int i = 0; i < refined.Length; i++)
        {
            int before = i / parts;
            double t = (double)(i % parts) / parts;
            refined[i] = t == 0 ? samples[before] : (1 - t) * samples[before] + t * samples[before + 1];
        }
        return refined;
    }
}
