namespace StatueFrame.Analysis;

/// <summary>
/// What the base stands on, as a shape about its center: uplift begins when the resultant leaves it. A pre-tension of
/// hold-downs, spread so that it acts at the center, presses along with the weight.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class Footprint
{
    private readonly PlanCurve? outline;
    private readonly double radius;

    private Footprint(PlanCurve? outline, double radius, string what) => (this.outline, this.radius, What) = (outline, radius, what);

    /// <summary>In words.</summary>
    public string What { get; }

    /// <summary>The footprint of a given width across any heading, or that of the tower's first level; null when neither is known.</summary>
    public static Footprint? Of(StatueModel model, double? width)
    {
        if (width is { } w)
            return new Footprint(null, 0.5 * w, FormattableString.Invariant($"base {w:0.###} m wide"));
        Tower tower = model.Bodies[0].Tower;
        return tower.Levels[0].Plan?.Outline is { } outline ? new Footprint(outline, 0, $"plan of the tower at \"{tower.Levels[0].Name}\"") : null;
    }

    /// <summary>Distance from the center to the edge towards a direction in plan, m.</summary>
    public double Reach(double x, double y)
    {
        double length = Math.Sqrt(x * x + y * y);
        return outline is null ? radius : outline.Cast(0, 0, x / length, y / length).Distance;
    }

    /// <summary>Distance from the center to the nearer edge along a line in plan.</summary>
    public UnitsNet.Length LeastReach(double x, double y) => UnitsNet.Length.FromMeters(Math.Min(Reach(x, y), Reach(-x, -y)));

    /// <summary>
    /// The overturning moment over the one at which the base lifts at its edge, M/(N a), for forces and moments on the base;
    /// infinite when nothing presses.
    /// </summary>
    public (double Ratio, double Moment, double Resistance) Overturning(ReadOnlySpan<double> onBase, double pretension)
    {
        double moment = Math.Sqrt(onBase[3] * onBase[3] + onBase[4] * onBase[4]), pressing = pretension - onBase[2];
        if (moment == 0)
            return (pressing >= 0 ? 0 : double.PositiveInfinity, 0, 0);
        // A moment (Mx, My) moves the resultant towards (My, −Mx).
        double resistance = Math.Max(0, pressing) * Reach(onBase[4], -onBase[3]);
        return (resistance > 0 ? moment / resistance : double.PositiveInfinity, moment, resistance);
    }
}
