using System.Globalization;
using System.Text;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>What a mesh is and what is wrong with it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record MeshReport
{
    /// <summary>Number of vertices.</summary>
    public required int Vertices { get; init; }

    /// <summary>Number of triangles.</summary>
    public required int Triangles { get; init; }

    /// <summary>Number of pieces that hang together by edges.</summary>
    public required int Shells { get; init; }

    /// <summary>Area of all triangles.</summary>
    public required Area SurfaceArea { get; init; }

    /// <summary>The least and the greatest coordinates.</summary>
    public required (Point3 Least, Point3 Greatest) Bounds { get; init; }

    /// <summary>All kinds of flaw found, in the order of <see cref="MeshFlawKind"/>.</summary>
    public required ValueList<MeshFlaw> Flaws { get; init; }

    /// <summary>True when the surface is closed, faces outward and has none of the flaws but slivers.</summary>
    public bool IsSound => Flaws.All(f => f.Kind == MeshFlawKind.Slivers);

    /// <summary>The flaw of a kind; null when the mesh has none.</summary>
    public MeshFlaw? Of(MeshFlawKind kind) => Flaws.FirstOrDefault(f => f.Kind == kind);

    /// <summary>Looks at a mesh. A million triangles take some seconds.</summary>
    /// <param name="mesh">The mesh.</param>
    public static MeshReport Of(Mesh mesh)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        return new MeshExamination(mesh).Report();
    }

    /// <summary>The report as a few lines of text.</summary>
    public override string ToString()
    {
        (Vector3D least, Vector3D greatest) = (Meters(Bounds.Least), Meters(Bounds.Greatest));
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{Triangles} triangles, {Vertices} vertices, {Shells} {(Shells == 1 ? "shell" : "shells")}, {SurfaceArea.SquareMeters:g5} m², ");
        text.Append(CultureInfo.InvariantCulture, $"{greatest.X - least.X:g4} × {greatest.Y - least.Y:g4} × {greatest.Z - least.Z:g4} m");
        foreach (MeshFlaw flaw in Flaws)
            text.Append('\n').Append("- ").Append(flaw);
        return text.ToString();

        static Vector3D Meters(Point3 p) => new(p.X.Meters, p.Y.Meters, p.Z.Meters);
    }
}
