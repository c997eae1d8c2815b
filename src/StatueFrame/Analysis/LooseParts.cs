using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>Says in the words of the description which level or band of a statue is loose, and what would hold it.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class LooseParts
{
    /// <summary>Mechanisms are looked for as modes with the stiffness raised by this much of the mass, (rad/s)².</summary>
    private const double Shift = 100;

    /// <summary>A mode below this ω², (rad/s)², is a mechanism: rounding leaves a little, and no statue is so slow.</summary>
    private const double NoStiffness = 1e-2;

    private const int MostMechanisms = 24;

    /// <summary>A freedom with less of a mechanism's energy is not named.</summary>
    private const double Notable = 0.1;

    private const string BandHint =
        "Bars that are pinned at both ends or free to slide do not hold a band by themselves: fix an end (EndFixity.Rigid), "
        + "give the bars a Lay or another direction, or tie the bands by Seams.";

    private const string LevelHint = "What holds it is missing or very much softer than the rest: check segments, base and units.";

    private static readonly string[] directions =
        ["moving along x", "moving along y", "moving along z", "turning about x", "turning about y", "turning about z"];

    /// <summary>The problems of a description of which no frame could be built or solved: all its loose parts.</summary>
    /// <param name="bodies">The bodies, the trunk first.</param>
    /// <param name="builder">The frame's builder; what is found loose is held, to find the rest.</param>
    /// <param name="exception">What the mechanics say.</param>
    public static InvalidStatueException Explain(IReadOnlyList<BodyModel> bodies, FrameBuilder builder, FrameException exception)
    {
        var loose = new SortedDictionary<int, Freedoms>();
        Frame? frame = null;
        while (frame is null)
        {
            try
            {
                frame = builder.Build();
                RequireMoreThanRounding(frame);
            }
            catch (FrameException e)
            {
                frame = null;
                if (!Hold(builder, e.Problems, loose))
                    return Explain(bodies, e);
            }
        }
        AddMechanisms(frame, loose);
        if (loose.Count == 0)
            return Explain(bodies, exception);
        var v = new Validator();
        foreach ((int node, Freedoms freedoms) in loose)
            Add(v, bodies, new FrameProblem("", node, freedoms));
        return new InvalidStatueException(v.Problems);
    }

    /// <summary>What the mechanics say, in the words of the description.</summary>
    public static InvalidStatueException Explain(IReadOnlyList<BodyModel> bodies, FrameException exception)
    {
        var v = new Validator();
        foreach (FrameProblem problem in exception.Problems)
            Add(v, bodies, problem);
        return new InvalidStatueException(v.Problems);
    }

    /// <summary>
    /// Looks for freedoms whose stiffness is rounding error: a sum of stiffnesses that should cancel leaves about 1e-16 of
    /// them, which factors as if it were there. Against turning, a stiffness is seen beside one that acts at a lever of 1 m.
    /// </summary>
    /// <exception cref="FrameException">There are such freedoms.</exception>
    public static void RequireMoreThanRounding(Frame frame)
    {
        var problems = new List<FrameProblem>();
        for (int node = 0; node < frame.Nodes.Count; node++)
        {
            Freedoms loose = LooseButForRounding(frame.Stiffness, frame.Topology, node);
            if (loose != Freedoms.None)
                problems.Add(new FrameProblem($"Nothing resists {loose}.", node, loose));
        }
        if (problems.Count > 0)
            throw new FrameException(problems);
    }

    /// <summary>The freedoms of a node whose stiffness is rounding error.</summary>
    public static Freedoms LooseButForRounding(SymmetricMatrix stiffness, FrameTopology topology, int node)
    {
        const double Rounding = 1e-13;
        ReadOnlySpan<int> starts = stiffness.Pattern.ColumnStarts, equations = topology.Equations.Slice(node * Frame.NodeSize, Frame.NodeSize);
        Span<double> own = stackalloc double[Frame.NodeSize];
        for (int i = 0; i < own.Length; i++)
            own[i] = equations[i] < 0 ? double.PositiveInfinity : stiffness.Values[starts[equations[i]]];
        double greatest = Math.Max(own[0], Math.Max(own[1], own[2]));
        var loose = Freedoms.None;
        if (!double.IsFinite(greatest))
            return loose;
        for (int i = 0; i < own.Length; i++)
            loose |= own[i] <= Rounding * greatest ? (Freedoms)(1 << i) : Freedoms.None;
        return loose == Freedoms.None ? LooseAslant(stiffness, equations, greatest, Rounding) : loose;
    }

    /// <summary>The freedoms that take part in a movement that only rounding resists, in a direction of its own.</summary>
    private static Freedoms LooseAslant(SymmetricMatrix stiffness, ReadOnlySpan<int> equations, double greatest, double rounding)
    {
        const int n = Frame.NodeSize;
        Span<double> block = stackalloc double[n * n], vectors = stackalloc double[n * n], values = stackalloc double[n], work = stackalloc double[2 * n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < n; j++)
                block[i * n + j] = equations[i] < 0 || equations[j] < 0 ? (i == j ? 1 : 0) : EntryAt(stiffness, equations[i], equations[j]) / greatest;
        }
        DenseEigen.Solve(block, vectors, values, work);
        double most = 0;
        foreach (double value in values)
            most = Math.Max(most, value);
        var loose = Freedoms.None;
        for (int k = 0; k < n; k++)
        {
            if (values[k] > rounding * most)
                continue;
            for (int i = 0; i < n; i++)
                loose |= vectors[k * n + i] * vectors[k * n + i] > Notable ? (Freedoms)(1 << i) : Freedoms.None;
        }
        return loose;
    }

    private static double EntryAt(SymmetricMatrix matrix, int a, int b)
    {
        int at = matrix.Pattern.IndexOf(Math.Max(a, b), Math.Min(a, b));
        return at < 0 ? 0 : matrix.Values[at];
    }

    /// <summary>Where a frame gives way, as in "turning about x of \"L3\"".</summary>
    public static string Where(IReadOnlyList<BodyModel> bodies, FrameProblem problem) =>
        Find(bodies, problem.Node) is { } part ? $"{Words(problem.Freedoms)} of \"{part.Name}\"" : problem.Message;

    /// <summary>Holds what is loose; false when the problems do not say what it is.</summary>
    private static bool Hold(FrameBuilder builder, IReadOnlyList<FrameProblem> problems, SortedDictionary<int, Freedoms> loose)
    {
        foreach (FrameProblem problem in problems)
        {
            if (problem.Freedoms == Freedoms.None)
                return false;
            loose[problem.Node] = loose.GetValueOrDefault(problem.Node) | problem.Freedoms;
            builder.Restrain(problem.Node, problem.Freedoms);
        }
        return true;
    }

    /// <summary>Adds what moves in mechanisms that no single freedom shows: by kinetic energy, over all of them.</summary>
    private static void AddMechanisms(Frame frame, SortedDictionary<int, Freedoms> loose)
    {
        ModeSet modes;
        try
        {
            modes = Modes.Solve(frame, Math.Min(MostMechanisms, frame.EquationCount), new ModeOptions { Shift = Shift });
        }
        catch (FrameException)
        {
            return;
        }
        var energy = new double[frame.FreedomCount];
        for (int mode = 0; mode < modes.Count; mode++)
        {
            double omega = 2 * Math.PI * modes.Frequency(mode);
            if (omega * omega > NoStiffness)
                continue;
            ReadOnlySpan<double> shape = modes.Shape(mode);
            double[] momentum = frame.InertiaForces(shape);
            for (int i = 0; i < energy.Length; i++)
                energy[i] += shape[i] * momentum[i];
        }
        for (int i = 0; i < energy.Length; i++)
        {
            if (energy[i] > Notable)
                loose[i / Frame.NodeSize] = loose.GetValueOrDefault(i / Frame.NodeSize) | (Freedoms)(1 << i % Frame.NodeSize);
        }
    }

    private static void Add(Validator v, IReadOnlyList<BodyModel> bodies, FrameProblem problem)
    {
        if (problem.Freedoms == Freedoms.None || Find(bodies, problem.Node) is not { } part)
            v.Add(nameof(Statue), problem.Message.TrimEnd('.'), LevelHint);
        else
            v.Add(part.Path, $"\"{part.Name}\" is loose: nothing keeps it from {Words(problem.Freedoms)}", part.IsBand ? BandHint : LevelHint);
    }

    private static string Words(Freedoms freedoms) =>
        string.Join(", ", directions.Where((_, i) => freedoms.HasFlag((Freedoms)(1 << i))));

    private static Part? Find(IReadOnlyList<BodyModel> bodies, int node)
    {
        for (int i = 0; i < bodies.Count; i++)
        {
            BodyModel body = bodies[i];
            string path = i == 0 ? "" : $"{nameof(Statue.Limbs)}[{i - 1}].";
            int band = Array.FindIndex(body.BandPlaces, place => place.Node == node);
            if (band >= 0)
                return new Part(path + nameof(Statue.Standoffs), body.BandName(band), IsBand: true);
            int level = Array.FindIndex(body.Levels, place => place.Node == node);
            if (level >= 0)
                return new Part(path + nameof(Statue.Tower), body.Prefix + body.Tower.Levels[level].Name, IsBand: false);
        }
        return null;
    }

    private sealed record Part(string Path, string Name, bool IsBand);
}
