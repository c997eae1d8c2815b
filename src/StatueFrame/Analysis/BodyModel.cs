using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>Where a level or a band is: the node that carries it, and its center, in the statue's axes.</summary>
/// <param name="Node">Index of the node in the frame.</param>
/// <param name="NodeAt">Position of that node, m.</param>
/// <param name="Center">Center of the level or band, m; off the node only where a limb is joined rigidly to its root.</param>
internal readonly record struct Place(int Node, Vector3D NodeAt, Vector3D Center)
{
    public static Place At(int node, Vector3D position) => new(node, position, position);
}

/// <summary>
/// One body of the statue, the trunk or a limb, laid out in the statue's axes: its levels and bands with their nodes,
/// its segments and its bars.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class BodyModel
{
    /// <summary>"" for the trunk, "wing/" for the limb named wing.</summary>
    public required string Prefix { get; init; }

    public required Tower Tower { get; init; }

    public required Skin? Skin { get; init; }

    public required BodyAxes Axes { get; init; }

    public required Place[] Levels { get; init; }

    public required SkinBand[] Bands { get; init; }

    /// <summary>The node of each band, at the band's centroid.</summary>
    public required Place[] BandPlaces { get; init; }

    public required SegmentModel[] Segments { get; init; }

    public required RingElement[] Rings { get; init; }

    /// <summary>The seams that tie its bands; null without.</summary>
    public required SeamStiffness? Seams { get; init; }

    public bool HasSeams => Seams is not null;

    /// <summary>The members that lie in levels as point masses: on which level, how heavy, kg, and where, m.</summary>
    public IEnumerable<(Place Level, double Mass, Vector3D At)> FrameMasses
    {
        get
        {
            for (int i = 0; i < Levels.Length; i++)
            {
                foreach (LevelMember member in Tower.Levels[i].Members)
                    yield return (Levels[i], member.Mass, Axes.ToGlobal(0.5 * (member.From + member.To)));
            }
        }
    }

    /// <summary>The elevation whose peak pressure a band meets, m: that of its pressure center, or of its highest point where the code says so.</summary>
    public double ReferenceElevation(WindProfile profile, int band, Vector3D center) => profile.IsReadAtTop ? Highest(band) : center.Z;

    /// <summary>Elevation of a band's highest point, m; of its upper edge on the trunk.</summary>
    public double Highest(int band) => (highest ??= Array.ConvertAll(Bands, b => Math.Max(Of(b.BottomOutline, b.Bottom), Of(b.TopOutline, b.Top))))[band];

    /// <summary>Worked out when first asked for; the same whoever does.</summary>
    private double[]? highest;

    private double Of(PlanCurve outline, double z) => Enumerable.Range(0, outline.X.Length).Max(i => Axes.ToGlobal(new Vector3D(outline.X[i], outline.Y[i], z)).Z);

    /// <summary>How far a place is in plan from the tower's own members at the level of a ring, m; from its axis where nothing says its shape.</summary>
    public double DistanceToTower(RingElement ring, Vector3D place)
    {
        int level = Tower.IndexOfLevel(ring.Level[Prefix.Length..]);
        Vector3D at = Axes.ToLocal(place) - Tower.Levels[level].Center;
        return Tower.OutlineAt(level)?.DistanceTo(at.X, at.Y) ?? Math.Sqrt(at.X * at.X + at.Y * at.Y);
    }

    public string Name => Prefix.Length == 0 ? "trunk" : Prefix.TrimEnd('/');

    public string BandName(int band) => Prefix + StatueNames.OfBand(band);
}
