using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The load cases of a statue in which one element is exchanged: the loads are made once, and each exchange costs one
/// factorization. Without tension-only bracing.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class ChangedStatics
{
    private readonly StatueModel model;
    private readonly (Situation Situation, Loads[] Loads, double[] Nodal)[] loaded;

    public ChangedStatics(StatueModel model, ValueList<Situation> situations)
    {
        this.model = model;
        loaded = [.. situations.Select(LoadsOf)];
    }

    /// <summary>The load cases of every situation with one element in the place of another.</summary>
    /// <param name="element">An element of the model.</param>
    /// <param name="replacement">What takes its place, between the same nodes.</param>
    /// <param name="segment">The segment the element stands for; null when it stands for a ring.</param>
    /// <exception cref="FrameException">The change leaves a mechanism.</exception>
    public IEnumerable<(Situation Situation, LoadCase[] Cases)> With(FrameElement element, FrameElement replacement, SegmentModel? segment)
    {
        Frame frame = model.Frame;
        var stiffness = new SymmetricMatrix(frame.Stiffness.Pattern);
        frame.Stiffness.Values.CopyTo(stiffness.Values);
        TensionOnlyBracing.Exchange(frame, element, replacement, stiffness);
        LdlFactorization factors = Pivots.FactorPositive(frame, stiffness);
        Dictionary<SegmentModel, FrameElement>? acting = segment is null ? null : new() { [segment] = replacement };
        return loaded.Select(l => (l.Situation, Solve(l.Loads, l.Nodal, factors, acting)));
    }

    /// <summary>A ring as described anew, on the model's own nodes; null when it cannot be placed.</summary>
    /// <param name="body">The body.</param>
    /// <param name="rings">Its rings as described, all of which have an element.</param>
    /// <param name="index">Place of the ring in the body's list.</param>
    /// <param name="changed">The ring as it is now.</param>
    public static RingElement? Placed(BodyModel body, ValueList<StandoffRing> rings, int index, StandoffRing changed)
    {
        // The strip of a ring depends on the other rings of its band, and on no others.
        int[] together = [.. Enumerable.Range(0, rings.Count).Where(i => body.Rings[i].Band == body.Rings[index].Band)];
        ValueList<StandoffRing> near = together.Select(i => i == index ? changed : rings[i]).ToValueList();
        RingElement[] placed = new RingPlacer(body.Prefix, body.Tower, body.Bands, body.Axes, body.Levels, body.BandPlaces).Place(near, new Validator());
        return placed.Length == together.Length ? placed[Array.IndexOf(together, index)] : null;
    }

    private (Situation, Loads[], double[]) LoadsOf(Situation situation)
    {
        Angle?[] headings = situation.Wind?.Action is WindAction wind ? [.. wind.Headings.Select(h => (Angle?)h)] : [null];
        int size = model.Frame.FreedomCount;
        var nodal = new double[headings.Length * size];
        var loads = new Loads[headings.Length];
        HeatField? heat = HeatField.Of(model, situation);
        for (int i = 0; i < loads.Length; i++)
            loads[i] = Loads.Of(model, situation, headings[i], heat, nodal.AsSpan(i * size, size));
        return (situation, loads, nodal);
    }

    private LoadCase[] Solve(Loads[] loads, double[] nodal, LdlFactorization factors, Dictionary<SegmentModel, FrameElement>? acting)
    {
        Frame frame = model.Frame;
        int full = frame.FreedomCount, order = frame.EquationCount;
        var reduced = new double[loads.Length * order];
        var u = new double[loads.Length * full];
        for (int i = 0; i < loads.Length; i++)
            frame.Reduce(nodal.AsSpan(i * full, full), reduced.AsSpan(i * order, order));
        factors.Solve(reduced);
        var cases = new LoadCase[loads.Length];
        for (int i = 0; i < cases.Length; i++)
        {
            frame.Expand(reduced.AsSpan(i * order, order), u.AsSpan(i * full, full));
            cases[i] = new LoadCase(model, loads[i], u.AsMemory(i * full, full), acting);
        }
        return cases;
    }
}
