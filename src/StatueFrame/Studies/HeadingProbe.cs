using StatueFrame.Analysis;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Studies;

/// <summary>The quantities that a heading study follows, and their values in a load case.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class HeadingProbe
{
    private const string RigidRing = "rigid ring", LimpSkin = "limp skin";

    private readonly StatueModel model;
    private readonly List<(string Name, Dimension Dimension)> quantities = [];

    public HeadingProbe(StatueModel model)
    {
        this.model = model;
        foreach (NamedPoint point in model.Statue.Points)
        {
            Add(SwayOf(point.Name), Dimension.SmallLength);
            Add(TwistOf(point.Name), Dimension.Angle);
        }
        Add("wind force", Dimension.Force);
        Add("base shear", Dimension.Force);
        Add("base overturning moment", Dimension.Moment);
        Add("base twisting moment", Dimension.Moment);
        if (model.BarCount > 0)
            Add("greatest bar stress", Dimension.Stress);
        foreach ((RingElement ring, _) in model.Rings)
        {
            Add($"bar stress of {ring.BandName} on {ring.Level}, {RigidRing}", Dimension.Stress);
            Add($"bar stress of {ring.BandName} on {ring.Level}, {LimpSkin}", Dimension.Stress);
        }
        Add("greatest tension in a lattice member", Dimension.Force);
        Add("greatest compression in a lattice member", Dimension.Force);
    }

    public IReadOnlyList<(string Name, Dimension Dimension)> Quantities => quantities;

    public static string SwayOf(string point) => $"sway at {point}";

    public static string TwistOf(string point) => $"twist at {point}";

    /// <summary>True for what one ring does, which a short table leaves out.</summary>
    public static bool IsOfOneRing(string name) =>
        name.EndsWith(RigidRing, StringComparison.Ordinal) || name.EndsWith(LimpSkin, StringComparison.Ordinal);

    /// <summary>The values in the order of <see cref="Quantities"/>; not a number where there is nothing that has the quantity.</summary>
    public double[] Values(LoadCase loadCase)
    {
        var values = new List<double>(quantities.Count);
        foreach (NamedPoint point in model.Statue.Points)
        {
            Movement movement = loadCase.Of(point.Name);
            values.Add(movement.Sway.Meters);
            values.Add(Math.Abs(movement.Twist.Radians));
        }
        BaseReaction atBase = loadCase.Base;
        values.AddRange([
            loadCase.WindForce.Newtons, atBase.Shear.Newtons, atBase.Overturning.NewtonMeters, Math.Abs(atBase.MomentZ.NewtonMeters)]);
        AddBars(loadCase, values);
        (double tension, double compression) = (double.NaN, double.NaN);
        foreach (MemberForce member in loadCase.LatticeMembers())
        {
            tension = Greater(tension, Math.Max(0, member.Axial.Newtons));
            compression = Greater(compression, Math.Max(0, -member.Axial.Newtons));
        }
        values.AddRange([tension, compression]);
        return [.. values];
    }

    private void AddBars(LoadCase loadCase, List<double> values)
    {
        if (model.BarCount == 0)
            return;
        int all = values.Count;
        Span<double> forces = stackalloc double[FrameElement.Size];
        values.Add(double.NaN);
        foreach ((RingElement ring, int band) in model.Rings)
        {
            (double rigid, double limp) = (double.NaN, double.NaN);
            foreach (BarModel bar in ring.Bars)
            {
                foreach (SkinAssumption skin in SkinBounds.All)
                {
                    if (!loadCase.ForcesOf(ring, bar, band, skin, forces))
                        continue;
                    double stress = BarEnds.Of(forces).NormalStress(bar.Standoff.Section.Width.Meters, bar.Standoff.Section.Thickness.Meters);
                    if (skin == SkinAssumption.RigidRing)
                        rigid = Greater(rigid, stress);
                    else
                        limp = Greater(limp, stress);
                }
            }
            values.AddRange([rigid, limp]);
            values[all] = Greater(values[all], Greater(rigid, limp));
        }
    }

    /// <summary>The greater of two values, where one that is not a number does not count.</summary>
    private static double Greater(double a, double b) => double.IsNaN(a) || b > a ? b : a;

    private void Add(string name, Dimension dimension) => quantities.Add((name, dimension));
}
