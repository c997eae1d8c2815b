using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>A demand that can tell how it comes about.</summary>
internal interface ITraced
{
    /// <summary>How it comes about; null when it cannot be told.</summary>
    public DemandOrigin? Origin { get; }
}

/// <summary>
/// How a demand comes about: what every action of the situation gives to each of its forces, with the factor on it, and what comes
/// beside from what shakes the statue, or from rules.
/// </summary>
/// <remarks>
/// What an action gives is what it adds to those before it, the wind last: exact where everything is linear, and where something is
/// not, as with braces that go slack or ice that catches wind, the sum is exact still. Immutable and safe to share between threads.
/// </remarks>
/// <param name="State">The state it is of.</param>
/// <param name="Forces">Names and dimensions of the forces.</param>
/// <param name="Of">The forces of a load case of what acts steadily, SI units.</param>
/// <param name="Total">The forces that the demand has.</param>
internal sealed record DemandOrigin(DemandState State, (string Symbol, Dimension Dimension)[] Forces, Func<LoadCase, double[]> Of, double[] Total)
{
    private static readonly (string, Dimension)[] cut =
        [("N", Dimension.Force), ("V_x", Dimension.Force), ("V_y", Dimension.Force), ("M_x", Dimension.Moment), ("M_y", Dimension.Moment), ("T", Dimension.Moment)];

    /// <summary>A part of the total below this is rounding, relative to the greatest of its kind.</summary>
    private const double Rounding = 1e-9;

    /// <summary>What rules add to the forces of the state, in words, each with its forces.</summary>
    public (string Cause, double[] Forces)[] Besides { get; init; } = [];

    /// <summary>What else is in the rest, in words; empty for nothing.</summary>
    public string Rest { get; init; } = "";

    /// <summary>What follows from the sums, as the forces that the check begins with.</summary>
    public Action<Working>? Then { get; init; }

    /// <summary>How the forces in a cut at an end of a segment come about, in the axes of its body.</summary>
    /// <param name="ends">The forces at both ends.</param>
    /// <param name="segment">Number of the segment in the statue.</param>
    /// <param name="atTop">True for its upper end.</param>
    public static DemandOrigin OfCut(EndForces ends, int segment, bool atTop)
    {
        return new DemandOrigin(ends.State, cut, At, Numbers(atTop ? ends.Top : ends.Bottom));

        double[] At(LoadCase loadCase)
        {
            (SectionForce bottom, SectionForce top) = loadCase.SectionForcesOf(loadCase.Model.Segments[segment]);
            return Numbers(atTop ? top : bottom);
        }

        static double[] Numbers(SectionForce f) => [f.Forces.Z, f.Forces.X, f.Forces.Y, f.Moments.X, f.Moments.Y, f.Moments.Z];
    }

    /// <summary>Tells it as a part of a working of its own.</summary>
    public void Tell(Working? w)
    {
        if (w is null || (State is { Steady: null, Shaken: "" } && Besides.Length == 0))
            return;
        using IDisposable part = w.Part("What acts");
        if (State.When.Length > 0)
            w.Note($"{char.ToUpperInvariant(State.When[0])}{State.When[1..]}.");
        w.AddSuperposition(Forces.Select((force, i) => (force.Symbol, Total[i], force.Dimension)), Terms());
        Then?.Invoke(w);
    }

    private List<WorkingLine.Term> Terms()
    {
        var terms = new List<WorkingLine.Term>();
        var sum = new double[Total.Length];
        double[] before = new double[Total.Length];
        foreach ((FactoredAction action, LoadCase upTo) in State.Steady?.BuiltUp ?? [])
        {
            double[] after = Of(upTo);
            string cause = action.Action is WindAction ? Headings.Describe(State.Steady!.Heading) : action.Action.Title;
            Add(cause, action.Factor, [.. after.Select((value, i) => action.Factor == 0 ? 0 : (value - before[i]) / action.Factor)]);
            before = after;
        }
        if (State.Steady is { BuiltUp.Count: 0 } whole)
            Add("all that acts steadily", 1, Of(whole));
        foreach ((string cause, double[] forces) in Besides)
            Add(cause, 1, forces);
        double[] rest = [.. Total.Select((value, i) => value - sum[i])];
        if (rest.Select((value, i) => Math.Abs(value) > Rounding * Scale(i)).Any(counts => counts))
            Add(string.Join(" and ", new[] { State.Shaken, Rest }.Where(words => words.Length > 0).DefaultIfEmpty("what comes beside")), 1, rest);
        return terms;

        void Add(string cause, double factor, double[] values)
        {
            if (Array.TrueForAll(values, value => value == 0))
                return;
            terms.Add(new WorkingLine.Term(cause, factor, values.ToValueList()));
            for (int i = 0; i < sum.Length; i++)
                sum[i] += factor * values[i];
        }

        double Scale(int i) => terms.SelectMany(term => term.Values.Where((_, k) => Forces[k].Dimension == Forces[i].Dimension).Select(Math.Abs)).Append(1e-6).Max();
    }
}
