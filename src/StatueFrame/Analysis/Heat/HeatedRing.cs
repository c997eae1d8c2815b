using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// The free shape of a thin closed ring whose strain ε varies along it: it stretches by the strain, and bends no more than
/// it must to close. Along the line u′ = ε t + ψ ẑ × t and ψ′ = κ, t the tangent and ψ the turn; the ring closes when
/// ∮κ ds = 0 and ∮κ r ds = −ẑ × ∮ε t ds, and among all such curvatures κ = Bx + Cy about the centroid of the line takes the
/// least energy, whatever the stiffness, if it is the same all along. SI units.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Exact for a polygon of even strain on each edge. On a circle the mean strain
/// gives the radial movement ε₀R, and ε_n cos nφ with n ≥ 2, which closes by itself, −ε_n R cos nφ/(n² − 1); n = 1 moves one
/// side against the other without a change of shape. The movement has no mean along the line, nor has the turn.
/// </remarks>
internal sealed class HeatedRing
{
    private readonly PlanCurve outline;
    private readonly double[] strain, along, turn, curvature, ux, uy;

    /// <summary>Finds the shape.</summary>
    /// <param name="outline">The ring's line, anticlockwise; its area must not be zero.</param>
    /// <param name="strain">The strain of each edge; taken over, not to be changed afterwards.</param>
    public HeatedRing(PlanCurve outline, double[] strain)
    {
        (this.outline, this.strain) = (outline, strain);
        int n = outline.Count;
        (along, turn, curvature, ux, uy) = (new double[n + 1], new double[n + 1], new double[n + 1], new double[n + 1], new double[n + 1]);
        Bend();
        double meanTurn = 0;
        for (int i = 0; i < n; i++)
        {
            double l = along[i + 1] - along[i];
            turn[i + 1] = turn[i] + 0.5 * l * (curvature[i] + curvature[i + 1]);
            meanTurn += TurnedLength(i, l) / along[n];
        }
        for (int i = 0; i <= n; i++)
            turn[i] -= meanTurn;
        double meanX = 0, meanY = 0;
        for (int i = 0; i < n; i++)
        {
            double l = along[i + 1] - along[i];
            (ux[i + 1], uy[i + 1]) = From(i, l);
            // Simpson's rule is exact: the movement is a cubic along an edge.
            (double midX, double midY) = From(i, 0.5 * l);
            double weight = l / (6 * along[n]);
            (meanX, meanY) = (meanX + weight * (ux[i] + 4 * midX + ux[i + 1]), meanY + weight * (uy[i] + 4 * midY + uy[i + 1]));
        }
        for (int i = 0; i <= n; i++)
            (ux[i], uy[i]) = (ux[i] - meanX, uy[i] - meanY);
    }

    /// <summary>The movement in the plane, m, and the turn, rad anticlockwise, at a position along the outline.</summary>
    /// <param name="position">From the first vertex, m.</param>
    public (Vector3D Move, double Turn) At(double position)
    {
        int n = outline.Count;
        double s = position % along[n];
        s = s < 0 ? s + along[n] : s;
        int found = Array.BinarySearch(along, s), edge = Math.Min(found >= 0 ? found : ~found - 1, n - 1);
        s -= along[edge];
        (double x, double y) = From(edge, s);
        return (new Vector3D(x, y, 0), turn[edge] + s * (curvature[edge] + 0.5 * s * Slope(edge)));
    }

    /// <summary>Finds the curvature at the vertices; it runs straight between them.</summary>
    private void Bend()
    {
        int n = outline.Count;
        ReadOnlySpan<double> X = outline.X, Y = outline.Y;
        double cx = 0, cy = 0, gapX = 0, gapY = 0;
        for (int i = 0; i < n; i++)
        {
            (double dx, double dy, double l) = Edge(i);
            along[i + 1] = along[i] + l;
            (cx, cy) = (cx + l * (X[i] + 0.5 * dx), cy + l * (Y[i] + 0.5 * dy));
            (gapX, gapY) = (gapX + strain[i] * dx, gapY + strain[i] * dy);
        }
        (cx, cy) = (cx / along[n], cy / along[n]);
        double xx = 0, yy = 0, xy = 0;
        for (int i = 0; i < n; i++)
        {
            (double dx, double dy, double l) = Edge(i);
            double x = X[i] - cx, y = Y[i] - cy;
            xx += l * (x * x + x * dx + dx * dx / 3);
            yy += l * (y * y + y * dy + dy * dy / 3);
            xy += l * (x * y + 0.5 * (x * dy + y * dx) + dx * dy / 3);
        }
        // [xx xy; xy yy] [B C] = (gapY, −gapX).
        double det = xx * yy - xy * xy, B = (yy * gapY + xy * gapX) / det, C = (-xy * gapY - xx * gapX) / det;
        for (int i = 0; i <= n; i++)
            curvature[i] = B * (X[i % n] - cx) + C * (Y[i % n] - cy);
    }

    /// <summary>The movement at a distance from the start of an edge.</summary>
    private (double X, double Y) From(int edge, double s)
    {
        (double dx, double dy, double l) = Edge(edge);
        if (l == 0)
            return (ux[edge], uy[edge]);
        double stretch = strain[edge] * s / l, turned = TurnedLength(edge, s) / l;
        return (ux[edge] + stretch * dx - turned * dy, uy[edge] + stretch * dy + turned * dx);
    }

    /// <summary>∫ψ ds over the first part s of an edge.</summary>
    private double TurnedLength(int edge, double s) => s * (turn[edge] + s * (0.5 * curvature[edge] + s * Slope(edge) / 6));

    private double Slope(int edge)
    {
        double l = along[edge + 1] - along[edge];
        return l > 0 ? (curvature[edge + 1] - curvature[edge]) / l : 0;
    }

    private (double X, double Y, double Length) Edge(int i)
    {
        ReadOnlySpan<double> X = outline.X, Y = outline.Y;
        int j = i + 1 == X.Length ? 0 : i + 1;
        double dx = X[j] - X[i], dy = Y[j] - Y[i];
        return (dx, dy, Math.Sqrt(dx * dx + dy * dy));
    }
}
