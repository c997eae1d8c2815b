using System.Globalization;
using System.Text;
using StatueFrame.Shape;
using UnitsNet;

namespace StatueFrame.Fuzz;

/// <summary>Files of meshes: a small figure as every kind of file, its triangles or its bytes spoiled, from the file to the sheets.</summary>
internal sealed class Meshes : Subject
{
    private const int Kinds = 5;

    private readonly (double[] Coordinates, int[] Corners) figure = Figure();

    public override string Name => "meshes";

    public override int Weight => 4;

    public override IEnumerable<byte[]> SoundOnes() => Enumerable.Range(0, Kinds).Select(kind => Written(figure.Coordinates, figure.Corners, kind));

    public override byte[] Spoiled(Random random)
    {
        int kind = random.Next(Kinds);
        if (random.Next(3) == 0)
        {
            byte[] sound = Written(figure.Coordinates, figure.Corners, kind);
            return [sound[0], .. Bytes(sound[1..], random)];
        }
        double[] coordinates = [.. figure.Coordinates];
        List<int> corners = [.. figure.Corners];
        for (int i = 1 + random.Next(4); i > 0; i--)
            Change(random, coordinates, corners);
        return Written(coordinates, [.. corners], kind);
    }

    public override string? Judge(byte[] spoiled, int number, out bool taken)
    {
        taken = false;
        try
        {
            var reading = new MeshReading { Unit = 1.Meters, Up = UpAxis.Z, MaxTriangles = 20_000, MaxBytes = 1 << 22 };
            MeshFormat format = spoiled[0] switch { 0 or 1 => MeshFormat.Stl, 2 => MeshFormat.Obj, 3 => MeshFormat.Ply, _ => MeshFormat.Gltf };
            Mesh mesh = MeshFile.Read(new MemoryStream(spoiled, 1, spoiled.Length - 1), format, reading);
            if (Wrong(MeshReport.Of(mesh).ToString()) is { } inReport)
                return inReport;
            MeshRepair repair = MeshRepair.Of(mesh, (number % 2).Millimeters, allowOpen: number % 3 == 0);
            if (Wrong(repair.Report.ToString()) is { } inRepair)
                return inRepair;
            ShapeBody body = ShapeBody.Trunk(repair.Mesh, standsOpen: number % 5 != 0);
            SlicedSkin sliced = body.Slice(new SkinSlicing { Bands = 2 + number % 4, OutlinePoints = 24, Several = (SeveralOutlines)(number % 3) });
            if (sliced.Bands.Any(band => !double.IsFinite(band.SheetArea.SquareMeters + band.Centroid.X.Meters + band.FoldFactor)) || !double.IsFinite(sliced.SheetArea.SquareMeters + sliced.OutlineError + sliced.ProjectedError))
                return "a sliced band has no number";
            SheetPlan sheets = SheetPlan.Of(body.Surface, new SheetCutting { Metal = Copper.HalfHardR240, Thickness = 2.Millimeters, GreatestLength = 2.Meters, GreatestWidth = 1.Meters });
            taken = true;
            return Wrong(sheets.ToString());
        }
        catch (Exception e)
        {
            // A mesh may be spoiled to a few millimeters, of which one is too much to join within.
            bool isRefused = e is MeshFileException or InvalidMeshException or ArgumentOutOfRangeException { ParamName: "joinWithin" };
            return isRefused && e.Message.Length > 0 ? null : e.ToString();
        }
    }

    private static string? Wrong(string text) => text.Contains("NaN", StringComparison.Ordinal) ? $"it says NaN: {text}" : null;

    private static void Change(Random random, double[] coordinates, List<int> corners)
    {
        int vertex = 3 * random.Next(coordinates.Length / 3), other = 3 * random.Next(coordinates.Length / 3), triangle = corners.Count < 3 ? 0 : 3 * random.Next(corners.Count / 3);
        switch (random.Next(12))
        {
            case 0:
                coordinates[vertex + random.Next(3)] *= Math.Pow(10, 12 * random.NextDouble() - 6);
                break;
            case 1:
                Array.Copy(coordinates, other, coordinates, vertex, 3);
                break;
            case 2:
                coordinates[vertex + 2] = coordinates[other + 2];
                break;
            case 3:
                // Pulled through the other side: the surface cuts itself.
                (coordinates[vertex], coordinates[vertex + 1]) = (-3 * coordinates[vertex], -3 * coordinates[vertex + 1]);
                break;
            case 4 when corners.Count > 3:
                corners.RemoveRange(triangle, 3);
                break;
            case 5 when corners.Count > 3:
                corners.AddRange(corners.GetRange(triangle, 3));
                break;
            case 6 when corners.Count > 3:
                (corners[triangle], corners[triangle + 1]) = (corners[triangle + 1], corners[triangle]);
                break;
            case 7 when corners.Count > 3:
                corners[triangle + random.Next(3)] = vertex / 3;
                break;
            case 8:
                // Inside out.
                for (int i = 0; i + 2 < corners.Count; i += 3)
                    (corners[i], corners[i + 1]) = (corners[i + 1], corners[i]);
                break;
            case 9:
                int axis = random.Next(3);
                for (int i = axis; i < coordinates.Length; i += 3)
                    coordinates[i] *= random.Next(2) == 0 ? 0 : 1e-9;
                break;
            case 10:
                corners.AddRange(corners.GetRange(0, corners.Count / 2));
                break;
            default:
                for (int i = 0; i < coordinates.Length; i++)
                    coordinates[i] += 1e-3 * (random.NextDouble() - 0.5);
                break;
        }
    }

    /// <summary>The kind of the file in a byte, then the file.</summary>
    private static byte[] Written(double[] coordinates, int[] corners, int kind) => [(byte)kind, .. kind switch
    {
        0 => BinaryStl(coordinates, corners),
        1 => Encoding.ASCII.GetBytes(TextStl(coordinates, corners)),
        2 => Encoding.ASCII.GetBytes(string.Concat(Points(coordinates).Select(p => $"v {p}\n")) + string.Concat(Triangles(corners).Select(t => $"f {t[0] + 1} {t[1] + 1} {t[2] + 1}\n"))),
        3 => Encoding.ASCII.GetBytes($"ply\nformat ascii 1.0\nelement vertex {coordinates.Length / 3}\nproperty double x\nproperty double y\nproperty double z\nelement face {corners.Length / 3}\nproperty list uchar int vertex_indices\nend_header\n"
            + string.Concat(Points(coordinates).Select(p => $"{p}\n")) + string.Concat(Triangles(corners).Select(t => $"3 {t[0]} {t[1]} {t[2]}\n"))),
        _ => Gltf(coordinates, corners),
    }];

    private static byte[] BinaryStl(double[] coordinates, int[] corners)
    {
        using var stream = new MemoryStream();
        stream.Write(new byte[80]);
        stream.Write(BitConverter.GetBytes(corners.Length / 3));
        for (int t = 0; t + 2 < corners.Length; t += 3)
        {
            stream.Write(new byte[12]);
            for (int k = 0; k < 9; k++)
                stream.Write(BitConverter.GetBytes((float)coordinates[3 * corners[t + k / 3] + k % 3]));
            stream.Write(new byte[2]);
        }
        return stream.ToArray();
    }

    private static string TextStl(double[] coordinates, int[] corners)
    {
        string[] points = [.. Points(coordinates)];
        return "solid a\n" + string.Concat(Triangles(corners).Select(t => $"facet normal 0 0 0\nouter loop\n{string.Concat(t.Select(i => $"vertex {points[i]}\n"))}endloop\nendfacet\n")) + "endsolid a\n";
    }

    private static byte[] Gltf(double[] coordinates, int[] corners)
    {
        byte[] data = [.. coordinates.SelectMany(c => BitConverter.GetBytes((float)c)), .. corners.SelectMany(BitConverter.GetBytes)];
        int split = 4 * coordinates.Length;
        string Bounds(Func<double[], double> of) => string.Join(",", Enumerable.Range(0, 3).Select(a => of([.. coordinates.Where((_, i) => i % 3 == a)])).Select(x => ((float)x).ToString("R", CultureInfo.InvariantCulture)));
        return Encoding.ASCII.GetBytes($$"""
            {"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],"nodes":[{"mesh":0}],"meshes":[{"primitives":[{"attributes":{"POSITION":0},"indices":1}]}],
            "accessors":[{"bufferView":0,"componentType":5126,"count":{{coordinates.Length / 3}},"type":"VEC3","min":[{{Bounds(c => c.Min())}}],"max":[{{Bounds(c => c.Max())}}]},{"bufferView":1,"componentType":5125,"count":{{corners.Length}},"type":"SCALAR"}],
            "bufferViews":[{"buffer":0,"byteOffset":0,"byteLength":{{split}}},{"buffer":0,"byteOffset":{{split}},"byteLength":{{data.Length - split}}}],
            "buffers":[{"byteLength":{{data.Length}},"uri":"data:application/octet-stream;base64,{{Convert.ToBase64String(data)}}"}]}
            """);
    }

    private static IEnumerable<string> Points(double[] c) => Enumerable.Range(0, c.Length / 3).Select(i => string.Create(CultureInfo.InvariantCulture, $"{c[3 * i]:R} {c[3 * i + 1]:R} {c[3 * i + 2]:R}"));

    private static IEnumerable<int[]> Triangles(int[] corners) => corners.Chunk(3).Where(t => t.Length == 3);

    /// <summary>A figure of 6 m, round, with a waist, closed flat below and in a point above.</summary>
    private static (double[], int[]) Figure()
    {
        const int Sides = 12, Rings = 9;
        var coordinates = new List<double> { 0, 0, 0 };
        for (int k = 0; k < Rings; k++)
        {
            double z = 5.4 * k / (Rings - 1), r = 0.9 + 0.25 * Math.Sin(1.3 * z);
            for (int i = 0; i < Sides; i++)
                coordinates.AddRange([r * Math.Cos(2 * Math.PI * i / Sides), r * Math.Sin(2 * Math.PI * i / Sides), z]);
        }
        coordinates.AddRange([0, 0, 6]);
        var corners = new List<int>();
        int Vertex(int k, int i) => 1 + k * Sides + i % Sides;
        for (int i = 0; i < Sides; i++)
        {
            corners.AddRange([0, Vertex(0, i + 1), Vertex(0, i), coordinates.Count / 3 - 1, Vertex(Rings - 1, i), Vertex(Rings - 1, i + 1)]);
            for (int k = 0; k + 1 < Rings; k++)
                corners.AddRange([Vertex(k, i), Vertex(k, i + 1), Vertex(k + 1, i + 1), Vertex(k, i), Vertex(k + 1, i + 1), Vertex(k + 1, i)]);
        }
        return ([.. coordinates], [.. corners]);
    }
}
