using StatueFrame.Checks;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>
/// A piece lifted level by two slings that meet above its center of gravity, each at 0.207 of the length from an end where the
/// center is in the middle, and as far from the center on either side otherwise: bending over the slings and between them.
/// Then turned upright by the upper sling alone, with its lower end on the ground.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Each segment's mass lies evenly along it. Tubes take bending and the slings'
/// compression as members; the legs of a lattice take the bending as a pair of chords, its braces the shear.
/// </remarks>
public sealed record PieceLift
{
    private static readonly Source dynamics = new("EN 1991-3:2006", "Tables 2.4 and 2.5 (from memory)");

    private PieceLift()
    {
    }

    /// <summary>The piece.</summary>
    public required TowerPiece Piece { get; init; }

    /// <summary>How it is lifted.</summary>
    public required LiftOptions Options { get; init; }

    /// <summary>Where the lower and the upper sling hold it, from its lower end.</summary>
    public required (Length Lower, Length Upper) Points { get; init; }

    /// <summary>Force in one sling, dynamic factor and uncertainty in it, without partial factor: to choose slings by their working load.</summary>
    public required Force Sling { get; init; }

    /// <summary>Greatest bending moment, partial and dynamic factor in it.</summary>
    public required Torque Moment { get; init; }

    /// <summary>Greatest shear force, with the same factors.</summary>
    public required Force Shear { get; init; }

    /// <summary>Strength of the piece while it is lifted.</summary>
    public required ValueList<Check> Checks { get; init; }

    /// <summary>Lifts a piece.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="options">Slings and crane; null takes the defaults, which the checks then name as assumed.</param>
    /// <exception cref="InvalidStatueException">An option is out of range.</exception>
    public static PieceLift Of(TowerPiece piece, LiftOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(piece);
        LiftOptions o = options ?? new LiftOptions();
        var v = new Validator();
        o.Validate(v.At(nameof(options)));
        v.ThrowIfAny();
        double L = piece.Length.Meters, c = piece.Center.Meters;
        // Half the distance of the slings: 0.293 L about the center of gravity, within the piece.
        double half = Math.Min(0.293 * L, Math.Min(c, L - c));
        (double a, double b) = (c - half, c + half);
        double factor = o.WeightFactor * o.DynamicFactor, W = factor * piece.Mass.Kilograms * SelfWeight.Gravity, R = 0.5 * W;
        double sin = Math.Sin(o.SlingAngle.Radians), compression = R * Math.Cos(o.SlingAngle.Radians) / sin;
        var checks = new List<Check>();
        double most = 0, mostShear = 0;
        foreach (Held held in (Held[])[new("lifted level", [(a, R), (b, R)], a, b, compression), new("turned upright", [(0, W - W * c / b), (b, W * c / b)], 0, 0, 0)])
        {
            for (int i = 0; i < piece.Models.Length; i++)
            {
                double moment = 0, shear = 0;
                (_, double from, double to) = piece.Line[i];
                // The moment is greatest at a support, at a boundary of masses, or where the shear vanishes between them.
                foreach (double x in Cuts(piece, factor, held, from, to))
                {
                    (double M, double left, double right) = Cut(piece, factor, held, x);
                    moment = Math.Max(moment, Math.Abs(M));
                    shear = Math.Max(shear, Math.Max(Math.Abs(left), Math.Abs(right)));
                }
                (most, mostShear) = (Math.Max(most, moment), Math.Max(mostShear, shear));
                checks.AddRange(LiftChecks.Of(piece, i, held.Name, moment, shear, to > held.PushedFrom && from < held.PushedTo ? held.Push : 0));
            }
        }
        return new PieceLift
        {
            Piece = piece,
            Options = o,
            Points = (Length.FromMeters(a), Length.FromMeters(b)),
            Sling = Force.FromNewtons(0.5 * piece.Mass.Kilograms * SelfWeight.Gravity * o.DynamicFactor * o.Uncertainty / sin),
            Moment = Torque.FromNewtonMeters(most),
            Shear = Force.FromNewtons(mostShear),
            Checks = options is null ? [.. checks.Select(check => check.Assuming($"how it is lifted: {o}"))] : [.. checks],
        };
    }

    /// <summary>The lift in words, with the worst check and where the factors come from.</summary>
    public override string ToString() => Invariant(
        $"piece {Piece.Number}, {Piece.Name}: slings at {Points.Lower.Meters:0.00} m and {Points.Upper.Meters:0.00} m, {Sling.Kilonewtons:0.0} kN each at {Options.SlingAngle.Degrees:0}° (φ₂ {Options.DynamicFactor:0.00}, {dynamics}); {Moment.KilonewtonMeters:0.0} kN·m, {Shear.Kilonewtons:0.0} kN; {Worst()}");

    private string Worst() => Checks.Any(c => c.Verdict == Verdict.NotChecked) || Checks.Count == 0
        ? $"not checked: {Checks.FirstOrDefault(c => c.Verdict == Verdict.NotChecked)?.Reason ?? "nothing of it has a strength"}"
        : Checks.MaxBy(c => c.Utilization)!.ToString();

    /// <summary>A way in which a piece is held.</summary>
    /// <param name="Name">In words.</param>
    /// <param name="Supports">Where it is held, m from its lower end, and by which force, N.</param>
    /// <param name="PushedFrom">Where the compression of the slings begins, m.</param>
    /// <param name="PushedTo">Where it ends.</param>
    /// <param name="Push">That compression, N.</param>
    private sealed record Held(string Name, (double At, double Force)[] Supports, double PushedFrom, double PushedTo, double Push);

    private static IEnumerable<double> Cuts(TowerPiece piece, double factor, Held held, double from, double to)
    {
        double[] at = [from, .. held.Supports.Select(s => s.At).Where(x => x > from && x < to).Order(), to];
        for (int i = 0; i < at.Length; i++)
        {
            yield return at[i];
            if (i + 1 == at.Length)
                break;
            double start = Cut(piece, factor, held, at[i]).Right, end = Cut(piece, factor, held, at[i + 1]).Left;
            if (start > 0 && end < 0)
                yield return at[i] + start / (start - end) * (at[i + 1] - at[i]);
        }
    }

    /// <summary>Moment at a cut, and shear on either side of it.</summary>
    private static (double M, double Left, double Right) Cut(TowerPiece piece, double factor, Held held, double x)
    {
        double M = 0, V = 0;
        foreach ((double m, double from, double to) in piece.Line)
        {
            double part = Math.Clamp((x - from) / (to - from), 0, 1), w = factor * SelfWeight.Gravity * m * part, arm = x - 0.5 * (from + Math.Min(x, to));
            (M, V) = (M - w * Math.Max(arm, 0), V - w);
        }
        (double left, double right) = (V, V);
        foreach ((double at, double force) in held.Supports)
        {
            M += force * Math.Max(x - at, 0);
            left += x > at + 1e-9 ? force : 0;
            right += x >= at - 1e-9 ? force : 0;
        }
        return (M, left, right);
    }
}
