namespace StatueFrame.Checks;

/// <summary>A block in the ground in one state: what stands on it and how the ground presses. SI units.</summary>
/// <param name="Foundation">The block.</param>
/// <param name="Loaded">Widths of what stands on it; of a round course those of the square of equal area.</param>
/// <param name="Greatest">Greatest pressure on the ground, linear without tension, Pa; infinite when nothing balances the load.</param>
/// <param name="Least">Least pressure, zero where the ground lets go, Pa.</param>
/// <param name="OwnPressure">Weight of the block with its factor over its area, Pa.</param>
/// <param name="EarthPressure">Weight of the earth on what sticks out, with the factor of the weights, Pa: it bends the block down.</param>
/// <param name="Where">The state.</param>
/// <param name="Situation">The situation.</param>
internal sealed record Footing(Foundation Foundation, (double X, double Y) Loaded, double Greatest, double Least, double OwnPressure, double EarthPressure, string Where, string Situation)
{
    public double OverhangX => Math.Max(0, 0.5 * (Foundation.WidthX.Meters - Loaded.X));

    public double OverhangY => Math.Max(0, 0.5 * (Foundation.WidthY.Meters - Loaded.Y));

    /// <summary>The block under a load in its underside.</summary>
    public static Footing Of(Foundation foundation, BlockSection on, BaseLoad load, double weightFactor, string where, string situation)
    {
        ContactPlane? plane = NoTension.Solve(foundation.Plan, load.N, load.mx, load.my);
        (double x, double y) = on.Widths;
        double even = on is RoundBlock ? Math.Sqrt(Math.PI) / 2 : 1;
        return new Footing(foundation, (even * x, even * y), plane?.GreatestPressure ?? double.PositiveInfinity, Math.Max(0, plane?.LeastPressure ?? 0),
            weightFactor * foundation.Weight / (foundation.WidthX.Meters * foundation.WidthY.Meters),
            weightFactor * foundation.Soil.Weight * Math.Max(0, foundation.Depth.Meters - foundation.Thickness.Meters), where, situation);
    }

    public CheckSubject Subject(string name, string title) => new($"foundation.{name}", title, Where, Situation);
}
