using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>The seam between two neighboring bands: springs all along the edge they share.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SeamElement : FrameElement
{
    private readonly double[] stiffness = new double[Size * Size];

    public SeamElement(SeamStiffness seams, BodyAxes axes, PlanCurve edge, double elevation, Place lower, Place upper)
        : base(lower.Node, upper.Node)
    {
        ReadOnlySpan<double> x = edge.X, y = edge.Y;
        for (int i = 0; i < x.Length; i++)
        {
            int j = i + 1 == x.Length ? 0 : i + 1;
            double length = Math.Sqrt((x[j] - x[i]) * (x[j] - x[i]) + (y[j] - y[i]) * (y[j] - y[i]));
            Vector3D at = axes.ToGlobal(new Vector3D(0.5 * (x[i] + x[j]), 0.5 * (y[i] + y[j]), elevation));
            AddSpring(axes.Axes.Z, seams.Across.Pascals * length, at - lower.NodeAt, at - upper.NodeAt);
            AddSpring(axes.Axes.X, seams.Along.Pascals * length, at - lower.NodeAt, at - upper.NodeAt);
            AddSpring(axes.Axes.Y, seams.Along.Pascals * length, at - lower.NodeAt, at - upper.NodeAt);
        }
    }

    public override void AddStiffness(Span<double> k)
    {
        for (int i = 0; i < stiffness.Length; i++)
            k[i] += stiffness[i];
    }

    /// <summary>A spring along e between points at arms r and s: its stretch is e·(u₂ + θ₂×s) − e·(u₁ + θ₁×r).</summary>
    private void AddSpring(Vector3D e, double stiffnessAlong, Vector3D r, Vector3D s)
    {
        Vector3D turnLower = r.Cross(e), turnUpper = s.Cross(e);
        ReadOnlySpan<double> b =
        [
            -e.X, -e.Y, -e.Z, -turnLower.X, -turnLower.Y, -turnLower.Z,
            e.X, e.Y, e.Z, turnUpper.X, turnUpper.Y, turnUpper.Z,
        ];
        for (int i = 0; i < Size; i++)
        {
            for (int j = 0; j < Size; j++)
                stiffness[i * Size + j] += stiffnessAlong * b[i] * b[j];
        }
    }
}
