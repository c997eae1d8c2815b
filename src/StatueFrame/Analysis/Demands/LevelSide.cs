using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// One side of a level of a lattice, from a leg to the next, with what the standoffs put on it: a beam on two legs. All sizes
/// are without sign, and loads are added as if the worst of each came at one time.
/// </summary>
/// <remarks>Immutable and safe to share between threads. SI units.</remarks>
internal sealed class LevelSide
{
    private LevelSide(Vector3D from, Vector3D to, int leg)
    {
        (From, To, Leg) = (from, to, leg);
        Along = (to - from).Normalized();
        Across = Vector3D.UnitZ.Cross(Along);
    }

    public Vector3D From { get; }

    public Vector3D To { get; }

    /// <summary>Number of the leg it begins at, from 0.</summary>
    public int Leg { get; }

    public double Length => (To - From).Length;

    /// <summary>The direction along it, and the one across it in the plan.</summary>
    public Vector3D Along { get; }

    public Vector3D Across { get; }

    /// <summary>What stands on it: the bar, null for a fitting, how far from its first leg, and the most it puts there, in the body's axes.</summary>
    public List<(BarModel? Bar, double At, Vector3D Force, Vector3D Moment)> Feet { get; } = [];

    /// <summary>The sides of a level, with nothing on them yet; empty when it has no legs.</summary>
    public static LevelSide[] Of(TowerLevel level)
    {
        Vector3D[] legs = level.Legs;
        return [.. legs.Select((leg, i) => new LevelSide(leg, legs[(i + 1) % legs.Length], i))];
    }

    /// <summary>The sides of a level with what stands on each; empty when it has no legs.</summary>
    public static LevelSide[] Of(BodyModel body, int level, FootEnvelope feet)
    {
        LevelSide[] sides = Of(body.Tower.Levels[level]);
        if (sides.Length == 0)
            return sides;
        foreach ((BarModel? bar, Vector3D at, Vector3D force, Vector3D moment) in feet.At(body, level))
        {
            LevelSide side = sides.MinBy(s => (at - s.From - s.PositionOf(at) * s.Along).Length)!;
            side.Feet.Add((bar, side.PositionOf(at), force, moment));
        }
        return sides;
    }

    /// <summary>The most along a direction of a vector of sizes.</summary>
    public static double Most(Vector3D sizes, Vector3D direction) =>
        Math.Abs(direction.X) * sizes.X + Math.Abs(direction.Y) * sizes.Y + Math.Abs(direction.Z) * sizes.Z;

    /// <summary>
    /// The bending that a leg takes from the level, N·m, about any axis of its own: the torsion of the two sides that meet in it,
    /// by the lever arms, and what stands on the leg itself.
    /// </summary>
    public static double MomentOnLeg(LevelSide[] sides, int leg)
    {
        Vector3D sum = Vector3D.Zero;
        foreach (LevelSide side in (ReadOnlySpan<LevelSide>)[sides[leg], sides[(leg + sides.Length - 1) % sides.Length]])
        {
            foreach ((_, double at, _, Vector3D moment) in side.Feet)
            {
                double part = side.Leg == leg ? 1 - at / side.Length : at / side.Length;
                if (at > OnLeg && at < side.Length - OnLeg)
                    sum += part * Most(moment, side.Along) * new Vector3D(Math.Abs(side.Along.X), Math.Abs(side.Along.Y), Math.Abs(side.Along.Z));
                else if (part > 0.5)
                    sum += moment;
            }
        }
        return sum.Length;
    }

    private const double OnLeg = 1e-3;

    /// <summary>How far from its first leg the point of it is that is nearest to another, m.</summary>
    public double PositionOf(Vector3D at) => Math.Clamp((at - From).Dot(Along), 0, Length);
}
