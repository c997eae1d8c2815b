using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// A mesh after the repairs that cannot change the shape: vertices joined, triangles without area and doubles taken out,
/// all faces turned outward. Nothing is filled, bridged or smoothed: what would need a guess is refused.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Mesh">The repaired mesh.</param>
/// <param name="Done">What was done, in words; empty when nothing was.</param>
/// <param name="Report">What the repaired mesh is.</param>
public sealed record MeshRepair(Mesh Mesh, ValueList<string> Done, MeshReport Report)
{
    /// <summary>Repairs a mesh.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="joinWithin">Vertices nearer to each other than this are joined; by default those at the very same place.</param>
    /// <param name="allowOpen">Whether the surface may end somewhere, as a figure without a base does. Its facing is then taken from the file.</param>
    /// <exception cref="InvalidMeshException">
    /// Flaws are left that need a decision: open edges (unless allowed), edges with more than two triangles, one-sided
    /// shells, shells inside another.
    /// </exception>
    public static MeshRepair Of(Mesh mesh, Length joinWithin = default, bool allowOpen = false)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        double within = joinWithin.Meters;
        if (!(within >= 0 && within <= 0.1 * mesh.Size))
            throw new ArgumentOutOfRangeException(nameof(joinWithin), joinWithin, "must be zero to a tenth of the mesh's size");
        var done = new List<string>();
        Mesh joined = Joined(mesh, within, done);
        Mesh cleared = Cleared(joined, done);
        Mesh turned = Turned(cleared, allowOpen, done);
        MeshReport report = MeshReport.Of(turned);
        MeshFlaw[] left = [.. report.Flaws.Where(f => f.Kind switch
        {
            MeshFlawKind.Slivers or MeshFlawKind.DegenerateFaces => false,
            MeshFlawKind.OpenEdges => !allowOpen,
            _ => true,
        })];
        return left.Length == 0
            ? new MeshRepair(turned, [.. done], report)
            : throw new InvalidMeshException("The mesh needs repairs that only its maker can decide", left);
    }

    private static Mesh Joined(Mesh mesh, double within, List<string> done)
    {
        // Vertices are drawn to the first one found in their own or a neighboring cell of a grid.
        var table = new VertexTable();
        var number = new int[mesh.VertexCount];
        var cells = new Dictionary<(long, long, long), List<int>>();
        var kept = new List<double>();
        for (int i = 0; i < number.Length; i++)
        {
            Vector3D v = mesh.Vertex(i);
            if (within == 0)
                number[i] = table.Add(v.X, v.Y, v.Z);
            else
                number[i] = Near(v, within, cells, kept);
        }
        int count = within == 0 ? table.Count : kept.Count / 3;
        if (count == number.Length)
            return mesh;
        done.Add($"joined {number.Length - count} vertices to others at their place");
        int[] corners = mesh.Corners.ToArray();
        for (int c = 0; c < corners.Length; c++)
            corners[c] = number[corners[c]];
        return new Mesh(within == 0 ? table.ToArray() : [.. kept], corners);
    }

    private static int Near(Vector3D v, double within, Dictionary<(long, long, long), List<int>> cells, List<double> kept)
    {
        (long x, long y, long z) = ((long)Math.Floor(v.X / within), (long)Math.Floor(v.Y / within), (long)Math.Floor(v.Z / within));
        for (long dx = -1; dx <= 1; dx++)
        {
            for (long dy = -1; dy <= 1; dy++)
            {
                for (long dz = -1; dz <= 1; dz++)
                {
                    if (!cells.TryGetValue((x + dx, y + dy, z + dz), out List<int>? cell))
                        continue;
                    foreach (int k in cell)
                    {
                        if ((new Vector3D(kept[3 * k], kept[3 * k + 1], kept[3 * k + 2]) - v).Length <= within)
                            return k;
                    }
                }
            }
        }
        int added = kept.Count / 3;
        kept.AddRange([v.X, v.Y, v.Z]);
        if (!cells.TryGetValue((x, y, z), out List<int>? own))
            cells[(x, y, z)] = own = [];
        own.Add(added);
        return added;
    }

    private static Mesh Cleared(Mesh mesh, List<string> done)
    {
        double size = mesh.Size;
        var seen = new HashSet<(int, int, int)>(mesh.TriangleCount);
        var corners = new List<int>(mesh.Corners.Length);
        int degenerate = 0, duplicate = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            ReadOnlySpan<int> triangle = mesh.Corners.Slice(3 * t, 3);
            (int a, int b, int c) = MeshExamination.Ordered(triangle);
            // Only triangles that share vertices may go: one that is merely flat holds its neighbors together.
            if (a == b || b == c)
                degenerate++;
            else if (!seen.Add((a, b, c)))
                duplicate++;
            else
                corners.AddRange(triangle);
        }
        if (degenerate > 0)
            done.Add($"took out {degenerate} triangles with two corners in one place");
        if (duplicate > 0)
            done.Add($"took out {duplicate} triangles that were there twice");
        return degenerate + duplicate == 0 ? mesh : new Mesh(mesh.Coordinates.ToArray(), [.. corners]);
    }

    private static Mesh Turned(Mesh mesh, bool allowOpen, List<string> done)
    {
        var examination = new MeshExamination(mesh);
        Shells shells = examination.Shells;
        double[] volumes = examination.Volumes(asTheyFace: false);
        MeshReport report = examination.Report();
        bool closed = report.Of(MeshFlawKind.OpenEdges) is null && report.Of(MeshFlawKind.NonManifoldEdges) is null;
        if (shells.OneSided.Count > 0 || !(closed || allowOpen))
            return mesh;
        // An open surface keeps the facing of its majority; a closed one faces outward.
        var flips = new int[shells.Count];
        var sizes = new int[shells.Count];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            sizes[shells.Of(t)]++;
            flips[shells.Of(t)] += shells.Flip(t) ? 1 : 0;
        }
        int[] corners = mesh.Corners.ToArray();
        int turned = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int shell = shells.Of(t);
            bool whole = closed ? volumes[shell] < 0 : 2 * flips[shell] > sizes[shell];
            if (shells.Flip(t) == whole)
                continue;
            (corners[3 * t + 1], corners[3 * t + 2]) = (corners[3 * t + 2], corners[3 * t + 1]);
            turned++;
        }
        if (turned == 0)
            return mesh;
        done.Add($"turned over {turned} triangles");
        return new Mesh(mesh.Coordinates.ToArray(), corners);
    }
}
