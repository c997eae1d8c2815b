using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Checks of sway against limits that the user sets.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class SwayChecks
{
    /// <summary>The sway of a point against its limit.</summary>
    /// <param name="movement">The point's greatest movement in the situation.</param>
    /// <param name="limit">The limit for the point.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Limit(Movement movement, SwayLimit limit, string situation)
    {
        double dx = movement.X.Meters, dy = movement.Y.Meters, greatest = limit.Limit.Meters;
        string heading = Headings.Describe(movement.Heading);
        return Check.Of(
            new CheckSubject("sway.limit", "sway at a named point", movement.Point, situation), Dimension.SmallLength, limit.Source,
            w =>
            {
                w?.Note($"Displacements of {movement.Point}, {heading}.");
                w.Given(dx, Dimension.SmallLength, "displacement along x");
                w.Given(dy, Dimension.SmallLength, "displacement along y");
                return (w.Let("delta", Math.Sqrt(dx * dx + dy * dy), Dimension.SmallLength, meaning: "sway"), greatest);
            });
    }
}
