using System.Buffers.Binary;

namespace StatueFrame.Shape;

/// <summary>Reads STL: three coordinates for each corner of each triangle, as text or as 32-bit numbers.</summary>
internal static class StlReader
{
    private const int Header = 84, Record = 50;

    public static Mesh Read(MeshInput input, MeshReading reading)
    {
        MeshBuilder mesh = new MeshBuilder(reading).Welding();
        if (IsText(input.Peek(512)))
            ReadText(input, mesh);
        else
            ReadBinary(input, mesh, reading);
        return mesh.ToMesh();
    }

    /// <summary>Binary files, too, may begin with "solid"; only text has no other byte than those of text.</summary>
    private static bool IsText(ReadOnlySpan<byte> begin)
    {
        if (!begin.TrimStart(" \t\r\n"u8).StartsWith("solid"u8))
            return false;
        foreach (byte b in begin)
        {
            if (b < ' ' && b is not ((byte)'\t' or (byte)'\r' or (byte)'\n'))
                return false;
        }
        return true;
    }

    private static void ReadText(MeshInput input, MeshBuilder mesh)
    {
        Span<int> corners = stackalloc int[3];
        int corner = 0;
        bool ended = false;
        while (input.TryLine(out ReadOnlySpan<byte> line))
        {
            ReadOnlySpan<byte> word = MeshText.Word(ref line);
            if (word.SequenceEqual("vertex"u8))
            {
                if (corner == 3)
                    throw new MeshFileException("a facet has more than three vertices", input.AtLine);
                double x = MeshText.Number(ref line, input), y = MeshText.Number(ref line, input), z = MeshText.Number(ref line, input);
                corners[corner++] = mesh.Vertex(x, y, z, input.AtLine);
            }
            else if (word.SequenceEqual("endfacet"u8))
            {
                if (corner != 3)
                    throw new MeshFileException("a facet has fewer than three vertices", input.AtLine);
                mesh.Triangle(corners[0], corners[1], corners[2], input.AtLine);
                corner = 0;
            }
            else if (word.SequenceEqual("endsolid"u8))
            {
                ended = true;
            }
            else if (!(word.IsEmpty || word.SequenceEqual("solid"u8) || word.SequenceEqual("facet"u8) || word.SequenceEqual("outer"u8) || word.SequenceEqual("endloop"u8)))
            {
                throw new MeshFileException("a word that STL does not know", input.AtLine);
            }
        }
        if (!ended || corner != 0)
            throw new MeshFileException("the file ends too early: there is no \"endsolid\"", input.AtLine);
    }

    private static void ReadBinary(MeshInput input, MeshBuilder mesh, MeshReading reading)
    {
        uint count = BinaryPrimitives.ReadUInt32LittleEndian(input.Take(Header)[80..]);
        if (count > reading.MaxTriangles)
            throw new MeshFileException($"says it has {count} triangles; {reading.MaxTriangles} are allowed", "byte 80");
        Span<int> corners = stackalloc int[3];
        for (uint t = 0; t < count; t++)
        {
            ReadOnlySpan<byte> record = input.Take(Record);
            for (int k = 0; k < 3; k++)
            {
                float x = Float(record, 12 + 12 * k), y = Float(record, 16 + 12 * k), z = Float(record, 20 + 12 * k);
                if (!(float.IsFinite(x) && float.IsFinite(y) && float.IsFinite(z)))
                    throw new MeshFileException("a coordinate is not a number", input.AtByte);
                corners[k] = mesh.Vertex(x, y, z, "binary record");
            }
            mesh.Triangle(corners[0], corners[1], corners[2], "binary record");
        }
        if (!input.AtEnd)
            throw new MeshFileException($"says it has {count} triangles, but goes on after them", input.AtByte);
    }

    private static float Float(ReadOnlySpan<byte> bytes, int at) => BinaryPrimitives.ReadSingleLittleEndian(bytes[at..]);
}
