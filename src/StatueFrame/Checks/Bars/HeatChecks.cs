using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Heat: bars bent by a skin that moves, saddles' travel, joints' gaps, restrained skin.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class HeatChecks
{
    private static readonly Source stiffness = Source.Roark("Table 8.1: flat bar with end springs, see the theory page on standoffs");
    private static readonly Source restrained = Source.Roark("section 16.6: restrained thermal expansion");
    private static readonly Source travelRule = Source.Assumed("bars: heat movement with a reserve against the travel that is free");

    /// <summary>The stress in a bar whose skin end is moved by heat and cannot slide.</summary>
    /// <param name="bar">The bar; its forces are not used.</param>
    /// <param name="alongBar">Movement of the skin end along the bar, away from the tower positive, less the bar's own growth.</param>
    /// <param name="alongThickness">Movement along the bar's thickness.</param>
    /// <param name="alongWidth">Movement along the bar's width.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check BarStress(LoadedBar bar, Length alongBar, Length alongThickness, Length alongWidth, BarDesign design)
    {
        bar.Validate(design);
        double dx = CheckInput.Finite(alongBar.Meters, nameof(alongBar)), dy = CheckInput.Finite(alongThickness.Meters, nameof(alongThickness));
        double dz = CheckInput.Finite(alongWidth.Meters, nameof(alongWidth));
        CheckSubject subject = bar.Subject("heat.bar-stress", "stress in a standoff bent by heat");
        if (design.Uncovered is { } reason)
            return Check.NotChecked(subject, reason, stiffness);
        return Check.Of(subject, Dimension.Stress, stiffness, w => (ImposedStress(w, bar, dx, dy, dz), BarSectionChecks.Allowed(w, bar.f_y, design, stiffness)));
    }

    /// <summary>The forces on a bar's two ends when its skin end is moved and cannot slide.</summary>
    /// <param name="bar">The bar; its forces are not used.</param>
    /// <param name="alongBar">Movement along the bar, away from the tower positive.</param>
    /// <param name="alongThickness">Movement along the thickness.</param>
    /// <param name="alongWidth">Movement along the width.</param>
    /// <returns>The same bar carrying these forces, for the other checks.</returns>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static LoadedBar Imposed(LoadedBar bar, Length alongBar, Length alongThickness, Length alongWidth)
    {
        bar.Validate(BarDesign.For(bar.Material));
        Span<double> f = stackalloc double[12];
        Forces(bar, CheckInput.Finite(alongBar.Meters, nameof(alongBar)), CheckInput.Finite(alongThickness.Meters, nameof(alongThickness)),
            CheckInput.Finite(alongWidth.Meters, nameof(alongWidth)), f);
        var forces = new Analysis.BarForces(f);
        return bar with { AtTower = BarSectionForces.AtTower(forces), AtSkin = BarSectionForces.AtSkin(forces) };
    }

    /// <summary>The heat movement with a reserve against the travel that a saddle's slot leaves on its shorter side.</summary>
    /// <param name="movement">Skin against tower.</param>
    /// <param name="travel">Free travel in the direction of the movement, from the position as fitted.</param>
    /// <param name="reserve">For tolerances and for wind; zero or more.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check SlotTravel(HeatMovement movement, Length travel, Length reserve, string where = "", string situation = "") =>
        Travel("heat.saddle-travel", "travel of a saddle with heat", movement, travel, reserve, where, situation);

    /// <summary>The opening or closing of a joint between two fields of skin against the gap that is there.</summary>
    /// <param name="movement">The skin's growth from the middle of the field to the joint; the tower's part is that to which the field is fixed.</param>
    /// <param name="gap">Width of the joint that can close, or that its cover can bridge.</param>
    /// <param name="reserve">What must be left; zero or more.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check JointGap(HeatMovement movement, Length gap, Length reserve, string where = "", string situation = "") =>
        Travel("heat.joint-gap", "gap of a joint in the skin", movement, gap, reserve, where, situation);

    /// <summary>The stress in a skin that is held so stiffly that it cannot move against the tower.</summary>
    /// <param name="movement">Skin against tower.</param>
    /// <param name="skin">The metal of the skin.</param>
    /// <param name="bothWays">True when it is held in both directions of its plane: then the stress is 1/(1 − ν) times greater.</param>
    /// <param name="allowableFraction">Allowable stress over yield or proof strength, above 0 to 1.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check RestrainedSkin(HeatMovement movement, Material skin, bool bothWays, double allowableFraction, string where = "", string situation = "")
    {
        double nu = skin.PoissonRatio, E = skin.YoungsModulus.Pascals, f_y = skin.YieldStrength.Pascals;
        double fraction = CheckInput.Within(allowableFraction, 0.05, 1, nameof(allowableFraction));
        _ = movement.Compute(null);
        return Check.Of(new CheckSubject("heat.restraint", "stress in a skin held against heat", where, situation), Dimension.Stress, restrained, w =>
        {
            double strain = movement.Compute(w).Strain;
            w.Given(E, Dimension.Stress, "Young's modulus");
            w.Given(nu, Dimension.Number, "Poisson's ratio");
            double sigma = bothWays
                ? w.Let("sigma", E * Math.Abs(strain) / (1 - nu), Dimension.Stress, restrained)
                : w.Let("sigma", E * Math.Abs(strain), Dimension.Stress, restrained);
            w.Given(f_y, Dimension.Stress, "yield or proof strength");
            w.Given(fraction, Dimension.Number, "allowable fraction");
            return (sigma, w.Let("sigma_allow", fraction * f_y, Dimension.Stress));
        });
    }

    /// <summary>Greatest normal stress of a bar whose skin end moves by (dx, dy, dz), Pa.</summary>
    internal static double ImposedStress(Working? w, LoadedBar bar, double dx, double dy, double dz)
    {
        Span<double> f = stackalloc double[12];
        BarStiffness k = Forces(bar, dx, dy, dz, f);
        if (w is null)
            return k.Stress(f).Normal;
        w.Given(dx, Dimension.SmallLength, "imposed along the bar");
        w.Given(dy, Dimension.SmallLength, "imposed along the thickness");
        w.Given(dz, Dimension.SmallLength, "imposed along the width");
        Span<double> matrix = stackalloc double[36];
        k.CopyTo(matrix);
        double k_x = w.Given("k_x", matrix[0], Dimension.Stiffness, "stiffness along the bar", stiffness);
        double k_y = w.Given("k_y", matrix[7], Dimension.Stiffness, "stiffness along the thickness", stiffness);
        double k_z = w.Given("k_z", matrix[14], Dimension.Stiffness, "stiffness along the width", stiffness);
        w.Let("N", k_x * dx, Dimension.Force, stiffness);
        w.Let("V_t", k_y * dy, Dimension.Force, stiffness);
        w.Let("V_b", k_z * dz, Dimension.Force, stiffness);
        double tower = w.Given("tower", k.Stress(f).TowerEnd, Dimension.Stress, "|N|/A + |M_weak|/W_weak + |M_strong|/W_strong at the tower end");
        double skin = w.Given("skin", k.Stress(f).SkinEnd, Dimension.Stress, "the same at the skin end");
        return w.Let("sigma", Math.Max(tower, skin), Dimension.Stress);
    }

    private static BarStiffness Forces(LoadedBar bar, double dx, double dy, double dz, Span<double> forces)
    {
        var k = new BarStiffness(new FlatRectangle(bar.b, bar.t), bar.L, bar.E, bar.G, bar.TowerFixity.Springs, bar.SkinFixity.Springs);
        k.Forces([dx, dy, dz, 0, 0, 0], forces);
        return k;
    }

    private static Check Travel(string id, string title, HeatMovement movement, Length travel, Length reserve, string where, string situation)
    {
        double free = CheckInput.NotNegative(travel.Meters, nameof(travel)), r = CheckInput.NotNegative(reserve.Meters, nameof(reserve));
        _ = movement.Compute(null);
        return Check.Of(new CheckSubject(id, title, where, situation), Dimension.SmallLength, travelRule, w =>
        {
            double delta = movement.Compute(w).Movement;
            w.Given(r, Dimension.SmallLength, "reserve");
            double needed = w.Let("needed", Math.Abs(delta) + r, Dimension.SmallLength, travelRule);
            return (needed, w.Given(free, Dimension.SmallLength, "free travel"));
        });
    }
}
