namespace StatueFrame.Checks;

/// <summary>A base plate that one of its anchor bars bends up. SI units.</summary>
/// <param name="Where">The foot or the bar.</param>
/// <param name="Plate">The plate; null for a bar that passes through none.</param>
/// <param name="Bar">The bar.</param>
/// <param name="Bars">All bars through the plate.</param>
/// <param name="IsRound">Whether a round section stands on it.</param>
/// <param name="Pull">What pulls, without pre-tension, which the plate bears down with where it acts.</param>
/// <param name="Sharing">How many bars share the pull.</param>
/// <param name="Design">The rules.</param>
internal readonly record struct PlatePull(string Where, BasePlate? Plate, AnchorBar Bar, ValueList<AnchorBar> Bars, bool IsRound, double Pull, int Sharing, BaseDesign Design) : ITraced
{
    /// <summary>How the pull comes about.</summary>
    public DemandOrigin? Origin { get; init; }
}

/// <summary>Base plates bent up by their anchor bars, as T-stubs: a leg's own uplift on its foot, and the pull that every bar has in the balance of the whole base.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. A plate that bears the pull M_pl/m without prying, on a bar that bears it too, bears
/// it with prying: the force (M_pl + e F_t)/(m + e) of that mode lies between M_pl/m and F_t.
/// </remarks>
internal static class PlateUplift
{
    private const string NoPlates = "no hold-down is described (Statue.HoldDown)";
    private static readonly Source stub = new("EN 1993-1-8:2005", "6.2.4, Table 6.2 without prying; l_eff of Table 6.6, from memory");

    /// <summary>The plate of a leg under that leg's own uplift.</summary>
    public static readonly FormulaEntry<PlatePull> OfFeet = Entry("feet.plate-uplift", "every foot that a leg pulls up, every bar", "pull of a bar by the leg's uplift");

    /// <summary>The plates under the pull of their bars.</summary>
    public static readonly FormulaEntry<PlatePull> OfBase = Entry("base.plate-uplift", "every bar, every state", "pull of the bar, without pre-tension");

    private static FormulaEntry<PlatePull> Entry(string id, string parts, string demand) => new(
        id, "base plate bent up by its anchor bars", Nature.Strength, parts, demand, "plate as a T-stub without prying", NoPlates)
    {
        Dimension = Dimension.Force,
        Where = (in PlatePull pull) => pull.Where,
        Rule = (in PlatePull _) => stub,
        Lacks = (in PlatePull pull) => pull.Plate is null ? "it passes through no plate; describe what hands its pull to the tower" : null,
        Run = Run,
    };

    /// <summary>The plate that a bar passes through; null for none.</summary>
    public static BasePlate? Of(HoldDown holdDown, AnchorBar bar) => holdDown.Plates.FirstOrDefault(plate => IsThrough(plate, bar));

    /// <summary>The bars that pass through a plate.</summary>
    public static ValueList<AnchorBar> BarsOf(BasePlate plate, HoldDown holdDown) => holdDown.Bars.Where(bar => IsThrough(plate, bar)).ToValueList();

    private static bool IsThrough(BasePlate plate, AnchorBar bar) =>
        Math.Abs(bar.X.Meters - plate.X.Meters) <= 0.5 * plate.WidthX.Meters && Math.Abs(bar.Y.Meters - plate.Y.Meters) <= 0.5 * plate.WidthY.Meters;

    private static (double Demand, double Capacity) Run(Working? w, in PlatePull pull)
    {
        BasePlate plate = pull.Plate!;
        AnchorBar bar = pull.Bar;
        double T = Math.Max(0, pull.Pull);
        if (pull.Sharing > 1)
        {
            double U = w.Given("U", T, Dimension.Force, "uplift"), n = w.Given("n", pull.Sharing, Dimension.Number, "bars through the plate");
            T = w.Let("T", U / n, Dimension.Force, stub, "of each bar");
        }
        else
        {
            w.Given(T, Dimension.Force, "pull of the bar");
        }
        PlateStub bent = PlateStub.Of(plate, bar, pull.Bars, pull.IsRound);
        if (bent.m <= 0)
        {
            w?.Note("The bar stands at the foot: the plate is not bent.");
            return (0, 1);
        }
        double m = w.Given("m", bent.m, Dimension.SmallLength, "lever of the bar from what stands on the plate"), l = w.Given("l", bent.l, Dimension.SmallLength, "l_eff, the length of plate that bends for it", stub);
        double t = w.Given("t", plate.Thickness.Meters, Dimension.SmallLength, "thickness"), f_y = w.Given("f_y", plate.Metal.YieldStrength.Pascals, Dimension.Stress, "yield strength");
        double reduced = w.Given("reduced", pull.Design.IsAmerican ? 0.9 : 1 / pull.Design.GammaM0, Dimension.Number, pull.Design.IsAmerican ? "ϕ" : "1/γ_M0");
        double M_pl = w.Let("M_pl", l * t * t / 4 * f_y * reduced, Dimension.Moment, stub);
        return (T, w.Let("F_T", M_pl / m, Dimension.Force, stub, "as a cantilever, which needs no prying at the edge"));
    }
}
