using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Analysis;

/// <summary>
/// What a shock does to a statue in time: peaks of movement, bar stress, forces on tower and base, and where the energy
/// goes. All starts from rest under the weight and steady loads of the situation; movements and energies count from
/// there, stresses and base forces hold them in.
/// </summary>
/// <remarks>
/// <para>
/// Elastic: modes stepped exactly, the others follow statically. With bars that yield: direct integration. Bands are
/// rigid rings; the sheet's own vibration between bars is not part of it. Tension-only braces act as in the modes.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed class ShockResponse
{
    private readonly double[] reactions;
    private readonly ShockBar[] bars;

    private ShockResponse(StatueModel model, Situation situation, DampingModel damped, ShockOptions options)
    {
        double damping = DampingModel.RatioOf(damped.StructuralDecrement);
        (Model, Situation, DampingRatio) = (model, situation, damping);
        ShockLoads loads = ShockLoads.Of(model, situation);
        (ModeSet modes, ModeCount, Captured) = ShockModes.Of(model, loads, options.Modes);
        ModesError = modes.Error;
        double highest = modes.Frequency(ModeCount - 1), lowest = modes.Frequency(0);
        HighestFrequency = Frequency.FromHertz(highest);
        double step = options.Step?.Seconds ?? Math.Min(1 / (20 * highest), loads.Shortest / 40);
        double length = options.Length?.Seconds ?? loads.End + 4 / lowest;
        RequireFineSteps(step, length, highest, loads);
        int samples = Math.Max(2, (int)Math.Round(length / step) + 1);
        (Step, Length) = (Duration.FromSeconds(step), Duration.FromSeconds((samples - 1) * step));

        var probes = new ShockProbes(model);
        var atRest = new double[probes.Count];
        var nodal = new double[model.Frame.FreedomCount];
        Loads rest = Analysis.Loads.Of(model, situation, null, HeatField.Of(model, situation), nodal);
        double[] displaced = model.Statics.Solve(nodal);
        probes.Look(displaced, atRest);
        AtRest = rest.Resultant;
        var recorder = new ShockRecorder(model, probes, step, samples, rest.Resultant, options.KeepsHistory);
        var notes = new List<Assumption> { new("bars and skin in a shock", "each band a rigid ring on its bars, and each bar alone with its own strip of limp skin while the tower stands still; the worse counts", Source.Assumed("shock")) };
        if (loads.MeetsBareParts)
            notes.Add(ShockLoads.BareParts);
        if (options.Yielding is { } yielding)
        {
            double w1 = 2 * Math.PI * lowest, w2 = 2 * Math.PI * highest;
            var yieldingBars = new YieldingBars(model, probes, yielding, atRest);
            new YieldingShock(model, loads, probes, yieldingBars, (2 * damping * w1 * w2 / (w1 + w2), 2 * damping / (w1 + w2)), step).Run(samples, recorder);
            bars = yieldingBars.Results(step);
            notes.Add(new("damping with yielding bars", Invariant($"ζ = {damping:0.####} at {lowest:0.##} Hz and {highest:0.##} Hz, less between"), Source.Assumed("shock")));
        }
        else
        {
            BarPeaks = new BarPeaks(model, new LoadCase(model, rest, displaced, null));
            var shaken = new ModalShock(model, loads, probes, modes, ModeCount, [.. Enumerable.Range(0, ModeCount).Select(i => DampingModel.RatioOf(damped.DecrementAt(modes.Frequency(i), lowest)))], step);
            shaken.Run(samples, recorder, BarPeaks);
            Fittings = shaken.Fittings;
            bars = BarPeaks.Results(sample => sample * step);
        }
        (reactions, Tower) = (recorder.Reactions, recorder.Tower);
        Points = recorder.Points();
        BarForce = recorder.BarForce();
        Energy = recorder.Energy();
        History = recorder.History;
        Assumptions = notes.ToValueList();
        Strikes = loads.Strikes.ToValueList();
        Warnings = Warn(options, loads).ToValueList();
    }

    /// <summary>Works out the response to a situation that holds shocks.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="situation">Shocks with factors, and steady loads; no wind.</param>
    /// <param name="damping">Damping of all modes; null takes that of welded lattice towers, as an assumption.</param>
    /// <param name="options">Defaults when null.</param>
    /// <exception cref="InvalidStatueException">
    /// The situation, the damping or the options have problems, all of which are listed; or the steps asked for are too
    /// long for the highest mode or the shortest pulse, or too many.
    /// </exception>
    public static ShockResponse Of(StatueModel model, Situation situation, DampingModel? damping = null, ShockOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(situation);
        var v = new Validator();
        situation.Validate(v.At(nameof(Situation)), new StatueNames(model.Statue));
        if (situation.Actions?.Any(a => a?.Action is ShockAction) != true)
            v.At(nameof(Situation)).Add(nameof(StatueFrame.Situation.Actions), "hold no shock", "Add a PressurePulse, a Blow, a Strike or a SuddenRelease.");
        DampingModel damped = damping ?? DampingModel.Of(DampingCategory.WeldedLattice);
        ValidateDamping(damped, v.At("Damping"));
        options ??= new ShockOptions();
        options.Validate(v.At(nameof(ShockOptions)));
        if (options.Yielding is not null && model.BarCount == 0)
            v.At(nameof(ShockOptions)).Add(nameof(ShockOptions.Yielding), "asks bars to yield, but the statue has none", "Leave it out.");
        if (options.Yielding is not null && situation.Actions?.Any(a => a?.Action is TemperatureAction) == true)
            v.At(nameof(ShockOptions)).Add(nameof(ShockOptions.Yielding), "does not go with a temperature in the situation", "Leave one of the two out: yielding counts from the statue without heat.");
        v.ThrowIfAny();
        try
        {
            return new ShockResponse(model, situation, damped, options);
        }
        catch (FrameException e)
        {
            throw LooseParts.Explain(model.Bodies, e);
        }
    }

    /// <summary>The model.</summary>
    public StatueModel Model { get; }

    /// <summary>What acts.</summary>
    public Situation Situation { get; }

    /// <summary>Damping ratio ζ of the structure in all modes; dampers add theirs to the modes that they are tuned to, but not where bars yield.</summary>
    public double DampingRatio { get; }

    /// <summary>Number of modes that swing.</summary>
    public int ModeCount { get; }

    /// <summary>A bound of the relative error of their frequencies.</summary>
    internal double ModesError { get; }

    /// <summary>Frequency of the highest of them.</summary>
    public Frequency HighestFrequency { get; }

    /// <summary>
    /// The part that these modes take of the energy all modes would take, counting modes far above what a pulse of its
    /// duration (or a contact of 1 ms) sets moving less and less.
    /// </summary>
    public double Captured { get; }

    /// <summary>Time between two looks.</summary>
    public Duration Step { get; }

    /// <summary>Time looked at.</summary>
    public Duration Length { get; }

    /// <summary>The greatest movement of every named point.</summary>
    public ValueList<ShockMovement> Points { get; }

    /// <summary>Every standoff with its greatest stress.</summary>
    public IReadOnlyList<ShockBar> Bars => bars;

    /// <summary>The standoff nearest to its yield strength; null when the statue has none.</summary>
    public ShockBar? WorstBar => bars.Length == 0 ? null : bars.FirstGreatest(b => b.YieldFraction);

    /// <summary>The standoff whose skin end moves the farthest against the tower; null when the statue has none.</summary>
    public ShockBar? MostMovedBar => bars.Length == 0 ? null : bars.FirstGreatest(b => b.Movement.Value.Meters);

    /// <summary>
    /// Greatest horizontal force that all standoffs together put on the tower, from rest: how much of the shock on the skin reaches it. Forces on
    /// bands where bars push different ways cancel.
    /// </summary>
    public PeakInTime<Force> BarForce { get; }

    /// <summary>Greatest horizontal force on the base, without direction.</summary>
    public PeakInTime<Force> BaseShear => At(r => Math.Sqrt(r[0] * r[0] + r[1] * r[1]), Force.FromNewtons);

    /// <summary>Greatest overturning moment about the base's center, without direction.</summary>
    public PeakInTime<Torque> Overturning => At(r => Math.Sqrt(r[3] * r[3] + r[4] * r[4]), Torque.FromNewtonMeters);

    /// <summary>Greatest twisting moment on the base, without direction.</summary>
    public PeakInTime<Torque> Twist => At(r => Math.Abs(r[5]), Torque.FromNewtonMeters);

    /// <summary>The least force that presses the base down; negative when it pulls.</summary>
    public PeakInTime<Force> LeastDown => At(r => r[2], f => Force.FromNewtons(-(double)f));

    /// <summary>Where the energy goes.</summary>
    public ShockEnergy Energy { get; }

    /// <summary>Every step, when the options ask for it; else null.</summary>
    public ShockHistory? History { get; }

    /// <summary>Forces and moments on the base in every step, weight included, six a step.</summary>
    internal ReadOnlySpan<double> Reactions => reactions;

    /// <summary>What was on the base before it, in <see cref="Reactions"/> too.</summary>
    internal Resultant AtRest { get; }

    /// <summary>The greatest forces in tower and limbs, from rest.</summary>
    internal TowerPeaks Tower { get; }

    /// <summary>The peaks of every standoff's end forces on its rigid ring; null where bars yield.</summary>
    internal BarPeaks? BarPeaks { get; }

    /// <summary>The greatest accelerations of each fitting, sideways and up and down, m/s²; null with bars that yield.</summary>
    internal (double Across, double Up)[]? Fittings { get; }

    /// <summary>What the library took for the user; that of the damping is the damping's own.</summary>
    public ValueList<Assumption> Assumptions { get; }

    /// <summary>The impulse of every strike.</summary>
    public ValueList<StrikeImpulse> Strikes { get; }

    /// <summary>What the reader should know before trusting the numbers.</summary>
    public ValueList<string> Warnings { get; }

    /// <summary>The greatest movement of a named point.</summary>
    /// <param name="point">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public ShockMovement Of(string point) => Points.FirstOrDefault(p => p.Point == point)
        ?? throw new ArgumentException($"The statue has no point \"{point}\". {NearNames.Closest(point, Points.Select(p => p.Point))}", nameof(point));

    /// <summary>When and how nearly the base lifts at an edge; null when neither the width nor the tower's plan at its foot is known.</summary>
    /// <param name="baseWidth">Width of the base across any heading; null takes the tower's plan at its first level.</param>
    /// <param name="holdDown">Pre-tension of all hold-downs together, acting at the center; zero unless given.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is not positive, or the pre-tension negative.</exception>
    public ShockOverturning? OverturningOn(Length? baseWidth = null, Force holdDown = default)
    {
        if (baseWidth is { } width && !(width.Meters > 0 && double.IsFinite(width.Meters)))
            throw new ArgumentOutOfRangeException(nameof(baseWidth), "Must be positive.");
        if (!(holdDown.Newtons >= 0 && double.IsFinite(holdDown.Newtons)))
            throw new ArgumentOutOfRangeException(nameof(holdDown), "Must be zero or more.");
        if (Footprint.Of(Model, baseWidth?.Meters) is not { } footprint)
            return null;
        (double Ratio, double Moment, double Resistance) worst = (-1, 0, 0);
        int sample = 0;
        for (int i = 0; i < reactions.Length / 6; i++)
        {
            (double Ratio, double Moment, double Resistance) now = footprint.Overturning(reactions.AsSpan(6 * i, 6), holdDown.Newtons);
            if (now.Ratio > worst.Ratio)
                (worst, sample) = (now, i);
        }
        return new ShockOverturning(Torque.FromNewtonMeters(worst.Moment), Torque.FromNewtonMeters(worst.Resistance), worst.Ratio, sample * Step, footprint.What);
    }

    /// <summary>The response on one line.</summary>
    public override string ToString() => Invariant($"{Situation.Name}: base shear {BaseShear.Value.Kilonewtons:g4} kN, overturning {Overturning.Value.KilonewtonMeters:g4} kN·m, {WorstBar?.ToString() ?? "no bars"}");

    /// <summary>A shock may meet a statue without any damping, or with much.</summary>
    internal static void ValidateDamping(DampingModel damping, Validator v)
    {
        v.InRange(damping.StructuralDecrement, 0, 6, "Logarithmic decrements of structures lie near 0.01 to 0.1; the damping ratio is 2π times less.");
        damping.ValidateDampers(v);
    }

    private void RequireFineSteps(double step, double length, double highest, ShockLoads loads)
    {
        var v = new Validator();
        Validator at = v.At(nameof(ShockOptions));
        double byMode = 1 / (8 * highest), byPulse = loads.Shortest / 8;
        if (step > byMode * (1 + 1e-9))
            at.Add(nameof(ShockOptions.Step), Invariant($"of {step:g4} s is too long for the highest of {ModeCount} modes, {highest:g4} Hz"), Invariant($"Take at most {byMode:g3} s, an eighth of its period, or fewer Modes; null chooses."));
        if (step > byPulse * (1 + 1e-9))
            at.Add(nameof(ShockOptions.Step), Invariant($"of {step:g4} s is too long for a pulse of {loads.Shortest:g4} s"), Invariant($"Take at most {byPulse:g3} s, an eighth of it; null chooses."));
        if (length / step > ShockOptions.MostSteps)
            at.Add(nameof(ShockOptions.Length), Invariant($"of {length:g4} s takes {length / step:g4} steps of {step:g4} s, of at most {ShockOptions.MostSteps}"), "Look at a shorter time, or with fewer Modes.");
        v.ThrowIfAny();
    }

    private IEnumerable<string> Warn(ShockOptions options, ShockLoads loads)
    {
        if (Captured < 0.9)
            yield return Invariant($"{Situation.Name}: {ModeCount} modes take {100 * Captured:0} % of the energy; take more Modes.");
        if (Energy.BalanceError > (options.Yielding is null ? 1e-4 : 1e-2))
            yield return Invariant($"{Situation.Name}: the energies do not balance by {100 * Energy.BalanceError:0.##} %; take a shorter Step.");
        if (options.Yielding is null && WorstBar is { YieldFraction: > 1 } bar)
            yield return Invariant($"{Situation.Name}: {bar.Where} is taken as elastic beyond its yield strength; see Yielding.");
        if (Length.Seconds < loads.End)
            yield return Invariant($"{Situation.Name}: {Length.Seconds:g3} s are looked at, but the shock lasts {loads.End:g3} s.");
        if (Model.HasTensionOnly)
            yield return $"{Situation.Name}: tension-only braces act half from each diagonal; the shock may slacken one of them.";
    }

    private PeakInTime<T> At<T>(Func<ReadOnlySpan<double>, double> value, Func<QuantityValue, T> make)
    {
        double greatest = double.NegativeInfinity;
        int sample = 0;
        for (int i = 0; i < reactions.Length / 6; i++)
        {
            double now = value(reactions.AsSpan(6 * i, 6));
            if (now > greatest)
                (greatest, sample) = (now, i);
        }
        return new PeakInTime<T>(make(greatest), sample * Step);
    }
}
