using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// A rigid body that stands free, or held down by a tendon, on a flat rigid base, and rocks in one vertical plane about the
/// front and the back edge of its base as the ground shakes. It does not slide, bounce or bend.
/// </summary>
/// <remarks>
/// <para>
/// Large rotations. Energy is lost at impacts alone: the angular momentum about the new edge is kept, unless a restitution
/// is given. Positive rotation leans to the front; ground that accelerates to the front makes it lean back.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// <para>Source: Housner 1963, from memory; derived in the theory page "toppling".</para>
/// </remarks>
public sealed record RockingBlock
{
    /// <summary>Mass, 1 g to 1e9 kg.</summary>
    public required Mass Mass { get; init; }

    /// <summary>Height of the center of mass above the base, 1 mm to 1 km.</summary>
    public required Length CenterHeight { get; init; }

    /// <summary>From below the center of mass to the front edge of the base, above zero.</summary>
    public required Length HalfWidth { get; init; }

    /// <summary>From below the center of mass to the back edge; null for the same as the front.</summary>
    public Length? HalfWidthBehind { get; init; }

    /// <summary>Inertia about the horizontal axis through the center of mass, across the plane of rocking.</summary>
    public required MassMomentOfInertia Inertia { get; init; }

    /// <summary>Angular velocity after an impact over that before, 0 to 1; null keeps the angular momentum about the new edge.</summary>
    public double? Restitution { get; init; }

    /// <summary>A tendon in the middle of the base; null when the block stands free.</summary>
    public RockingTendon? Tendon { get; init; }

    /// <summary>A solid block of even density.</summary>
    /// <param name="width">Width of the base in the plane of rocking.</param>
    /// <param name="height">Height.</param>
    /// <param name="mass">Mass.</param>
    public static RockingBlock Solid(Length width, Length height, Mass mass) => new()
    {
        Mass = mass,
        CenterHeight = 0.5 * height,
        HalfWidth = 0.5 * width,
        Inertia = MassMomentOfInertia.FromKilogramSquareMeters(mass.Kilograms * (width.Meters * width.Meters + height.Meters * height.Meters) / 12),
    };

    /// <summary>A statue as a rigid block, with its own mass, center of mass and inertia.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="heading">The plan angle of the front, anticlockwise from +x.</param>
    /// <param name="front">From the tower's base center to the front edge of the base.</param>
    /// <param name="back">From the tower's base center to the back edge; null for the same as the front.</param>
    /// <exception cref="ArgumentException">The center of mass does not lie above the base, or the base lies beyond an edge.</exception>
    public static RockingBlock Of(StatueModel model, Angle heading, Length front, Length? back = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        var direction = new Vector3D(Math.Cos(heading.Radians), Math.Sin(heading.Radians), 0);
        Vector3D arm = model.Masses.CenterMeters - model.BaseCenter, axis = Vector3D.UnitZ.Cross(direction);
        double ahead = arm.Dot(direction), toFront = front.Meters - ahead, toBack = (back ?? front).Meters + ahead;
        if (!(arm.Z > 0 && toFront > 0 && toBack > 0))
            throw new ArgumentException(FormattableString.Invariant($"The center of mass, {ahead:0.###} m ahead of the base's center and {arm.Z:0.###} m above it, must lie above the base between its edges."), nameof(front));
        return new RockingBlock
        {
            Mass = model.Masses.Total,
            CenterHeight = Length.FromMeters(arm.Z),
            HalfWidth = Length.FromMeters(toFront),
            HalfWidthBehind = Length.FromMeters(toBack),
            Inertia = MassMomentOfInertia.FromKilogramSquareMeters(RigidInertia.Of(model, axis, model.Masses.CenterMeters)),
        };
    }

    /// <summary>α to the front: the rotation at which the weight alone is in balance over the front edge.</summary>
    public Angle Slenderness => Angle.FromRadians(Math.Atan2(HalfWidth.Meters, CenterHeight.Meters));

    /// <summary>α to the back.</summary>
    public Angle SlendernessBehind => Angle.FromRadians(Math.Atan2(Behind, CenterHeight.Meters));

    /// <summary>Frequency parameter p = √(mgR/I) about the front edge, rad/s.</summary>
    public double FrequencyParameter
    {
        get
        {
            double h = CenterHeight.Meters, b = HalfWidth.Meters, m = Mass.Kilograms, R = Math.Sqrt(b * b + h * h);
            return Math.Sqrt(m * SelfWeight.Gravity * R / (Inertia.KilogramSquareMeters + m * R * R));
        }
    }

    /// <summary>
    /// The least horizontal acceleration of the ground that lifts an edge, (g·b + P·d/m)/h on the weaker side, with the
    /// tendon's pretension P at d from the edge; without a tendon it is g·tan α.
    /// </summary>
    /// <exception cref="InvalidStatueException">The block has problems; all of them are listed.</exception>
    public Acceleration UpliftAcceleration
    {
        get
        {
            var body = new RockingBody(Valid());
            return Acceleration.FromMetersPerSecondSquared(Math.Min(body.Uplift(0), body.Uplift(1)));
        }
    }

    /// <summary>Angular velocity left after an impact that passes from the front edge to the back one, not below zero.</summary>
    /// <exception cref="InvalidStatueException">The block has problems; all of them are listed.</exception>
    public double RestitutionInUse => new RockingBody(Valid()).Restitution(0);

    /// <summary>What the block does in a pulse, and after it until it rests or falls.</summary>
    /// <exception cref="InvalidStatueException">The block or the pulse has problems; all of them are listed.</exception>
    public RockingResult Shake(BasePulse pulse)
    {
        ArgumentNullException.ThrowIfNull(pulse);
        RockingBody body = Body(v => pulse.Validate(v.At("Pulse")));
        return RockingMotion.Run(body, RockingGround.Of(pulse), 0, null);
    }

    /// <summary>What the block does in a record, and after it until it rests or falls.</summary>
    /// <param name="record">The motion of the ground.</param>
    /// <param name="heading">The plan angle of the block's front, anticlockwise from the record's x.</param>
    /// <exception cref="InvalidStatueException">The block or the record has problems; all of them are listed.</exception>
    public RockingResult Shake(BaseMotionRecord record, Angle heading = default)
    {
        ArgumentNullException.ThrowIfNull(record);
        RockingBody body = Body(v =>
        {
            record.Validate(v.At("Record"));
            if (record.Z?.Any(a => record.Scale * a <= -SelfWeight.Gravity) == true)
                v.Add("Record.Z", "falls faster than gravity, so that the block would leave the ground", "Check its unit: accelerations are in m/s².");
        });
        var front = new Vector3D(Math.Cos(heading.Radians), Math.Sin(heading.Radians), 0);
        return RockingMotion.Run(body, RockingGround.Of(record, front), 0, null);
    }

    /// <summary>What the block does when it is let go from a rotation, on ground that is still.</summary>
    /// <param name="rotation">The rotation, −89° to 89°.</param>
    /// <param name="duration">How long it is watched; null until it rests or falls.</param>
    /// <exception cref="ArgumentOutOfRangeException">The rotation or the duration is out of range.</exception>
    /// <exception cref="InvalidStatueException">The block has problems; all of them are listed.</exception>
    public RockingResult Release(Angle rotation, Duration? duration = null)
    {
        if (!(Math.Abs(rotation.Degrees) <= 89))
            throw new ArgumentOutOfRangeException(nameof(rotation), FormattableString.Invariant($"Must be from −89° to 89°, is {rotation.Degrees}°."));
        if (duration is { } time && !(time.Seconds is > 0 and <= 1e4))
            throw new ArgumentOutOfRangeException(nameof(duration), FormattableString.Invariant($"Must be above zero and at most 10 000 s, is {time.Seconds} s."));
        return RockingMotion.Run(Body(_ => { }), RockingGround.Still, rotation.Radians, duration?.Seconds);
    }

    internal double Behind => (HalfWidthBehind ?? HalfWidth).Meters;

    internal void Validate(Validator v)
    {
        v.Positive(Mass, Mass.Kilograms, 1e-3, 1e9);
        v.Positive(CenterHeight, CenterHeight.Meters, 1e-3, 1000);
        v.Positive(HalfWidth, HalfWidth.Meters, 1e-4, 1000);
        if (HalfWidthBehind is { } behind)
            v.Positive(behind, behind.Meters, 1e-4, 1000, nameof(HalfWidthBehind));
        v.NotNegative(Inertia, Inertia.KilogramSquareMeters, 1e15);
        if (Restitution is { } e)
            v.InRange(e, 0, 1, "It is a ratio of angular velocities.", nameof(Restitution));
        Tendon?.Validate(v.At(nameof(Tendon)));
    }

    private RockingBlock Valid()
    {
        Body(_ => { });
        return this;
    }

    private RockingBody Body(Action<Validator> more)
    {
        var v = new Validator();
        Validate(v.At("Block"));
        more(v);
        v.ThrowIfAny();
        return new RockingBody(this);
    }
}
