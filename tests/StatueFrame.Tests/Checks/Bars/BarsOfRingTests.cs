using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Tests.Checks.Catalogue;

namespace StatueFrame.Tests.Checks.Bars;

/// <summary>The states of a ring's bars, most of which need no look of their own.</summary>
public class BarsOfRingTests
{
    private static readonly BracketChord chord = new(new Tube(300.Millimeters, 8.Millimeters), StructuralSteel.S355, Vector3D.UnitZ, true, null) { Pressed = 0.3 };

    private static readonly BarModel[] bars = [.. StatueModel.Build(SmallWhole.Of().Statue).Rings[0].Ring.Bars.Take(3)];

    private static readonly DesignCode[] codes = [DesignCode.En1993, DesignCode.AiscLrfd, DesignCode.AllowableStress];

    private static readonly StandoffFixing[] fixings =
    [
        new WeldedFixing { Throat = 4.Millimeters }, Bolts(2), Bolts(1),
    ];

    private static BoltedFixing Bolts(int rows) => new() { Bolt = new Bolt { Diameter = 12.Millimeters, Grade = BoltGrade.Class88 }, Rows = rows, Pitch = 50.Millimeters, EndDistance = 35.Millimeters, Heel = 30.Millimeters };

    /// <summary>States within boxes that are safe give the line that every state looked at by itself gives, whatever their order, used little or far too much.</summary>
    [Fact]
    public void A_ring_is_as_used_as_its_worst_state() => Gen.Select(
        Gen.Int[0, 2], Gen.Int[0, 2], Gen.Double[-2, 1], Gen.Double[-1, 1].Array[19].Array[1, 60], Gen.Double[0.3, 1.5].Array[3]).Sample((code, held, size, states, lengths) =>
    {
        CheckedBar[] rules = [.. bars.Select((bar, i) => new CheckedBar(
            bar.Standoff with { TowerFixing = fixings[held], SkinFixing = fixings[(held + 1) % 3] }, lengths[i], BarDesign.For(bar.Standoff.Material, codes[code]), $"bar {i}"))];
        var ring = new BarsOfRing(bars.Length, chord);
        Worst<BarLoad>[] onBars = [.. ring.Bars.Select(entry => new Worst<BarLoad>(entry.Entry))];
        Worst<FixingLoad>[] onEnds = [.. ring.Fixings.Select(entry => new Worst<FixingLoad>(entry.Entry))];
        var face = new Worst<FaceLoad>(FaceChecks.UnderBars);
        for (int i = 0; i < states.Length; i++)
        {
            double[] u = [.. states[i].Select((of, k) => Math.Pow(10, size) * of * (k is 0 or 4 or 5 or 6 or 10 or 11 or 12 or 16 or 17 ? 4e3 : 200))];
            // Now and then a single bolt is not turned.
            double turned = i % 3 == 0 ? 0 : u[2];
            var tower = new FlatForces(u[0], u[1], turned, u[3], u[4], u[5]);
            BarEnds ends = new(tower, tower with { N = u[6], Weak = u[7], Strong = i % 2 == 0 ? 0 : u[8] }, i % 4 > 0 ? 3 * new FlatForces(u[12], u[13], u[14], u[15], u[16], u[17]) : default);
            BarLoad load = BarLoad.Of(rules[i % 3], i % 2 == 0 ? SkinAssumption.RigidRing : SkinAssumption.LimpSkin, ends, new DemandState("storm"));
            BarLoad? other = i % 5 == 0 ? load with { Ends = -1 * ends } : null;
            ring.Look(bars[i % 3], load, other);
            foreach (ref Worst<BarLoad> entry in onBars.AsSpan())
                entry.Look(load);
            foreach (BarLoad at in other is { } turnedOver ? [load, turnedOver] : (BarLoad[])[load])
            {
                face.Look(FaceLoad.Of(bars[i % 3], at, at.Bar.Design, chord));
                for (int k = 0; k < onEnds.Length; k++)
                {
                    var fixing = new FixingLoad(at, k >= onEnds.Length / 2);
                    if (fixing.Fixing is WeldedFixing == (onEnds[k].Entry == WeldChecks.FilletsEntry))
                        onEnds[k].Look(fixing);
                }
            }
        }
        Assert.Equal(onBars.Select(Seen), ring.Bars.Select(Seen));
        Assert.Equal(onEnds.Select(Seen), ring.Fixings.Select(Seen));
        Assert.Equal(Seen(face), Seen(ring.Face));
    }, iter: 2000);

    private static (string, double?, bool) Seen<T>(Worst<T> entry) => (entry.Entry.Id, entry.Utilization, entry.AnyNotDone);
}
