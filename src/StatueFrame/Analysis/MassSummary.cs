using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The masses of a statue by group, and their common center.</summary>
/// <remarks>Does not change once the model is built; safe to share between threads.</remarks>
public sealed class MassSummary
{
    private readonly double[] groups = new double[Enum.GetValues<MassGroup>().Length];
    private Vector3D moment;

    /// <summary>Mass of everything.</summary>
    public Mass Total => Mass.FromKilograms(TotalKilograms);

    /// <summary>Center of mass, in the statue's axes.</summary>
    public Point3 Center => Point3.FromMeters(CenterMeters);

    /// <summary>Mass of one group; zero when the statue has none of it.</summary>
    /// <param name="group">The group.</param>
    public Mass Of(MassGroup group) => Mass.FromKilograms(groups[(int)group]);

    internal double TotalKilograms => groups.Sum();

    internal Vector3D CenterMeters => TotalKilograms > 0 ? moment / TotalKilograms : Vector3D.Zero;

    internal void Add(MassGroup group, double mass, Vector3D at)
    {
        groups[(int)group] += mass;
        moment += mass * at;
    }
}
