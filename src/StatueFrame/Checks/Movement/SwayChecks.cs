using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Checks of sway against limits that the user sets.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class SwayChecks
{
    /// <summary>The sway of a point against its limit.</summary>
    /// <param name="movement">The point's greatest movement in the situation.</param>
    /// <param name="when">The state it is of, in words.</param>
    /// <param name="still">What of it along z is there without what comes and goes, m; null leaves out all movement along z.</param>
    /// <param name="limit">The limit for the point.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Limit(Movement movement, string when, double? still, SwayLimit limit, string situation)
    {
        double dx = movement.X.Meters, dy = movement.Y.Meters, greatest = limit.Limit.Meters;
        return Check.Of(
            new CheckSubject("sway.limit", "sway at a named point", movement.Point, situation), Dimension.SmallLength, limit.Source,
            w =>
            {
                w?.Note($"Displacements of {movement.Point}, {when}.");
                w.Given(dx, Dimension.SmallLength, "displacement along x");
                w.Given(dy, Dimension.SmallLength, "displacement along y");
                if (still is not { } before)
                    return (w.Let("delta", Math.Sqrt(dx * dx + dy * dy), Dimension.SmallLength, meaning: "sway"), greatest);
                double z = w.Given("z", movement.Z.Meters, Dimension.SmallLength, "displacement along z"), z_0 = w.Given("z_0", before, Dimension.SmallLength, "that under weights alone");
                double dz = w.Let("dz", z - z_0, Dimension.SmallLength, meaning: "what comes and goes moves it up or down by");
                return (w.Let("delta", Math.Sqrt(dx * dx + dy * dy + dz * dz), Dimension.SmallLength, meaning: "sway, up and down too"), greatest);
            });
    }
}
