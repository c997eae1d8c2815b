using System.Buffers.Binary;

namespace StatueFrame.Shape;

/// <summary>
/// Reads meshes from files and writes them. A file is read forward once; memory stays within what
/// <see cref="MeshReading.MaxTriangles"/> and <see cref="MeshReading.MaxBytes"/> allow, whatever the file says of itself.
/// </summary>
/// <remarks>Safe to use from many threads at once.</remarks>
public static class MeshFile
{
    /// <summary>Reads a file; its kind is told by its name: .stl, .obj, .ply, .gltf or .glb.</summary>
    /// <param name="path">The file. A glTF file may use buffers in files beside it, not elsewhere.</param>
    /// <param name="reading">Unit and upward axis of the file, and limits.</param>
    /// <exception cref="MeshFileException">The file is damaged, too large, or of no known kind.</exception>
    /// <exception cref="IOException">The file cannot be opened or read.</exception>
    /// <exception cref="ArgumentException">A member of <paramref name="reading"/> is out of range.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Mesh Read(string path, MeshReading reading)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        MeshFormat format = Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".STL" => MeshFormat.Stl,
            ".OBJ" => MeshFormat.Obj,
            ".PLY" => MeshFormat.Ply,
            ".GLTF" or ".GLB" => MeshFormat.Gltf,
            _ => throw new MeshFileException($"\"{path}\" is no .stl, .obj, .ply, .gltf or .glb file", ""),
        };
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1, FileOptions.SequentialScan);
        return Read(file, format, reading, Path.GetDirectoryName(Path.GetFullPath(path)));
    }

    /// <summary>Reads a mesh from a stream; a glTF file must then hold its buffers itself.</summary>
    /// <param name="stream">The stream, read from where it stands; it need not be seekable.</param>
    /// <param name="format">The kind of file.</param>
    /// <param name="reading">Unit and upward axis of the file, and limits.</param>
    /// <exception cref="MeshFileException">The file is damaged or too large.</exception>
    /// <exception cref="ArgumentException">A member of <paramref name="reading"/> is out of range.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Mesh Read(Stream stream, MeshFormat format, MeshReading reading)
    {
        ArgumentNullException.ThrowIfNull(stream);
        return Read(stream, format, reading, folder: null);
    }

    /// <summary>Writes a binary STL file, in meters and z up.</summary>
    /// <exception cref="IOException">The stream cannot be written.</exception>
    public static void WriteStl(Mesh mesh, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(stream);
        Span<byte> header = stackalloc byte[84];
        header.Clear();
        "meters, z up"u8.CopyTo(header);
        BinaryPrimitives.WriteInt32LittleEndian(header[80..], mesh.TriangleCount);
        stream.Write(header);
        Span<byte> record = stackalloc byte[50];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            record.Clear();
            for (int k = 0; k < 9; k++)
                BinaryPrimitives.WriteSingleLittleEndian(record[(12 + 4 * k)..], (float)mesh.Coordinates[3 * mesh.Corners[3 * t + k / 3] + k % 3]);
            stream.Write(record);
        }
    }

    /// <summary>Writes a binary STL file, in meters and z up.</summary>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void WriteStl(Mesh mesh, string path)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        WholeFile.Write(path, file => WriteStl(mesh, file));
    }

    private static Mesh Read(Stream stream, MeshFormat format, MeshReading reading, string? folder)
    {
        ArgumentNullException.ThrowIfNull(reading);
        _ = reading.Scale;
        stream = new WatchedStream(stream, reading);
        return format switch
        {
            MeshFormat.Stl => StlReader.Read(new MeshInput(stream, reading.MaxBytes), reading),
            MeshFormat.Obj => ObjReader.Read(new MeshInput(stream, reading.MaxBytes), reading),
            MeshFormat.Ply => PlyReader.Read(new MeshInput(stream, reading.MaxBytes), reading),
            MeshFormat.Gltf => GltfReader.Read(stream, reading, folder),
            _ => throw new ArgumentOutOfRangeException(nameof(format), format, "is no kind of mesh file"),
        };
    }
}
