using System.Numerics;
using System.Runtime.InteropServices;
using SharpGLTF.Memory;
using SharpGLTF.Schema2;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using Paint = SharpGLTF.Schema2.Material;

namespace StatueFrame.Reporting;

/// <summary>
/// The statue in three dimensions as glTF, for any general viewer: skin, tower and standoffs, at rest and, when asked
/// for, moved. Lengths are meters; z of the statue is y of the scene, which glTF takes as up.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Source of the format: glTF 2.0, ISO/IEC 12113:2022; written by the
/// SharpGLTF library.
/// </remarks>
public sealed class StatueScene
{
    private readonly LineModel lines;
    private readonly List<(string Name, ValueList<ModelLine> Lines)> shapes = [];

    private StatueScene(LineModel lines) => this.lines = lines;

    /// <summary>A scene of the statue at rest.</summary>
    /// <param name="model">The model.</param>
    public static StatueScene Of(StatueModel model)
    {
        var scene = new StatueScene(LineModel.Of(model));
        scene.shapes.Add(("at rest", scene.lines.Lines));
        return scene;
    }

    /// <summary>The scene with the statue as a load case moves it beside the one at rest.</summary>
    /// <param name="loadCase">A load case of the same model.</param>
    /// <param name="scale">How many times the movement is drawn, 0 to 1e6.</param>
    /// <exception cref="ArgumentException">The load case belongs to another model.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The scale is out of range.</exception>
    public StatueScene With(LoadCase loadCase, double scale)
    {
        ArgumentNullException.ThrowIfNull(loadCase);
        return With(FormattableString.Invariant($"moved {scale:0.###} times, {Headings.Describe(loadCase.Heading)}"), lines.Moved(loadCase, scale));
    }

    /// <summary>The scene with the statue in a mode of vibration beside the one at rest.</summary>
    /// <param name="modes">Modes of the same model.</param>
    /// <param name="number">Number of the mode, from 1.</param>
    /// <exception cref="ArgumentException">The modes belong to another model.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such mode.</exception>
    public StatueScene With(ModalResponse modes, int number) => With($"mode {number}", lines.Moved(modes, number, 0.08 * lines.Size));

    /// <summary>The scene as a binary glTF file.</summary>
    public byte[] ToGlb()
    {
        using var stream = new MemoryStream();
        Build().WriteGLB(stream);
        return stream.ToArray();
    }

    /// <summary>Saves the scene as a binary glTF file.</summary>
    /// <param name="path">Where to; an existing file is replaced.</param>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public void Save(string path) => WholeFile.Write(path, ToGlb());

    private StatueScene With(string name, ValueList<ModelLine> moved)
    {
        var scene = new StatueScene(lines);
        scene.shapes.AddRange(shapes);
        scene.shapes.Add((name, moved));
        return scene;
    }

    private ModelRoot Build()
    {
        ModelRoot root = ModelRoot.CreateModel();
        Scene scene = root.UseScene(0);
        Paint skin = NewPaint(root, "skin", new Vector4(0.42f, 0.62f, 0.55f, 0.45f)), tower = NewPaint(root, "tower", new Vector4(0.15f, 0.16f, 0.17f, 1));
        Paint standoff = NewPaint(root, "standoffs", new Vector4(0.65f, 0.31f, 0.12f, 1)), rest = NewPaint(root, "at rest", new Vector4(0.62f, 0.64f, 0.66f, 1));
        foreach ((int i, (string name, ValueList<ModelLine> shape)) in shapes.Index())
        {
            // With something moved beside it, the statue at rest is only a gray wire.
            bool isWire = i == 0 && shapes.Count > 1;
            Node node = scene.CreateNode(name);
            AddStrokes(root, node, shape, isWire ? rest : tower, LineKind.Tower, LineKind.Brace, LineKind.Bracket);
            AddStrokes(root, node, shape, isWire ? rest : standoff, LineKind.Standoff);
            if (isWire)
                AddStrokes(root, node, shape, rest, LineKind.Outline, LineKind.Rib);
            else
                AddSkin(root, node, shape, skin);
        }
        return root;
    }

    private static Paint NewPaint(ModelRoot root, string name, Vector4 color)
    {
        Paint paint = root.CreateMaterial(name);
        paint.InitializePBRMetallicRoughness();
        MaterialChannel channel = paint.FindChannel("BaseColor")!.Value;
        channel.Color = color;
        paint.DoubleSided = true;
        paint.Alpha = color.W < 1 ? AlphaMode.BLEND : AlphaMode.OPAQUE;
        return paint;
    }

    private static void AddStrokes(ModelRoot root, Node node, ValueList<ModelLine> shape, Paint paint, params LineKind[] kinds)
    {
        var vertices = new List<Vector3>();
        foreach (ModelLine line in shape.Where(l => kinds.Contains(l.Kind)))
        {
            for (int i = 1; i < line.Points.Count; i++)
            {
                vertices.Add(ToScene(line.Points[i - 1]));
                vertices.Add(ToScene(line.Points[i]));
            }
        }
        Add(root, node, [.. vertices], [.. Enumerable.Range(0, vertices.Count)], PrimitiveType.LINES, paint);
    }

    private static void AddSkin(ModelRoot root, Node node, ValueList<ModelLine> shape, Paint paint)
    {
        var vertices = new List<Vector3>();
        var triangles = new List<int>();
        foreach (IGrouping<string, ModelLine> band in shape.Where(l => l.Kind == LineKind.Outline).GroupBy(l => l.Part))
        {
            ModelLine[] edges = [.. band];
            int first = vertices.Count, count = edges[0].Points.Count;
            vertices.AddRange(edges[0].Points.Select(ToScene));
            vertices.AddRange(edges[1].Points.Select(ToScene));
            for (int i = 0; i < count - 1; i++)
            {
                int a = first + i, b = a + count;
                triangles.AddRange([a, a + 1, b + 1, a, b + 1, b]);
            }
        }
        Add(root, node, [.. vertices], [.. triangles], PrimitiveType.TRIANGLES, paint);
    }

    private static void Add(ModelRoot root, Node node, Vector3[] vertices, int[] indices, PrimitiveType kind, Paint paint)
    {
        if (indices.Length == 0)
            return;
        Accessor positions = root.CreateAccessor();
        positions.SetVertexData(root.UseBufferView(MemoryMarshal.AsBytes<Vector3>(vertices).ToArray(), 0, null, 0, BufferMode.ARRAY_BUFFER), 0, vertices.Length, AttributeFormat.Float3);
        Accessor order = root.CreateAccessor();
        order.SetIndexData(root.UseBufferView(MemoryMarshal.AsBytes<int>(indices).ToArray(), 0, null, 0, BufferMode.ELEMENT_ARRAY_BUFFER), 0, indices.Length, IndexEncodingType.UNSIGNED_INT);
        Mesh mesh = root.CreateMesh(paint.Name);
        MeshPrimitive primitive = mesh.CreatePrimitive();
        primitive.SetVertexAccessor("POSITION", positions);
        primitive.SetIndexAccessor(order);
        primitive.DrawPrimitiveType = kind;
        primitive.Material = paint;
        node.CreateNode(paint.Name).Mesh = mesh;
    }

    private static Vector3 ToScene(Vector3D p) => new((float)p.X, (float)p.Z, (float)-p.Y);
}
