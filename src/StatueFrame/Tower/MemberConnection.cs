using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The fasteners that join a lattice member at its end, or splice a leg: bolts or rivets in lines along the force.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record MemberConnection
{
    /// <summary>The bolts; give these or <see cref="Rivet"/>.</summary>
    public Bolt? Bolt { get; init; }

    /// <summary>The rivets; give these or <see cref="Bolt"/>.</summary>
    public Rivet? Rivet { get; init; }

    /// <summary>Fasteners in a line along the force, 1 to 20.</summary>
    public required int InLine { get; init; }

    /// <summary>Lines side by side, 1 to 4; of an angle's two legs together when both are joined.</summary>
    public int Lines { get; init; } = 1;

    /// <summary>Distance e₁ from the last fastener to the end of the member.</summary>
    public required Length EndDistance { get; init; }

    /// <summary>Distance e₂ from the fasteners to the edge of the member.</summary>
    public required Length EdgeDistance { get; init; }

    /// <summary>Distance p₁ of fasteners in a line; needed with more than one.</summary>
    public Length Pitch { get; init; }

    /// <summary>Distance p₂ of lines; needed with more than one in the same leg.</summary>
    public Length Gauge { get; init; }

    /// <summary>Shear planes through each fastener, 1 or 2.</summary>
    public int ShearPlanes { get; init; } = 1;

    /// <summary>The gusset or the splice plates that take the force on; null leaves them open.</summary>
    public JointPlate? Plate { get; init; }

    /// <summary>True when both legs of an angle are joined, so that the force is centered.</summary>
    public bool BothLegs { get; init; }

    /// <summary>How the member's ends are held, for its buckling.</summary>
    internal MemberEnds Ends => BothLegs ? MemberEnds.Centered : Count == 1 ? MemberEnds.OneLegOneFastener : MemberEnds.OneLeg;

    internal int Count => InLine * Lines;

    internal double d_0 => Bolt?.d_0 ?? Rivet!.d_0;

    internal double d => Bolt?.d ?? Rivet!.d_0;

    internal double e_1 => EndDistance.Meters;

    internal double e_2 => EdgeDistance.Meters;

    internal double p_1 => Pitch.Meters;

    internal double p_2 => Gauge.Meters;

    internal void Validate(Validator v, Section? member)
    {
        if (Bolt is null == Rivet is null)
        {
            v.Add(nameof(Bolt), "give either a bolt or a rivet", "Set Bolt = new Bolt { … } or Rivet = Rivet.Of(22.Millimeters, …).");
            return;
        }
        Bolt?.Validate(v.At(nameof(Bolt)));
        Rivet?.Validate(v.At(nameof(Rivet)));
        v.InRange(InLine, 1, 20, "It is the number of fasteners along the force.");
        v.InRange(Lines, 1, 4, "It is the number of lines side by side.");
        v.InRange(ShearPlanes, 1, 2, "One for a lap, two for a splice with plates on both sides.");
        v.Within(EndDistance, e_1, 0.75 * d_0, 1);
        v.Within(EdgeDistance, e_2, 0.75 * d_0, 1);
        if (InLine > 1)
            v.Within(Pitch, p_1, 1.5 * d_0, 2);
        if (Lines > 1 && !BothLegs)
            v.Within(Gauge, p_2, 1.2 * d_0, 2);
        Plate?.Validate(v.At(nameof(Plate)));
        // On an angle the wall of the other leg and half a hole lie on the far side of the lines, on a flat another edge.
        (double width, double far) = member switch
        {
            AngleBar angle => (angle.LongLeg.Meters, angle.Thickness.Meters + 0.5 * d_0),
            FlatBar flat => (flat.Width.Meters, e_2),
            _ => (double.PositiveInfinity, 0),
        };
        int side = BothLegs ? (Lines + 1) / 2 : Lines;
        if (e_2 + (side - 1) * p_2 + far > width * (1 + 1e-9))
            v.Add(nameof(EdgeDistance), Invariant($"leaves no room for the fasteners: {1e3 * (e_2 + (side - 1) * p_2 + far):0.#} mm are needed across {member}"), "Distances run from the middle of the holes; take fewer lines, smaller fasteners or a wider member.");
    }
}
