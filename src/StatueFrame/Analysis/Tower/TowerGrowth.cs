using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// How the levels of tower and limbs move with heat when nothing holds them but the base: a chain of segments that grow,
/// and bend away from the sun, without a force.
/// </summary>
/// <remarks>Immutable and safe to share between threads. SI units.</remarks>
internal sealed class TowerGrowth
{
    private readonly Dictionary<string, (Vector3D Move, Vector3D Turn, double Strain)> levels = [];

    public TowerGrowth(StatueModel model, ReadOnlySpan<FactoredAction> actions)
    {
        for (int i = 0; i < model.Bodies.Length; i++)
        {
            BodyModel body = model.Bodies[i];
            var start = (Move: Vector3D.Zero, Turn: Vector3D.Zero);
            if (i > 0)
            {
                string from = model.Statue.Limbs[i - 1].From;
                (Vector3D move, Vector3D turn, double strain) = levels[from];
                Vector3D arm = body.Levels[0].Center - model.PlaceOf(from).Center;
                start = (move + turn.Cross(arm) + strain * arm, turn);
            }
            AddBody(body, start, actions);
        }
    }

    /// <summary>The movement and turn of a level's center, and the strain of the tower there.</summary>
    /// <param name="level">Its full name.</param>
    public (Vector3D Move, Vector3D Turn, double Strain) At(string level) => levels[level];

    private void AddBody(BodyModel body, (Vector3D Move, Vector3D Turn) at, ReadOnlySpan<FactoredAction> actions)
    {
        Tower tower = body.Tower;
        for (int k = 0; k < tower.Levels.Count; k++)
        {
            int below = Math.Max(0, k - 1);
            if (k > 0)
                at = Over(body, below, at, actions);
            levels[body.Prefix + tower.Levels[k].Name] = (at.Move, at.Turn, StrainOf(tower.Segments[below], actions));
        }
    }

    /// <summary>The movement of a segment's top from that of its bottom.</summary>
    private static (Vector3D Move, Vector3D Turn) Over(BodyModel body, int segment, (Vector3D Move, Vector3D Turn) at, ReadOnlySpan<FactoredAction> actions)
    {
        Vector3D axis = body.Levels[segment + 1].Center - body.Levels[segment].Center, along = axis.Normalized();
        (Vector3D move, Vector3D turn) = (at.Move + at.Turn.Cross(axis) + StrainOf(body.Tower.Segments[segment], actions) * axis, at.Turn);
        foreach (FactoredAction action in actions)
        {
            if (action.Action is not TemperatureAction { TowerSunRise.Kelvins: > 0 } heat)
                continue;
            Vector3D across = heat.Sun - heat.Sun.Dot(along) * along;
            double squarely = across.Length;
            if (squarely < 1e-9 || WidthAlong(body, segment, across / squarely) is not { } width)
                continue;
            // The lit side is longer: the upper plan turns so that it rises, and moves away from the sun.
            double curvature = action.Factor * ExpansionOf(body.Tower.Segments[segment], heat) * heat.TowerSunRise.Kelvins * squarely / width, s = axis.Length;
            Vector3D lit = across / squarely;
            move -= 0.5 * curvature * s * s * lit;
            turn += curvature * s * lit.Cross(along);
        }
        return (move, turn);
    }

    /// <summary>The tower's mean width along a direction between two levels; null when nothing gives an outline.</summary>
    private static double? WidthAlong(BodyModel body, int segment, Vector3D direction)
    {
        Vector3D local = body.Axes.Axes.ToLocal(direction);
        double sum = 0;
        int found = 0;
        for (int level = segment; level <= segment + 1; level++)
        {
            if (body.Tower.OutlineAt(level) is not { } outline)
                continue;
            double least = double.PositiveInfinity, greatest = double.NegativeInfinity;
            for (int i = 0; i < outline.X.Length; i++)
            {
                double at = outline.X[i] * local.X + outline.Y[i] * local.Y;
                (least, greatest) = (Math.Min(least, at), Math.Max(greatest, at));
            }
            (sum, found) = (sum + greatest - least, found + 1);
        }
        return found > 0 && sum > 0 ? sum / found : null;
    }

    /// <summary>Whether some segment cannot bend with one-sided sun, as nothing gives its width.</summary>
    public static bool LacksWidth(BodyModel body) => Enumerable.Range(0, body.Tower.Segments.Count).Any(i => WidthAlong(body, i, body.Axes.Axes.X) is null);

    private static double StrainOf(TowerSegment segment, ReadOnlySpan<FactoredAction> actions)
    {
        double strain = 0;
        foreach (FactoredAction action in actions)
        {
            if (action.Action is TemperatureAction heat)
                strain += action.Factor * ExpansionOf(segment, heat) * heat.TowerChange.Kelvins;
        }
        return strain;
    }

    /// <summary>The expansion of a segment, 1/K.</summary>
    internal static double ExpansionOf(TowerSegment segment, TemperatureAction heat) =>
        heat.TowerExpansion?.PerKelvin ?? OwnExpansion(segment) ?? TemperatureAction.CoreExpansion;

    /// <summary>The expansion that a segment's material gives, 1/K; null for a core without one.</summary>
    internal static double? OwnExpansion(TowerSegment segment) => segment switch
    {
        LatticeSegment lattice => lattice.Material.ThermalExpansion.PerKelvin,
        MemberSegment member => member.Material.ThermalExpansion.PerKelvin,
        BlockSegment block => block.Stuff.ThermalExpansion.PerKelvin,
        _ => null,
    };
}
