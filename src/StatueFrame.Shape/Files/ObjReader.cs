namespace StatueFrame.Shape;

/// <summary>Reads the vertices and faces of a Wavefront OBJ file; faces of more corners are split into fans.</summary>
internal static class ObjReader
{
    public static Mesh Read(MeshInput input, MeshReading reading)
    {
        var mesh = new MeshBuilder(reading);
        while (input.TryLine(out ReadOnlySpan<byte> line))
        {
            if (line.EndsWith("\\"u8))
                throw new MeshFileException("a line goes on in the next; such files are not read", input.AtLine);
            ReadOnlySpan<byte> word = MeshText.Word(ref line);
            if (word.SequenceEqual("v"u8))
            {
                double x = MeshText.Number(ref line, input), y = MeshText.Number(ref line, input), z = MeshText.Number(ref line, input);
                mesh.Vertex(x, y, z, input.AtLine);
            }
            else if (word.SequenceEqual("f"u8))
            {
                Face(line, input, mesh);
            }
        }
        return mesh.ToMesh();
    }

    private static void Face(ReadOnlySpan<byte> line, MeshInput input, MeshBuilder mesh)
    {
        int first = -1, last = -1, corners = 0;
        for (ReadOnlySpan<byte> word = MeshText.Word(ref line); !word.IsEmpty; word = MeshText.Word(ref line), corners++)
        {
            int corner = Corner(word, input, mesh);
            if (corners >= 2)
                mesh.Triangle(first, last, corner, input.AtLine);
            if (corners == 0)
                first = corner;
            last = corner;
        }
        if (corners < 3)
            throw new MeshFileException("a face has fewer than three corners", input.AtLine);
    }

    private static int Corner(ReadOnlySpan<byte> word, MeshInput input, MeshBuilder mesh)
    {
        int slash = word.IndexOf((byte)'/');
        long number = MeshText.Whole(slash < 0 ? word : word[..slash], input);
        long index = number < 0 ? mesh.VertexCount + number : number - 1;
        if (number == 0 || index < 0 || index >= int.MaxValue)
            throw new MeshFileException($"there is no vertex {number}", input.AtLine);
        return (int)index;
    }
}
