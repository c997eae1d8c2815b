using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// A statue that bends on a base that may lift: it stands free, or held down by a tendon, on a flat rigid base and rocks in one vertical
/// plane about the front and the back edge of it, struck, pressed, let go, or shaken by the ground. A <see cref="RockingBlock"/> is the
/// same without bending.
/// </summary>
/// <remarks>
/// <para>
/// The elastic modes of the statue on a held base and the rotation of the base move together: T = ½IΩ² + ΩΣΛ_i q̇_i + ½Σq̇_i², with the
/// weight of a leaning, bent statue. Large rotations of the whole, small bending in it; what turning alone adds to bending (as
/// centrifugal force) is left out. The base does not slide, jump or turn about the upright. It lands without a bounce: momentum about
/// the new edge and in every mode is kept, and what cannot be is lost; what the bent statue does next may lift it again.
/// </para>
/// <para>Immutable and safe to share between threads. For any size from a model on a table up.</para>
/// <para>
/// Source: derived in the theory page "toppling"; Chopra and Yim 1985 and Acikgoz and DeJong 2012 treat one mass on a column the same way
/// (from memory).
/// </para>
/// </remarks>
public sealed record RockingStatue
{
    /// <summary>The statue's model.</summary>
    public required StatueModel Model { get; init; }

    /// <summary>The plan angle of the front, anticlockwise from +x; shocks along it, one way or the other, are looked at.</summary>
    public required Angle Heading { get; init; }

    /// <summary>From the tower's base center to the front edge of the base, above zero.</summary>
    public required Length Front { get; init; }

    /// <summary>From the tower's base center to the back edge; null for the same as the front.</summary>
    public Length? Back { get; init; }

    /// <summary>Height of a rigid plinth under the tower's base that rocks with it; zero for none.</summary>
    public Length PlinthHeight { get; init; }

    /// <summary>Its mass, as of a solid block between the edges; zero for none.</summary>
    public Mass PlinthMass { get; init; }

    /// <summary>A tendon in the middle of the base; null when the statue stands free.</summary>
    public RockingTendon? Tendon { get; init; }

    /// <summary>Damping of all modes; null takes that of welded lattice towers.</summary>
    public DampingModel? Damping { get; init; }

    /// <summary>How many modes bend; null takes as many as hold 95 % of what rocking sets moving, and what the shock does.</summary>
    public int? Modes { get; init; }

    /// <summary>What the statue does in a shock, and after it until it rests or falls.</summary>
    /// <param name="shock">The shock; of one that comes aslant the part along the plane of rocking counts for the rotation, all of it for the modes.</param>
    /// <exception cref="InvalidStatueException">Something is not valid; all problems are listed.</exception>
    public RockingStatueResult Under(ShockAction shock)
    {
        ArgumentNullException.ThrowIfNull(shock);
        RequireValid(v =>
        {
            shock.Validate(v.At("Shock"));
            shock.ValidatePlaces(v.At("Shock"), new StatueNames(Model.Statue));
        });
        return Run(ShockLoads.Of(Model, new Situation { Name = shock.Name, Actions = [shock] }), RockingGround.Still);
    }

    /// <summary>What the statue does in a pulse of the ground, and after it until it rests or falls.</summary>
    /// <exception cref="InvalidStatueException">Something is not valid; all problems are listed.</exception>
    public RockingStatueResult Shake(BasePulse pulse)
    {
        ArgumentNullException.ThrowIfNull(pulse);
        RequireValid(v => pulse.Validate(v.At("Pulse")));
        return Run(null, RockingGround.Of(pulse));
    }

    /// <summary>What the statue does in a record of the ground's motion, its horizontal part along the plane of rocking and its vertical part.</summary>
    /// <exception cref="InvalidStatueException">Something is not valid; all problems are listed.</exception>
    public RockingStatueResult Shake(BaseMotionRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        RequireValid(v => record.Validate(v.At("Record")));
        return Run(null, RockingGround.Of(record, Ahead));
    }

    internal Vector3D Ahead => new(Math.Cos(Heading.Radians), Math.Sin(Heading.Radians), 0);

    private RockingStatueResult Run(ShockLoads? loads, RockingGround ground)
    {
        try
        {
            return new RockingStatueMotion(new RockingModes(this, loads), loads, ground).Run();
        }
        catch (FrameException e)
        {
            throw LooseParts.Explain(Model.Bodies, e);
        }
    }

    /// <summary>What is taken of the base and of damping, for whoever reads a result.</summary>
    internal IEnumerable<Assumption> Assumptions()
    {
        yield return new Assumption("base that rocks", "rigid, held against sliding, in one plane about its two edges; lands without a bounce", Source.Assumed("toppling"));
        foreach (Assumption damping in DampingInUse.Assumptions)
            yield return damping;
    }

    internal DampingModel DampingInUse => Damping ?? DampingModel.Of(DampingCategory.WeldedLattice);

    private void RequireValid(Action<Validator> other)
    {
        ArgumentNullException.ThrowIfNull(Model);
        var v = new Validator();
        v.Within(Heading, Heading.Degrees, -360, 720);
        v.Positive(Front, Front.Meters, 1e-3, 1e3);
        if (Back is { } back)
            v.Positive(back, back.Meters, 1e-3, 1e3, nameof(Back));
        v.NotNegative(PlinthHeight, PlinthHeight.Meters, 1e3);
        v.NotNegative(PlinthMass, PlinthMass.Kilograms, 1e9);
        if (PlinthMass.Kilograms > 0 && PlinthHeight.Meters == 0)
            v.Add(nameof(PlinthHeight), "is zero under a plinth that weighs", "Give the height of the plinth, or no mass.");
        Tendon?.Validate(v.At(nameof(Tendon)));
        if (Damping is not null)
            ShockResponse.ValidateDamping(Damping, v.At(nameof(Damping)));
        if (Modes is { } modes)
            v.InRange(modes, 1, 1024, "It is a number of modes.", nameof(Modes));
        if ((Model.Masses.CenterMeters - Model.BaseCenter).Dot(Ahead) is var ahead && !(ahead < Front.Meters && -ahead < (Back ?? Front).Meters))
            v.Add(nameof(Front), FormattableString.Invariant($"and back leave the center of mass, {ahead:0.###} m ahead of the base's center, beyond an edge"), "The statue cannot stand so; widen the base.");
        other(v);
        v.ThrowIfAny();
    }
}
