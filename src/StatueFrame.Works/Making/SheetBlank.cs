using StatueFrame.Mechanics;
using StatueFrame.Shape;
using UnitsNet;
using static System.FormattableString;
using Verdict = StatueFrame.Checks.Verdict;

namespace StatueFrame.Works;

/// <summary>
/// The flat blank of a hammered sheet: of the same area, and laid out so that the metal must be stretched and gathered as
/// little as can be; with the strains that turn it into the sheet.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Strains are logarithmic, constant in each triangle of the sheet; the volume of
/// the metal stays. Figures called greatest are those that 1 % of the area exceeds.
/// </remarks>
public sealed class SheetBlank
{
    private readonly Flattening flattening;
    private readonly (double Area, double Thinness, double Strain)[] strains;

    private SheetBlank(MetalSheet sheet)
    {
        Sheet = sheet;
        Frame = new SheetAxes(sheet);
        flattening = new Flattening(sheet.Surface, Frame.Points);
        strains = new (double, double, double)[sheet.Surface.TriangleCount];
        for (int t = 0; t < strains.Length; t++)
        {
            (double greater, double lesser) = flattening.Stretches(t);
            (double e1, double e2) = (Math.Log(greater), Math.Log(lesser));
            double e3 = -e1 - e2;
            strains[t] = (flattening.AreaOf(t), 1 / (greater * lesser), Math.Sqrt(2.0 / 3 * (e1 * e1 + e2 * e2 + e3 * e3)));
        }
        (Length, Width) = LeastRectangle();
    }

    /// <summary>The blank of a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    public static SheetBlank Of(MetalSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return new SheetBlank(sheet);
    }

    /// <summary>The sheet.</summary>
    public MetalSheet Sheet { get; }

    /// <summary>Longer side of the smallest rectangle round the blank, laps not included: what must be cut from stock.</summary>
    public Length Length { get; }

    /// <summary>Shorter side of that rectangle.</summary>
    public Length Width { get; }

    /// <summary>Thickness left over that of the blank where it is thinnest; 1 when nothing is thinned.</summary>
    public double LeastThickness => -Exceeded(s => -s.Thinness);

    /// <summary>Thickness over that of the blank where metal is gathered most.</summary>
    public double GreatestThickness => Exceeded(s => s.Thinness);

    /// <summary>Greatest equivalent (von Mises) true strain, √(⅔(ε₁² + ε₂² + ε₃²)).</summary>
    public double GreatestStrain => Exceeded(s => s.Strain);

    /// <summary>Its mean over the area.</summary>
    public double MeanStrain => strains.Sum(s => s.Area * s.Strain) / flattening.Area;

    /// <summary>Whether the blank folds over itself somewhere: then the sheet cannot be made of one piece, and must be cut.</summary>
    public bool Folds => Enumerable.Range(0, strains.Length).Any(t => strains[t].Area > 1e-6 * flattening.Area && flattening.IsTurnedOver(t));

    /// <summary>What hammering asks of the metal.</summary>
    /// <param name="limits">The metal's and the shop's limits.</param>
    /// <exception cref="InvalidStatueException">A limit is out of range.</exception>
    public Hammering Hammered(HammeringLimits limits)
    {
        ArgumentNullException.ThrowIfNull(limits);
        var v = new Validator();
        limits.Validate(v.At(nameof(HammeringLimits)));
        v.ThrowIfAny();
        double strain = GreatestStrain, left = LeastThickness;
        int anneals = Math.Max(0, (int)Math.Ceiling(strain / limits.StrainBetweenAnneals - 1e-9) - 1);
        string? wrong = Folds ? "the blank folds over itself: cut the sheet in two"
            : anneals > limits.MostAnneals ? Invariant($"strain {strain:0.00} asks for {anneals} annealings, {limits.MostAnneals} allowed")
            : left < limits.LeastThickness ? Invariant($"thinned to {100 * left:0} % of the blank, {100 * limits.LeastThickness:0} % allowed") : null;
        return new Hammering
        {
            Sheet = Sheet.Number,
            Anneals = anneals,
            ThicknessLeft = left,
            Verdict = wrong is null ? Verdict.NotChecked : Verdict.Fail,
            Reason = wrong ?? Invariant($"strain {strain:0.00}, {anneals} {(anneals == 1 ? "annealing" : "annealings")}, {100 * left:0} % of the thickness left at least, for a blank of least distortion; how the metal is moved decides"),
        };
    }

    internal SheetAxes Frame { get; }

    /// <summary>A vertex of the sheet's surface on the blank, m.</summary>
    internal (double X, double Y) At(int vertex) => (flattening.X[vertex], flattening.Y[vertex]);

    internal double FlatArea => flattening.Area;

    private double Exceeded(Func<(double Area, double Thinness, double Strain), double> of)
    {
        double above = 0;
        foreach ((double Area, double Thinness, double Strain) s in strains.OrderByDescending(of))
        {
            above += s.Area;
            if (above >= 0.01 * flattening.Area)
                return of(s);
        }
        return 0;
    }

    /// <summary>The rectangle of least area round the blank: one of its sides lies along a side of the convex hull.</summary>
    private (Length, Length) LeastRectangle()
    {
        List<Vector3D> hull = Hull();
        double best = double.PositiveInfinity, along = 0, across = 0;
        for (int i = 0; i < hull.Count; i++)
        {
            Vector3D side = hull[(i + 1) % hull.Count] - hull[i];
            if (side.Length == 0)
                continue;
            Vector3D u = side.Normalized(), v = Vector3D.UnitZ.Cross(u);
            double a = hull.Max(p => p.Dot(u)) - hull.Min(p => p.Dot(u)), b = hull.Max(p => p.Dot(v)) - hull.Min(p => p.Dot(v));
            if (a * b < best)
                (best, along, across) = (a * b, Math.Max(a, b), Math.Min(a, b));
        }
        return (Length.FromMeters(along), Length.FromMeters(across));
    }

    private List<Vector3D> Hull()
    {
        Vector3D[] points = [.. Enumerable.Range(0, flattening.X.Length).Select(i => new Vector3D(flattening.X[i], flattening.Y[i], 0)).OrderBy(p => p.X).ThenBy(p => p.Y)];
        var hull = new List<Vector3D>();
        foreach (Vector3D[] run in (Vector3D[][])[points, [.. points.Reverse()]])
        {
            int start = hull.Count;
            foreach (Vector3D p in run)
            {
                while (hull.Count >= start + 2 && (hull[^1] - hull[^2]).Cross(p - hull[^1]).Z <= 0)
                    hull.RemoveAt(hull.Count - 1);
                hull.Add(p);
            }
            hull.RemoveAt(hull.Count - 1);
        }
        return hull;
    }
}
