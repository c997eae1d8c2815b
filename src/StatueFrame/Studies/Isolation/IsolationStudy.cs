using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// The same blow on a statue whose skin is held in different ways: how much of it reaches the tower and the base, what
/// the bars bear, and how far the skin moves. Thin bars pass a short blow on softened; the price is movement and stress.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
[TypeFormatterSource(typeof(NotebookText))]
public sealed class IsolationStudy
{
    /// <summary>What every print says at its end.</summary>
    public const string Caution =
        "Worked out from a model, not measured. Forces are those on a base that is held: above 1 an edge of it lifts, which is not yet toppling. For review "
        + "and sign-off by a licensed engineer; local rules govern. The shock's size and duration are as they were given.";

    /// <summary>A skin that moves by less than this part of the tower's movement does not count as a mass of its own.</summary>
    private const double Negligible = 1e-12;

    private IsolationStudy(Statue statue, ShockAction shock, IsolationOptions options)
    {
        (Statue, Shock, Options) = (statue, shock, options);
        Rows = options.Variants.Select(Row).ToValueList();
    }

    /// <summary>Compares ways to hold the skin under one blow, with the weight besides.</summary>
    /// <param name="statue">The statue.</param>
    /// <param name="shock">The blow.</param>
    /// <param name="options">What to compare.</param>
    /// <exception cref="InvalidStatueException">The statue, the shock or the options have problems; all of them are listed.</exception>
    public static IsolationStudy Of(Statue statue, ShockAction shock, IsolationOptions options)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(shock);
        ArgumentNullException.ThrowIfNull(options);
        var v = new Validator();
        statue.Validate(v);
        shock.Validate(v.At(nameof(Shock)));
        shock.ValidatePlaces(v.At(nameof(Shock)), new StatueNames(statue));
        options.Validate(v.At(nameof(Options)));
        if (statue.Standoffs?.Count == 0 && statue.Limbs?.All(l => l?.Standoffs?.Count == 0) == true)
            v.Add(nameof(Statue.Standoffs), "are missing: there is nothing to compare", "Describe the bars between tower and skin.");
        if (options.IsFreeToRock && options.Limits is { BaseWidth: null } && statue.Tower?.Levels is [{ Plan: null }, ..])
            v.At(nameof(Options)).Add(nameof(IsolationOptions.IsFreeToRock), "needs the width of the base", "Give Limits a BaseWidth, or the tower's first level a Plan.");
        v.ThrowIfAny();
        return new IsolationStudy(statue, shock, options);
    }

    /// <summary>The statue with its own bars.</summary>
    public Statue Statue { get; }

    /// <summary>The blow.</summary>
    public ShockAction Shock { get; }

    /// <summary>What was compared.</summary>
    public IsolationOptions Options { get; }

    /// <summary>One row a way to hold the skin.</summary>
    public ValueList<IsolationRow> Rows { get; }

    /// <summary>
    /// How much of a steady swing of the force on the skin passes into the tower's foot, over the force, by the two masses
    /// of a row; and beside it, by the skin alone on its bars.
    /// </summary>
    /// <param name="row">The row.</param>
    /// <exception cref="InvalidOperationException">The shock strikes the tower itself.</exception>
    /// <param name="frequencies">Frequencies of the force.</param>
    public IReadOnlyList<TransmissibilityPoint> Transmissibility(IsolationRow row, params ReadOnlySpan<Frequency> frequencies)
    {
        ArgumentNullException.ThrowIfNull(row);
        if (row.TwoMasses is not { } two)
            throw new InvalidOperationException("The shock strikes the tower itself, so that the bars isolate nothing.");
        double damping = row.Response.DampingRatio;
        var points = new TransmissibilityPoint[frequencies.Length];
        for (int i = 0; i < points.Length; i++)
        {
            (double tower, double bars) = two.Transmissibility(frequencies[i].Hertz, damping);
            points[i] = new TransmissibilityPoint(frequencies[i], tower, bars, TransmissibilityPoint.OfOneMass(frequencies[i] / row.SkinFrequency!.Value, damping));
        }
        return points;
    }

    /// <summary>
    /// The shock spectrum of the study's pulse for a skin on bars of any stiffness, the tower held still: greatest force of
    /// the bars over the pulse's peak.
    /// </summary>
    /// <param name="frequencies">Frequencies of the skin on its bars.</param>
    /// <exception cref="InvalidOperationException">The shock is no pulse.</exception>
    public IReadOnlyList<(Frequency Frequency, PulseResponse Response)> ShockSpectrum(params ReadOnlySpan<Frequency> frequencies)
    {
        (PressureShape shape, double duration) = Pulse() ?? throw new InvalidOperationException("Only a pressure pulse or a blow with a contact time has a shock spectrum.");
        var points = new (Frequency, PulseResponse)[frequencies.Length];
        for (int i = 0; i < points.Length; i++)
            points[i] = (frequencies[i], PulseResponse.Of(shape, duration * frequencies[i].Hertz, Rows[0].Response.DampingRatio));
        return points;
    }

    /// <summary>The table as plain text, at most 110 columns wide.</summary>
    /// <param name="units">The units to print in.</param>
    public string Print(DisplayUnits units = DisplayUnits.Metric) => IsolationStudyText.Of(this, units);

    /// <summary>The rows as comma-separated values (RFC 4180).</summary>
    /// <param name="units">The units to write in; they stand in the heads of the columns.</param>
    public string ToCsv(DisplayUnits units = DisplayUnits.Metric) => IsolationStudyText.Csv(this, units);

    /// <summary>The table as plain text in metric units.</summary>
    public override string ToString() => Print();

    /// <summary>The pulse and its duration in seconds; null for a shock that is none.</summary>
    internal (PressureShape Shape, double Duration)? Pulse() => Shock switch
    {
        PressurePulse pulse => (pulse.Shape, pulse.Duration.Seconds),
        Blow { ContactTime: { } time } => (new HalfSinePulse(), time.Seconds),
        _ => null,
    };

    private IsolationRow Row(IsolationVariant variant)
    {
        StatueModel model = variant.Build(Statue);
        var situation = new Situation { Name = Shock.Name, Actions = [new SelfWeight(), Shock] };
        ShockResponse response = ShockResponse.Of(model, situation, Options.Damping, Options.Response);
        ShockLoads loads = ShockLoads.Of(model, situation);
        (double[] force, Vector3D direction) = (Force(model, loads), Shock.Direction);
        TwoMassSystem? twoMasses = Reduce(model, force, direction);
        return new IsolationRow
        {
            Variant = variant,
            Response = response,
            Overturning = response.OverturningOn(Options.Limits.BaseWidth, Options.Limits.HoldDown),
            Rocking = Options.IsFreeToRock ? Rock(model) : null,
            TwoMasses = twoMasses,
            BarForceOfTwoMasses = twoMasses is not null && loads.Patterns.Count > 0 ? PeakOfTwoMasses(twoMasses, loads, response, direction) : null,
        };
    }

    private RockingStatueResult Rock(StatueModel model)
    {
        Footprint footprint = Footprint.Of(model, Options.Limits.BaseWidth?.Meters)!;
        Vector3D ahead = new(Math.Cos(Shock.Heading.Radians), Math.Sin(Shock.Heading.Radians), 0);
        return new RockingStatue
        {
            Model = model,
            Heading = Shock.Heading,
            Front = Length.FromMeters(footprint.Reach(ahead.X, ahead.Y)),
            Back = Length.FromMeters(footprint.Reach(-ahead.X, -ahead.Y)),
            Tendon = Options.Limits.HoldDown.Newtons > 0 ? new RockingTendon(Options.Limits.HoldDown, default) : null,
            Damping = Options.Damping,
        }.Under(Shock);
    }

    private static double[] Force(StatueModel model, ShockLoads loads)
    {
        var force = new double[model.Frame.FreedomCount];
        foreach (ShockLoads.Pattern pattern in loads.Patterns)
            DenseVector.AddScaled(force, 1, pattern.Nodal);
        DenseVector.AddScaled(force, 1, loads.Impulse);
        DenseVector.AddScaled(force, 1, loads.Pull);
        return force;
    }

    /// <summary>
    /// The statue's static displacements under the shock's force are split in two shapes: the tower's with the skin carried
    /// along rigidly, and the skin's against the tower. Scaled so that the force does unit work per unit of each, they give
    /// the two stiffnesses and the three masses (Ritz's method). Without seams the two shapes share no elastic energy.
    /// </summary>
    private static TwoMassSystem? Reduce(StatueModel model, double[] force, Vector3D direction)
    {
        double[] skin = model.Statics.Solve(force), tower = [.. skin];
        foreach ((RingElement ring, _) in model.Rings)
        {
            ReadOnlySpan<double> level = skin.AsSpan(Frame.NodeSize * ring.Start, Frame.NodeSize);
            Vector3D turn = new(level[3], level[4], level[5]);
            Vector3D carried = new Vector3D(level[0], level[1], level[2]) + turn.Cross(model.Frame.Nodes[ring.End].Position - model.Frame.Nodes[ring.Start].Position);
            Span<double> band = tower.AsSpan(Frame.NodeSize * ring.End, Frame.NodeSize);
            (band[0], band[1], band[2], band[3], band[4], band[5]) = (carried.X, carried.Y, carried.Z, turn.X, turn.Y, turn.Z);
        }
        for (int i = 0; i < skin.Length; i++)
            skin[i] -= tower[i];
        double total = 0;
        for (int i = 0; i < force.Length; i += Frame.NodeSize)
            total += new Vector3D(force[i], force[i + 1], force[i + 2]).Dot(direction);
        double workTower = DenseVector.Dot(tower, force), workSkin = DenseVector.Dot(skin, force);
        if (!(workTower > 0 && workSkin > Negligible * workTower))
            return null;
        double[] inertiaTower = model.Frame.InertiaForces(tower), inertiaSkin = model.Frame.InertiaForces(skin);
        double perTower = total / workTower, perSkin = total / workSkin;
        double A = DenseVector.Dot(tower, inertiaTower) * perTower * perTower, B = DenseVector.Dot(tower, inertiaSkin) * perTower * perSkin;
        double C = DenseVector.Dot(skin, inertiaSkin) * perSkin * perSkin;
        return B * B < A * C ? new TwoMassSystem(A, B, C, total * perTower, total * perSkin) : null;
    }

    private static Force PeakOfTwoMasses(TwoMassSystem twoMasses, ShockLoads loads, ShockResponse response, Vector3D direction)
    {
        double step = Math.Min(response.Step.Seconds, 1 / (20 * twoMasses.LowerFrequency));
        var samples = new double[Math.Min(1_000_000, (int)Math.Ceiling(loads.End / step) + 1)];
        foreach (ShockLoads.Pattern pattern in loads.Patterns)
        {
            double force = pattern.Resultant.Force.Dot(direction);
            for (int i = 0; i < samples.Length; i++)
                samples[i] += force * pattern.At(i * step);
        }
        return UnitsNet.Force.FromNewtons(twoMasses.PeakForces(samples, step, response.DampingRatio, response.Length.Seconds).Springs);
    }
}
