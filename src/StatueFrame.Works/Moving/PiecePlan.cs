using System.Text;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Reporting;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>Tower and limbs cut into pieces at their levels, each as long as length and mass allow, counted from below.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PiecePlan
{
    private PiecePlan()
    {
    }

    /// <summary>The pieces in the order of re-erection.</summary>
    public required ValueList<TowerPiece> Pieces { get; init; }

    /// <summary>What the reader should know, as cuts where the description has no joint.</summary>
    public required ValueList<string> Notes { get; init; }

    /// <summary>Cuts a statue's inner structure.</summary>
    /// <param name="statue">The statue.</param>
    /// <param name="limits">Truck bed and crane.</param>
    /// <exception cref="InvalidStatueException">The description or a limit has problems, or a segment alone is more than a piece may be; all are named.</exception>
    public static PiecePlan Of(Statue statue, PieceLimits limits)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(limits);
        var model = StatueModel.Build(statue);
        var v = new Validator();
        limits.Validate(v.At(nameof(limits)));
        v.ThrowIfAny();
        var pieces = new List<TowerPiece>();
        var notes = new List<string>();
        foreach (BodyModel body in model.Bodies)
        {
            Load[] loads = [.. Enumerable.Range(0, body.Segments.Length).Select(i => Load.Of(body, i, limits.WithBrackets))];
            int from = 0;
            for (int i = 0; i < loads.Length; i++)
            {
                if (loads[i].Length > limits.Length.Meters || loads[i].Width > limits.Width.Meters || loads[i].Mass > limits.GreatestMass.Kilograms)
                    v.Add($"Segments[{body.Segments[i].Name}]", Invariant($"{loads[i].Length:0.00} m long, {loads[i].Width:0.00} m wide, {loads[i].Mass:0} kg, is more than a piece may be"), "Allow more, put a level between, or send brackets apart (WithBrackets = false).");
                if (i + 1 == loads.Length || loads[from..(i + 2)].Sum(l => l.Length) > limits.Length.Meters || loads[from..(i + 2)].Sum(l => l.Mass) > limits.GreatestMass.Kilograms)
                {
                    pieces.Add(Piece(body, loads, from, i, pieces.Count + 1));
                    if (pieces[^1].LowerJoint == NotDescribed)
                        notes.Add($"Piece {pieces.Count}, {pieces[^1].Name}: the description has no joint at its lower end; describe one, as the sheet leaves it unchecked.");
                    from = i + 1;
                }
            }
        }
        v.ThrowIfAny();
        return new PiecePlan { Pieces = [.. pieces], Notes = [.. notes] };
    }

    /// <summary>The pieces as comma-separated values (RFC 4180), with a heading.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["piece", "name", "mass [kg]", "length [m]", "width [m]", "center from the lower end [m]", "lower joint", "segments"]);
        foreach (TowerPiece p in Pieces)
            CsvText.AppendLine(text, [Invariant($"{p.Number}"), p.Name, Invariant($"{p.Mass.Kilograms:0}"), Invariant($"{p.Length.Meters:0.000}"), Invariant($"{p.Width.Meters:0.000}"), Invariant($"{p.Center.Meters:0.000}"), p.LowerJoint, string.Join("; ", p.Segments)]);
        return text.ToString();
    }

    /// <summary>The pieces as plain text.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        TextLayout.AppendTable(text, 0, [new(5, true), new(24), new(10, true), new(8, true), new(8, true), new(18, true), new(30)],
        [
            ["piece", "from level to level", "mass", "length", "width", "center from below", "lower joint"],
            .. Pieces.Select(p => new[] { Invariant($"{p.Number}"), p.Name, Invariant($"{p.Mass.Kilograms:0} kg"), Invariant($"{p.Length.Meters:0.00} m"), Invariant($"{p.Width.Meters:0.00} m"), Invariant($"{p.Center.Meters:0.00} m"), p.LowerJoint }),
        ]);
        foreach (string note in Notes)
            TextLayout.AppendWrapped(text, "", note);
        TextLayout.AppendWrapped(text, "", Drawing.Caution);
        return text.ToString();
    }

    private const string NotDescribed = "not described";

    private static TowerPiece Piece(BodyModel body, Load[] loads, int from, int last, int number)
    {
        var line = new (double, double, double)[last - from + 1];
        double at = 0, mass = 0, moment = 0;
        for (int i = from; i <= last; i++)
        {
            line[i - from] = (loads[i].Mass, at, at + loads[i].Length);
            (mass, moment) = (mass + loads[i].Mass, moment + loads[i].Mass * (at + loads[i].Center));
            at += loads[i].Length;
        }
        return new TowerPiece
        {
            Number = number,
            Name = $"{body.Prefix}{body.Tower.Levels[from].Name} to {body.Tower.Levels[last + 1].Name}",
            Segments = [.. body.Segments[from..(last + 1)].Select(s => s.Name)],
            Mass = Mass.FromKilograms(mass),
            Length = Length.FromMeters(at),
            Width = Length.FromMeters(loads[from..(last + 1)].Max(l => l.Width)),
            Center = Length.FromMeters(mass > 0 ? moment / mass : 0.5 * at),
            LowerJoint = JointOf(body, from),
            Models = body.Segments[from..(last + 1)],
            Line = line,
            Arms = [.. Enumerable.Range(from, last - from + 1).Select(i => Math.Min(Arm(body.Tower.Levels[i]), Arm(body.Tower.Levels[i + 1])))],
        };
    }

    /// <summary>Σ y²/y_max of the legs about their middle, least over all directions of bending, m; zero without legs.</summary>
    private static double Arm(TowerLevel level)
    {
        Vector3D[] legs = level.Legs;
        if (legs.Length == 0)
            return 0;
        Vector3D middle = legs.Aggregate((a, b) => a + b) / legs.Length;
        double least = double.PositiveInfinity;
        for (int degrees = 0; degrees < 180; degrees++)
        {
            (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
            double[] y = [.. legs.Select(l => (l.X - middle.X) * cos + (l.Y - middle.Y) * sin)];
            least = Math.Min(least, y.Sum(d => d * d) / y.Max(Math.Abs));
        }
        return least;
    }

    private static string JointOf(BodyModel body, int i) => body.Segments[i].Segment switch
    {
        _ when i == 0 => body.Prefix.Length == 0 ? "base" : "root",
        MemberSegment { LowerJoint: FlangeJoint f } => Invariant($"flange, {f.Count} bolts"),
        MemberSegment { LowerJoint: WeldedTubeJoint } => "site weld",
        LatticeSegment { LegSplice: { } s } => Invariant($"splices of legs, {2 * s.Count} fasteners each"),
        _ => NotDescribed,
    };

    /// <summary>One segment with what rides on it.</summary>
    /// <param name="Mass">kg.</param>
    /// <param name="Length">m.</param>
    /// <param name="Width">m.</param>
    /// <param name="Center">From its lower end, m.</param>
    private readonly record struct Load(double Mass, double Length, double Width, double Center)
    {
        public static Load Of(BodyModel body, int i, bool withBrackets)
        {
            SegmentModel segment = body.Segments[i];
            double low = body.Tower.Levels[i].Elevation.Meters, length = body.Tower.Levels[i + 1].Elevation.Meters - low, mass = segment.Mass, moment = segment.Mass * (body.Axes.ToLocal(segment.CenterOfMass).Z - low), reach = Reach(body, i, low);
            Ride(segment.JointMass, 0);
            // What is on the upper level travels with the segment below it; the base level belongs to the first.
            for (int level = i == 0 ? 0 : i + 1; withBrackets && level <= i + 1; level++)
            {
                string name = body.Prefix + body.Tower.Levels[level].Name;
                foreach ((Place on, double m, _) in body.FrameMasses)
                {
                    if (on == body.Levels[level])
                        Ride(m, body.Tower.Levels[level].Elevation.Meters - low);
                }
                foreach (PlacedBracket bracket in body.Rings.Where(r => r.Level == name).SelectMany(r => r.Brackets))
                {
                    Ride(bracket.Mass, body.Axes.ToLocal(bracket.Middle).Z - low);
                    Vector3D tip = body.Axes.ToLocal(bracket.Tip) - body.Tower.Levels[level].Center;
                    reach = Math.Max(reach, 2 * Math.Max(Math.Abs(tip.X), Math.Abs(tip.Y)));
                }
            }
            return new Load(mass, length, reach, mass > 0 ? moment / mass : 0.5 * length);

            void Ride(double m, double at)
            {
                mass += m;
                moment += m * at;
            }
        }

        private static double Reach(BodyModel body, int i, double low) => body.Segments[i].Segment switch
        {
            MemberSegment { Section.OutlineDiameter: { } d } tube => Math.Max(d, tube.LowerJoint is FlangeJoint f ? f.OuterDiameter.Meters : 0),
            MemberSegment member => member.Section.Envelope.Width,
            LatticeSegment => new[] { i, i + 1 }.Max(level => body.Tower.Levels[level].Legs is { Length: > 0 } legs ? Math.Max(legs.Max(l => l.X) - legs.Min(l => l.X), legs.Max(l => l.Y) - legs.Min(l => l.Y)) : 0),
            _ => 0,
        };
    }
}
