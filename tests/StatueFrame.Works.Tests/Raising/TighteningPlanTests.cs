namespace StatueFrame.Works.Tests.Raising;

public class TighteningPlanTests
{
    private static readonly Concrete C30 = Concrete.OfStrength(30.Megapascals);

    private static readonly HoldDown Pair = new()
    {
        Plates = [new BasePlate { WidthX = 0.6.Meters, WidthY = 0.3.Meters, FootX = 0.2.Meters, FootY = 0.2.Meters, Thickness = 40.Millimeters, Material = StructuralSteel.S355 }],
        Bars = [.. new[] { -0.2, 0.2 }.Select(x => new AnchorBar { X = x.Meters, Y = 0.Meters, Diameter = 36.Millimeters, Material = StructuralSteel.S355, FreeLength = 1.Meters, Embedment = 1.2.Meters, PreTension = 100.Kilonewtons })],
        BedDepth = 1.Meters,
    };

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("two bars on one plate, tightened once each: what the first keeps", "closed form: loss k δ of the first while the second is pulled", FirstKeeps, "kN", 1e-9, () => TighteningPlan.Of(Statue(Pair), 0.15, 1).Left[0].Kilonewtons, ValueKind.IndependentComputation),
        new("torque for 100 kN in M36 with k = 0.15", "closed form k d F", 0.15 * 0.036 * 100e3, "N·m", 1e-9, () => TighteningPlan.Of(Statue(Pair), 0.15, 1).Steps[^1].Torque.NewtonMeters, ValueKind.IndependentComputation),
    ];

    /// <summary>
    /// The plate on its bed and the tight first bar is a body with two freedoms, w and a; the force of the second moves the first's
    /// place by δ = F (1/K_w + x₁x₂/K_a), coupled by the bar: solved as a 2×2 system by hand.
    /// </summary>
    private static double FirstKeeps
    {
        get
        {
            double E = C30.E, k = 200e9 * 0.78 * Math.PI / 4 * 0.036 * 0.036, bed = E * 0.6 * 0.3, K_w = bed, K_a = bed * 0.6 * 0.6 / 12, F = 100e3, x = 0.2;
            k = Pair.Bars[0].Stiffness;
            // First bar alone: it ends with F. Then F at +x, with the first bar's spring at −x.
            double a11 = K_w + k, a12 = -k * x, a22 = K_a + k * x * x, det = a11 * a22 - a12 * a12;
            double w = (F * a22 - F * x * a12) / det, a = (a11 * F * x - a12 * F) / det;
            return (F - k * (w - a * x)) / 1000;
        }
    }

    private static Statue Statue(HoldDown holdDown) => Heron.Tube(2, 2) with
    {
        HoldDown = holdDown,
        Pedestal = new Pedestal { Courses = [new PedestalCourse { Section = new RectangularBlock(3.Meters, 3.Meters), Height = 2.Meters, Material = C30 }] },
    };

    [Fact]
    public void Every_bar_is_tightened_in_every_round_and_more_rounds_leave_more()
    {
        TighteningPlan plan = TighteningPlan.Of(Heron.Statue, 0.14);
        int bars = Heron.Statue.HoldDown!.Bars.Count;
        Assert.Equal(3 * bars, plan.Steps.Count);
        foreach (IGrouping<int, TighteningStep> round in plan.Steps.GroupBy(s => s.Round))
            Assert.Equal(Enumerable.Range(1, bars), round.Select(s => s.Bar).Order());
        Assert.True(plan.LeastPart >= TighteningPlan.Of(Heron.Statue, 0.14, 1).LeastPart);
        Assert.InRange(plan.LeastPart, 0.95, 1.001);
        Assert.InRange(TighteningPlan.Of(Heron.Statue, 0.14, 6).LeastPart, plan.LeastPart, 1.001);
    }

    [Fact]
    public void A_statue_without_pre_tension_has_nothing_to_tighten() =>
        Assert.Contains("pre-tension", Assert.Throws<InvalidStatueException>(() => TighteningPlan.Of(Heron.Tube(2, 2), 0.15)).Message);
}
