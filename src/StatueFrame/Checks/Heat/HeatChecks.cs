using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Heat: bars bent by a skin that moves, saddles' travel, joints' gaps, restrained skin.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class HeatChecks
{
    private static readonly Source stiffness = Source.Roark("Table 8.1: flat bar with end springs, see the theory page on standoffs");
    private static readonly Source restrained = Source.Roark("section 16.6: restrained thermal expansion");
    private static readonly Source travelRule = Source.Assumed("bars: heat movement with a reserve against the travel that is free");

    private static readonly Source small = new("Mattiasson 1981, Int. J. Num. Meth. Eng. 17", "cantilever with an end force; 5 % from linear theory");
    private static readonly CheckSubject travelSubject = new("heat.saddle-travel", "travel of a saddle with heat");
    private static readonly CheckSubject jointSubject = new("heat.joint-gap", "gap of a joint in the skin");

    internal static readonly FormulaEntry<BarLoad> BarStressEntry = new(
        "heat.bar-stress", "stress in a standoff bent by heat", Nature.Strength, "every bar, by heat alone, with the drag of its saddle", "worst normal stress of the two ends",
        "elastic limit by the code of the criteria", "no situation has a temperature action")
    {
        Dimension = Dimension.Stress,
        Where = (in BarLoad load) => load.Bar.Where,
        Rule = (in BarLoad _) => stiffness,
        Lacks = (in BarLoad load) => load.Bar.Design.Uncovered,
        Run = (Working? w, in BarLoad load) =>
        {
            load.Tell(w);
            (double stress, _) = BarChecks.Bending(w, load.Ends, load.Bar.b, load.Bar.t, load.Bar.f_y, 1);
            return (stress, BarSectionChecks.Allowed(w, load.Bar.f_y, load.Bar.Design, stiffness));
        },
    };

    /// <summary>The stress in a bar whose skin end is moved by heat and cannot slide.</summary>
    /// <param name="bar">The bar; its forces are not used.</param>
    /// <param name="alongBar">Movement of the skin end along the bar, away from the tower positive, less the bar's own growth.</param>
    /// <param name="alongThickness">Movement along the bar's thickness.</param>
    /// <param name="alongWidth">Movement along the bar's width.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check BarStress(LoadedBar bar, Length alongBar, Length alongThickness, Length alongWidth, BarDesign design)
    {
        BarLoad load = bar.Load(design);
        double dx = CheckInput.Finite(alongBar.Meters, nameof(alongBar)), dy = CheckInput.Finite(alongThickness.Meters, nameof(alongThickness));
        double dz = CheckInput.Finite(alongWidth.Meters, nameof(alongWidth));
        CheckSubject subject = BarStressEntry.Subject(bar.Where, bar.Situation);
        if (design.Uncovered is { } reason)
            return Check.NotChecked(subject, reason, stiffness);
        return Check.Of(subject, Dimension.Stress, stiffness, w => (ImposedStress(w, bar, dx, dy, dz), BarSectionChecks.Allowed(w, load.Bar.f_y, design, stiffness)));
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
        _ = bar.Load(BarDesign.For(bar.Material));
        Span<double> f = stackalloc double[12];
        Forces(bar, CheckInput.Finite(alongBar.Meters, nameof(alongBar)), CheckInput.Finite(alongThickness.Meters, nameof(alongThickness)),
            CheckInput.Finite(alongWidth.Meters, nameof(alongWidth)), f);
        var forces = new BarForces(BarEnds.Of(f));
        return bar with { AtTower = BarSectionForces.AtTower(forces), AtSkin = BarSectionForces.AtSkin(forces) };
    }

    /// <summary>The stress in a bar that heat has bent, from its end forces: |N|/A + |M_weak|/W_weak + |M_strong|/W_strong at the worse end.</summary>
    /// <param name="bar">The bar with the forces of the heat.</param>
    /// <param name="design">Rules and factors.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check BarStress(LoadedBar bar, BarDesign design) => BarStressEntry.With(bar.Load(design), bar.Situation);

    /// <summary>
    /// The deflection of a bar by heat against the length over which results for small deflections are good: 0.24 of the
    /// bar's length, where they are 5 % off for a cantilever.
    /// </summary>
    /// <param name="deflection">Movement of the skin end against the tower end, without the slide of its saddle; zero or more.</param>
    /// <param name="length">Length of the bar.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check Deflection(Length deflection, Length length, string where = "", string situation = "")
    {
        double delta = CheckInput.NotNegative(deflection.Meters, nameof(deflection)), L = CheckInput.Positive(length.Meters, nameof(length));
        return Check.Of(new CheckSubject("heat.bar-deflection", "deflection of a standoff by heat", where, situation), Dimension.SmallLength, small, w =>
        {
            w.Given(delta, Dimension.SmallLength, "deflection");
            w.Given(L, Dimension.Length, "length");
            return (delta, w.Let("limit", 0.24 * L, Dimension.SmallLength, small));
        });
    }

    /// <summary>The slide of a saddle with heat and a reserve against the travel that is free.</summary>
    /// <param name="slide">Slide from the position as fitted; zero or more.</param>
    /// <param name="travel">Free travel on the shorter side.</param>
    /// <param name="reserve">What must be left; zero or more.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is negative or not finite.</exception>
    public static Check SaddleTravel(Length slide, Length travel, Length reserve, string where = "", string situation = "") =>
        Travel(travelSubject with { Where = where, Situation = situation }, slide, travel, reserve);

    /// <summary>The closing or opening of a joint between two fields of skin against its gap.</summary>
    /// <param name="movement">Closing or opening; the sign does not matter.</param>
    /// <param name="gap">Width of the joint that can close, or that its cover can bridge.</param>
    /// <param name="reserve">What must be left; zero or more.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check JointGap(Length movement, Length gap, Length reserve, string where = "", string situation = "") =>
        Travel(jointSubject with { Where = where, Situation = situation }, Length.FromMeters(Math.Abs(CheckInput.Finite(movement.Meters, nameof(movement)))), gap, reserve);

    /// <summary>
    /// The stress in a skin that its bars hold against heat: along the axis and around the plan, added, and at most that
    /// of a skin held fully both ways, E|ε|/(1 − ν).
    /// </summary>
    /// <param name="along">Greatest force of the bars along the axis in a cut of the skin, without sign.</param>
    /// <param name="cut">Area of sheet in that cut.</param>
    /// <param name="around">Sum of the bars' forces square to the skin on a band, without sign; over 2π it is the force around a round band.</param>
    /// <param name="strip">Area of sheet in a cut along the axis through the band.</param>
    /// <param name="movement">Skin against tower.</param>
    /// <param name="skin">The metal of the skin.</param>
    /// <param name="allowableFraction">Allowable stress over yield or proof strength, above 0 to 1.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentException">An input is out of range.</exception>
    public static Check Restraint(
        Force along, Area cut, Force around, Area strip, HeatMovement movement, Material skin, double allowableFraction, string where = "", string situation = "")
    {
        double N = CheckInput.NotNegative(along.Newtons, nameof(along)), A = CheckInput.Positive(cut.SquareMeters, nameof(cut));
        double R = CheckInput.NotNegative(around.Newtons, nameof(around)), A_strip = CheckInput.Positive(strip.SquareMeters, nameof(strip));
        double nu = skin.PoissonRatio, E = skin.YoungsModulus.Pascals, f_y = skin.YieldStrength.Pascals;
        double fraction = CheckInput.Within(allowableFraction, 0.05, 1, nameof(allowableFraction));
        _ = movement.Compute(null);
        return Check.Of(new CheckSubject("heat.restraint", "stress in a skin held against heat", where, situation), Dimension.Stress, restrained, w =>
        {
            w.Given(N, Dimension.Force, "along the axis");
            w.Given(A, Dimension.SmallArea, "cut across the axis");
            w.Given(R, Dimension.Force, "square to the skin, all bars");
            w.Given(A_strip, Dimension.SmallArea, "cut along the axis");
            double sigma_b = w.Let("sigma_b", N / A + R / (2 * Math.PI * A_strip), Dimension.Stress, meaning: "by the bars");
            double strain = movement.Compute(w).Strain;
            w.Given(E, Dimension.Stress, "Young's modulus");
            w.Given(nu, Dimension.Number, "Poisson's ratio");
            double sigma_f = w.Let("sigma_f", E * Math.Abs(strain) / (1 - nu), Dimension.Stress, restrained, "held fully");
            w.Given(f_y, Dimension.Stress, "yield or proof strength");
            w.Given(fraction, Dimension.Number, "allowable fraction");
            return (Math.Min(sigma_b, sigma_f), w.Let("sigma_allow", fraction * f_y, Dimension.Stress));
        });
    }

    /// <summary>The heat movement with a reserve against the travel that a saddle's slot leaves on its shorter side.</summary>
    /// <param name="movement">Skin against tower.</param>
    /// <param name="travel">Free travel in the direction of the movement, from the position as fitted.</param>
    /// <param name="reserve">For tolerances and for wind; zero or more.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check SlotTravel(HeatMovement movement, Length travel, Length reserve, string where = "", string situation = "") =>
        Travel(travelSubject with { Where = where, Situation = situation }, movement, travel, reserve);

    /// <summary>The opening or closing of a joint between two fields of skin against the gap that is there.</summary>
    /// <param name="movement">The skin's growth from the middle of the field to the joint; the tower's part is that to which the field is fixed.</param>
    /// <param name="gap">Width of the joint that can close, or that its cover can bridge.</param>
    /// <param name="reserve">What must be left; zero or more.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check JointGap(HeatMovement movement, Length gap, Length reserve, string where = "", string situation = "") =>
        Travel(jointSubject with { Where = where, Situation = situation }, movement, gap, reserve);

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
        BarEnds ends = BarEnds.Of(f);
        (double b, double t) = (bar.Section.Width.Meters, bar.Section.Thickness.Meters);
        if (w is null)
            return ends.NormalStress(b, t);
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
        double tower = w.Given("tower", ends.Tower.NormalStress(b, t), Dimension.Stress, "|N|/A + |M_weak|/W_weak + |M_strong|/W_strong at the tower end");
        double skin = w.Given("skin", ends.Skin.NormalStress(b, t), Dimension.Stress, "the same at the skin end");
        return w.Let("sigma", Math.Max(tower, skin), Dimension.Stress);
    }

    private static BarStiffness Forces(LoadedBar bar, double dx, double dy, double dz, Span<double> forces)
    {
        var k = new BarStiffness(
            new FlatRectangle(bar.Section.Width.Meters, bar.Section.Thickness.Meters), bar.Length.Meters, bar.Material.YoungsModulus.Pascals,
            bar.Material.ShearModulus.Pascals, bar.TowerFixity.Springs, bar.SkinFixity.Springs);
        k.Forces([dx, dy, dz, 0, 0, 0], forces);
        return k;
    }

    private static Check Travel(CheckSubject subject, HeatMovement movement, Length travel, Length reserve)
    {
        double free = CheckInput.NotNegative(travel.Meters, nameof(travel)), r = CheckInput.NotNegative(reserve.Meters, nameof(reserve));
        _ = movement.Compute(null);
        return Check.Of(subject, Dimension.SmallLength, travelRule, w => Travel(w, movement.Compute(w).Movement, r, free));
    }

    private static Check Travel(CheckSubject subject, Length movement, Length travel, Length reserve)
    {
        double delta = CheckInput.NotNegative(movement.Meters, nameof(movement));
        double free = CheckInput.NotNegative(travel.Meters, nameof(travel)), r = CheckInput.NotNegative(reserve.Meters, nameof(reserve));
        return Check.Of(subject, Dimension.SmallLength, travelRule, w => Travel(w, w.Given(delta, Dimension.SmallLength, "movement"), r, free));
    }

    private static (double Demand, double Capacity) Travel(Working? w, double delta, double r, double free)
    {
        w.Given(r, Dimension.SmallLength, "reserve");
        double needed = w.Let("needed", Math.Abs(delta) + r, Dimension.SmallLength, travelRule);
        return (needed, w.Given(free, Dimension.SmallLength, "free travel"));
    }
}
