using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What happens to a fine model in a situation: one load case a wind heading, or one without wind.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class FineResponse
{
    internal FineResponse(FineModel model, Situation situation)
    {
        (Model, Situation) = (model, situation);
        Angle?[] headings = situation.Wind?.Action is WindAction wind ? [.. wind.Headings.Select(h => (Angle?)h)] : [null];
        int size = model.Frame.FreedomCount;
        var nodal = new double[headings.Length * size];
        var loads = new Loads[headings.Length];
        HeatField? heat = HeatField.Of(model.Reduced, situation);
        for (int i = 0; i < headings.Length; i++)
            loads[i] = FineLoads.Fill(model, situation, headings[i], heat, nodal.AsSpan(i * size, size));
        double[] u = model.Statics.Solve(nodal);
        SolutionError = model.Statics.ErrorOf(nodal.AsSpan(0, size), u.AsSpan(0, size));
        Cases = headings.Select((_, i) => new FineCase(model, loads[i], heat, u.AsSpan(i * size, size).ToArray(), Carried(model, u.AsSpan(i * size, size), nodal.AsSpan(i * size, size)))).ToArray();
    }

    /// <summary>The model that responds.</summary>
    public FineModel Model { get; }

    /// <summary>What acts.</summary>
    public Situation Situation { get; }

    /// <summary>One load case for every wind heading, in the order of the headings.</summary>
    public IReadOnlyList<FineCase> Cases { get; }

    /// <summary>The greatest sway of a named point over all headings.</summary>
    /// <param name="point">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public Movement GreatestSway(string point) => Cases.Select(c => c.Of(point)).ToArray().FirstGreatest(m => m.Sway.Meters);

    /// <summary>Every standoff with its greatest normal stress over all headings.</summary>
    public IReadOnlyList<FineBarResult> Bars => [.. Cases.SelectMany(c => c.Bars()).GroupBy(bar => bar.Where).Select(group => group.ToArray().FirstGreatest(bar => bar.Stress.Pascals))];

    /// <summary>Where the skin is stressed most over all headings.</summary>
    /// <param name="awayFromBars">Passes over the triangles at the points where standoffs meet the skin, whose stress grows without end as the mesh gets finer.</param>
    public SkinStressResult GreatestSkinStress(bool awayFromBars = true) => Cases.Select(c => c.GreatestSkinStress(awayFromBars)).ToArray().FirstGreatest(s => s.VonMises.Pascals);

    /// <summary>What the ground carries, from the forces of the elements and springs at it.</summary>
    private static Resultant Carried(FineModel model, ReadOnlySpan<double> u, ReadOnlySpan<double> nodal)
    {
        double[] reactions = Equilibrium.Reactions(model.Frame, u, nodal);
        (Vector3D force, Vector3D moment) = Equilibrium.Resultant(model.Frame, reactions, model.Reduced.BaseCenter);
        return new Resultant(-force, -moment);
    }

    /// <summary>How far displacements are off by rounding, relative to the greatest; see <see cref="Mechanics.Statics.LinearStatics.ErrorOf"/>.</summary>
    public double SolutionError { get; }
}
