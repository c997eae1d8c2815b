using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>One load case of a fine model: how points move, what every standoff carries, and how the skin is stressed.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class FineCase
{
    private readonly FineModel model;
    private readonly HeatField? heat;
    private readonly double[] displacements;
    private readonly double[] moved;

    internal FineCase(FineModel model, Loads loads, HeatField? heat, double[] displacements, Resultant carried)
    {
        (this.model, this.heat, this.displacements) = (model, heat, displacements);
        Heading = loads.Heading;
        Base = new BaseReaction(carried);
        WeightFactor = loads.WeightFactor;
        Between = loads.Between;
        foreach (BandMesh band in model.Bands)
        {
            Place place = band.Body.BandPlaces[band.Band];
            (Vector3D move, Vector3D turn) = band.Movement(displacements, place.NodeAt);
            Span<double> node = displacements.AsSpan(place.Node * Frame.NodeSize, Frame.NodeSize);
            (node[0], node[1], node[2], node[3], node[4], node[5]) = (move.X, move.Y, move.Z, turn.X, turn.Y, turn.Z);
        }
        moved = displacements;
        if (heat is not null)
        {
            moved = [.. displacements];
            heat.AddMovements(moved);
        }
    }

    /// <summary>The plan angle that the wind blows towards; null without wind.</summary>
    public Angle? Heading { get; }

    /// <summary>The forces and moments that the statue puts on its base, from what the lowest elements carry.</summary>
    public BaseReaction Base { get; }

    internal double WeightFactor { get; }

    /// <summary>What acts on a segment between its levels.</summary>
    internal Func<SegmentModel, BetweenLevels> Between { get; }

    internal DemandState State => new(string.Join(", ", new[] { Heading is null ? "" : Headings.Describe(Heading), "skin as a shell" }.Where(part => part.Length > 0)), shaken: AllByFineModel);

    /// <summary>What its forces are made of.</summary>
    internal const string AllByFineModel = "all that acts, by the fine model";

    /// <summary>The movement of a named point; of one on a band, with the band as a whole.</summary>
    /// <param name="name">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public Movement Of(string name)
    {
        Statue statue = model.Reduced.Statue;
        NamedPoint point = statue.Points.FirstOrDefault(p => p.Name == name)
            ?? throw new ArgumentException($"The statue has no point \"{name}\". {NearNames.Closest(name, statue.Points.Select(p => p.Name))}", nameof(name));
        (Vector3D displacement, Vector3D rotation) = model.Reduced.Motion(moved, model.Reduced.PlaceOf(point.On), model.Reduced.PositionOf(point));
        return new Movement(name, Heading, displacement, rotation);
    }

    /// <summary>The axial force and the greatest normal stress of every standoff.</summary>
    public IReadOnlyList<FineBarResult> Bars()
    {
        var all = new FineBarResult[model.Bars.Length];
        for (int i = 0; i < all.Length; i++)
        {
            FineBar bar = model.Bars[i];
            BarEnds ends = EndsOf(bar);
            Standoff standoff = bar.Bar.Standoff;
            all[i] = new FineBarResult(bar.Bar.Where, Heading, Force.FromNewtons(ends.Tower.N),
                Pressure.FromPascals(ends.NormalStress(standoff.Section.Width.Meters, standoff.Section.Thickness.Meters)));
        }
        return all;
    }

    /// <summary>Where the skin is stressed most.</summary>
    /// <param name="awayFromBars">As of <see cref="FineResponse.GreatestSkinStress"/>.</param>
    public SkinStressResult GreatestSkinStress(bool awayFromBars = true) => GreatestSkinStress(awayFromBars, null);

    /// <summary>The same of one body.</summary>
    internal SkinStressResult GreatestSkinStress(bool awayFromBars, BodyModel? body)
    {
        HashSet<int> atBars = awayFromBars ? [.. model.Bars.Select(bar => bar.End)] : [];
        (BandMesh Band, ShellElement Triangle, ShellStress Stress)? worst = null;
        double most = 0;
        foreach (BandMesh band in model.Bands.Where(band => body is null || band.Body == body))
        {
            foreach (ShellElement triangle in band.Triangles)
            {
                if (atBars.Contains(triangle.Nodes[0]) || atBars.Contains(triangle.Nodes[1]) || atBars.Contains(triangle.Nodes[2]))
                    continue;
                ShellStress stress = StressOf(band, triangle);
                double vonMises = stress.VonMises(triangle.Section.Thickness);
                if (worst is null || Extremes.Exceeds(vonMises, most))
                    (worst, most) = ((band, triangle, stress), vonMises);
            }
        }
        return worst is { } found ? Result(found.Band, found.Triangle, found.Stress) : throw new InvalidOperationException("Every triangle of skin touches a standoff: take a finer mesh.");
    }

    /// <summary>The stress of every triangle of skin, band by band.</summary>
    public IReadOnlyList<SkinStressResult> SkinStress() =>
        [.. model.Bands.SelectMany(band => band.Triangles.Select(triangle => Result(band, triangle, StressOf(band, triangle))))];

    private ShellStress StressOf(BandMesh band, ShellElement triangle)
    {
        Span<double> u = stackalloc double[triangle.FreedomCount];
        triangle.Gather(displacements, u);
        return triangle.StressFrom(u, heat is null ? 0 : HeatField.ExpansionOf(band.Body) * heat.SkinChange(triangle.Center, FineLoads.OutwardOf(band, triangle)));
    }

    private SkinStressResult Result(BandMesh band, ShellElement triangle, ShellStress stress)
    {
        double t = triangle.Section.Thickness;
        (double greatest, double least) = stress.Principal(t);
        (double x, double y, double xy) = stress.At(t, 0);
        SkinBand outline = band.Body.Bands[band.Band];
        Vector3D local = band.Body.Axes.ToLocal(triangle.Center);
        return new SkinStressResult(band.Body.BandName(band.Band), Heading, triangle.Center, Pressure.FromPascals(stress.VonMises(t)),
            Pressure.FromPascals(greatest), Pressure.FromPascals(least), Pressure.FromPascals(Math.Sqrt(x * x - x * y + y * y + 3 * xy * xy)))
        {
            Around = Angle.FromRadians(Math.Atan2(local.Y - outline.MidOutline.CentroidY, local.X - outline.MidOutline.CentroidX)),
            Along = Length.FromMeters(local.Z),
        };
    }

    /// <summary>
    /// The lowest factors on what acts, weight included, at which the elastic statue buckles, that of sheet between standoffs
    /// among them; ascending. Real sheet is dented and buckles earlier, and carries on beyond: they are for information.
    /// </summary>
    /// <param name="count">How many, from 1; fewer are returned when fewer lie below 1000.</param>
    /// <exception cref="InvalidOperationException">The situation has heat, whose stresses do not grow with the load.</exception>
    public ValueList<double> BucklingFactors(int count = 3)
    {
        const double Most = 1000;
        if (heat is not null)
            throw new InvalidOperationException("Stresses by heat do not grow with the load: leave heat out of the situation.");
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return LinearBuckling.Solve(model.Statics, model.Frame.GeometricStiffness(displacements), count, Most).LoadFactors.ToValueList();
    }

    /// <summary>What acts on the two ends of a standoff.</summary>
    internal BarEnds EndsOf(FineBar bar)
    {
        Span<double> forces = stackalloc double[FrameElement.Size];
        (Vector3D imposed, Vector3D turned) = heat is null ? default : bar.Freely(heat);
        bar.Placed.Forces(displacements.AsSpan(bar.Start * Frame.NodeSize, Frame.NodeSize), displacements.AsSpan(bar.End * Frame.NodeSize, Frame.NodeSize), forces, imposed, turned);
        return BarEnds.Of(forces);
    }

    /// <summary>The displacements that go with forces; the first are those of the other model's nodes.</summary>
    internal ReadOnlySpan<double> Displacements => displacements;
}
