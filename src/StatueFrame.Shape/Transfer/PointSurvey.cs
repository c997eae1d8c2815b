using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// Points of a model measured from plumb lines hung round it: level distances from the nearest lines, and heights, all
/// read twice.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PointSurvey
{
    /// <summary>The lines, at least two at different places, with different names.</summary>
    public required ValueList<ReferenceLine> Lines { get; init; }

    /// <summary>Distances: at least two lines for each point, better three or more that surround it.</summary>
    public required ValueList<LineReading> Distances { get; init; }

    /// <summary>Heights: at least one for each point.</summary>
    public required ValueList<HeightReading> Heights { get; init; }

    /// <summary>Standard error of one reading of a distance, 1 µm to 1 m.</summary>
    public required Length DistanceError { get; init; }

    /// <summary>Standard error of one reading of a height, 1 µm to 1 m.</summary>
    public required Length HeightError { get; init; }

    /// <summary>
    /// The standardized residual above which a reading is called a blunder, 2 to 10; 3.29 by default, which a good reading
    /// passes one time in a thousand.
    /// </summary>
    public double BlunderLimit { get; init; } = 3.29;

    /// <summary>Adjusts every point by weighted least squares, names blunders and leaves them out where they can be told.</summary>
    /// <exception cref="ArgumentException">The survey has problems; all are listed.</exception>
    public AdjustedSurvey Adjust()
    {
        List<string> problems = Problems();
        if (problems.Count > 0)
            throw new ArgumentException("The survey cannot be adjusted:" + string.Concat(problems.Select(p => Environment.NewLine + "  " + p)));
        string[] names = [.. Heights.Select(h => h.Point).Distinct()];
        return new AdjustedSurvey(this, [.. names.Select(name => PointAdjuster.Adjust(this, name))]);
    }

    private List<string> Problems()
    {
        const double least = 1e-6, nearest = 1e-3, farthest = 1e4;
        var problems = new List<string>();
        Require(DistanceError.Meters is >= least and <= 1, "DistanceError must be 1 µm to 1 m");
        Require(HeightError.Meters is >= least and <= 1, "HeightError must be 1 µm to 1 m");
        Require(BlunderLimit is >= 2 and <= 10, "BlunderLimit must be 2 to 10");
        Require(Lines.Count <= 10_000 && Distances.Count <= 1_000_000 && Heights.Count <= 1_000_000, "the survey is larger than 10 000 lines or a million readings");
        var lines = new HashSet<string>();
        foreach (ReferenceLine line in Lines)
        {
            Require(lines.Add(line.Name), $"there are two lines \"{line.Name}\"");
            Require(Math.Abs(line.X.Meters) <= farthest && Math.Abs(line.Y.Meters) <= farthest, $"line \"{line.Name}\" has no place");
        }
        foreach (LineReading r in Distances)
        {
            Require(lines.Contains(r.Line), $"point \"{r.Point}\" is read from a line \"{r.Line}\", which is not in the list");
            Require(r.First.Meters >= nearest && r.First.Meters <= farthest && r.Second.Meters >= nearest && r.Second.Meters <= farthest,
                $"the distance of \"{r.Point}\" from \"{r.Line}\" must be at least 1 mm");
        }
        foreach (HeightReading r in Heights)
            Require(Math.Abs(r.First.Meters) <= farthest && Math.Abs(r.Second.Meters) <= farthest, $"the height of \"{r.Point}\" is not a number");
        HashSet<string> withHeight = [.. Heights.Select(h => h.Point)];
        ILookup<string, string> read = Distances.ToLookup(d => d.Point, d => d.Line);
        foreach (string point in withHeight)
            Require(read[point].Distinct().Count() >= 2, $"point \"{point}\" is not read from two lines");
        foreach (string point in read.Select(g => g.Key).Where(p => !withHeight.Contains(p)))
            Require(false, $"point \"{point}\" has no height");
        Require(withHeight.Count > 0, "there are no points");
        return problems;

        void Require(bool holds, string problem)
        {
            if (!holds)
                problems.Add(problem);
        }
    }
}
