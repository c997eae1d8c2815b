using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>What acts on the base in one state.</summary>
/// <param name="Case">The load case of what acts steadily.</param>
/// <param name="Load">In the plane of the tower's base.</param>
/// <param name="WeightFactor">The factor on weights below it.</param>
/// <param name="State">The state: the heading or the time.</param>
internal readonly record struct BaseState(LoadCase Case, BaseLoad Load, double WeightFactor, DemandState State) : ITraced
{
    private static readonly (string, Dimension)[] forces =
        [("N", Dimension.Force), ("V_x", Dimension.Force), ("V_y", Dimension.Force), ("M_x", Dimension.Moment), ("M_y", Dimension.Moment), ("M_z", Dimension.Moment)];

    /// <summary>The heading or the time, in words.</summary>
    public string Where => State.When;

    /// <summary>How it comes about, in the plane of the tower's base.</summary>
    public DemandOrigin Origin => Below(0, Load);

    /// <summary>Every load case, direction or time.</summary>
    public static BaseState[] Of(IEnumerable<BaseForces> forces) =>
        [.. forces.Select(f => new BaseState(f.Case, BaseLoad.Of(f.Reaction), f.Case.WeightFactor, f.State))];

    /// <summary>How what acts in a plane below comes about, about the tower's axis: N presses down.</summary>
    /// <param name="depth">How far the plane is below the tower's base, m.</param>
    /// <param name="total">What acts there.</param>
    /// <param name="besides">What comes to it on the way.</param>
    public DemandOrigin Below(double depth, BaseLoad total, params (string Cause, BaseLoad Load)[] besides) =>
        new(State, forces, loadCase => Numbers(BaseLoad.Of(loadCase.Base).Below(depth, 0)), Numbers(total)) { Besides = [.. besides.Select(b => (b.Cause, Numbers(b.Load))).Where(b => b.Item2.Any(value => value != 0))] };

    /// <summary>How the forces of plates and bars balance it, after how it comes about.</summary>
    public DemandOrigin FreeBody(HoldDown holdDown, BaseGroup group)
    {
        BaseLoad all = Load;
        return Origin with
        {
            Then = w =>
            {
                w.Note(FormattableString.Invariant($"In balance with plates and bars, as a plane on springs: {100 * group.PressedFraction:0} % of the plates pressed."));
                (double N, double mx, double my) = group.Bed;
                (double T, double Tx, double Ty) = (0, 0, 0);
                for (int i = 0; i < group.Forces.Length; i++)
                    (T, Tx, Ty) = (T + group.Forces[i], Tx + group.Forces[i] * holdDown.Bars[i].X.Meters, Ty + group.Forces[i] * holdDown.Bars[i].Y.Meters);
                w.AddSuperposition(
                    [("N", all.N, Dimension.Force), ("M_x", -all.my, Dimension.Moment), ("M_y", all.mx, Dimension.Moment)],
                    [new("pressure under the plates", 1, [N, -my, mx]), new("pull of the anchor bars", -1, [T, -Ty, Tx])]);
            },
        };
    }

    private static double[] Numbers(BaseLoad load) => [load.N, load.Vx, load.Vy, -load.my, load.mx, load.Twist];
}
