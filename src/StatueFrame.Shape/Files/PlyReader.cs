using System.Buffers.Binary;
using System.Text;

namespace StatueFrame.Shape;

/// <summary>Reads PLY: a header that describes lists of elements, then their values as text or binary.</summary>
internal static class PlyReader
{
    private const int MostHeaderLines = 1000;

    private enum Order { Text, Little, Big }

    /// <summary>A property: the size and kind of its value, and of its count when it is a list.</summary>
    private sealed record Property(string Name, string Type, string? CountType);

    private sealed record Element(string Name, long Count, List<Property> Properties);

    public static Mesh Read(MeshInput input, MeshReading reading)
    {
        (Order order, List<Element> elements) = Header(input);
        var mesh = new MeshBuilder(reading);
        foreach (Element element in elements)
        {
            long most = element.Name == "face" ? reading.MaxTriangles : reading.MaxVertices;
            if (element.Count < 0 || element.Count > most)
                throw new MeshFileException($"says it has {element.Count} of \"{element.Name}\"; {most} are allowed", "header");
            if (element.Properties.Count == 0 && element.Count > 0)
                throw new MeshFileException($"the element \"{element.Name}\" has no properties", "header");
            var values = new PlyValues(input, order == Order.Text, order == Order.Big);
            ReadElement(ref values, element, mesh);
        }
        while (order == Order.Text && input.TryLine(out ReadOnlySpan<byte> rest))
        {
            if (!rest.Trim(" \t\r"u8).IsEmpty)
                throw new MeshFileException("the file goes on after its last element", input.AtLine);
        }
        if (!input.AtEnd)
            throw new MeshFileException("the file goes on after its last element", input.AtByte);
        return mesh.ToMesh();
    }

    private static (Order Order, List<Element> Elements) Header(MeshInput input)
    {
        if (!input.Peek(3).SequenceEqual("ply"u8))
            throw new MeshFileException("does not begin with \"ply\"", "");
        Order? order = null;
        var elements = new List<Element>();
        while (input.TryLine(out ReadOnlySpan<byte> line))
        {
            string[] words = Encoding.ASCII.GetString(line).Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            if (input.Line > MostHeaderLines)
                throw new MeshFileException("the header does not end", input.AtLine);
            switch (words)
            {
                case ["end_header"]:
                    return (order ?? throw new MeshFileException("the header gives no format", input.AtLine), elements);
                case ["format", var format, ..]:
                    order = format switch
                    {
                        "ascii" => Order.Text,
                        "binary_little_endian" => Order.Little,
                        "binary_big_endian" => Order.Big,
                        _ => throw new MeshFileException("an unknown format", input.AtLine),
                    };
                    break;
                case ["element", var name, var count]:
                    elements.Add(new Element(name, MeshText.Whole(Encoding.ASCII.GetBytes(count), input), []));
                    break;
                case ["property", "list", var countType, var type, var name] when elements.Count > 0:
                    elements[^1].Properties.Add(new Property(name, Known(type, input), Known(countType, input)));
                    break;
                case ["property", var type, var name] when elements.Count > 0:
                    elements[^1].Properties.Add(new Property(name, Known(type, input), null));
                    break;
                case [] or ["ply"] or ["comment", ..] or ["obj_info", ..]:
                    break;
                default:
                    throw new MeshFileException("a line of the header that is not understood", input.AtLine);
            }
        }
        throw new MeshFileException("the header does not end", input.AtLine);
    }

    private static string Known(string type, MeshInput input) =>
        PlyValues.SizeOf(type) > 0 ? type : throw new MeshFileException("an unknown type of property", input.AtLine);

    private static void ReadElement(ref PlyValues values, Element element, MeshBuilder mesh)
    {
        bool isVertex = element.Name == "vertex", isFace = element.Name == "face";
        Property[] properties = [.. element.Properties];
        int x = Array.FindIndex(properties, p => p.Name == "x"), y = Array.FindIndex(properties, p => p.Name == "y"), z = Array.FindIndex(properties, p => p.Name == "z");
        if (isVertex && Math.Min(x, Math.Min(y, z)) < 0)
            throw new MeshFileException("the vertices lack x, y or z", "header");
        Span<double> row = stackalloc double[3];
        for (long i = 0; i < element.Count; i++)
        {
            values.NextRow();
            for (int p = 0; p < properties.Length; p++)
            {
                Property property = properties[p];
                if (property.CountType is not null)
                {
                    ReadList(ref values, property, isFace && property.Name is ("vertex_indices" or "vertex_index"), mesh);
                    continue;
                }
                double value = values.Next(property.Type);
                if (p == x)
                    row[0] = value;
                else if (p == y)
                    row[1] = value;
                else if (p == z)
                    row[2] = value;
            }
            if (isVertex)
                mesh.Vertex(row[0], row[1], row[2], values.Place);
        }
    }

    private static void ReadList(ref PlyValues values, Property property, bool corners, MeshBuilder mesh)
    {
        double count = values.Next(property.CountType!);
        if (!(count >= 0 && count <= 65536 && count == Math.Floor(count)))
            throw new MeshFileException($"a list of {count} values", values.Place);
        if (corners && count < 3)
            throw new MeshFileException("a face has fewer than three corners", values.Place);
        int first = 0, last = 0;
        for (int k = 0; k < (int)count; k++)
        {
            double value = values.Next(property.Type);
            if (!corners)
                continue;
            if (!(value >= 0 && value < int.MaxValue && value == Math.Floor(value)))
                throw new MeshFileException($"there is no vertex {value}", values.Place);
            if (k == 0)
                first = (int)value;
            else if (k > 1)
                mesh.Triangle(first, last, (int)value, values.Place);
            last = (int)value;
        }
    }

    /// <summary>The values of a file one by one.</summary>
    private ref struct PlyValues(MeshInput input, bool text, bool bigEndian)
    {
        private ReadOnlySpan<byte> line;

        public readonly string Place => text ? input.AtLine : input.AtByte;

        public void NextRow()
        {
            if (!text)
                return;
            do
            {
                if (!input.TryLine(out line))
                    throw new MeshFileException("the file ends too early", input.AtLine);
            }
            while (line.Trim(" \t\r"u8).IsEmpty);
        }

        public double Next(string type)
        {
            if (text)
                return MeshText.Number(ref line, input);
            ReadOnlySpan<byte> b = input.Take(SizeOf(type));
            return type switch
            {
                "char" or "int8" => (sbyte)b[0],
                "uchar" or "uint8" => b[0],
                "short" or "int16" => bigEndian ? BinaryPrimitives.ReadInt16BigEndian(b) : BinaryPrimitives.ReadInt16LittleEndian(b),
                "ushort" or "uint16" => bigEndian ? BinaryPrimitives.ReadUInt16BigEndian(b) : BinaryPrimitives.ReadUInt16LittleEndian(b),
                "int" or "int32" => bigEndian ? BinaryPrimitives.ReadInt32BigEndian(b) : BinaryPrimitives.ReadInt32LittleEndian(b),
                "uint" or "uint32" => bigEndian ? BinaryPrimitives.ReadUInt32BigEndian(b) : BinaryPrimitives.ReadUInt32LittleEndian(b),
                "float" or "float32" => bigEndian ? BinaryPrimitives.ReadSingleBigEndian(b) : BinaryPrimitives.ReadSingleLittleEndian(b),
                _ => bigEndian ? BinaryPrimitives.ReadDoubleBigEndian(b) : BinaryPrimitives.ReadDoubleLittleEndian(b),
            };
        }

        public static int SizeOf(string type) => type switch
        {
            "char" or "int8" or "uchar" or "uint8" => 1,
            "short" or "int16" or "ushort" or "uint16" => 2,
            "int" or "int32" or "uint" or "uint32" or "float" or "float32" => 4,
            "double" or "float64" => 8,
            _ => 0,
        };
    }
}
