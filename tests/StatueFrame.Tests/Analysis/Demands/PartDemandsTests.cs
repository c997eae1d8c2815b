using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Tests.Analyses.Demands;

public class PartDemandsTests
{
    private static readonly StatueModel model = StatueModel.Build(new SampleStatue().Statue);

    private static readonly Response rest = model.Respond(new Situation { Name = "rest", Actions = [new SelfWeight()] });

    private static readonly En1998Spectrum spectrum = new() { ReferenceAcceleration = 2.MetersPerSecondSquared, Ground = GroundType.B };

    private static readonly EarthquakeResponse earthquake = EarthquakeResponse.Of(model, new EarthquakeAction { Horizontal = spectrum, Vertical = spectrum.Vertical() });

    private static IEnumerable<SegmentModel> Segments => model.Bodies.SelectMany(body => body.Segments);

    /// <summary>On the fine model too a standoff bears the peaks both ways: their mean is what acts steadily there, half their difference the peak on the rigid ring.</summary>
    [Fact]
    public void Standoffs_bear_their_peak_both_ways_beside_the_fine_model()
    {
        FineResponse fine = FineModel.Build(model, new FineMesh { Size = 0.8.Meters }).RespondValid(rest.Situation);
        for (int ring = 0; ring < model.Rings.Count; ring++)
        {
            var steady = new Dictionary<int, BarEnds>();
            new FineDemands(fine).Bars(ring, (BarModel bar, SkinAssumption _, in BarEnds ends, DemandState _) => steady[bar.Index] = ends);
            List<(int Bar, double Stress)> peaks = [], shaken = [];
            earthquake.Peaks.Bars.Visit(model.Rings[ring].Ring, model.Rings[ring].BandInStatue, (BarModel bar, SkinAssumption skin, in BarEnds peak) =>
            {
                if (skin == SkinAssumption.RigidRing)
                    peaks.Add((bar.Index, peak.Skin.N));
            });
            new ShakenFineDemands(fine, earthquake.Peaks, 1.5, "earthquake").Bars(ring, (BarModel bar, SkinAssumption skin, in BarEnds ends, DemandState _) =>
            {
                Assert.Equal(SkinAssumption.Shell, skin);
                shaken.Add((bar.Index, ends.Skin.N));
            });
            Assert.Equal(2 * peaks.Count, shaken.Count);
            for (int i = 0; i < peaks.Count; i++)
            {
                ((int bar, double plus), (_, double minus)) = (shaken[2 * i], shaken[2 * i + 1]);
                Assert.Equal(steady[bar].Skin.N, 0.5 * (plus + minus), 1e-6 * (1 + Math.Abs(plus)));
                Assert.Equal(1.5 * peaks[i].Stress, 0.5 * (plus - minus), 1e-6 * (1 + Math.Abs(plus)));
            }
        }
    }

    [Fact]
    public void Members_bear_their_peak_both_ways_beside_what_acts_steadily()
    {
        var still = new SteadyDemands(rest);
        var demands = new PeakDemands(rest, earthquake.Peaks, 1.5, "earthquake");
        foreach (SegmentModel segment in model.LatticeSegments)
        {
            double[] peaks = [.. earthquake.LatticeMembers().Where(m => m.Segment == segment.Name).Select(m => m.Axial.Newtons)];
            (double Least, double Greatest)[] alone = Extremes(model, still, segment), both = Extremes(model, demands, segment);
            for (int i = 0; i < peaks.Length; i++)
            {
                Assert.Equal(alone[i].Least - 1.5 * peaks[i], both[i].Least, 1e-6);
                Assert.Equal(alone[i].Greatest + 1.5 * peaks[i], both[i].Greatest, 1e-6);
            }
        }
    }

    /// <summary>
    /// Mode by mode: what a cut carries is K u of its segment less the inertia of the segment's own mass, which acts between its ends; down to the base.
    /// </summary>
    [Fact]
    public void Peaks_of_a_part_are_those_found_mode_by_mode()
    {
        var motion = new BaseMotionModes(model, model.Modes(earthquake.Modes.Count).Set);
        var spectral = new SpectralCombination(motion, earthquake.Action);
        foreach (SegmentModel segment in Segments)
        {
            double[][] own = [.. Enumerable.Range(0, 12).Select(i => motion.Of(k =>
            {
                var cuts = new double[12];
                Mechanics.Vector3D Up(SectionForce force, bool moments) => moments ? force.Moments : force.Forces;
                (SectionForce bottom, SectionForce top) = segment.SectionForces(segment.Element, motion.Displacements(k));
                Mechanics.Vector3D of = Up(i < 6 ? bottom : top, i % 6 >= 3);
                var a = new double[12];
                segment.Element.Gather(motion.Accelerations(k), a);
                segment.TakeInertia(a, cuts);
                return cuts[i] + (i % 3 == 0 ? of.X : i % 3 == 1 ? of.Y : of.Z);
            }))];
            (CutPeaks below, CutPeaks above) = earthquake.Peaks.EndPeaks(segment);
            for (int i = 0; i < 6; i++)
            {
                Assert.Equal(spectral.Peak(own[i]), below.Of(i), 1e-6 * (below.Bending + below.Shear));
                Assert.Equal(spectral.Peak(own[6 + i]), above.Of(i), 1e-6 * (below.Bending + below.Shear));
            }
        }
        // The foot of the tower carries all that comes down at the base, but for the inertia of what rides on the lowest level itself.
        int lowest = model.Segments[0].Element.Start;
        Resultant[] all = motion.Base();
        double OnLowest(int k, int row) => Enumerable.Range(0, 6).Sum(j => model.NodeMasses[lowest][6 * row + j] * motion.Accelerations(k)[6 * lowest + j]);
        double[] M = motion.Of(k => all[k].Moment.Y - OnLowest(k, 4)), V = motion.Of(k => all[k].Force.X - OnLowest(k, 0));
        CutPeaks foot = earthquake.Peaks.EndPeaks(model.Segments[0]).Bottom;
        Assert.Equal(spectral.Peak(M), foot.Of(4), 1e-6 * foot.Bending);
        Assert.Equal(spectral.Peak(V), foot.Of(0), 1e-6 * foot.Shear);
    }

    [Fact]
    public void Some_direction_of_an_earthquake_bends_as_the_greatest_peak()
    {
        var weightless = new PeakDemands(rest, earthquake.Peaks, 1, "earthquake");
        double greatest = weightless.OnBase().Max(b => Norm(b.Reaction.MomentX.NewtonMeters - rest.Cases[0].Base.MomentX.NewtonMeters, b.Reaction.MomentY.NewtonMeters - rest.Cases[0].Base.MomentY.NewtonMeters));
        Assert.InRange(greatest, 0.99 * earthquake.Base.Overturning.NewtonMeters, (1 + 1e-6) * earthquake.Base.Overturning.NewtonMeters);
        double lifted = weightless.OnBase().Max(b => b.Reaction.ForceZ.Newtons), pressed = weightless.OnBase().Min(b => b.Reaction.ForceZ.Newtons);
        Assert.Equal(2 * earthquake.Base.ForceZ.Newtons, lifted - pressed, 1e-6 * lifted - 1e-6 * pressed);
    }

    [Fact]
    public void Pull_that_is_let_go_begins_with_the_forces_of_the_steady_pull()
    {
        // So heavily damped, and with so few parts that swing for themselves, that nothing goes farther than it was pulled.
        Statue sample = new SampleStatue().Statue;
        StatueModel model = StatueModel.Build(sample with
        {
            Standoffs = [.. sample.Standoffs.Select(ring => ring with { Bracket = null })],
            Tower = sample.Tower with { Levels = [.. sample.Tower.Levels.Select(level => level with { Frame = null })] },
        });
        Response rest = model.Respond(new Situation { Name = "rest", Actions = [new SelfWeight()] });
        DampingModel damping = DampingModel.OfRatio(0.6);
        var release = new Situation { Name = "release", Actions = [new SelfWeight(), new SuddenRelease { Name = "rope", On = "L2", Pull = 2.Kilonewtons }] };
        ShockResponse shock = ShockResponse.Of(model, release, damping);
        var demands = new ShockDemands(rest, shock);
        var steady = new SteadyDemands(model.Respond(new Situation
        {
            Name = "pull",
            Actions = [new SelfWeight(), new ImposedLoad { Name = "rope", On = "L2", AlongX = 2.Kilonewtons }],
        }));
        SegmentModel foot = model.LatticeSegments.First();
        (double Least, double Greatest)[] expected = Extremes(model, steady, foot), found = Extremes(model, demands, foot);
        int leg = Enumerable.Range(0, expected.Length).MinBy(i => expected[i].Least);
        Assert.Equal(expected[leg].Least, found[leg].Least, 1e-4 * Math.Abs(expected[leg].Least));
        BaseReaction first = demands.OnBase().Select(b => b.Reaction).MaxBy(r => r.MomentY.NewtonMeters)!, pulled = steady.OnBase().First().Reaction;
        Assert.Equal(pulled.MomentY.NewtonMeters, first.MomentY.NewtonMeters, 1e-4 * Math.Abs(pulled.MomentY.NewtonMeters));
        Assert.Equal(pulled.ForceX.Newtons, first.ForceX.Newtons, 1e-3 * pulled.ForceX.Newtons);
        Assert.Contains(demands.OnBase(), b => b.State.When.StartsWith("shock after", StringComparison.Ordinal));
    }

    [Fact]
    public void Worst_times_hold_the_greatest_moment_shear_and_pull()
    {
        var random = new Random(5);
        var reactions = new double[6 * 2000];
        for (int i = 0; i < reactions.Length; i++)
            reactions[i] = random.NextDouble() - 0.5;
        int[] times = WorstTimes.Of(reactions);
        Assert.InRange(times.Length, 3, 51);
        Assert.True(Greatest(times, i => Norm(reactions[6 * i + 3], reactions[6 * i + 4])) >= Math.Cos(Math.PI / 24) * Greatest(All(), i => Norm(reactions[6 * i + 3], reactions[6 * i + 4])));
        Assert.Equal(Greatest(All(), i => Norm(reactions[6 * i], reactions[6 * i + 1])), Greatest(times, i => Norm(reactions[6 * i], reactions[6 * i + 1])));
        Assert.Equal(Greatest(All(), i => reactions[6 * i + 2]), Greatest(times, i => reactions[6 * i + 2]));

        IEnumerable<int> All() => Enumerable.Range(0, 2000);

        static double Greatest(IEnumerable<int> of, Func<int, double> value) => of.Max(value);
    }

    private static (double Least, double Greatest)[] Extremes(StatueModel model, PartDemands demands, SegmentModel segment)
    {
        var all = new (double Least, double Greatest)[segment.Members.Count];
        Array.Fill(all, (double.PositiveInfinity, double.NegativeInfinity));
        demands.Members(Array.IndexOf(model.Segments, segment), (int i, in MemberForces forces, DemandState _) =>
            all[i] = (Math.Min(all[i].Least, forces.N), Math.Max(all[i].Greatest, forces.N)));
        return all;
    }

    private static double Norm(double x, double y) => Math.Sqrt(x * x + y * y);
}
