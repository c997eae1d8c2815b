using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// How a statue can move while it is shaken, as coordinates: each with the displacements of the whole frame and the
/// accelerations whose inertia, with what acts on it, goes with them. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads; its arrays must not be written to.</remarks>
internal abstract class MotionShapes(StatueModel model)
{
    protected StatueModel Model => model;

    public abstract int Count { get; }

    /// <summary>The displacements of a coordinate, a full vector.</summary>
    public abstract ReadOnlySpan<double> Displacements(int coordinate);

    /// <summary>The accelerations of a coordinate, a full vector.</summary>
    public abstract ReadOnlySpan<double> Accelerations(int coordinate);

    /// <summary>What each coordinate puts on the base: forces, and moments about the base's center.</summary>
    public abstract Resultant[] Base();

    /// <summary>A coefficient a coordinate of a quantity that is linear in displacements.</summary>
    public double[] Of(Func<int, double> quantity)
    {
        var c = new double[Count];
        for (int k = 0; k < c.Length; k++)
            c[k] = quantity(k);
        return c;
    }

    /// <summary>The six motions of an element's end against its start, a row each with a value a coordinate.</summary>
    public double[][] RelativeMotions(FrameElement element)
    {
        Vector3D arm = model.Frame.Nodes[element.End].Position - model.Frame.Nodes[element.Start].Position;
        double[][] rows = [.. Enumerable.Range(0, Frame.NodeSize).Select(_ => new double[Count])];
        Span<double> r = stackalloc double[Frame.NodeSize];
        for (int k = 0; k < Count; k++)
        {
            RelativeMotion.Of(Displacements(k), element.Start, element.End, arm, r);
            for (int i = 0; i < rows.Length; i++)
                rows[i][k] = r[i];
        }
        return rows;
    }

    /// <summary>The motion of a point of a level or band in each coordinate.</summary>
    public (Vector3D Displacement, Vector3D Rotation)[] Motions(Place place, Vector3D at, bool accelerations = false)
    {
        var all = new (Vector3D, Vector3D)[Count];
        for (int k = 0; k < all.Length; k++)
            all[k] = model.Motion(accelerations ? Accelerations(k) : Displacements(k), place, at);
        return all;
    }

    /// <summary>What a mass-normalized mode of unit amplitude puts on the base.</summary>
    protected Resultant OfMode(ReadOnlySpan<double> shape, double omega)
    {
        var force = new Vector3D(model.Participation(shape, 0), model.Participation(shape, 1), model.Participation(shape, 2));
        var moment = new Vector3D(model.Participation(shape, 3), model.Participation(shape, 4), model.Participation(shape, 5));
        return new Resultant(omega * omega * force, omega * omega * moment);
    }

    /// <summary>What each coordinate puts on the cuts at both ends of a segment: three forces and three moments at the lower, then at the upper.</summary>
    public double[][] Cuts(SegmentModel segment)
    {
        double[][] rows = [.. Enumerable.Range(0, FrameElement.Size).Select(_ => new double[Count])];
        double[][] relative = RelativeMotions(segment.Element);
        Span<double> u = stackalloc double[FrameElement.Size], a = stackalloc double[FrameElement.Size], cuts = stackalloc double[FrameElement.Size];
        for (int k = 0; k < Count; k++)
        {
            u.Clear();
            for (int i = 0; i < relative.Length; i++)
                u[Frame.NodeSize + i] = relative[i][k];
            segment.EndForces(segment.Element, u, cuts);
            segment.Element.Gather(Accelerations(k), a);
            segment.TakeInertia(a, cuts);
            for (int i = 0; i < rows.Length; i++)
                rows[i][k] = cuts[i];
        }
        return rows;
    }

    /// <summary>The motions of an element's end against its start, and the mean accelerations of the two along x, y and z, a row each with a value a coordinate.</summary>
    public double[][] MotionsWithin(FrameElement element)
    {
        double[][] accelerated = [.. Enumerable.Range(0, 3).Select(axis => Of(k => 0.5 * (Accelerations(k)[element.Start * Frame.NodeSize + axis] + Accelerations(k)[element.End * Frame.NodeSize + axis])))];
        return [.. RelativeMotions(element), .. accelerated];
    }
}
