using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Tests.Actions.Ice;

public class IceTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        .. Glaze(1, 0.6, 1.1, 3.1, 8.8), .. Glaze(3, 3.4, 5.1, 11.0, 28.0),
        .. Rime(1, 55), .. Rime(5, 149), .. Rime(9, 462),
        new("wind factor k with glaze G3", "ISO 12494:2017, 9.2", 0.50, "-", 1e-9, () => IceClass.Glaze(3).WindFactor, ValueKind.FromMemory) { IsReadBack = true },
        new("wind factor k with rime R7", "ISO 12494:2017, 9.2", 0.80, "-", 1e-9, () => IceClass.Rime(7).WindFactor, ValueKind.FromMemory) { IsReadBack = true },
    ];

    private static IEnumerable<PublishedValue> Glaze(int number, params double[] masses) =>
        new[] { 10.0, 30, 100, 300 }.Zip(masses, (d, mass) => new PublishedValue(
            $"glaze G{number} on a rod of {d} mm", "ISO 12494:2017, 7.4, table of masses", mass, "kg/m", 0.06 / mass,
            () => IceClass.Glaze(number).MassOnRound(Length.FromMillimeters(d)).KilogramsPerMeter, ValueKind.FromMemory)
        { IsReadBack = true });

    private static PublishedValue[] Rime(int number, double diameter) =>
    [
        new($"diameter of the reference rod with rime R{number} of 300 kg/m³", "ISO 12494:2017, 7.5, table of diameters", diameter, "mm", 0.6 / diameter,
            () => IceClass.Rime(number, Density.FromKilogramsPerCubicMeter(300)).DiameterOfReferenceRod.Millimeters, ValueKind.FromMemory) { IsReadBack = true },
    ];

    [Fact]
    public void The_weight_on_the_skin_is_sheet_area_times_thickness()
    {
        Statue statue = Stages.Statue with { Limbs = [] };
        var ice = new IceAction { Class = IceClass.Glaze(2) };
        double expected = statue.Skin!.SheetArea().SquareMeters * 0.02 * 900 * SelfWeight.Gravity;
        Assert.Equal(expected, -Stages.Blow(statue, ice).Base.ForceZ.Newtons, 1e-6 * expected);
    }

    [Fact]
    public void Bars_under_limp_skin_carry_the_ice_on_their_strips()
    {
        Statue statue = Stages.Statue with { Limbs = [] };
        var ice = new IceAction { Class = IceClass.Glaze(2) };
        double expected = statue.Skin!.SheetArea().SquareMeters * 0.02 * 900 * SelfWeight.Gravity;
        Assert.Equal(1.5 * expected, Down([new SelfWeight(), 1.5 * ice]) - Down([new SelfWeight()]), 1e-6 * expected);

        double Down(ValueList<FactoredAction> actions)
        {
            StatueModel model = StatueModel.Build(statue);
            LoadCase loadCase = model.Respond(new Situation { Name = "ice", Actions = actions }).Cases[0];
            var f = new double[12];
            double sum = 0;
            foreach ((RingElement ring, int band) in model.Rings)
            {
                foreach (BarModel bar in ring.Bars)
                {
                    loadCase.ForcesOf(ring, bar, band, SkinAssumption.LimpSkin, f);
                    sum -= bar.Bar.Place.Axes.ToGlobal(new Vector3D(f[6], f[7], f[8])).Z;
                }
            }
            return sum;
        }
    }

    [Fact]
    public void The_weight_on_a_bare_tower_is_that_on_its_members()
    {
        var ice = new IceAction { Class = IceClass.Glaze(1) };
        double Coat(double perimeter) => 900 * (perimeter * 0.01 + Math.PI * 1e-4);
        double legs = 4 * 6 * Coat(4 * 0.12), braces = 3 * 8 * Math.Sqrt(8) * Coat(4 * 0.075), tube = 2 * Coat(Math.PI * 0.4);
        double expected = (legs + braces + tube) * SelfWeight.Gravity;
        Assert.Equal(expected, -Stages.Blow(Stages.Bare, ice).Base.ForceZ.Newtons, 1e-6 * expected);
    }

    [Fact]
    public void Ice_makes_bare_members_wider_for_the_wind() =>
        Gen.Int[1, 5].Sample(number =>
            Stages.Blow(Stages.Bare, Stages.Wind(0), new IceAction { Class = IceClass.Glaze(number) }).WindForce > Stages.Blow(Stages.Bare, Stages.Wind(0)).WindForce, iter: 5);

    [Fact]
    public void A_higher_class_is_heavier_and_goes_with_more_wind() =>
        Gen.Int[1, 8].Sample(number =>
            IceClass.Rime(number).MassOnReferenceRod < IceClass.Rime(number + 1).MassOnReferenceRod
            && IceClass.Rime(number).WindFactor <= IceClass.Rime(number + 1).WindFactor
            && (number > 4 || IceClass.Glaze(number).MassOnReferenceRod < IceClass.Glaze(number + 1).MassOnReferenceRod));

    [Fact]
    public void The_sheet_says_what_the_ice_is_taken_for()
    {
        var frost = new Situation { Name = "frost", Actions = [new SelfWeight(), new IceAction { Class = IceClass.Rime(3) }] };
        CheckSheet sheet = Stages.Bare.Check(new Criteria(), frost);
        Assert.Contains(sheet.Assumptions, a => a.Subject == "coat of ice R3");
        Assert.Contains(sheet.Assumptions, a => a.Subject == "shape of rime");
    }

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => IceClass.Glaze(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => IceClass.Glaze(6));
        Assert.Throws<ArgumentOutOfRangeException>(() => IceClass.Rime(10));
        Assert.Throws<ArgumentOutOfRangeException>(() => IceClass.Rime(3, Density.FromKilogramsPerCubicMeter(9000)));
        Assert.Throws<ArgumentOutOfRangeException>(() => IceClass.Glaze(1).MassOnRound(Length.FromMeters(3)));
        IceAction one = new() { Class = IceClass.Glaze(1) };
        Assert.Throws<InvalidStatueException>(() => StatueModel.Build(Stages.Bare).Respond(new Situation { Name = "twice", Actions = [one, one] }));
    }
}
