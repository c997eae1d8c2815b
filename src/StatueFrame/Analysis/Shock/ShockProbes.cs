using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// What is looked at in every step: linear functions of the displacements of all nodes. In order: the six motions of each
/// ring's band relative to its level, three displacements of each named point, three forces of all rings on the tower, the six
/// motions of each segment's upper end relative to its lower one.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class ShockProbes
{
    private readonly StatueModel model;
    private readonly RingElement[] rings;
    private readonly Vector3D[] arms;
    private readonly (int Lower, int Upper, Vector3D Arm)[] segments;
    private readonly double[][] stiffness;
    private readonly (Place Place, Vector3D At)[] points;
    private readonly (int Node, double[] Mass)[] bands;

    public ShockProbes(StatueModel model)
    {
        this.model = model;
        rings = [.. model.Rings.Select(r => r.Ring)];
        arms = Array.ConvertAll(rings, r => model.Frame.Nodes[r.End].Position - model.Frame.Nodes[r.Start].Position);
        stiffness = Array.ConvertAll(rings, RelativeStiffness);
        points = [.. model.Statue.Points.Select(p => (model.PlaceOf(p.On), model.PositionOf(p)))];
        bands = [.. Enumerable.Range(0, model.BandCount).Select(i => BandMass(model.BandAt(i).Body.BandPlaces[model.BandAt(i).Band].Node))];
        segments = [.. model.Bodies.SelectMany(body => body.Segments).Select(s => (s.Element.Start, s.Element.End, model.Frame.Nodes[s.Element.End].Position - model.Frame.Nodes[s.Element.Start].Position))];
        Count = SegmentStart + Frame.NodeSize * segments.Length;
    }

    /// <summary>How many numbers are looked at.</summary>
    public int Count { get; }

    public int PointStart => Frame.NodeSize * rings.Length;

    public int PointCount => points.Length;

    /// <summary>Where the force on the tower begins.</summary>
    public int ForceStart => PointStart + 3 * points.Length;

    /// <summary>Where the motions of segments begin.</summary>
    public int SegmentStart => ForceStart + 3;

    public int BandCount => bands.Length;

    /// <summary>From the level's node to the band's node of a ring, m.</summary>
    public Vector3D Arm(int ring) => arms[ring];

    /// <summary>The numbers for a full vector of displacements.</summary>
    public void Look(ReadOnlySpan<double> u, Span<double> values)
    {
        Span<double> force = stackalloc double[Frame.NodeSize];
        var total = Vector3D.Zero;
        for (int i = 0; i < rings.Length; i++)
        {
            Span<double> r = values.Slice(Frame.NodeSize * i, Frame.NodeSize);
            Relative(u, i, r);
            Frame.Multiply(stiffness[i], r, force);
            total += new Vector3D(force[0], force[1], force[2]);
        }
        for (int i = 0; i < points.Length; i++)
            Put(values[(PointStart + 3 * i)..], model.Motion(u, points[i].Place, points[i].At).Displacement);
        Put(values[ForceStart..], total);
        for (int i = 0; i < segments.Length; i++)
            RelativeMotion.Of(u, segments[i].Lower, segments[i].Upper, segments[i].Arm, values.Slice(SegmentStart + Frame.NodeSize * i, Frame.NodeSize));

        static void Put(Span<double> at, Vector3D v) => (at[0], at[1], at[2]) = (v.X, v.Y, v.Z);
    }

    /// <summary>Elastic energy of all standoffs, J, from the numbers looked at.</summary>
    public double BarStrain(ReadOnlySpan<double> values)
    {
        Span<double> force = stackalloc double[Frame.NodeSize];
        double sum = 0;
        for (int i = 0; i < rings.Length; i++)
        {
            ReadOnlySpan<double> r = values.Slice(Frame.NodeSize * i, Frame.NodeSize);
            Frame.Multiply(stiffness[i], r, force);
            for (int k = 0; k < Frame.NodeSize; k++)
                sum += 0.5 * r[k] * force[k];
        }
        return sum;
    }

    /// <summary>
    /// Six numbers a band whose squares add up to its kinetic energy: the velocity of its node times the factor of half
    /// its mass matrix.
    /// </summary>
    public void LookAtBands(ReadOnlySpan<double> v, Span<double> values)
    {
        for (int i = 0; i < bands.Length; i++)
        {
            (int node, double[] factor) = bands[i];
            for (int column = 0; column < Frame.NodeSize; column++)
            {
                double sum = 0;
                for (int row = column; row < Frame.NodeSize; row++)
                    sum += factor[Frame.NodeSize * row + column] * v[Frame.NodeSize * node + row];
                values[Frame.NodeSize * i + column] = sum;
            }
        }
    }

    private void Relative(ReadOnlySpan<double> u, int ring, Span<double> r) =>
        RelativeMotion.Of(u, rings[ring].Start, rings[ring].End, arms[ring], r);

    private static double[] RelativeStiffness(RingElement ring)
    {
        var k = new double[Frame.NodeSize * Frame.NodeSize];
        foreach (BarModel bar in ring.Bars)
            bar.Bar.AddTo(k);
        return k;
    }

    /// <summary>The node and the lower factor L of half its own mass, ½M = L Lᵀ.</summary>
    private (int Node, double[] Factor) BandMass(int node)
    {
        const int n = Frame.NodeSize;
        var L = new double[n * n];
        for (int j = 0; j < n; j++)
        {
            for (int i = j; i < n; i++)
            {
                double sum = 0.5 * model.Frame.Mass[model.Frame.EquationOf(n * node + i), model.Frame.EquationOf(n * node + j)];
                for (int k = 0; k < j; k++)
                    sum -= L[n * i + k] * L[n * j + k];
                L[n * i + j] = i == j ? Math.Sqrt(Math.Max(0, sum)) : L[n * j + j] > 0 ? sum / L[n * j + j] : 0;
            }
        }
        return (node, L);
    }
}
