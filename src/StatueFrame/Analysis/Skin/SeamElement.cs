using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The seam between two neighboring bands: springs all along the edge they share.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SeamElement : FrameElement
{
    private readonly double[] stiffness = new double[Size * Size];
    private readonly SeamStiffness seams;
    private readonly BodyAxes axes;
    private readonly Place lower, upper;

    public SeamElement(SeamStiffness seams, BodyAxes axes, PlanCurve edge, double elevation, Place lower, Place upper)
        : base(lower.Node, upper.Node)
    {
        (this.seams, this.axes, Edge, Elevation, this.lower, this.upper) = (seams, axes, edge, elevation, lower, upper);
        Span<double> b = stackalloc double[Size];
        for (int i = 0; i < edge.Count; i++)
        {
            (Vector3D at, _, double length) = axes.Edge(edge, i, elevation);
            for (int spring = 0; spring < 3; spring++)
            {
                double k = Spring(spring, length, at, b);
                for (int row = 0; row < Size; row++)
                {
                    for (int column = 0; column < Size; column++)
                        stiffness[row * Size + column] += k * b[row] * b[column];
                }
            }
        }
    }

    /// <summary>The line that both bands share, in the body's axes.</summary>
    public PlanCurve Edge { get; }

    /// <summary>The line's height along the body's axis, m.</summary>
    public double Elevation { get; }

    /// <summary>
    /// Adds the loads (12 values) by which a strain of the skin, the same below and above the seam, drives the frame: the
    /// edges of the two bands would overlap by the strain times the distance of their centers. Across the axis only the mean
    /// strain counts, as what is uneven bends both edges alike.
    /// </summary>
    /// <param name="strain">The skin's free strain on each piece of the line.</param>
    /// <param name="mean">Its mean.</param>
    /// <param name="load12">The loads on the two nodes.</param>
    public void AddLoad(ReadOnlySpan<double> strain, double mean, Span<double> load12)
    {
        Span<double> b = stackalloc double[Size];
        Vector3D closer = lower.Center - upper.Center;
        double along = closer.Dot(axes.Axes.Z);
        for (int i = 0; i < Edge.Count; i++)
        {
            (Vector3D at, _, double length) = axes.Edge(Edge, i, Elevation);
            Vector3D apart = mean * closer + (strain[i] - mean) * along * axes.Axes.Z;
            for (int spring = 0; spring < 3; spring++)
            {
                double k = Spring(spring, length, at, b), stretch = Direction(spring).Dot(apart);
                for (int row = 0; row < Size; row++)
                    load12[row] -= k * stretch * b[row];
            }
        }
    }

    public override void AddStiffness(Span<double> k)
    {
        for (int i = 0; i < stiffness.Length; i++)
            k[i] += stiffness[i];
    }

    private Vector3D Direction(int spring) => spring switch { 0 => axes.Axes.Z, 1 => axes.Axes.X, _ => axes.Axes.Y };

    /// <summary>A spring along e between points at arms r and s: its stretch is b·u = e·(u₂ + θ₂×s) − e·(u₁ + θ₁×r). Returns its stiffness.</summary>
    private double Spring(int spring, double length, Vector3D at, Span<double> b)
    {
        Vector3D e = Direction(spring), turnLower = (at - lower.NodeAt).Cross(e), turnUpper = (at - upper.NodeAt).Cross(e);
        (b[0], b[1], b[2], b[3], b[4], b[5]) = (-e.X, -e.Y, -e.Z, -turnLower.X, -turnLower.Y, -turnLower.Z);
        (b[6], b[7], b[8], b[9], b[10], b[11]) = (e.X, e.Y, e.Z, turnUpper.X, turnUpper.Y, turnUpper.Z);
        return length * (spring == 0 ? seams.Across.Pascals : seams.Along.Pascals);
    }
}
