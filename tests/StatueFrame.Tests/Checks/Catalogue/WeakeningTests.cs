using CsCheck;
using StatueFrame.Checks;
using StatueFrame.Studies;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Catalogue;

/// <summary>
/// Weakening never helps: a statue of random strength has one thing made weaker, and no check gets better by it, none is left
/// out, and no link of the load path that was open holds.
/// </summary>
public class WeakeningTests
{
    private const long Cases = 250;

    private static readonly Gen<SmallStatue> statues = Gen.Select(
        Gen.Double[18, 40], Gen.Double[5, 16], Gen.Int[4, 10], Gen.Double[0, 1], Gen.Double[2.6, 5], Gen.Bool, Gen.Bool, Gen.Double[0.5, 3])
        .Select((wind, thickness, count, legs, plinth, welded, slides, load) => SmallWhole.Of(wind, thickness, count, legs, plinth, welded, slides, load));

    private static readonly Gen<double> parts = Gen.Double[0.55, 0.98];

    /// <summary>Strengths, sizes of fasteners and limits: the forces stay, and every utilization may only grow.</summary>
    private static readonly (string Name, Func<SmallStatue, double, SmallStatue> Change)[] strengths =
    [
        ("throat of welds", (s, f) => Bars(s, bar => bar with { TowerFixing = bar.TowerFixing is WeldedFixing w ? w with { Throat = Length.FromMillimeters(Math.Max(3, f * w.Throat.Millimeters)) } : bar.TowerFixing })),
        ("metal that bars are welded to", (s, f) => Bars(s, bar => bar with { TowerFixing = bar.TowerFixing is WeldedFixing w ? w with { JoinedTo = Weaker(StructuralSteel.S355, f) } : bar.TowerFixing })),
        ("bolts of bars", (s, f) => Bars(s, bar => bar with { TowerFixing = bar.TowerFixing is BoltedFixing b ? b with { Bolt = b.Bolt with { Grade = BoltGrade.Class46 } } : bar.TowerFixing })),
        ("metal of bars", (s, f) => Bars(s, bar => bar with { Material = Weaker(bar.Material, f) })),
        ("friction of saddles", (s, f) => Bars(s, bar => bar with { Saddle = bar.Saddle! with { LeastFriction = f * bar.Saddle.LeastFriction } })),
        ("room of the skin", (s, f) => Bars(s, bar => bar with { Clearance = f * bar.Clearance })),
        ("metal of the lattice", (s, f) => Lattice(s, lattice => lattice with { Material = Weaker(lattice.Material, f) })),
        ("metal of the tube", (s, f) => Mast(s, tube => tube with { Material = Weaker(tube.Material, f) })),
        ("bolts of braces", (s, f) => Lattice(s, lattice => lattice with { BraceJoint = lattice.BraceJoint! with { Bolt = lattice.BraceJoint.Bolt! with { Grade = BoltGrade.Class46 } } })),
        ("bolts of legs", (s, f) => Lattice(s, lattice => lattice with { LegSplice = lattice.LegSplice! with { Bolt = lattice.LegSplice.Bolt! with { Grade = BoltGrade.Class46 } } })),
        ("bolts of a flange", (s, f) => Mast(s, tube => tube with { LowerJoint = Flange(tube) with { Bolt = Flange(tube).Bolt with { Grade = BoltGrade.Class46 } } })),
        ("metal of a flange", (s, f) => Mast(s, tube => tube with { LowerJoint = Flange(tube) with { Material = Weaker(tube.Material, f) } })),
        ("metal of anchors", (s, f) => HoldDown(s, h => h with { Bars = [.. h.Bars.Select(bar => bar with { Material = Weaker(bar.Material, f) })] })),
        ("metal of one anchor", (s, f) => HoldDown(s, h => h with { Bars = [.. h.Bars.Select((bar, i) => i == 2 ? bar with { Material = Weaker(bar.Material, f) } : bar)] })),
        ("heads of anchors", (s, f) => HoldDown(s, h => h with { Bars = [.. h.Bars.Select(bar => bar with { HeadWidth = f * bar.HeadWidth })] })),
        ("friction of plates", (s, f) => HoldDown(s, h => h with { Friction = f * h.Friction })),
        ("stone of the pedestal", (s, f) => s.With(statue => statue with { Pedestal = statue.Pedestal! with { Courses = [.. statue.Pedestal.Courses.Select(course => course.Material is Masonry stone ? course with { Material = stone with { CompressiveStrength = f * stone.CompressiveStrength, InitialShearStrength = f * stone.InitialShearStrength } } : course)] } })),
        ("friction of the ground", (s, f) => Ground(s, soil => soil with { FrictionAngle = f * soil.FrictionAngle })),
        ("what the ground allows", (s, f) => Ground(s, soil => soil with { AllowableBearing = f * soil.AllowableBearing })),
        ("metal of rivets", (s, f) => Skin(s, skin => skin with { SheetSeam = skin.SheetSeam! with { Rivet = Rivet.Of(4.Millimeters, Weaker(Copper.HalfHardR240, f)) } })),
        ("metal of the armature", (s, f) => Skin(s, skin => skin with { Armature = skin.Armature! with { Material = Weaker(skin.Armature.Material, f) } })),
        ("span of the armature", (s, f) => Skin(s, skin => skin with { Armature = skin.Armature! with { Span = skin.Armature.Span / f } })),
        ("limit of sway", (s, f) => s with { Criteria = s.Criteria with { Sway = [.. s.Criteria.Sway.Select(limit => limit with { Limit = f * limit.Limit })] } }),
        ("factors of the annex", (s, f) => s with { Criteria = s.Criteria with { Basis = new EurocodeBasis { Annex = Strict(Math.Min(1.3, 1 / f)) } } }),
        ("isolation", (s, f) => s.With(statue => statue with { Corrosion = statue.Corrosion! with { Contacts = [.. statue.Corrosion.Contacts.Select(contact => contact with { Isolation = Isolation.None })] } })),
    ];

    /// <summary>Stiffness, parts and loads: the forces go other ways, so a single check may get better, but the statue does not.</summary>
    private static readonly (string Name, Func<SmallStatue, double, SmallStatue> Change)[] structures =
    [
        ("more wind", (s, f) => s with { Situations = [.. s.Situations.Select(situation => situation with { Actions = [.. situation.Actions.Select(action => action.Action is WindAction wind ? action.Factor / f * wind : action)] })] }),
        ("a brace gone", (s, f) => Lattice(s, lattice => lattice with { Missing = ["brace a, face 2, bay 1"] })),
        ("both braces of a face gone", (s, f) => Lattice(s, lattice => lattice with { Missing = ["brace a, face 2, bay 1", "brace b, face 2, bay 1"] })),
        ("all braces gone", (s, f) => Lattice(s, lattice => lattice with { Missing = [.. Enumerable.Range(1, 4).SelectMany(face => new[] { $"brace a, face {face}, bay 1", $"brace b, face {face}, bay 1" })] })),
        ("smaller braces", (s, f) => Lattice(s, lattice => lattice with { Braces = new AngleBar(50.Millimeters, 5.Millimeters) })),
        ("a bar gone", (s, f) => Rings(s, ring => ring with { Count = ring.Count - 1 })),
        ("thinner bars", (s, f) => Bars(s, bar => bar with { Section = new FlatBar(bar.Section.Width, f * bar.Section.Thickness) })),
        ("longer bars", (s, f) => Rings(s, ring => ring with { Length = ring.Length / f })),
        ("a thinner tube", (s, f) => Mast(s, tube => tube with { Section = new Tube(((Tube)tube.Section).OuterDiameter, f * ((Tube)tube.Section).Wall) })),
        ("a thinner flange", (s, f) => Mast(s, tube => tube with { LowerJoint = Flange(tube) with { Thickness = f * Flange(tube).Thickness } })),
        ("an anchor gone", (s, f) => HoldDown(s, h => h with { Bars = [.. h.Bars.Skip(1)] })),
        ("thinner anchors", (s, f) => HoldDown(s, h => h with { Bars = [.. h.Bars.Select(bar => bar with { Diameter = f * bar.Diameter })] })),
        ("thinner plates", (s, f) => HoldDown(s, h => h with { Plates = [.. h.Plates.Select(plate => plate with { Thickness = f * plate.Thickness })] })),
        ("thinner sheet", (s, f) => Skin(s, skin => skin with { Thickness = f * skin.Thickness })),
        ("pitch of rivets", (s, f) => Skin(s, skin => skin with { SheetSeam = skin.SheetSeam! with { Pitch = skin.SheetSeam.Pitch / f } })),
        ("softer ground", (s, f) => Ground(s, soil => soil with { ShearModulus = f * soil.ShearModulus })),
    ];

    [Fact]
    public void Less_strength_never_lowers_a_utilization() =>
        Gen.Select(statues, Gen.Int[0, strengths.Length - 1], parts).Sample((whole, which, part) =>
        {
            (string name, Func<SmallStatue, double, SmallStatue> change) = strengths[which];
            CheckSheet before = whole.Check(), after = change(whole, part).Check();
            RequireNoSilence(name, before, after);
            Dictionary<StudyKey, Check> then = StudyKey.WorstOf(after);
            // A longer span is nearer to the standoffs that are there, and worse for all else: this change alone may lower that one check.
            foreach ((StudyKey key, Check check) in StudyKey.WorstOf(before).Where(pair => name != "span of the armature" || pair.Value.Id != "armature.span"))
            {
                if (check.Utilization is { } u && then.TryGetValue(key, out Check? weaker) && weaker.Utilization is { } now)
                    Assert.True(now >= u * (1 - 1e-9) - 1e-12, $"{name}: {key} goes from {u} to {now}");
            }
        }, iter: Cases);

    [Fact]
    public void A_weaker_structure_never_gets_a_better_headline() =>
        Gen.Select(statues, Gen.Int[0, structures.Length - 1], parts).Sample((whole, which, part) =>
        {
            (string name, Func<SmallStatue, double, SmallStatue> change) = structures[which];
            CheckSheet before = whole.Check(), after;
            try
            {
                after = change(whole, part).Check();
            }
            catch (InvalidStatueException)
            {
                return;
            }
            RequireNoSilence(name, before, after);
            Assert.True(before.Holds || !after.Holds, $"{name}: {before.VerdictText} becomes {after.VerdictText}; {string.Join("; ", before.Failed.Select(check => $"{check.Subject} {check.Utilization}"))}");
        }, iter: Cases);

    private static void RequireNoSilence(string name, CheckSheet before, CheckSheet after)
    {
        HashSet<(string Id, string Situation)> left = [.. after.Checks.Select(check => (check.Id, check.Situation))];
        foreach ((string Id, string Situation) check in before.Checks.Select(check => (check.Id, check.Situation)).Distinct())
            Assert.True(left.Contains(check), $"{name}: {check} is silent");
        Dictionary<(string, string), LinkState> links = after.LoadPath.ToDictionary(link => (link.Link, link.What), link => link.State);
        foreach (PathLink link in before.OpenLinks)
            Assert.True(!links.TryGetValue((link.Link, link.What), out LinkState now) || now != LinkState.Holds, $"{name}: {link} closes");
    }

    private static NationalAnnex Strict(double by) => new()
    {
        Name = "strict",
        GammaM0 = by,
        GammaM1 = by,
        GammaM2 = 1.25 * by,
        GammaM3 = 1.25 * by,
        StainlessGammaM0 = 1.1 * by,
        StainlessGammaM1 = 1.1 * by,
        GammaMc = 1.5 * by,
    };

    private static Material Weaker(Material metal, double f) => metal with { YieldStrength = f * metal.YieldStrength, UltimateStrength = f * metal.UltimateStrength };

    private static SmallStatue Segment(SmallStatue statue, int number, Func<TowerSegment, TowerSegment> change) =>
        statue.With(s => s with { Tower = s.Tower with { Segments = [.. s.Tower.Segments.Select((segment, i) => i == number ? change(segment) : segment)] } });

    private static SmallStatue Lattice(SmallStatue statue, Func<LatticeSegment, LatticeSegment> change) => Segment(statue, 0, segment => change((LatticeSegment)segment));

    private static SmallStatue Mast(SmallStatue statue, Func<MemberSegment, MemberSegment> change) => Segment(statue, 1, segment => change((MemberSegment)segment));

    private static FlangeJoint Flange(MemberSegment tube) => (FlangeJoint)tube.LowerJoint!;

    private static SmallStatue Skin(SmallStatue statue, Func<Skin, Skin> change) => statue.With(s => s with { Skin = change(s.Skin!) });

    private static SmallStatue HoldDown(SmallStatue statue, Func<HoldDown, HoldDown> change) => statue.With(s => s with { HoldDown = change(s.HoldDown!) });

    private static SmallStatue Ground(SmallStatue statue, Func<Soil, Soil> change) =>
        statue.With(s => s with { Foundation = s.Foundation! with { Soil = change(s.Foundation.Soil) } });

    private static SmallStatue Rings(SmallStatue statue, Func<EvenRing, EvenRing> change) =>
        statue.With(s => s with { Standoffs = [.. s.Standoffs.Select((ring, i) => i == 1 ? change((EvenRing)ring) : ring)] });

    private static SmallStatue Bars(SmallStatue statue, Func<Standoff, Standoff> change) => Rings(statue, ring => ring with { Standoff = change(ring.Standoff) });
}
