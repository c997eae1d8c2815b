namespace StatueFrame.Shape;

/// <summary>Gathers vertices and triangles in the file's numbers and makes a mesh of them, in meters with z up.</summary>
/// <remarks>Not safe to share between threads.</remarks>
internal sealed class MeshBuilder(MeshReading reading)
{
    private readonly double scale = reading.Scale;
    private readonly List<double> coordinates = [];
    private readonly List<int> corners = [];
    private VertexTable? welded;

    public int VertexCount => welded?.Count ?? coordinates.Count / 3;

    /// <summary>Joins vertices of equal coordinates from now on.</summary>
    public MeshBuilder Welding()
    {
        welded = new VertexTable();
        return this;
    }

    /// <summary>Adds a vertex and gives its number.</summary>
    public int Vertex(double x, double y, double z, string place)
    {
        double far = Mesh.FarthestCoordinate / scale;
        if (!(Math.Abs(x) <= far && Math.Abs(y) <= far && Math.Abs(z) <= far))
            throw new MeshFileException("a coordinate is not a number within 1e6 m; is the unit right?", place);
        if (VertexCount >= reading.MaxVertices)
            throw new MeshFileException($"more vertices than {reading.MaxTriangles} triangles can have", place);
        (x, y, z) = reading.Up switch
        {
            UpAxis.X => (scale * y, scale * z, scale * x),
            UpAxis.Y => (scale * x, -scale * z, scale * y),
            _ => (scale * x, scale * y, scale * z),
        };
        if (welded is not null)
            return welded.Add(x, y, z);
        coordinates.Add(x);
        coordinates.Add(y);
        coordinates.Add(z);
        return VertexCount - 1;
    }

    /// <summary>Adds a triangle of vertices that may still come.</summary>
    public void Triangle(int a, int b, int c, string place)
    {
        if (corners.Count / 3 >= reading.MaxTriangles)
            throw new MeshFileException($"more than the {reading.MaxTriangles} triangles allowed", place);
        corners.Add(a);
        corners.Add(b);
        corners.Add(c);
    }

    /// <summary>The mesh, once everything is read.</summary>
    public Mesh ToMesh()
    {
        if (corners.Count == 0)
            throw new MeshFileException("there are no triangles in the file", "");
        foreach (int corner in corners)
        {
            if ((uint)corner >= (uint)VertexCount)
                throw new MeshFileException($"a face uses vertex {(long)corner + 1}, but there are {VertexCount}", "");
        }
        return new Mesh(welded?.ToArray() ?? [.. coordinates], [.. corners]);
    }
}
