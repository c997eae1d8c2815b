using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// One face of a lattice panel as the wind sees it: the area of its members, and the area that its outline encloses. The
/// force of the wind on the WHOLE panel, all faces, is velocity pressure × <see cref="ForceCoefficient"/> ×
/// <see cref="SolidArea"/> of this one face.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Sources: EN 1993-3-1:2006, B.2.2 and Figure B.2.2; ASCE/SEI 7-22, 29.4,
/// Figure 29.4-3.
/// </remarks>
public sealed record LatticeFace
{
    /// <summary>Number of legs of the panel: 3, or 4 on a square plan. More are taken as a square.</summary>
    public required int Legs { get; init; }

    /// <summary>Area of flat-sided members (angles, flats, rectangles), zero or more.</summary>
    public required Area FlatArea { get; init; }

    /// <summary>Area of round members, zero or more; taken as below the critical Reynolds number, where their drag is greatest.</summary>
    public required Area RoundArea { get; init; }

    /// <summary>Area inside the outline of the face, above zero.</summary>
    public required Area EnclosedArea { get; init; }

    /// <summary>Plan angle of the face's outward normal in the tower's own plan.</summary>
    public Angle Normal { get; init; }

    /// <summary>Area of all members of the face.</summary>
    public Area SolidArea => FlatArea + RoundArea;

    /// <summary>Solidity φ = solid area over enclosed area, at most 1.</summary>
    public double Solidity => SolidArea < EnclosedArea ? SolidArea / EnclosedArea : 1;

    /// <summary>The faces of a lattice panel: every member with the width of the rectangle round it, gussets left out.</summary>
    /// <param name="segment">The panel.</param>
    /// <param name="lower">The level below; it must have a plan with legs.</param>
    /// <param name="upper">The level above; it must have a plan with as many legs.</param>
    /// <exception cref="InvalidStatueException">The description has problems.</exception>
    public static ValueList<LatticeFace> Of(LatticeSegment segment, TowerLevel lower, TowerLevel upper)
    {
        var v = new Validator();
        new Tower { Levels = [lower, upper], Segments = [segment] }.Validate(v);
        v.ThrowIfAny();
        return Of(segment, lower, upper, 0).ToValueList();
    }

    /// <summary>Force coefficient of the whole panel on the solid area of this face.</summary>
    /// <param name="rule">Whose coefficients.</param>
    /// <param name="fromNormal">Angle between the wind and the normal of this face, which should be the one that faces the wind most.</param>
    /// <exception cref="ArgumentException">The face has impossible areas or fewer than three legs.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The rule is unknown.</exception>
    public double ForceCoefficient(LatticeRule rule, Angle fromNormal)
    {
        double flat = FlatArea.SquareMeters, round = RoundArea.SquareMeters, theta = fromNormal.Radians;
        if (!(flat >= 0 && round >= 0 && flat + round > 0 && EnclosedArea.SquareMeters > 0 && Legs >= 3))
            throw new ArgumentException("A face needs three legs or more, members with an area, and an enclosed area.");
        double roundShare = round / (flat + round);
        return rule switch
        {
            LatticeRule.En1993_3_1 => LatticeDrag.En1993(Legs, Solidity, roundShare, theta),
            LatticeRule.Asce7 => LatticeDrag.Asce7(Legs, Solidity, roundShare, theta),
            _ => throw new ArgumentOutOfRangeException(nameof(rule)),
        };
    }

    /// <summary>The faces with all members thicker by a coat of ice, m, on each side.</summary>
    internal static LatticeFace[] Of(LatticeSegment segment, TowerLevel lower, TowerLevel upper, double ice)
    {
        IReadOnlyList<LatticeMember> members = new LatticePanel(segment, lower, upper).Members;
        Vector3D[] bottom = Corners(lower), top = Corners(upper);
        int legs = bottom.Length;
        double legArea = 0;
        var flat = new double[legs];
        var round = new double[legs];
        foreach (LatticeMember member in members)
        {
            double area = (member.Section.Envelope.Width + 2 * ice) * (member.To - member.From).Length;
            if (member.Face < 0)
                legArea += area;
            else if (member.Section.OutlineDiameter is null)
                flat[member.Face] += area;
            else
                round[member.Face] += area;
        }
        // Every face shows two of the legs, all of one section and nearly of one length.
        double twoLegs = 2 * legArea / legs;
        bool roundLegs = segment.Legs.OutlineDiameter is not null;
        var faces = new LatticeFace[legs];
        for (int i = 0; i < legs; i++)
        {
            int j = (i + 1) % legs;
            Vector3D along = 0.5 * (bottom[j] + top[j]) - 0.5 * (bottom[i] + top[i]);
            double enclosed = 0.5 * ((bottom[j] - bottom[i]).Cross(top[i] - bottom[i]).Length + (top[j] - bottom[j]).Cross(top[j] - top[i]).Length);
            faces[i] = new LatticeFace
            {
                Legs = legs,
                FlatArea = Area.FromSquareMeters(flat[i] + (roundLegs ? 0 : twoLegs)),
                RoundArea = Area.FromSquareMeters(round[i] + (roundLegs ? twoLegs : 0)),
                EnclosedArea = Area.FromSquareMeters(enclosed),
                Normal = Angle.FromRadians(Math.Atan2(-along.X, along.Y)),
            };
        }
        return faces;
    }

    private static Vector3D[] Corners(TowerLevel level) =>
        Array.ConvertAll(level.Plan!.Legs, leg => level.Center + new Vector3D(leg.X, leg.Y, 0));
}
