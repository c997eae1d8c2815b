namespace StatueFrame.Analysis;

/// <summary>The worst of every bar over the load cases of a situation. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class BarEnvelope
{
    private readonly StatueModel model;
    private readonly LoadCase[] cases;
    private readonly Lazy<BarResult[]> results;

    /// <summary>For every bar of the statue, ring by ring: the load case of its worst stress, that of its greatest deflection, and both states.</summary>
    private readonly Extremum[] worst;

    internal readonly record struct Extremum(int StressCase, int DeflectionCase, BarState AtStress, BarState AtDeflection);

    public BarEnvelope(StatueModel model, LoadCase[] cases)
    {
        this.model = model;
        this.cases = cases;
        worst = new Extremum[model.BarCount];
        int index = 0;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            foreach (BarModel bar in ring.Bars)
                worst[index++] = Of(ring, bar, band);
        }
        results = new Lazy<BarResult[]>(MakeResults);
    }

    public IReadOnlyList<BarResult> Results => results.Value;

    public BarResult? WorstStress => Greatest(w => w.AtStress.Stress);

    public BarResult? GreatestDeflection => Greatest(w => w.AtDeflection.Deflection);

    public BarResult ResultOf(int bar)
    {
        int index = 0;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            if (bar < index + ring.Bars.Length)
                return new BarResult(ring, bar - index, band, worst[bar], cases);
            index += ring.Bars.Length;
        }
        throw new ArgumentOutOfRangeException(nameof(bar));
    }

    private Extremum Of(RingElement ring, BarModel bar, int band)
    {
        Extremum found = default;
        for (int i = 0; i < cases.Length; i++)
        {
            BarState state = cases[i].StateOf(ring, bar, band);
            if (i == 0)
                found = new Extremum(0, 0, state, state);
            if (Extremes.Exceeds(state.Stress, found.AtStress.Stress))
                found = found with { StressCase = i, AtStress = state };
            if (Extremes.Exceeds(state.Deflection, found.AtDeflection.Deflection))
                found = found with { DeflectionCase = i, AtDeflection = state };
            if (!state.StandsAlone)
                found = found with { AtStress = found.AtStress with { StandsAlone = false } };
        }
        return found;
    }

    private BarResult? Greatest(Func<Extremum, double> value)
    {
        if (worst.Length == 0)
            return null;
        int at = 0;
        for (int i = 1; i < worst.Length; i++)
        {
            if (Extremes.Exceeds(value(worst[i]), value(worst[at])))
                at = i;
        }
        return ResultOf(at);
    }

    private BarResult[] MakeResults()
    {
        var all = new BarResult[worst.Length];
        int index = 0;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            for (int i = 0; i < ring.Bars.Length; i++, index++)
                all[index] = new BarResult(ring, i, band, worst[index], cases);
        }
        return all;
    }
}
