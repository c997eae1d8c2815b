using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>The axes of a body, trunk or limb, in the statue's own.</summary>
/// <param name="Axes">Directions of the body's x, y and z.</param>
/// <param name="Origin">Position of the body's origin, m.</param>
internal readonly record struct BodyAxes(Axes3D Axes, Vector3D Origin)
{
    public Vector3D ToGlobal(Vector3D local) => Origin + Axes.ToGlobal(local);

    public Vector3D ToLocal(Vector3D global) => Axes.ToLocal(global - Origin);

    /// <summary>The middle, the outward normal and the length of an edge of an outline across the body's axis; the normal is zero for an edge without length.</summary>
    /// <param name="outline">The outline in the body's axes, anticlockwise.</param>
    /// <param name="edge">Index of the edge.</param>
    /// <param name="z">Height along the body's axis, m.</param>
    public (Vector3D Middle, Vector3D Outward, double Length) Edge(PlanCurve outline, int edge, double z)
    {
        ReadOnlySpan<double> x = outline.X, y = outline.Y;
        int next = edge + 1 == x.Length ? 0 : edge + 1;
        double dx = x[next] - x[edge], dy = y[next] - y[edge], length = Math.Sqrt(dx * dx + dy * dy);
        Vector3D middle = ToGlobal(new Vector3D(0.5 * (x[edge] + x[next]), 0.5 * (y[edge] + y[next]), z));
        return (middle, length > 0 ? Axes.ToGlobal(new Vector3D(dy / length, -dx / length, 0)) : Vector3D.Zero, length);
    }
}
