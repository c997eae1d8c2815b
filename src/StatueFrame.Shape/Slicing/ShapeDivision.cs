using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// A figure divided into trunk and limbs so that every piece of its sheet belongs to exactly one body. Where a limb was
/// cut off, both bodies are closed by faces that are no sheet, so that outlines close there.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Trunk">The trunk.</param>
/// <param name="Limbs">The limbs in the order given.</param>
public sealed record ShapeDivision(ShapeBody Trunk, ValueList<ShapeBody> Limbs)
{
    /// <summary>Area of all sheet: that of the figure, less the faces it stands on.</summary>
    public Area SheetArea => Area.FromSquareMeters(Trunk.SheetArea.SquareMeters + Limbs.Sum(l => l.SheetArea.SquareMeters));

    /// <summary>
    /// Cuts each limb off by the plane through its root: triangles are cut exactly. Of what lies beyond the plane, the
    /// piece nearest to the limb's tip is the limb; the rest stays with the trunk.
    /// </summary>
    /// <param name="mesh">A closed surface that faces outward.</param>
    /// <param name="limbs">The limbs, with different names.</param>
    /// <param name="standsOpen">Whether the level faces at the lowest height are no sheet.</param>
    /// <exception cref="InvalidMeshException">The surface is not closed or faces inward, or a plane cuts nothing off.</exception>
    public static ShapeDivision ByPlanes(Mesh mesh, IReadOnlyList<LimbCut> limbs, bool standsOpen = true)
    {
        Require(mesh, limbs);
        var cutter = new SurfaceCutter(mesh);
        List<int> trunk = [.. mesh.Corners];
        var parts = new List<List<int>>();
        foreach (LimbCut limb in limbs)
        {
            Vector3D root = ShapeAxis.At(limb.Axis.Root), tip = ShapeAxis.At(limb.Axis.Tip);
            (List<int> front, List<int> back) = cutter.Cut(trunk, root, limb.Normal);
            List<List<int>> pieces = SurfaceCutter.Pieces(front);
            if (pieces.Count == 0 || back.Count == 0)
                throw new InvalidMeshException($"The plane through the root of \"{limb.Name}\" leaves the whole figure on one side.");
            List<int> part = pieces.MinBy(p => p.Min(v => (cutter[v] - tip).Length))!;
            parts.Add(part);
            trunk = [.. back, .. pieces.Where(p => p != part).SelectMany(p => p)];
        }
        return Of(cutter, trunk, limbs, parts, standsOpen);
    }

    /// <summary>Gives each whole triangle to the axis its centroid is nearest to.</summary>
    /// <param name="mesh">A closed surface that faces outward.</param>
    /// <param name="trunk">The trunk's axis, from foot to top.</param>
    /// <param name="limbs">The limbs, with different names.</param>
    /// <param name="standsOpen">Whether the level faces at the lowest height are no sheet.</param>
    /// <exception cref="InvalidMeshException">The surface is not closed or faces inward, or a limb gets nothing.</exception>
    public static ShapeDivision ByNearestAxis(Mesh mesh, ShapeAxis trunk, IReadOnlyList<LimbCut> limbs, bool standsOpen = true)
    {
        Require(mesh, limbs);
        ArgumentNullException.ThrowIfNull(trunk);
        var cutter = new SurfaceCutter(mesh);
        var rest = new List<int>();
        List<List<int>> parts = [.. limbs.Select(_ => new List<int>())];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            Vector3D center = (a + b + c) / 3;
            double nearest = trunk.DistanceOf(center);
            List<int> part = rest;
            for (int i = 0; i < limbs.Count; i++)
            {
                if (limbs[i].Axis.DistanceOf(center) is double distance && distance < nearest)
                    (nearest, part) = (distance, parts[i]);
            }
            part.AddRange(mesh.Corners.Slice(3 * t, 3));
        }
        return Of(cutter, rest, limbs, parts, standsOpen);
    }

    private static void Require(Mesh mesh, IReadOnlyList<LimbCut> limbs)
    {
        ArgumentNullException.ThrowIfNull(limbs);
        ShapeBody.RequireClosed(mesh);
        if (limbs.Select(l => l.Name).Distinct().Count() < limbs.Count)
            throw new ArgumentException("must have different names", nameof(limbs));
    }

    private static ShapeDivision Of(SurfaceCutter cutter, List<int> trunk, IReadOnlyList<LimbCut> limbs, List<List<int>> parts, bool standsOpen)
    {
        for (int i = 0; i < parts.Count; i++)
        {
            if (parts[i].Count == 0)
                throw new InvalidMeshException($"No part of the figure belongs to \"{limbs[i].Name}\".");
        }
        List<int> whole = [.. trunk, .. cutter.Caps(trunk)];
        return new ShapeDivision(
            ShapeBody.Standing("trunk", cutter.ToMesh(whole), trunk.Count / 3, standsOpen),
            [.. limbs.Select((l, i) => new ShapeBody(l.Name, cutter.ToMesh([.. parts[i], .. cutter.Caps(parts[i])]), parts[i].Count / 3, l.Axis))]);
    }
}
