using System.Numerics;
using System.Text.Json;
using SharpGLTF.Schema2;
using SharpGLTF.Validation;

namespace StatueFrame.Shape;

/// <summary>Reads all triangles of a glTF file's default scene, in the places its nodes give them.</summary>
internal static class GltfReader
{
    /// <summary>Nodes below nodes: more than any model has, few enough for every reader's stack.</summary>
    private const int DeepestNode = 500;

    /// <summary>The most nodes of a file.</summary>
    private const int MostNodes = 1000;

    /// <summary>Values that all accessors together may have for each vertex allowed: place, normal, colors and the like.</summary>
    private const int AccessorsPerVertex = 8;

    /// <summary>The most words of JSON: what is far more says things that no mesh needs.</summary>
    private const int MostWords = 400_000;

    private const uint BinaryMagic = 0x46546C67;

    public static Mesh Read(Stream stream, MeshReading reading, string? folder)
    {
        byte[] file = Bytes(stream, reading.MaxBytes);
        long left = reading.MaxBytes - file.Length;
        bool binary = file.Length >= 20 && BitConverter.ToUInt32(file) == BinaryMagic;
        try
        {
            ReadContext context = ReadContext.Create(name => Beside(folder, name, ref left));
            context.Validation = ValidationMode.Strict;
            context.ImageDecoder = _ => true;
            CheckPromises(binary ? file.AsSpan(20, (int)Math.Min(BitConverter.ToUInt32(file, 12), file.Length - 20)) : file, reading);
            using var memory = new MemoryStream(file);
            ModelRoot model = binary
                ? context.ReadBinarySchema2(memory)
                : context.ReadTextSchema2(memory);
            return Triangles(model, reading);
        }
        // The library shows damage by exceptions of many kinds.
        catch (Exception e) when (e is not (MeshFileException or OutOfMemoryException))
        {
            throw new MeshFileException($"no readable glTF: {e.Message}", "", e);
        }
    }

    /// <summary>
    /// Looks at what the file says of itself before the library believes it: it walks down the nodes by recursion, and
    /// reads as many numbers as an accessor promises, there or not.
    /// </summary>
    private static void CheckPromises(ReadOnlySpan<byte> json, MeshReading reading)
    {
        if (json.StartsWith("\uFEFF"u8))
            json = json[3..];
        var reader = new Utf8JsonReader(json);
        bool inNodes = false, inAccessors = false;
        int nodes = 0, words = 0;
        double numbers = 0;
        while (reader.Read())
        {
            if (++words > MostWords)
                throw new MeshFileException($"has more than {MostWords} words of JSON", "");
            if (reader.CurrentDepth == 1 && reader.TokenType == JsonTokenType.PropertyName)
                (inNodes, inAccessors) = (reader.ValueTextEquals("nodes"u8), reader.ValueTextEquals("accessors"u8));
            else if (inNodes && reader.CurrentDepth == 2 && reader.TokenType == JsonTokenType.StartObject && ++nodes > MostNodes)
                throw new MeshFileException($"has more than {MostNodes} nodes", "");
            else if (inAccessors && reader.CurrentDepth == 3 && reader.TokenType == JsonTokenType.PropertyName && reader.ValueTextEquals("count"u8)
                && reader.Read() && reader.TokenType == JsonTokenType.Number)
                numbers += Math.Abs(reader.GetDouble());
            if (numbers > AccessorsPerVertex * (double)reading.MaxVertices)
                throw new MeshFileException($"says it has more than the {reading.MaxTriangles} triangles allowed", "");
        }
    }

    private static byte[] Bytes(Stream stream, long most)
    {
        using var bytes = new MemoryStream();
        var block = new byte[1 << 16];
        for (int read = stream.Read(block); read > 0; read = stream.Read(block))
        {
            if (bytes.Length + read > most)
                throw new MeshFileException($"the file is larger than the {most} bytes allowed", "");
            bytes.Write(block, 0, read);
        }
        return bytes.ToArray();
    }

    /// <summary>A buffer beside the file; never one elsewhere.</summary>
    private static ArraySegment<byte> Beside(string? folder, string name, ref long left)
    {
        name = Uri.UnescapeDataString(name);
        if (folder is null || Path.GetFileName(name) != name || name is ".." or ".")
            throw new MeshFileException($"needs the file \"{name}\", which is not beside it", "");
        using FileStream file = File.OpenRead(Path.Combine(folder, name));
        byte[] bytes = Bytes(file, left);
        left -= bytes.Length;
        return new ArraySegment<byte>(bytes);
    }

    private static Mesh Triangles(ModelRoot model, MeshReading reading)
    {
        var mesh = new MeshBuilder(reading);
        var open = new Stack<(Node Node, Matrix4x4 At, int Depth)>();
        foreach (Node root in (model.DefaultScene ?? throw new MeshFileException("has no scene", "")).VisualChildren.Reverse())
            open.Push((root, Matrix4x4.Identity, 0));
        while (open.TryPop(out (Node Node, Matrix4x4 At, int Depth) next))
        {
            if (next.Depth > DeepestNode)
                throw new MeshFileException($"nodes lie more than {DeepestNode} deep", "");
            Matrix4x4 at = next.Node.LocalMatrix * next.At;
            foreach (MeshPrimitive primitive in next.Node.Mesh?.Primitives ?? [])
                Add(primitive, at, mesh, reading);
            foreach (Node child in next.Node.VisualChildren.Reverse())
                open.Push((child, at, next.Depth + 1));
        }
        return mesh.ToMesh();
    }

    private static void Add(MeshPrimitive primitive, Matrix4x4 at, MeshBuilder mesh, MeshReading reading)
    {
        if (primitive.DrawPrimitiveType is PrimitiveType.POINTS or PrimitiveType.LINES or PrimitiveType.LINE_LOOP or PrimitiveType.LINE_STRIP)
            return;
        Accessor positions = primitive.GetVertexAccessor("POSITION") ?? throw new MeshFileException("triangles without positions", "");
        // The counts are what the file says: judge them before anything is read by them.
        if (positions.Count > reading.MaxVertices || primitive.IndexAccessor?.Count > reading.MaxVertices)
            throw new MeshFileException($"says it has more than the {reading.MaxTriangles} triangles allowed", "");
        int first = mesh.VertexCount;
        foreach (Vector3 p in positions.AsVector3Array())
        {
            Vector3 v = Vector3.Transform(p, at);
            mesh.Vertex(v.X, v.Y, v.Z, "a vertex");
        }
        // A node that mirrors turns its triangles inside out.
        bool mirrored = at.GetDeterminant() < 0;
        foreach ((int a, int b, int c) in primitive.GetTriangleIndices())
        {
            if (mirrored)
                mesh.Triangle(first + a, first + c, first + b, "a triangle");
            else
                mesh.Triangle(first + a, first + b, first + c, "a triangle");
        }
    }
}
