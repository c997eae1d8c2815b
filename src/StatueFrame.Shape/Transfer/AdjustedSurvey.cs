using System.Globalization;
using System.Text;
using MathNet.Numerics.Distributions;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A survey after adjustment: points with their errors, and whether the readings are as good as was said.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class AdjustedSurvey
{
    internal AdjustedSurvey(PointSurvey survey, AdjustedPoint[] points)
    {
        Survey = survey;
        Points = [.. points];
        Redundancy = points.Sum(p => p.Redundancy);
        VarianceFactor = Redundancy > 0 ? points.Sum(p => p.WeightedSquares) / Redundancy : 1;
        DistanceReadingError = OfDoubles([.. survey.Distances.Select(d => d.First.Meters - d.Second.Meters)]);
        HeightReadingError = OfDoubles([.. survey.Heights.Select(h => h.First.Meters - h.Second.Meters)]);
    }

    /// <summary>What was measured.</summary>
    public PointSurvey Survey { get; }

    /// <summary>The points, in the order of their heights' list.</summary>
    public ValueList<AdjustedPoint> Points { get; }

    /// <summary>Readings kept, less three for each point.</summary>
    public int Redundancy { get; }

    /// <summary>
    /// Mean square of the residuals over the standard errors stated: near 1 when those were right. Twice the errors give 4.
    /// </summary>
    public double VarianceFactor { get; }

    /// <summary>
    /// Whether the variance factor lies where 95 of 100 surveys with the stated errors would lie (chi-square). False means:
    /// the readings are better or worse than stated, or lines are not where they were said to be.
    /// </summary>
    public bool ErrorsAreAsStated => Redundancy == 0
        || (VarianceFactor >= ChiSquared.InvCDF(Redundancy, 0.025) / Redundancy && VarianceFactor <= ChiSquared.InvCDF(Redundancy, 0.975) / Redundancy);

    /// <summary>Standard error of one reading of a distance as the doubles show it, √(Σd²/2n), blunders included.</summary>
    public Length DistanceReadingError { get; }

    /// <summary>Standard error of one reading of a height as the doubles show it, √(Σd²/2n), blunders included.</summary>
    public Length HeightReadingError { get; }

    /// <summary>All readings that do not fit.</summary>
    public IEnumerable<Blunder> Blunders => Points.SelectMany(p => p.Blunders);

    /// <summary>Carries the points to full size in one or several stages, each with its own errors.</summary>
    /// <param name="stages">The stages in order; at least one.</param>
    /// <exception cref="ArgumentException">There is no stage, or one is out of range.</exception>
    public PointTransfer Transfer(params ReadOnlySpan<EnlargementStage> stages) => PointTransfer.Of(this, stages);

    /// <summary>The adjustment as a table of text.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{Points.Count} points, redundancy {Redundancy}, variance factor {VarianceFactor:f2}{(ErrorsAreAsStated ? "" : " (not as stated)")}\n");
        text.Append(CultureInfo.InvariantCulture, $"one reading by its doubles: distance {DistanceReadingError.Millimeters:f2} mm, height {HeightReadingError.Millimeters:f2} mm\n");
        text.Append("point              x mm      y mm      z mm   ±x mm   ±y mm   ±z mm  closing mm\n");
        foreach (AdjustedPoint p in Points)
            text.Append(CultureInfo.InvariantCulture, $"{p.Name,-12} {p.At.X.Millimeters,10:f2}{p.At.Y.Millimeters,10:f2}{p.At.Z.Millimeters,10:f2}{p.ErrorX.Millimeters,8:f2}{p.ErrorY.Millimeters,8:f2}{p.ErrorZ.Millimeters,8:f2}{p.ClosingError.Millimeters,12:f2}\n");
        foreach (Blunder b in Blunders)
            text.Append(b).Append('\n');
        return text.ToString();
    }

    private static Length OfDoubles(double[] differences) =>
        Length.FromMeters(Math.Sqrt(differences.Sum(d => d * d) / (2 * differences.Length)));
}
