using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The statue as lines in space, for drawings: the tower's members, the outlines of the bands and the standoffs, at rest
/// or as a load case or a mode moves them. Bands and levels move as the rigid bodies they are in the model; between two
/// levels the line is straight. Each band has two outlines, at its lower and at its upper edge, with vertices that match.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class LineModel
{
    private const int RibsRound = 12, OutlinePoints = 96;

    private readonly StatueModel model;
    private readonly List<Strand> strands = [];

    private LineModel(StatueModel model)
    {
        this.model = model;
        foreach (BodyModel body in model.Bodies)
        {
            for (int i = 0; i < body.Segments.Length; i++)
                AddSegment(body.Segments[i], body.Axes, body.Levels[i], body.Levels[i + 1]);
            for (int i = 0; i < body.Levels.Length; i++)
                AddFrame(body, i);
            for (int i = 0; i < body.Bands.Length; i++)
                AddBand(body, i);
            foreach (RingElement ring in body.Rings)
                AddRing(body, ring);
        }
        Lines = Drawn(null, 0);
        Size = Length.FromMeters(GreatestExtent());
    }

    /// <summary>The lines of a model at rest.</summary>
    /// <param name="model">The model.</param>
    public static LineModel Of(StatueModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new LineModel(model);
    }

    /// <summary>The lines at rest.</summary>
    public ValueList<ModelLine> Lines { get; }

    /// <summary>The greatest extent of the lines along x, y or z.</summary>
    public Length Size { get; }

    /// <summary>The lines as a load case moves them.</summary>
    /// <param name="loadCase">A load case of the same model.</param>
    /// <param name="scale">How many times the movement is drawn, 0 to 1e6; 1 is to scale.</param>
    /// <exception cref="ArgumentException">The load case belongs to another model.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The scale is out of range.</exception>
    public ValueList<ModelLine> Moved(LoadCase loadCase, double scale)
    {
        ArgumentNullException.ThrowIfNull(loadCase);
        if (loadCase.Movements.Length != model.Frame.FreedomCount)
            throw new ArgumentException("The load case belongs to another model.", nameof(loadCase));
        if (!(scale is >= 0 and <= 1e6))
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "The scale must be from 0 to 1e6.");
        return Drawn([.. loadCase.Movements], scale);
    }

    /// <summary>The lines as a mode moves them at its greatest.</summary>
    /// <param name="modes">Modes of the same model.</param>
    /// <param name="number">Number of the mode, from 1.</param>
    /// <param name="greatest">The greatest movement of any vertex, as drawn; more than zero.</param>
    /// <exception cref="ArgumentException">The modes belong to another model.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no such mode, or the movement is not more than zero.</exception>
    public ValueList<ModelLine> Moved(ModalResponse modes, int number, Length greatest)
    {
        ArgumentNullException.ThrowIfNull(modes);
        if (modes.Set.Frame != model.Frame)
            throw new ArgumentException("The modes belong to another model.", nameof(modes));
        if (number < 1 || number > modes.Modes.Count)
            throw new ArgumentOutOfRangeException(nameof(number), number, $"There are {modes.Modes.Count} modes, numbered from 1.");
        if (!(greatest.Meters > 0 && double.IsFinite(greatest.Meters)))
            throw new ArgumentOutOfRangeException(nameof(greatest), greatest, "The movement must be more than zero.");
        double[] shape = [.. modes.Set.Shape(number - 1)];
        double most = 0;
        foreach (Strand strand in strands)
        {
            foreach (Vertex vertex in strand.Vertices)
                most = Math.Max(most, Movement(shape, vertex).Length);
        }
        return Drawn(shape, most > 0 ? greatest.Meters / most : 0);
    }

    private ValueList<ModelLine> Drawn(double[]? u, double scale) => strands.Select(strand => new ModelLine(
        strand.Kind, strand.Part, strand.Vertices.Select(v => u is null ? v.At : v.At + scale * Movement(u, v)).ToValueList())).ToValueList();

    /// <summary>The movement of a vertex: of the body it is fixed to, or of what lies between two.</summary>
    private Vector3D Movement(double[] u, in Vertex vertex)
    {
        Vector3D lower = model.Motion(u, vertex.Lower, vertex.At).Displacement;
        return vertex.T == 0 ? lower : (1 - vertex.T) * lower + vertex.T * model.Motion(u, vertex.Upper, vertex.At).Displacement;
    }

    private void AddSegment(SegmentModel segment, BodyAxes axes, Place lower, Place upper)
    {
        if (segment.Members.Count == 0)
        {
            strands.Add(new Strand(LineKind.Tower, segment.Name, [new Vertex(lower.Center, lower, lower, 0), new Vertex(upper.Center, upper, upper, 0)]));
            return;
        }
        double bottom = axes.ToLocal(lower.Center).Z, top = axes.ToLocal(upper.Center).Z;
        foreach (LatticeMember member in segment.Members)
        {
            LineKind kind = member.Role == LatticeRole.Leg ? LineKind.Tower : LineKind.Brace;
            strands.Add(new Strand(kind, segment.Name, [Between(member.From), Between(member.To)]));
        }

        Vertex Between(Vector3D local) => new(axes.ToGlobal(local), lower, upper, Math.Clamp((local.Z - bottom) / (top - bottom), 0, 1));
    }

    private void AddFrame(BodyModel body, int index)
    {
        TowerLevel level = body.Tower.Levels[index];
        Place place = body.Levels[index];
        foreach (LevelMember member in level.Members)
            strands.Add(new Strand(LineKind.Brace, body.Prefix + level.Name, [new Vertex(body.Axes.ToGlobal(member.From), place, place, 0), new Vertex(body.Axes.ToGlobal(member.To), place, place, 0)]));
    }

    private void AddBand(BodyModel body, int index)
    {
        SkinBand band = body.Bands[index];
        Place place = body.BandPlaces[index];
        double[] fractions = [.. Enumerable.Range(0, OutlinePoints).Select(i => (double)i / OutlinePoints)];
        PlanCurve from = band.BottomOutline.AtFractions(fractions), to = band.TopOutline.AtFractions(fractions);
        AddOutline(from, band.Bottom);
        AddOutline(to, band.Top);
        for (int i = 0; i < OutlinePoints; i += OutlinePoints / RibsRound)
            strands.Add(new Strand(LineKind.Rib, body.BandName(index), [Fixed(from.X[i], from.Y[i], band.Bottom), Fixed(to.X[i], to.Y[i], band.Top)]));

        void AddOutline(PlanCurve curve, double z)
        {
            var vertices = new Vertex[curve.Count + 1];
            for (int i = 0; i < vertices.Length; i++)
                vertices[i] = Fixed(curve.X[i % curve.Count], curve.Y[i % curve.Count], z);
            strands.Add(new Strand(LineKind.Outline, body.BandName(index), vertices));
        }

        Vertex Fixed(double x, double y, double z) => new(body.Axes.ToGlobal(new Vector3D(x, y, z)), place, place, 0);
    }

    private void AddRing(BodyModel body, RingElement ring)
    {
        Place level = model.PlaceOf(ring.Level), band = body.BandPlaces[ring.Band];
        foreach (BarModel bar in ring.Bars)
        {
            BarPlacement at = bar.Bar.Place;
            strands.Add(new Strand(LineKind.Standoff, ring.BandName, [new Vertex(at.TowerEnd, level, level, 0), new Vertex(at.SkinEnd, band, band, 0)]));
        }
        foreach (PlacedBracket bracket in ring.Brackets)
            strands.Add(new Strand(LineKind.Bracket, ring.BandName, [new Vertex(bracket.Foot, level, level, 0), new Vertex(bracket.Tip, level, level, 0)]));
    }

    private double GreatestExtent()
    {
        Vector3D least = new(double.MaxValue, double.MaxValue, double.MaxValue), most = new(double.MinValue, double.MinValue, double.MinValue);
        foreach (Vertex vertex in strands.SelectMany(s => s.Vertices))
        {
            least = new(Math.Min(least.X, vertex.At.X), Math.Min(least.Y, vertex.At.Y), Math.Min(least.Z, vertex.At.Z));
            most = new(Math.Max(most.X, vertex.At.X), Math.Max(most.Y, vertex.At.Y), Math.Max(most.Z, vertex.At.Z));
        }
        Vector3D extent = most - least;
        return Math.Max(extent.X, Math.Max(extent.Y, extent.Z));
    }

    /// <summary>A vertex, fixed to one place or, at part <paramref name="T"/> of the way, between two.</summary>
    private readonly record struct Vertex(Vector3D At, Place Lower, Place Upper, double T);

    private sealed record Strand(LineKind Kind, string Part, Vertex[] Vertices);
}
