using CsCheck;
using StatueFrame.Checks;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Members;

/// <summary>Gussets and splice plates, by hand and by properties.</summary>
public class PlateSheetTests
{
    private static readonly JointPlate gusset = new() { Thickness = 12.Millimeters, Width = 220.Millimeters, Material = StructuralSteel.S355, FreeLength = 60.Millimeters, Eccentricity = 30.Millimeters, Throat = 6.Millimeters, WeldLength = 300.Millimeters };

    private static readonly MemberConnection bolts = new() { Bolt = new Bolt { Diameter = 20.Millimeters, Grade = BoltGrade.Class88 }, InLine = 3, EndDistance = 45.Millimeters, EdgeDistance = 40.Millimeters, Pitch = 70.Millimeters, Plate = gusset };

    private static Check[] Checks(MemberConnection joint, double kN, bool isLeg = false)
    {
        var lists = new SheetWriter { Situation = "storm" };
        var member = new LoadedMember { Section = new AngleBar(80.Millimeters, 8.Millimeters), Material = StructuralSteel.S355, Length = 1.5.Meters, Axial = Force.FromKilonewtons(kN), IsLeg = isLeg, Connection = joint, Where = "brace" };
        PlateSheet.Add(lists, [new MemberLoad(member, MemberSheet.DesignFor(member.Material, new Criteria()))], new Criteria());
        return [.. lists.Checks];
    }

    private static Check Of(string id, MemberConnection joint, double kN, bool isLeg = false) => Assert.Single(Checks(joint, kN, isLeg), check => check.Id == id);

    /// <summary>
    /// Three M20 at 70 mm spread over 2·2·70/√3 = 161.7 mm: yield 161.7·12·355 = 688.7 kN, rupture 0.9·(161.7 − 22)·12·490/1.25 = 591.3 kN;
    /// the block 2·(45 + 140 − 2.5·22)·12·355/√3 = 639.5 kN; the weld 100/(2·300) + 3·100·30/300² = 0.2667 kN/mm on 6 mm.
    /// </summary>
    [Fact]
    public void A_gusset_by_hand()
    {
        Assert.Equal(100 / 591.3, Of("gussets.tension", bolts, 100).Utilization!.Value, 1e-4);
        Assert.Equal(100 / 639.5, Of("gussets.block", bolts, 100).Utilization!.Value, 1e-4);
        Assert.Equal(266.67 / 6 / (490 / (Math.Sqrt(3) * 1.25)), Of("gussets.welds", bolts, 100).Utilization!.Value, 1e-4);
        // λ = 1.2·60/(12/√12·76.4) = 0.272, χ = 0.963 by curve c.
        Assert.Equal(100 / (0.9635 * 688.7), Of("gussets.compression", bolts, -100).Utilization!.Value, 1e-3);
        // A plate no wider than 100 mm takes no more than that.
        Assert.Equal(100 / (0.9 * (100 - 22) * 12 * 490 / 1.25 / 1000), Of("gussets.tension", bolts with { Plate = gusset with { Width = 100.Millimeters } }, 100).Utilization!.Value, 1e-9);
    }

    /// <summary>Plates of 200 mm on both legs of an angle as an angle 100×15: N/A + N e/W, W of its weaker axis.</summary>
    [Fact]
    public void A_splice_by_hand()
    {
        MemberConnection splice = bolts with { BothLegs = true, Lines = 2, Plate = gusset with { Thickness = 15.Millimeters, Width = 200.Millimeters, Eccentricity = 20.Millimeters, Throat = null } };
        SectionProperties p = new AngleBar(100.Millimeters, 15.Millimeters).Properties;
        Assert.Equal(300e3 / (355e6 * p.A) + 300e3 * 0.02 / (355e6 * p.Wz), Of("splices.bending", splice, 300, isLeg: true).Utilization!.Value, 1e-6);
        Assert.Equal(["splices.tension", "splices.block", "splices.bending"], Checks(splice, 300, isLeg: true).Select(check => check.Id));
        Assert.Contains(Checks(splice, -300, isLeg: true), check => check.Id == "splices.compression");
        // Each of two plates with one line of three: 2·2·2·70/√3 = 323 mm, no more than their 200 mm; two holes.
        Assert.Equal(300 / (0.9 * (200 - 2 * 22) * 15 * 490 / 1.25 / 1000), Of("splices.tension", splice, 300, isLeg: true).Utilization!.Value, 1e-6);
        Assert.True(Of("splices.bending", splice with { Plate = splice.Plate! with { Eccentricity = 40.Millimeters } }, 300, isLeg: true).Utilization > Of("splices.bending", splice, 300, isLeg: true).Utilization);
    }

    [Fact]
    public void What_is_weaker_never_helps() =>
        Gen.Select(Gen.Double[0.3, 1], Gen.Int[0, 5], Gen.Double[-400, 400]).Sample((less, what, kN) =>
        {
            MemberConnection weak = bolts with
            {
                Plate = what switch
                {
                    0 => gusset with { Thickness = less * gusset.Thickness },
                    1 => gusset with { Width = less * gusset.Width },
                    2 => gusset with { FreeLength = gusset.FreeLength / less },
                    3 => gusset with { Eccentricity = gusset.Eccentricity / less },
                    4 => gusset with { Throat = less * gusset.Throat!.Value },
                    _ => gusset with { WeldLength = less * gusset.WeldLength },
                },
            };
            foreach (Check whole in Checks(bolts, kN))
                Assert.True(Of(whole.Id, weak, kN).Utilization >= whole.Utilization - 1e-12, whole.Id);
        });

    [Fact]
    public void One_fastener_and_an_unknown_weld_are_not_checked()
    {
        Check single = Assert.Single(Checks(bolts with { InLine = 1 }, 50));
        Assert.Equal((Verdict.NotChecked, "gussets.tension"), (single.Verdict, single.Id));
        Assert.Equal(Verdict.NotChecked, Of("gussets.welds", bolts with { Plate = gusset with { Throat = null } }, 50).Verdict);
        Assert.DoesNotContain(Checks(bolts with { Plate = gusset with { Throat = null, IsLegItself = true } }, 50), check => check.Id == "gussets.welds");
    }

    /// <summary>The bearing of fasteners is that of the weaker part, by thickness and metal.</summary>
    [Fact]
    public void A_thin_plate_weakens_the_joint()
    {
        BarDesign design = MemberSheet.DesignFor(StructuralSteel.S355, new Criteria());
        double Use(JointPlate? plate) => ConnectionChecks.Fasteners(new LoadedMember { Section = new AngleBar(80.Millimeters, 8.Millimeters), Material = StructuralSteel.S355, Length = 1.Meters, Axial = Force.FromKilonewtons(100), Connection = bolts with { Plate = plate } }, design).Utilization!.Value;
        Assert.Equal(Use(null), Use(gusset), 1e-12);
        Assert.Equal(2 * Use(gusset with { Thickness = 4.Millimeters }), Use(gusset with { Thickness = 2.Millimeters }), 1e-9);
    }

    [Fact]
    public void Gussets_and_splices_are_open_until_they_are_described()
    {
        SmallStatue whole = SmallWhole.Of();
        CheckSheet Sheet(JointPlate? plate) => (whole.Statue with
        {
            Tower = whole.Statue.Tower with
            {
                Segments = [.. whole.Statue.Tower.Segments.Select(segment => segment is LatticeSegment lattice
                    ? lattice with { BraceJoint = lattice.BraceJoint! with { Plate = plate }, LegSplice = lattice.LegSplice! with { Plate = plate } } : segment)],
            },
        }).Check(whole.Criteria, whole.Situations);
        string[] Open(JointPlate? plate) => [.. Sheet(plate).OpenLinks.Where(link => link.Link == "lattice").Select(link => link.What)];
        Assert.Equal(["gussets and what holds them", "plates of splices and their eccentricity"], Open(null));
        Assert.Empty(Open(gusset));
        Assert.Equal(["gussets and what holds them"], Open(gusset with { Throat = null }));
        Assert.Contains(Sheet(gusset with { Thickness = 1.Millimeters }).Failed, check => check.Family is "gussets" or "splices");
    }

    [Fact]
    public void A_weld_without_length_is_a_problem()
    {
        SmallStatue whole = SmallWhole.Of();
        Statue statue = whole.Statue with { Tower = whole.Statue.Tower with { Segments = [.. whole.Statue.Tower.Segments.Select(segment => segment is LatticeSegment lattice ? lattice with { BraceJoint = bolts with { Plate = gusset with { WeldLength = Length.Zero } } } : segment)] } };
        Assert.Equal("Tower.Segments[0].BraceJoint.Plate.WeldLength", Assert.Single(statue.FindProblems()).Path);
    }
}
