using CsCheck;
using StatueFrame.Checks;
using StatueFrame.Studies;
using StatueFrame.Tests.Actions;
using StatueFrame.Tests.Analyses;

namespace StatueFrame.Tests.Studies.Reanalyses;

public class StatueReanalysisTests
{
    private const double Tolerance = 1e-9;

    private static readonly Criteria criteria = new()
    {
        Modes = 3,
        Sway = [new SwayLimit("neck", 20.Millimeters)],
    };

    private static readonly SampleStatue sample = new() { Base = SampleStatue.Springs };

    private static readonly Situation[] situations =
    [
        new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 0.3 * sample.Wind(0, 0.7, 1.9, 2.6, 4)] },
        new() { Name = "weight", Actions = [1.2 * new SelfWeight()] },
        new() { Name = "breeze", LimitState = LimitState.Service, Actions = [1 * new SelfWeight(), 0.6 * sample.Wind(0.3, 3), 1 * sample.Imposed("wing/W2", 300, -200, 900)] },
    ];

    private static readonly Gen<double> scale = Gen.Double[0.8, 1.3];

    /// <summary>A statue with the base's geometry whose flats, sheet, fittings and springs are other ones.</summary>
    private static readonly Gen<Func<Statue, Statue>> changes = Gen.Select(
        scale, scale, scale, scale, Gen.Double[0, 20], Gen.Bool, Gen.Int[1, 15],
        (flats, sheet, fittings, springs, armature, isDuplex, which) => (Func<Statue, Statue>)(statue => statue with
        {
            Standoffs = (which & 1) == 0 ? statue.Standoffs : statue.Standoffs.Select(r => Changed(r, flats, isDuplex ? StainlessSteel.Duplex2205 : StainlessSteel.Grade316L)).ToValueList(),
            Skin = (which & 2) == 0 ? statue.Skin : statue.Skin! with { Thickness = (sheet * statue.Skin.Thickness.Meters).Meters, ArmatureMass = armature.KilogramsPerSquareMeter },
            Fittings = (which & 4) == 0 ? statue.Fittings : statue.Fittings.Select(f => f with { Mass = fittings * f.Mass }).ToValueList(),
            Tower = (which & 8) == 0 ? statue.Tower : statue.Tower with { Base = statue.Tower.Base with { RotationX = springs * statue.Tower.Base.RotationX!.Value } },
        }));

    private static StandoffRing Changed(StandoffRing ring, double factor, Material metal) => ring switch
    {
        EvenRing even => even with { Standoff = Changed(even.Standoff, factor, metal) },
        ExplicitRing own => own with { Bars = own.Bars.Select(b => b with { Standoff = Changed(b.Standoff, factor, metal) }).ToValueList() },
        _ => ring,
    };

    private static Standoff Changed(Standoff standoff, double factor, Material metal) => standoff with
    {
        Section = new FlatBar(standoff.Section.Width, factor * standoff.Section.Thickness),
        Material = metal,
        TowerFixity = EndFixity.Rigid,
    };

    private static void RequireSame(ReanalysisNumbers numbers, CheckSheet sheet, Statue statue, Situation[] situations)
    {
        Close(Result("masses", "total"), numbers.Mass.Kilograms, "mass");
        Close(Result("center of mass", "z"), numbers.Center.Meters.Z, "center");
        for (int i = 0; i < numbers.Frequencies.Count; i++)
            Close(Result("frequencies", $"mode {i + 1}"), numbers.Frequencies[i].Hertz, "frequency");
        Assert.Equal(situations.Select(s => s.Name), numbers.Situations.Select(s => s.Situation));
        foreach (SituationNumbers own in numbers.Situations)
        {
            string name = own.Situation;
            Close(Result(name, "base shear"), own.BaseShear.Newtons, "shear", 1e-6);
            Close(Result(name, "base vertical force"), own.BaseVertical.Newtons, "vertical force");
            Close(Result(name, "base overturning moment"), own.BaseOverturning.NewtonMeters, "moment");
            Close(Result(name, "greatest bar stress"), own.BarStress!.Value.Pascals, "stress");
            Close(Result(name, "greatest bar deflection"), own.BarDeflection!.Value.Meters, "deflection");
            for (int i = 0; i < own.Sways.Count; i++)
                Close(Result(name, $"sway at {statue.Points[i].Name}"), own.Sways[i].Meters, "sway");
            if (own.Amplification is { } amplification)
                Close(Result(name, "second-order amplification"), amplification, "amplification");
            foreach (CheckUtilization check in own.Utilizations)
            {
                StatueFrame.Checks.Check[] listed = [.. sheet.Checks.Where(c => c.Id == check.Id && c.Situation == name)];
                double? greatest = listed.Max(c => c.Utilization);
                Assert.Equal(greatest is null, check.Utilization is null);
                if (greatest is { } expected)
                    Close(expected, check.Utilization!.Value, check.Id);
            }
        }

        double Result(string group, string name) => sheet.Results.First(r => r.Group == group && r.Name == name).Value;

        void Close(double expected, double actual, string what, double floor = 1e-12) =>
            Assert.True(expected.Equals(actual) || Math.Abs(expected - actual) <= Tolerance * Math.Abs(expected) + floor, $"{what}: {expected:r} on the sheet, {actual:r}");
    }

    [Fact]
    public void Random_variants_have_the_numbers_of_the_sheet()
    {
        Statue statue = sample.Statue;
        var reanalysis = StatueReanalysis.Of(statue, criteria, situations);
        changes.Sample(change =>
        {
            Statue variant = change(statue);
            Assert.True(reanalysis.IsFast(variant));
            RequireSame(reanalysis.Analyze(variant), variant.Check(criteria, situations), variant, situations);
        }, iter: 12, threads: 1);
    }

    [Fact]
    public void Other_sections_of_the_tower_have_the_numbers_of_the_sheet()
    {
        Statue statue = Stages.Statue with { Fittings = [], Limbs = [] };
        Situation[] storm = [new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * Stages.Wind(0, 70, 200)] }];
        var own = new Criteria { Modes = 3, BarCode = DesignCode.AllowableStress, TowerCode = DesignCode.AiscLrfd, BarStressFraction = 0.6 };
        var reanalysis = StatueReanalysis.Of(statue, own, storm);
        foreach (double leg in new[] { 100.0, 120, 150, 100 })
        {
            LatticeSegment panel = Stages.Panel with { Legs = new AngleBar(leg.Millimeters, 12.Millimeters) };
            Statue variant = statue with { Tower = statue.Tower with { Segments = [panel, panel, Stages.Panel, statue.Tower.Segments[3]] } };
            Assert.True(reanalysis.IsFast(variant));
            RequireSame(reanalysis.Analyze(variant), variant.Check(own, storm), variant, storm);
        }
    }

    [Fact]
    public void Another_geometry_has_the_numbers_of_the_sheet_too()
    {
        var reanalysis = StatueReanalysis.Of(sample.Statue, criteria, situations);
        var seams = new SeamStiffness(2e6.Pascals, 1e6.Pascals);
        Statue turned = (sample with { Bracing = Bracing.SingleDiagonal, Seams = seams }).Statue;
        Assert.False(reanalysis.IsFast(turned));
        RequireSame(reanalysis.Analyze(turned), turned.Check(criteria, situations), turned, situations);
    }

    [Fact]
    public void The_numbers_do_not_depend_on_what_came_before()
    {
        Statue statue = sample.Statue;
        var one = StatueReanalysis.Of(statue, criteria, situations);
        Statue[] variants = [.. new[] { 6.0, 9, 12, 6, 9 }.Select(t => (sample with { Thickness = t }).Statue)];
        ReanalysisNumbers[] forward = Array.ConvertAll(variants, one.Analyze);
        StatueReanalysis other = one.Copy();
        ReanalysisNumbers[] backward = [.. variants.Reverse().Select(other.Analyze).Reverse()];
        Assert.Equal(forward, backward);
        Assert.Equal(forward[0], forward[3]);
    }

    [Fact]
    public void A_variant_with_problems_is_refused_and_harms_no_other()
    {
        Statue statue = sample.Statue;
        var reanalysis = StatueReanalysis.Of(statue, criteria, situations);
        ReanalysisNumbers before = reanalysis.Analyze(statue);
        Statue absurd = statue with { Standoffs = statue.Standoffs.With(0, Changed(statue.Standoffs[0], 100, StainlessSteel.Grade316L)) };
        Assert.Throws<InvalidStatueException>(() => reanalysis.Analyze(absurd));
        Assert.Throws<InvalidStatueException>(() => reanalysis.Analyze(statue with { Skin = statue.Skin! with { Thickness = 2.4.Meters } }));
        Assert.Equal(before, reanalysis.Analyze(statue));
    }

    [Fact]
    public void Actions_it_does_not_take_are_refused()
    {
        Situation summer = new() { Name = "summer", Actions = [1 * new TemperatureAction { SkinChange = UnitsNet.TemperatureDelta.FromKelvins(40) }] };
        Assert.Contains("summer", Assert.Throws<ArgumentException>(() => StatueReanalysis.Of(sample.Statue, criteria, [summer])).Message);
        Assert.Throws<ArgumentException>(() => StatueReanalysis.Of((sample with { Bracing = Bracing.TensionOnlyCross }).Statue, criteria, situations));
    }

    [Fact]
    public void A_long_run_needs_no_more_memory_a_variant_than_a_short_one()
    {
        Situation[] one = [new() { Name = "storm", Actions = [1.35 * new SelfWeight(), 1.5 * Stages.Wind(0)] }];
        Statue statue = Stages.Statue with
        {
            Tower = new Tower { Levels = [Stages.Tower.Levels[0], Stages.Tower.Levels[1]], Segments = [Stages.Panel] },
            Skin = Stages.Skin with { BandEdges = null, Stations = [Stages.Skin.Stations[0], Stages.Skin.Stations[1]] },
            Standoffs = [(EvenRing)Stages.Statue.Standoffs[1] with { Count = 3 }],
            Limbs = [],
            Fittings = [],
            Points = [],
        };
        var reanalysis = StatueReanalysis.Of(statue, new Criteria(), one, 1);
        Run(500);
        double early = Run(500), late = Run(3000);
        Assert.InRange(late, 0, 1.1 * early + 64);
        Assert.InRange(early, 0, 20_000);

        // Bytes a variant: what is made for each, and nothing that is kept.
        double Run(int count)
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            for (int i = 0; i < count; i++)
                reanalysis.Analyze(statue with { Skin = statue.Skin! with { Thickness = (2 + 0.0001 * i).Millimeters } });
            return (GC.GetAllocatedBytesForCurrentThread() - before) / (double)count;
        }
    }
}
