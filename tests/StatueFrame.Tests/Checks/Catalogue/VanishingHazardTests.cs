using StatueFrame.Checks;
using StatueFrame.Studies;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Catalogue;

/// <summary>
/// Two features at a time: a hazard of next to no size changes no number, no place and no assumption of what is checked
/// without it, whatever else the statue has and whatever else acts.
/// </summary>
public class VanishingHazardTests
{
    private const double Next = 1e-6;

    private static readonly TemperatureAction summer = new() { SkinChange = TemperatureDelta.FromKelvins(25), TowerChange = TemperatureDelta.FromKelvins(8), SunRise = TemperatureDelta.FromKelvins(6), SunSide = 200.Degrees };

    /// <summary>What a statue has, and what acts on it besides its weight.</summary>
    private static readonly Dictionary<string, (Func<Statue, Statue> Change, StatueAction? Acts)> features = new()
    {
        ["plain"] = (s => s, null),
        ["missing brace"] = (s => Lattice(s, lattice => lattice with { Missing = ["brace a, face 1, bay 1"] }), null),
        ["missing bar"] = (s => s with { Standoffs = [.. s.Standoffs.Select((ring, i) => i == 0 ? (EvenRing)ring with { Missing = [2] } : ring)] }, null),
        ["heat"] = (s => s, summer),
        ["ice"] = (s => s, new IceAction { Class = IceClass.Glaze(2) }),
        ["no limb"] = (s => s with { Limbs = [], Points = [.. s.Points.Where(point => point.Name == "tip")] }, null),
        ["slide"] = (s => Bars(s, bar => bar with { Slide = SaddleSlide.AlongBar }), null),
        ["hinge"] = (s => Bars(s, bar => bar with { SkinFixity = EndFixity.Pinned }), null),
        ["other metal"] = (s => s with { Standoffs = [.. s.Standoffs.Select((ring, i) => i == 0 ? Of(ring, bar => bar with { Material = StainlessSteel.Duplex2205 }) : ring)] }, null),
        ["core"] = (s => s with { HoldDown = null, Tower = s.Tower with { Segments = [new MasonrySegment { Section = BlockSection.Rectangle(1.6.Meters, 1.6.Meters), Material = Cores.BlockChecksTests.Stone }, s.Tower.Segments[1]] } }, null),
        ["bare tower"] = (s => s.CladUpTo(3.Meters), null),
        ["imposed load"] = (s => s, new ImposedLoad { Name = "gallery", On = "band 1", Down = 2.Kilonewtons, AlongX = 1.Kilonewtons }),
        ["no joints"] = (s => s with { Skin = s.Skin! with { Joints = null } }, null),
        ["tension-only"] = (s => Lattice(s, lattice => lattice with { Bracing = Bracing.TensionOnlyCross }), null),
    };

    private static readonly Dictionary<string, FactoredAction> hazards = new()
    {
        ["wind"] = Next * SmallStatue.Wind,
        ["earthquake"] = 1e-4 * new EarthquakeAction { Horizontal = new En1998Spectrum { ReferenceAcceleration = 0.01.MetersPerSecondSquared, Ground = GroundType.A } },
        ["shock"] = Next * new PressurePulse { Name = "wave", Shape = new TrianglePulse(), Peak = 1.Pascals, Duration = 0.02.Seconds, Heading = 30.Degrees },
        ["heat"] = Next * summer,
        ["ice"] = Next * new IceAction { Class = IceClass.Glaze(1) },
        ["imposed load"] = new ImposedLoad { Name = "bird", On = "top", Down = Next.Newtons },
    };

    public static TheoryData<string, string, string> Pairs
    {
        get
        {
            var pairs = new TheoryData<string, string, string>();
            string[] names = [.. features.Keys];
            for (int i = 0; i < names.Length; i++)
            {
                // Each feature with the one after it, all with every hazard; the whole square would say no more.
                foreach (string hazard in hazards.Keys)
                    pairs.Add(names[i], names[(i + 3) % names.Length], hazard);
            }
            return pairs;
        }
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void A_vanishing_hazard_changes_nothing(string first, string second, string hazard)
    {
        SmallStatue whole = SmallWhole.Of();
        Statue statue = features[second].Change(features[first].Change(whole.Statue));
        FactoredAction[] acting = [1.35 * new SelfWeight(), .. new[] { features[first].Acts, features[second].Acts }.OfType<StatueAction>().Where(action => action is not ImposedLoad { On: "band 1" } || statue.Skin is not null).Select(action => 1.5 * action)];
        if (acting.Any(action => action.Action.GetType() == hazards[hazard].Action.GetType()))
            return;
        Criteria criteria = (whole.Criteria with { Sway = [] }).ForStage(statue);
        CheckSheet Sheet(params FactoredAction[] actions) => statue.Check(criteria, new Situation { Name = "situation", Actions = [.. actions] });
        CheckSheet without = Sheet(acting), with = Sheet([.. acting, hazards[hazard]]);
        ILookup<(string, string), Check> then = with.Checks.ToLookup(KeyOf);
        int compared = 0;
        foreach (IGrouping<(string Id, string Place), Check> same in without.Checks.Where(check => check.Situation.Length > 0 && check.Nature != Nature.Range && check.Utilization is not null).GroupBy(KeyOf))
        {
            double u = same.Max(check => check.Utilization!.Value);
            double? now = then[same.Key].Max(check => check.Utilization);
            Assert.True(now is not null, $"{same.Key} is gone");
            // What shakes is magnified by 1/(1 − 1/α_cr), which is near the second order of what is steady.
            Assert.True(now == u || Math.Abs(now!.Value - u) <= 2e-3 * u + 1e-4, $"{same.Key}: {u} becomes {now}");
            compared++;
        }
        Assert.True(compared > 10, $"Only {compared} checks were compared.");
        Assert.Empty(without.Assumptions.Select(assumption => assumption.Subject).Except(with.Assumptions.Select(assumption => assumption.Subject)));
    }

    /// <summary>The id with the ring or the segment; of the base, where states and equal bars may take turns, the id alone.</summary>
    private static (string Id, string Place) KeyOf(Check check) => (check.Id, check.Family is "bars" or "tower" or "limbs" or "heat" ? StudyKey.Of(check).Place : "");

    private static Statue Lattice(Statue statue, Func<LatticeSegment, LatticeSegment> change) =>
        statue with { Tower = statue.Tower with { Segments = [.. statue.Tower.Segments.Select(segment => segment is LatticeSegment lattice ? change(lattice) : segment)] } };

    private static StandoffRing Of(StandoffRing ring, Func<Standoff, Standoff> change) => (EvenRing)ring with { Standoff = change(((EvenRing)ring).Standoff) };

    private static Statue Bars(Statue statue, Func<Standoff, Standoff> change) => statue with { Standoffs = [.. statue.Standoffs.Select(ring => Of(ring, change))] };
}
