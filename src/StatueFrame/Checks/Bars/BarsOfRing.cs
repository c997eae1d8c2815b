using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>The bars of one ring with their fixings, and the faces under bars without a bracket: of every entry the worst of all states.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class BarsOfRing
{
    /// <summary>Sizes of a state: compression, tension, shears, torsion, moments of both ends; and what is loose of the tower end.</summary>
    private const int Sizes = 15;

    private static readonly CheckEntry<BarLoad>[] onBars =
        [BarChecks.BendingEntry, BarSectionChecks.Yield, BarBucklingChecks.StrutEntry, BarBucklingChecks.BeamColumnEntry, BarBucklingChecks.SecondOrderEntry];

    private static readonly CheckEntry<FixingLoad>[] onBolts =
        [FixingChecks.BoltsEntry, FixingChecks.BearingEntry, FixingChecks.TearOutEntry, FixingChecks.NetSectionEntry];

    private readonly BracketChord chord;
    private readonly Worst<BarLoad>[] worst = Array.ConvertAll(onBars, entry => new Worst<BarLoad>(entry));
    private readonly Worst<FixingLoad>[][] fixings = [OfEnd(), OfEnd()];
    private readonly SafeBox[] boxes;
    private readonly Predicate<double[]> isSafe;
    private Worst<FaceLoad> face = new(FaceChecks.UnderBars);
    private (BarModel Bar, BarLoad Load) asked;

    /// <param name="count">Number of bars.</param>
    /// <param name="chord">What those without a bracket stand on.</param>
    public BarsOfRing(int count, BracketChord chord)
    {
        this.chord = chord;
        boxes = [.. Enumerable.Range(0, 2 * count).Select(_ => new SafeBox(Sizes))];
        isSafe = IsSafe;
    }

    /// <summary>The worst of the faces under bars without a bracket.</summary>
    public Worst<FaceLoad> Face => face;

    /// <summary>Looks at a state of a bar and of what holds it.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="load">Its state.</param>
    /// <param name="other">The same with the drag of its saddle the other way, for what holds it; null without.</param>
    public void Look(BarModel bar, in BarLoad load, in BarLoad? other)
    {
        Span<double> sizes = stackalloc double[Sizes];
        sizes.Clear();
        Take(load.Ends, sizes);
        if (other is { } turned)
            Take(turned.Ends, sizes);
        SafeBox box = boxes[2 * bar.Index + (load.Restraint == BarRestraint.Sway ? 1 : 0)];
        asked = (bar, load);
        if (box.Holds(sizes) || box.Grow(sizes, isSafe))
            return;
        foreach (ref Worst<BarLoad> entry in worst.AsSpan())
            entry.Look(load);
        LookAtEnds(bar, load, other);
    }

    /// <summary>Looks at what holds a bar alone.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="load">Its state.</param>
    /// <param name="other">The same with the drag of its saddle the other way; null without.</param>
    public void LookAtEnds(BarModel bar, in BarLoad load, in BarLoad? other)
    {
        LookAtEnds(bar, load);
        if (other is { } turned)
            LookAtEnds(bar, turned);
    }

    public IEnumerable<Worst<BarLoad>> Bars => worst;

    public IEnumerable<Worst<FixingLoad>> Fixings => fixings.SelectMany(end => end);

    private static Worst<FixingLoad>[] OfEnd() => [.. onBolts.Append(WeldChecks.FilletsEntry).Select(entry => new Worst<FixingLoad>(entry))];

    private void LookAtEnds(BarModel bar, in BarLoad load)
    {
        for (int end = 0; end < 2; end++)
        {
            var fixing = new FixingLoad(load, end == 1);
            foreach (ref Worst<FixingLoad> entry in Entries(fixing))
                entry.Look(fixing);
        }
        if (bar.Bar.Place.Bracket is null)
            face.Look(FaceLoad.Of(bar, load, load.Bar.Design, chord));
    }

    private Span<Worst<FixingLoad>> Entries(in FixingLoad fixing)
    {
        Worst<FixingLoad>[] all = fixings[fixing.AtSkin ? 1 : 0];
        return fixing.Fixing switch
        {
            BoltedFixing => all.AsSpan(0, onBolts.Length),
            WeldedFixing => all.AsSpan(onBolts.Length),
            _ => [],
        };
    }

    /// <summary>Whether no entry is worse at the given sizes than the worst of it so far: pressed and pulled, with the signs that are worst.</summary>
    private bool IsSafe(double[] sizes)
    {
        for (int sign = -1; sign <= 1; sign += 2)
        {
            double N = sign < 0 ? -sizes[0] : sizes[1];
            if (sign < 0 && N == 0)
                continue;
            var at = new FlatForces(N, sizes[2], sizes[3], sizes[6], sizes[7], sizes[8]);
            // What is loose is taken off what acts on the tower end together: with the other sign both add up.
            var loose = new FlatForces(-Math.CopySign(sizes[9], N), -sizes[10], -sizes[11], -sizes[12], -sizes[13], -sizes[14]);
            BarLoad load = asked.Load with { Ends = new BarEnds(at, at with { Weak = sizes[4], Strong = sizes[5] }, loose) };
            foreach (ref Worst<BarLoad> entry in worst.AsSpan())
            {
                if (!entry.IsNoWorse(load))
                    return false;
            }
            for (int end = 0; end < 2; end++)
            {
                var fixing = new FixingLoad(load, end == 1);
                // A single bolt that is turned is told of state by state: those that do not turn it are worked out.
                if (fixing.Fixing is BoltedFixing bolts && BoltForces.Turns(bolts, fixing.Forces))
                    return false;
                foreach (ref Worst<FixingLoad> entry in Entries(fixing))
                {
                    if (!entry.IsNoWorse(fixing))
                        return false;
                }
            }
            if (asked.Bar.Bar.Place.Bracket is null && !face.IsNoWorse(FaceLoad.Of(asked.Bar, load, load.Bar.Design, chord)))
                return false;
        }
        return true;
    }

    private static void Take(in BarEnds ends, Span<double> sizes)
    {
        (FlatForces a, FlatForces b, FlatForces loose) = ends;
        Raise(ref sizes[0], -Math.Min(a.N, b.N));
        Raise(ref sizes[1], Math.Max(a.N, b.N));
        Raise(ref sizes[2], Math.Abs(a.Weak));
        Raise(ref sizes[3], Math.Abs(a.Strong));
        Raise(ref sizes[4], Math.Abs(b.Weak));
        Raise(ref sizes[5], Math.Abs(b.Strong));
        Raise(ref sizes[6], Math.Max(Math.Abs(a.T), Math.Abs(b.T)));
        Raise(ref sizes[7], Math.Max(Math.Abs(a.AlongThickness), Math.Abs(b.AlongThickness)));
        Raise(ref sizes[8], Math.Max(Math.Abs(a.AlongWidth), Math.Abs(b.AlongWidth)));
        Raise(ref sizes[9], Math.Abs(loose.N));
        Raise(ref sizes[10], Math.Abs(loose.Weak));
        Raise(ref sizes[11], Math.Abs(loose.Strong));
        Raise(ref sizes[12], Math.Abs(loose.T));
        Raise(ref sizes[13], Math.Abs(loose.AlongThickness));
        Raise(ref sizes[14], Math.Abs(loose.AlongWidth));

        // Keeps what is not a number, so that no box holds it.
        static void Raise(ref double most, double size) => most = Math.Max(most, size);
    }
}
