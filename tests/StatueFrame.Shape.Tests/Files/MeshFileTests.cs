using System.Globalization;
using System.Numerics;
using System.Text;
using CsCheck;
using SharpGLTF.Schema2;

namespace StatueFrame.Shape.Tests.Files;

public class MeshFileTests
{
    private static readonly MeshReading Meters = new() { Unit = 1.Meters, Up = UpAxis.Z };
    private static readonly Mesh Ball = Solids.Ellipsoid(1, 2, 3, 6);

    public static TheoryData<string> Kinds => ["stl text", "stl binary", "obj", "ply text", "ply little", "ply big", "glb"];

    [Theory, MemberData(nameof(Kinds))]
    public void What_is_written_is_read_back(string kind)
    {
        Mesh read = Read(kind, Bytes(kind, Ball), Meters);
        Assert.Equal(Ball.TriangleCount, read.TriangleCount);
        Assert.Equal(Ball.EnclosedVolume().CubicMeters, read.EnclosedVolume().CubicMeters, 1e-5);
        Assert.True(MeshRepair.Of(read).Report.IsSound);
        Assert.Equal(Ball.VertexCount, MeshRepair.Of(read).Mesh.VertexCount);
    }

    [Theory, InlineData("mesh.stl"), InlineData("mesh.obj")]
    public void Reading_tells_how_far_it_is_and_stops_when_asked_to(string name)
    {
        byte[] file = name.EndsWith("stl", StringComparison.Ordinal) ? new byte[84 + 50 * 4000] : System.Text.Encoding.ASCII.GetBytes(string.Concat(Enumerable.Repeat("v 0 0 0\nv 1 0 0\nv 0 1 0\nf -3 -2 -1\n", 6000)));
        if (name.EndsWith("stl", StringComparison.Ordinal))
            BitConverter.TryWriteBytes(file.AsSpan(80), 4000);
        MeshFormat format = name.EndsWith("stl", StringComparison.Ordinal) ? MeshFormat.Stl : MeshFormat.Obj;
        var parts = new Parts();
        MeshFile.Read(new MemoryStream(file), format, Meters with { Progress = parts });
        Assert.Equal(parts.Told.Order(), parts.Told);
        Assert.True(parts.Told.Count > 2);
        Assert.Equal(1, parts.Told[^1]);
        using var stop = new CancellationTokenSource();
        parts.OnReport = stop.Cancel;
        int before = parts.Told.Count;
        Assert.Throws<OperationCanceledException>(() => MeshFile.Read(new MemoryStream(file), format, Meters with { Progress = parts, Cancellation = stop.Token }));
        Assert.Equal(before + 1, parts.Told.Count);
    }

    private sealed class Parts : IProgress<double>
    {
        public List<double> Told { get; } = [];

        public Action OnReport { get; set; } = () => { };

        public void Report(double value)
        {
            Told.Add(value);
            OnReport();
        }
    }

    [Fact]
    public void Unit_and_upward_axis_are_as_stated()
    {
        byte[] file = Bytes("obj", Solids.Box(1, 2, 3));
        Assert.Equal(Point3.FromMeters(0.001, 0.002, 0.003), Read("obj", file, Meters with { Unit = 1.Millimeters }).Bounds.Greatest);
        Mesh yUp = Read("obj", file, Meters with { Up = UpAxis.Y });
        Assert.Equal((Point3.FromMeters(0, -3, 0), Point3.FromMeters(1, 0, 2)), yUp.Bounds);
        Assert.Equal((Point3.FromMeters(0, 0, 0), Point3.FromMeters(2, 3, 1)), Read("obj", file, Meters with { Up = UpAxis.X }).Bounds);
        Assert.All([UpAxis.X, UpAxis.Y, UpAxis.Z], up => Assert.Equal(6, Read("obj", file, Meters with { Up = up }).EnclosedVolume().CubicMeters, 12));
        Assert.Throws<ArgumentOutOfRangeException>(() => Read("obj", file, Meters with { Unit = 0.Meters }));
    }

    [Theory]
    [InlineData("stl text", "solid a\nfacet\nouter loop\nvertex 0 0 0\nvertex 1 0 0\n", "too early")]
    [InlineData("stl text", "solid a\nfacet\nouter loop\nvertex 0 0 nan\n", "none")]
    [InlineData("stl text", "solid a\nfacet\nouter loop\nvertex 0 0 1e300\n", "1e6 m")]
    [InlineData("stl text", "solid a\nfacet\nvertex 0 0 0\nvertex 1 0 0\nendfacet\nendsolid", "fewer than three")]
    [InlineData("stl text", "solid a\nfacet\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 0 0\nvertex 1 0 0\nendfacet\nendsolid", "more than three")]
    [InlineData("stl text", "solid a\nendsolid", "no triangles")]
    [InlineData("stl text", "solid a\nsphere\nendsolid", "does not know")]
    [InlineData("obj", "v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 4\n", "vertex 4, but there are 3")]
    [InlineData("obj", "v 0 0 0\nf 1 0 1\n", "no vertex 0")]
    [InlineData("obj", "v 0 0 0\nf -2 1 1\n", "no vertex -2")]
    [InlineData("obj", "v 0 0 0\nf 1 1 99999999999\n", "no vertex 99999999999")]
    [InlineData("obj", "v 0 0 0\nf 1 1\n", "fewer than three")]
    [InlineData("obj", "v 0 0\n", "missing")]
    [InlineData("obj", "v 0 0 inf\n", "none")]
    [InlineData("obj", "", "no triangles")]
    [InlineData("ply text", "plyx", "header")]
    [InlineData("ply text", "ply\nformat ascii 1.0\nelement vertex 999999999999\nproperty float x\nproperty float y\nproperty float z\nend_header\n", "allowed")]
    [InlineData("ply text", "ply\nformat ascii 1.0\nelement vertex 2\nproperty float x\nproperty float y\nproperty float z\nend_header\n0 0 0\n", "too early")]
    [InlineData("ply text", "ply\nformat ascii 1.0\nelement vertex 1\nproperty float x\nproperty float y\nproperty float z\nelement face 1\nproperty list uchar int vertex_indices\nend_header\n0 0 0\n3 0 0 7\n", "vertex 8")]
    [InlineData("ply text", "ply\nformat ascii 1.0\nelement vertex 1\nproperty strange x\n", "unknown type")]
    [InlineData("ply text", "ply\nformat ascii 1.0\nelement face 1\nproperty list float int vertex_indices\nend_header\n1e9 0\n", "list of")]
    [InlineData("ply text", "ply\nformat ascii 1.0\nelement vertex 5\nend_header\n", "no properties")]
    [InlineData("glb", "{}", "no readable glTF")]
    [InlineData("glb", "glTF", "no readable glTF")]
    public void Damaged_files_are_refused_with_the_reason(string kind, string text, string reason)
    {
        MeshFileException refused = Assert.Throws<MeshFileException>(() => Read(kind, Encoding.ASCII.GetBytes(text), Meters));
        Assert.Contains(reason, refused.Message);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Files_larger_than_allowed_are_refused(string kind)
    {
        byte[] file = Bytes(kind, Ball);
        Assert.Throws<MeshFileException>(() => Read(kind, file, Meters with { MaxTriangles = Ball.TriangleCount - 1 }));
        Assert.Throws<MeshFileException>(() => Read(kind, file, Meters with { MaxBytes = file.Length - 1 }));
        Read(kind, file, Meters with { MaxTriangles = Ball.TriangleCount, MaxBytes = file.Length });
    }

    [Fact]
    public void A_binary_count_that_does_not_match_is_refused_without_taking_memory_for_it()
    {
        byte[] file = Bytes("stl binary", Ball);
        BitConverter.TryWriteBytes(file.AsSpan(80), Ball.TriangleCount - 1);
        Assert.Contains("goes on", Assert.Throws<MeshFileException>(() => Read("stl binary", file, Meters)).Message);
        BitConverter.TryWriteBytes(file.AsSpan(80), 4_000_000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Contains("too early", Assert.Throws<MeshFileException>(() => Read("stl binary", file, Meters)).Message);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 2_000_000);
        BitConverter.TryWriteBytes(file.AsSpan(80), uint.MaxValue);
        Assert.Contains("allowed", Assert.Throws<MeshFileException>(() => Read("stl binary", file, Meters)).Message);
    }

    [Theory]
    [InlineData("stl text", "solid "), InlineData("obj", "f "), InlineData("ply text", "ply\n")]
    public void An_endless_line_is_refused(string kind, string begin)
    {
        using var endless = new EndlessStream(begin);
        Assert.Contains("longer than", Assert.Throws<MeshFileException>(() => MeshFile.Read(endless, Format(kind), Meters)).Message);
        Assert.True(endless.Given < 1_000_000);
    }

    [Fact]
    public void A_glTF_file_that_promises_too_much_is_refused()
    {
        // An accessor without data stands for as many zeros as it says.
        const string text = """
            {"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0}],
            "meshes":[{"primitives":[{"attributes":{"POSITION":0}}]}],
            "accessors":[{"componentType":5126,"count":2000000000,"type":"VEC3","min":[0,0,0],"max":[0,0,0]}]}
            """;
        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Throws<MeshFileException>(() => Read("glb", Encoding.ASCII.GetBytes(text), Meters));
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 10_000_000);
    }

    [Fact]
    public void A_glTF_file_may_not_reach_outside_its_folder()
    {
        const string text = """{"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[]}],"buffers":[{"uri":"../secret.bin","byteLength":4}]}""";
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "a.gltf"), text);
            Assert.Throws<MeshFileException>(() => MeshFile.Read(Path.Combine(folder, "a.gltf"), Meters));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void A_glTF_file_whose_nodes_go_too_deep_is_refused()
    {
        string Chain(int n) => $$"""{"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{{string.Join(",", Enumerable.Range(1, n).Select(i => i < n ? $$"""{"children":[{{i}}]}""" : """{"name":"last"}"""))}}]}""";
        Assert.Contains("no triangles", Assert.Throws<MeshFileException>(() => Read("glb", Encoding.ASCII.GetBytes(Chain(400)), Meters)).Message);
        Assert.Contains("deep", Assert.Throws<MeshFileException>(() => Read("glb", Encoding.ASCII.GetBytes(Chain(900)), Meters)).Message);
        Assert.Contains("nodes", Assert.Throws<MeshFileException>(() => Read("glb", Encoding.ASCII.GetBytes(Chain(200_000)), Meters)).Message);
    }

    [Fact]
    public void A_glTF_file_that_says_far_more_than_a_mesh_is_refused()
    {
        string text = $$"""{"asset":{"version":"2.0"},"extras":[{{string.Join(',', Enumerable.Repeat("1", 400_001))}}]}""";
        Assert.Contains("words", Assert.Throws<MeshFileException>(() => Read("glb", Encoding.ASCII.GetBytes(text), Meters)).Message);
    }

    [Fact]
    public void A_glTF_node_places_and_mirrors_its_mesh()
    {
        ModelRoot model = Model(Ball);
        model.LogicalNodes[0].LocalMatrix = Matrix4x4.CreateScale(-2, 2, 2) * Matrix4x4.CreateTranslation(5, 0, 0);
        using var file = new MemoryStream(model.WriteGLB().ToArray());
        Mesh read = MeshFile.Read(file, MeshFormat.Gltf, Meters);
        Assert.Equal(8 * Ball.EnclosedVolume().CubicMeters, read.EnclosedVolume().CubicMeters, 1e-4);
        Assert.Equal(7, read.Bounds.Greatest.X.Meters, 1e-5);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Files_with_any_bytes_changed_or_cut_are_read_or_refused(string kind)
    {
        byte[] good = Bytes(kind, Solids.Ellipsoid(1, 2, 3, 3));
        MeshReading reading = Meters with { MaxTriangles = 10_000, MaxBytes = 1 << 20 };
        Gen.Select(Gen.Int[0, good.Length], Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte).Array[0, 6]).Sample((length, changes) =>
        {
            byte[] file = [.. good];
            foreach ((int at, byte value) in changes)
                file[at] = value;
            return ReadOrRefused(kind, file[..length], reading) && ReadOrRefused(kind, file, reading);
        }, iter: 300);
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Any_bytes_are_read_or_refused(string kind) =>
        Gen.Byte.Array[0, 300].Sample(bytes => ReadOrRefused(kind, bytes, Meters), iter: 300);

    private static bool ReadOrRefused(string kind, byte[] file, MeshReading reading)
    {
        try
        {
            Mesh mesh = Read(kind, file, reading);
            _ = MeshReport.Of(mesh).ToString();
            return mesh.Coordinates.ToArray().All(double.IsFinite);
        }
        catch (MeshFileException)
        {
            return true;
        }
    }

    private static Mesh Read(string kind, byte[] bytes, MeshReading reading)
    {
        using var stream = new MemoryStream(bytes);
        return MeshFile.Read(stream, Format(kind), reading);
    }

    private static MeshFormat Format(string kind) => kind.Split(' ')[0] switch
    {
        "stl" => MeshFormat.Stl,
        "obj" => MeshFormat.Obj,
        "ply" => MeshFormat.Ply,
        _ => MeshFormat.Gltf,
    };

    private static byte[] Bytes(string kind, Mesh mesh)
    {
        using var stream = new MemoryStream();
        switch (kind)
        {
            case "stl binary":
                MeshFile.WriteStl(mesh, stream);
                return stream.ToArray();
            case "glb":
                return Model(mesh).WriteGLB().ToArray();
            case "ply little" or "ply big":
                return Ply(mesh, kind == "ply big");
        }
        var text = new StringBuilder();
        string Vertex(int v) => string.Create(CultureInfo.InvariantCulture, $"{mesh.Coordinates[3 * v]} {mesh.Coordinates[3 * v + 1]} {mesh.Coordinates[3 * v + 2]}\n");
        if (kind == "ply text")
            text.Append(CultureInfo.InvariantCulture, $"ply\nformat ascii 1.0\nelement vertex {mesh.VertexCount}\nproperty double x\nproperty double y\nproperty double z\nelement face {mesh.TriangleCount}\nproperty list uchar int vertex_indices\nend_header\n");
        if (kind == "stl text")
            text.Append("solid ball\n");
        else
            text.AppendJoin("", Enumerable.Range(0, mesh.VertexCount).Select(v => (kind == "obj" ? "v " : "") + Vertex(v)));
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            ReadOnlySpan<int> c = mesh.Corners.Slice(3 * t, 3);
            text.Append(kind switch
            {
                "obj" => $"f {c[0] + 1}/1/1 {c[1] + 1}//1 {c[2] - mesh.VertexCount}\n",
                "ply text" => $"3 {c[0]} {c[1]} {c[2]}\n",
                _ => $" facet normal 0 0 0\r\n  outer loop\r\n   vertex {Vertex(c[0])}   vertex {Vertex(c[1])}   vertex {Vertex(c[2])}  endloop\r\n endfacet\r\n",
            });
        }
        if (kind == "stl text")
            text.Append("endsolid ball\n");
        return Encoding.ASCII.GetBytes(text.ToString());
    }

    private static byte[] Ply(Mesh mesh, bool big)
    {
        var bytes = new List<byte>();
        bytes.AddRange(Encoding.ASCII.GetBytes($"ply\nformat binary_{(big ? "big" : "little")}_endian 1.0\ncomment invented\nelement vertex {mesh.VertexCount}\nproperty float x\nproperty float y\nproperty float z\nproperty uchar red\nelement face {mesh.TriangleCount}\nproperty list uchar int vertex_indices\nend_header\n"));
        void Add(byte[] value) => bytes.AddRange(big ? value.Reverse() : value);
        for (int v = 0; v < mesh.VertexCount; v++)
        {
            for (int k = 0; k < 3; k++)
                Add(BitConverter.GetBytes((float)mesh.Coordinates[3 * v + k]));
            bytes.Add(200);
        }
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            bytes.Add(3);
            for (int k = 0; k < 3; k++)
                Add(BitConverter.GetBytes(mesh.Corners[3 * t + k]));
        }
        return [.. bytes];
    }

    private static ModelRoot Model(Mesh mesh)
    {
        ModelRoot model = ModelRoot.CreateModel();
        SharpGLTF.Schema2.Mesh part = model.CreateMesh("ball");
        Vector3[] positions = [.. Enumerable.Range(0, mesh.VertexCount).Select(v => new Vector3((float)mesh.Coordinates[3 * v], (float)mesh.Coordinates[3 * v + 1], (float)mesh.Coordinates[3 * v + 2]))];
        byte[] points = new byte[12 * positions.Length], corners = new byte[4 * mesh.Corners.Length];
        System.Runtime.InteropServices.MemoryMarshal.AsBytes(positions.AsSpan()).CopyTo(points);
        System.Runtime.InteropServices.MemoryMarshal.AsBytes(mesh.Corners).CopyTo(corners);
        Accessor at = model.CreateAccessor(), indices = model.CreateAccessor();
        at.SetVertexData(model.UseBufferView(points, 0, null, 0, BufferMode.ARRAY_BUFFER), 0, positions.Length, SharpGLTF.Memory.AttributeFormat.Float3);
        indices.SetIndexData(model.UseBufferView(corners, 0, null, 0, BufferMode.ELEMENT_ARRAY_BUFFER), 0, mesh.Corners.Length, IndexEncodingType.UNSIGNED_INT);
        MeshPrimitive primitive = part.CreatePrimitive();
        primitive.SetVertexAccessor("POSITION", at);
        primitive.SetIndexAccessor(indices);
        primitive.DrawPrimitiveType = PrimitiveType.TRIANGLES;
        model.UseScene(0).CreateNode("ball").Mesh = part;
        return model;
    }

    /// <summary>A text that begins somehow and then goes on without a line's end, forever.</summary>
    private sealed class EndlessStream(string begin) : Stream
    {
        private readonly byte[] begin = Encoding.ASCII.GetBytes(begin);

        public long Given { get; private set; }

        public override int Read(byte[] buffer, int offset, int count)
        {
            for (int i = 0; i < count; i++, Given++)
                buffer[offset + i] = Given < begin.Length ? begin[Given] : (byte)'1';
            return count;
        }

        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => Given; set => throw new NotSupportedException(); }
        public override void Flush() { }
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
