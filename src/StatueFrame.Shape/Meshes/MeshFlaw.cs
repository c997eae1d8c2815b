using System.Globalization;

namespace StatueFrame.Shape;

/// <summary>One kind of flaw of a mesh: how often, and where.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Kind">What is wrong.</param>
/// <param name="Count">How many: vertices, triangles, edges, loops or shells.</param>
/// <param name="Places">Where the first of them are, at most five.</param>
public sealed record MeshFlaw(MeshFlawKind Kind, int Count, ValueList<Point3> Places)
{
    /// <summary>A line of text, as in "2 open edge loops, at (0.1, 0, 3.2) m".</summary>
    public override string ToString()
    {
        string what = Kind switch
        {
            MeshFlawKind.UnjoinedVertices => "vertices at the place of another",
            MeshFlawKind.DegenerateFaces => "triangles without area",
            MeshFlawKind.Slivers => "needle-like triangles",
            MeshFlawKind.DuplicateFaces => "triangles that are there twice",
            MeshFlawKind.NonManifoldEdges => "edges with more than two triangles",
            MeshFlawKind.OpenEdges => "loops of open edges",
            MeshFlawKind.FlippedFaces => "edges between triangles that face opposite sides",
            MeshFlawKind.OneSidedShells => "one-sided shells",
            MeshFlawKind.InwardShells => "shells that face inward",
            _ => "shells inside another",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{Count} {what}, at {string.Join(", ", Places.Select(Text))}");
    }

    private static string Text(Point3 p) => string.Create(CultureInfo.InvariantCulture, $"({p.X.Meters:g4}, {p.Y.Meters:g4}, {p.Z.Meters:g4}) m");
}
