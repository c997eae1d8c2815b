using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>
/// Modal response spectrum analysis: the peaks of a statue's response to an earthquake given by spectra. Every quantity is
/// found mode by mode with its sign, combined over the modes of each component of the ground's motion, and then over the
/// components.
/// </summary>
/// <remarks>
/// <para>
/// Linear; factor 1 on the action. Mass that shakes in no mode follows the ground as a rigid body and adds by the square
/// root of the sum of squares. Peaks have no sign and do not come at one time.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Sources: EN 1998-1:2004, 4.3.3.3; ASCE/SEI 7-22, 12.9.1; derived in the theory page "earthquake".</para>
/// </remarks>
public sealed class EarthquakeResponse
{
    private const double EnoughMass = 0.9;

    private readonly BaseMotionModes motion;
    private readonly SpectralCombination spectral;

    private EarthquakeResponse(StatueModel model, ModalResponse modes, EarthquakeAction action)
    {
        (Model, Action) = (model, action);
        motion = new BaseMotionModes(model, modes.Set, action.RigidFrequency?.Hertz ?? double.PositiveInfinity);
        spectral = new SpectralCombination(motion, action);
        Peaks = new DynamicPeaks(model, motion, spectral);
        Base = BaseBy(spectral.Peak, spectral.GreatestInPlane);
        Modes = [.. Enumerable.Range(0, motion.ModeCount).Select(ModeAt)];
    }

    /// <summary>The response with as many modes as hold nine tenths of the mass in all three directions, at most 192.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="action">The earthquake.</param>
    /// <exception cref="InvalidStatueException">The action has problems; all are listed.</exception>
    public static EarthquakeResponse Of(StatueModel model, EarthquakeAction action)
    {
        Require(model, action);
        return new EarthquakeResponse(model, BaseMotionModes.Enough(model), action);
    }

    /// <summary>The response with given modes.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes.</param>
    /// <param name="action">The earthquake.</param>
    /// <exception cref="ArgumentException">The modes are of another model.</exception>
    /// <exception cref="InvalidStatueException">The action has problems; all are listed.</exception>
    public static EarthquakeResponse Of(StatueModel model, ModalResponse modes, EarthquakeAction action)
    {
        Require(model, action);
        ArgumentNullException.ThrowIfNull(modes);
        if (modes.Set.Frame != model.Frame)
            throw new ArgumentException("The modes are of another model.", nameof(modes));
        return new EarthquakeResponse(model, modes, action);
    }

    /// <summary>The model.</summary>
    public StatueModel Model { get; }

    /// <summary>The earthquake.</summary>
    public EarthquakeAction Action { get; }

    /// <summary>What comes down at the base under all components.</summary>
    public EarthquakeBase Base { get; }

    /// <summary>The peaks of all parts.</summary>
    internal DynamicPeaks Peaks { get; }

    /// <summary>The modes that were taken, lowest first: the table of effective masses.</summary>
    public IReadOnlyList<EarthquakeMode> Modes { get; }

    /// <summary>The part of the mass free to move that shakes in the modes taken, for motion of the base along x.</summary>
    public double MassShareX => MassShare(0);

    /// <summary>The part along y.</summary>
    public double MassShareY => MassShare(1);

    /// <summary>The part along z.</summary>
    public double MassShareZ => MassShare(2);

    /// <summary>Every value taken for the user.</summary>
    public IReadOnlyList<Assumption> Assumptions => [.. Action.Assumptions()];

    /// <summary>What the reader should know before trusting the numbers.</summary>
    public IReadOnlyList<string> Warnings => [.. FindWarnings()];

    /// <summary>What comes down at the base under one component alone.</summary>
    public EarthquakeBase BaseUnder(EarthquakeComponent component) => BaseBy(
        c => spectral.Peak((int)component, c), (x, y) => spectral.GreatestInPlane((int)component, x, y));

    /// <summary>The movement of a named point.</summary>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public EarthquakeMovement Of(string point)
    {
        NamedPoint named = Model.Statue.Points.FirstOrDefault(p => p.Name == point)
            ?? throw new ArgumentException($"The statue has no point \"{point}\". {NearNames.Closest(point, Model.Statue.Points.Select(p => p.Name))}", nameof(point));
        return MovementOf(point, Model.PlaceOf(named.On), Model.PositionOf(named));
    }

    /// <summary>The movement of the center of a level or band.</summary>
    /// <param name="name">Its name, as in "L7", "band 3" or "wing/band 2".</param>
    /// <exception cref="ArgumentException">The statue has no such level or band.</exception>
    public EarthquakeMovement OfPart(string name)
    {
        var names = new StatueNames(Model.Statue);
        if (!names.Has(name))
            throw new ArgumentException($"The statue has no level or band \"{name}\". {names.Suggest(name)}", nameof(name));
        Place place = Model.PlaceOf(name);
        return MovementOf(name, place, place.Center);
    }

    /// <summary>The forces in cuts at both ends of every segment.</summary>
    public IReadOnlyList<EarthquakeCut> Cuts()
    {
        var all = new List<EarthquakeCut>();
        foreach (SegmentModel segment in Model.Bodies.SelectMany(body => body.Segments))
        {
            (CutPeaks bottom, CutPeaks top) = Peaks.EndPeaks(segment);
            all.Add(Cut(segment.Name, false, bottom));
            all.Add(Cut(segment.Name, true, top));
        }
        return all;
    }

    /// <summary>The inertia force of every level and band.</summary>
    public IReadOnlyList<EarthquakeLevelForce> LevelForces()
    {
        double[][] inertia = [.. Enumerable.Range(0, motion.Count).Select(k => motion.Inertia(k).ToArray())];
        var all = new List<EarthquakeLevelForce>();
        var counted = new HashSet<int>();
        foreach (BodyModel body in Model.Bodies)
        {
            for (int i = 0; i < body.Levels.Length; i++)
                Add(body.Prefix + body.Tower.Levels[i].Name, body.Levels[i]);
            for (int i = 0; i < body.Bands.Length; i++)
                Add(body.BandName(i), body.BandPlaces[i]);
        }
        return all;

        void Add(string name, Place place)
        {
            if (counted.Add(place.Node))
                all.Add(new EarthquakeLevelForce(name, Along(place, 0), Along(place, 1), Along(place, 2)));
        }

        Force Along(Place place, int axis) =>
            Force.FromNewtons(spectral.Peak(Array.ConvertAll(inertia, f => f[place.Node * Frame.NodeSize + axis])));
    }

    /// <summary>The axial force of every lattice member. A pair of tension-only braces has the stiffness of one of them, which bears what is given here in tension.</summary>
    public IReadOnlyList<EarthquakeMember> LatticeMembers() =>
    [
        .. Model.LatticeSegments.SelectMany(segment => Peaks.MemberPeaks(segment).Select((peak, i) => new EarthquakeMember(segment.Name, segment.Members[i].Label, Force.FromNewtons(peak)))),
    ];

    /// <summary>The most stressed standoff of each ring, as a part of its yield strength, by the earthquake alone.</summary>
    public IReadOnlyList<EarthquakeBar> Rings() => Rings([], 1);

    /// <summary>The same with what else acts: the worst of the load cases, and a factor on the earthquake.</summary>
    internal IReadOnlyList<EarthquakeBar> Rings(IReadOnlyList<LoadCase> cases, double factor) =>
        [.. Model.Rings.Select(r => Peaks.Bars.WorstOf(r.Ring, r.BandInStatue, cases, Math.Abs(factor)))];

    private EarthquakeMode ModeAt(int i)
    {
        return new EarthquakeMode(
            i + 1, Frequency.FromHertz(motion.Set.Frequency(i)), EffectiveMass(0), EffectiveMass(1), EffectiveMass(2), Spectral(0), Spectral(1), Spectral(2));

        Mass EffectiveMass(int axis) => Mass.FromKilograms(motion.Set.EffectiveMass(i, axis));

        Acceleration Spectral(int d) => Acceleration.FromMetersPerSecondSquared(spectral.SpectralAccelerations[d, i]);
    }

    private double MassShare(int axis)
    {
        double sum = 0;
        for (int i = 0; i < motion.ModeCount; i++)
            sum += motion.Set.EffectiveMass(i, axis);
        return motion.Set.MovingMass(axis) > 0 ? sum / motion.Set.MovingMass(axis) : 0;
    }

    private EarthquakeBase BaseBy(Peak peak, PeakInPlane inPlane)
    {
        Resultant[] all = motion.Base();
        double[] fx = Array.ConvertAll(all, r => r.Force.X), fy = Array.ConvertAll(all, r => r.Force.Y);
        double[] mx = Array.ConvertAll(all, r => r.Moment.X), my = Array.ConvertAll(all, r => r.Moment.Y);
        return new EarthquakeBase
        {
            ForceX = Force.FromNewtons(peak(fx)),
            ForceY = Force.FromNewtons(peak(fy)),
            ForceZ = Force.FromNewtons(peak(Array.ConvertAll(all, r => r.Force.Z))),
            MomentX = Torque.FromNewtonMeters(peak(mx)),
            MomentY = Torque.FromNewtonMeters(peak(my)),
            MomentZ = Torque.FromNewtonMeters(peak(Array.ConvertAll(all, r => r.Moment.Z))),
            Shear = Force.FromNewtons(inPlane(fx, fy)),
            Overturning = Torque.FromNewtonMeters(inPlane(mx, my)),
        };
    }

    private EarthquakeMovement MovementOf(string name, Place place, Vector3D at)
    {
        (Vector3D Displacement, Vector3D Rotation)[] moved = motion.Motions(place, at);
        (Vector3D Displacement, Vector3D Rotation)[] shaken = motion.Motions(place, at, accelerations: true);
        double factor = Action.Spectra().Max(spectrum => spectrum.DisplacementFactor);
        double[] x = Array.ConvertAll(moved, m => m.Displacement.X), y = Array.ConvertAll(moved, m => m.Displacement.Y);
        return new EarthquakeMovement
        {
            Point = name,
            X = Length.FromMeters(factor * spectral.Peak(x)),
            Y = Length.FromMeters(factor * spectral.Peak(y)),
            Z = Length.FromMeters(factor * spectral.Peak(Array.ConvertAll(moved, m => m.Displacement.Z))),
            Sway = Length.FromMeters(factor * spectral.GreatestInPlane(x, y)),
            Twist = Angle.FromRadians(factor * spectral.Peak(Array.ConvertAll(moved, m => m.Rotation.Z))),
            Acceleration = Acceleration.FromMetersPerSecondSquared(spectral.GreatestInPlane(
                Array.ConvertAll(shaken, m => m.Displacement.X), Array.ConvertAll(shaken, m => m.Displacement.Y))),
            VerticalAcceleration = Acceleration.FromMetersPerSecondSquared(spectral.Peak(Array.ConvertAll(shaken, m => m.Displacement.Z))),
        };
    }

    private static EarthquakeCut Cut(string segment, bool atTop, CutPeaks peaks) => new(
        segment, atTop, Force.FromNewtons(peaks.Axial), Force.FromNewtons(peaks.Of(0)), Force.FromNewtons(peaks.Of(1)),
        Torque.FromNewtonMeters(peaks.Of(3)), Torque.FromNewtonMeters(peaks.Of(4)), Torque.FromNewtonMeters(peaks.Torsion));

    private IEnumerable<string> FindWarnings()
    {
        foreach (string warning in Action.Spectra().SelectMany(spectrum => spectrum.Warnings))
            yield return warning;
        double longest = motion.ModeCount > 0 ? 1 / motion.Set.Frequency(0) : 0, covered = Action.Spectra().Min(spectrum => spectrum.LongestPeriod);
        if (longest > covered)
            yield return Invariant($"The lowest mode has a period of {longest:0.00} s; a spectrum in use covers {covered:0.0} s.");
        if (Math.Min(MassShareX, MassShareY) >= EnoughMass)
            yield break;
        if (!Action.MissingMass)
            yield return Invariant($"The modes taken hold {100 * MassShareX:0} % of the mass along x and {100 * MassShareY:0} % along y, less than the 90 % that codes ask for.");
        else if (motion.ModeCount > 0 && spectral.SpectralAccelerations[0, motion.ModeCount - 1] > 1.05 * spectral.GroundAccelerations[0])
            yield return Invariant($"The modes taken hold {100 * MassShareX:0} % of the mass along x and {100 * MassShareY:0} % along y; the rest shakes with the acceleration at period zero, though the spectrum is higher at the highest mode taken. Take more modes.");
    }

    private static void Require(StatueModel model, EarthquakeAction action)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(action);
        var v = new Validator();
        action.Validate(v.At("Action"));
        v.ThrowIfAny();
    }

    private delegate double Peak(ReadOnlySpan<double> c);

    private delegate double PeakInPlane(ReadOnlySpan<double> x, ReadOnlySpan<double> y);
}
