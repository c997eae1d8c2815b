using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// Divides the skin of one body into triangles: rows of nodes across its axis at the edges of bands, at rings and between;
/// in every row as many nodes along the outline, of which those nearest to bars are moved under them.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class SkinMesher(BodyModel body, FrameBuilder frame, double size, int columns, bool withArmature)
{
    /// <summary>Rows nearer than this part of the size are one.</summary>
    private const double SameRow = 0.2;

    private readonly List<(RingElement Ring, BarModel Bar, int Node, Vector3D At)> ends = [];

    /// <summary>Where the bars meet the skin: the node and its place.</summary>
    public IReadOnlyList<(RingElement Ring, BarModel Bar, int Node, Vector3D At)> Ends => ends;

    /// <summary>The nodes across an open seam: below, above, the way from one to the other, and the length of edge that they stand for, m.</summary>
    public List<(int Below, int Above, Vector3D Arm, double Length)> Seams { get; } = [];

    /// <summary>Meshes the bands of the body, from the lowest up.</summary>
    /// <param name="firstBand">The number in the statue of the lowest.</param>
    public IEnumerable<BandMesh> Mesh(int firstBand)
    {
        Row? below = null;
        for (int i = 0; i < body.Bands.Length; i++)
        {
            SkinBand band = body.Bands[i];
            bool isJoint = i > 0 && body.Skin!.HasJointAt(band.Bottom), isSeam = i > 0 && !isJoint && body.HasSeams;
            Row? shared = isJoint || isSeam ? null : below;
            Row[] rows = [.. Heights(band, i).Select((z, row) => row == 0 && shared is not null ? shared : RowAt(band, i, z))];
            if (isSeam)
                Tie(below!, rows[0]);
            yield return new BandMesh(body, i, firstBand + i, Triangles(band, rows));
            if (withArmature && body.Skin!.Armature is { } armature)
                AddArmature(armature, rows);
            below = rows[^1];
        }
    }

    /// <summary>A row of nodes at a height along the axis.</summary>
    private sealed record Row(double Z, int[] Nodes, Vector3D[] At, SkinSection Section, bool HasRing);

    /// <summary>The heights of rows: edges, rings, armature bars, and what lies between in equal steps.</summary>
    private double[] Heights(SkinBand band, int index)
    {
        double near = SameRow * size;
        var fixedHeights = new List<double> { band.Bottom, band.Top };
        foreach (double z in RingsOf(index).Select(HeightOf).Order())
        {
            if (fixedHeights.TrueForAll(other => Math.Abs(other - z) > near))
                fixedHeights.Add(z);
        }
        fixedHeights.Sort();
        double step = withArmature && body.Skin!.Armature is { } armature ? Math.Min(size, armature.Spacing.Meters) : size;
        var all = new List<double> { band.Bottom };
        for (int i = 1; i < fixedHeights.Count; i++)
        {
            double from = fixedHeights[i - 1], height = fixedHeights[i] - from;
            int parts = Math.Max(1, (int)Math.Ceiling(height / step - 1e-9));
            for (int part = 1; part <= parts; part++)
                all.Add(part == parts ? fixedHeights[i] : from + height * part / parts);
        }
        return [.. all];
    }

    private IEnumerable<RingElement> RingsOf(int band) => body.Rings.Where(ring => ring.Band == band);

    private double HeightOf(RingElement ring) => Math.Clamp(body.Axes.ToLocal(ring.Bars.Length > 0 ? ring.Bars[0].Bar.Place.SkinEnd : default).Z, body.Bands[ring.Band].Bottom, body.Bands[ring.Band].Top);

    private Row RowAt(SkinBand band, int index, double z)
    {
        SkinSection section = band.SectionAt(z);
        RingElement[] rings = [.. RingsOf(index).Where(ring => NearestHeight(band, index, HeightOf(ring)) == z)];
        var fractions = new double[columns];
        for (int j = 0; j < columns; j++)
            fractions[j] = (double)j / columns;
        var taken = new Dictionary<int, BarModel>();
        var places = new List<(RingElement Ring, BarModel Bar, int Column)>();
        foreach (RingElement ring in rings)
        {
            foreach (BarModel bar in ring.Bars)
            {
                double fraction = bar.Bar.Place.Position / ring.Outline.Perimeter;
                int column = (int)Math.Round(fraction * columns) % columns;
                // The first node stays where the outline begins, as every row begins there.
                if (column != 0 && taken.TryAdd(column, bar))
                    fractions[column] = fraction;
                places.Add((ring, bar, column));
            }
        }
        PlanCurve outline = section.Curve.AtFractions(fractions);
        var at = new Vector3D[columns];
        var nodes = new int[columns];
        for (int j = 0; j < columns; j++)
        {
            at[j] = body.Axes.ToGlobal(new Vector3D(outline.X[j], outline.Y[j], z));
            nodes[j] = frame.AddNode(at[j]);
        }
        foreach ((RingElement ring, BarModel bar, int column) in places)
            ends.Add((ring, bar, nodes[column], at[column]));
        return new Row(z, nodes, at, section, rings.Length > 0);
    }

    private double NearestHeight(SkinBand band, int index, double z) => Heights(band, index).MinBy(height => Math.Abs(height - z));

    private ShellElement[] Triangles(SkinBand band, Row[] rows)
    {
        var found = new List<(int[] Nodes, Vector3D[] At, double Thickness, double Mass)>();
        for (int i = 1; i < rows.Length; i++)
        {
            (Row low, Row high) = (rows[i - 1], rows[i]);
            double thickness = 0.5 * (low.Section.Thickness + high.Section.Thickness), fold = 0.5 * (low.Section.FoldFactor + high.Section.FoldFactor);
            double perArea = body.Skin!.Material.Density.KilogramsPerCubicMeter * thickness * fold + body.Skin.ArmatureMass.KilogramsPerSquareMeter;
            for (int j = 0; j < columns; j++)
            {
                int next = (j + 1) % columns;
                (int, Vector3D) a = (low.Nodes[j], low.At[j]), b = (low.Nodes[next], low.At[next]), c = (high.Nodes[next], high.At[next]), d = (high.Nodes[j], high.At[j]);
                if ((i + j) % 2 == 0)
                {
                    Add(a, b, c);
                    Add(a, c, d);
                }
                else
                {
                    Add(a, b, d);
                    Add(b, c, d);
                }
            }

            void Add(params ReadOnlySpan<(int Node, Vector3D At)> corners) =>
                found.Add(([corners[0].Node, corners[1].Node, corners[2].Node], [corners[0].At, corners[1].At, corners[2].At], thickness, perArea));
        }
        if (band.CapArea > 0)
            AddCap(rows[^1], found);
        // Facets are a little less than what they stand for; the band's mass is kept.
        double mass = found.Sum(t => t.Mass * 0.5 * (t.At[1] - t.At[0]).Cross(t.At[2] - t.At[0]).Length);
        var triangles = new ShellElement[found.Count];
        for (int i = 0; i < triangles.Length; i++)
        {
            triangles[i] = new ShellElement(found[i].Nodes, found[i].At, new ShellSection
            {
                E = body.Skin!.Material.YoungsModulus.Pascals,
                Nu = PoissonOf(body.Skin.Material),
                Thickness = found[i].Thickness,
                Mass = found[i].Mass * band.Mass / mass,
            });
            frame.Add(triangles[i]);
        }
        return triangles;
    }

    /// <summary>Closes the top by a flat fan about its middle.</summary>
    private void AddCap(Row top, List<(int[], Vector3D[], double, double)> found)
    {
        Vector3D middle = body.Axes.ToGlobal(new Vector3D(top.Section.Curve.CentroidX, top.Section.Curve.CentroidY, top.Z));
        int node = frame.AddNode(middle);
        double perArea = body.Skin!.Material.Density.KilogramsPerCubicMeter * top.Section.Thickness * top.Section.FoldFactor;
        for (int j = 0; j < columns; j++)
        {
            int next = (j + 1) % columns;
            found.Add(([top.Nodes[j], top.Nodes[next], node], [top.At[j], top.At[next], middle], top.Section.Thickness, perArea));
        }
    }

    private static double PoissonOf(Material material) =>
        Math.Clamp(material.YoungsModulus.Pascals / (2 * material.ShearModulus.Pascals) - 1, 0, 0.49);

    /// <summary>Puts the two rows at an edge that is open side by side, to be tied by springs.</summary>
    private void Tie(Row below, Row above)
    {
        for (int j = 0; j < columns; j++)
        {
            int next = (j + 1) % columns, before = (j + columns - 1) % columns;
            Seams.Add((below.Nodes[j], above.Nodes[j], above.At[j] - below.At[j], 0.5 * ((above.At[next] - above.At[j]).Length + (above.At[j] - above.At[before]).Length)));
        }
    }

    /// <summary>Lays the armature's bars along rows: one through every ring, and others where the spacing asks for one.</summary>
    private void AddArmature(Armature armature, Row[] rows)
    {
        BeamSection section = armature.Bar.Of(armature.Material) with { Mass = 0, RotaryY = 0, RotaryZ = 0 };
        (double weak, double area) = (Math.Min(section.EIy, section.EIz), section.EA);
        // Of a rectangle that is as stiff: half its depth, and half the sheet, from the middle of the sheet.
        double inside = Math.Sqrt(3 * weak / area);
        bool isYWeak = section.EIy <= section.EIz;
        double last = double.NegativeInfinity, nextRing = double.PositiveInfinity;
        for (int i = 0; i < rows.Length; i++)
        {
            nextRing = rows.Skip(i).Where(row => row.HasRing).Select(row => row.Z).DefaultIfEmpty(double.PositiveInfinity).First();
            bool isDue = rows[i].HasRing || (rows[i].Z - last >= armature.Spacing.Meters * (1 - 1e-9) && nextRing - rows[i].Z >= 0.5 * armature.Spacing.Meters);
            if (!isDue || i == rows.Length - 1 && !rows[i].HasRing)
                continue;
            last = rows[i].Z;
            Row row = rows[i];
            for (int j = 0; j < columns; j++)
            {
                int next = (j + 1) % columns;
                Vector3D along = row.At[next] - row.At[j], outward = along.Cross(body.Axes.Axes.Z).Normalized();
                Vector3D offset = -(inside + 0.5 * row.Section.Thickness) * outward;
                frame.Add(new BeamElement(row.Nodes[j], row.At[j], row.Nodes[next], row.At[next], new BeamDefinition(section)
                {
                    // Pressed, the bar bends about its weak axis: deflection along local z is bending about y.
                    Up = isYWeak ? outward : body.Axes.Axes.Z,
                    StartOffset = offset,
                    EndOffset = offset,
                }));
            }
        }
    }
}
