using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>
/// Accelerations measured on a statue at even steps of time: a free decay after a pull, or what wind and waves stir all day.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record SiteRecord
{
    private const int FewestSamples = 64, MostSamples = 20_000_000;

    /// <summary>Short name, as in "tip, along x".</summary>
    public required string Name { get; init; }

    /// <summary>Samples a second, 0.1 to 100 000 Hz.</summary>
    public required Frequency SampleRate { get; init; }

    /// <summary>The accelerations, in any unit: frequency and damping do not depend on it. At least 64.</summary>
    public required ValueList<double> Values { get; init; }

    /// <summary>How long it is.</summary>
    public Duration Duration => Duration.FromSeconds(Values.Count / SampleRate.Hertz);

    /// <summary>The highest frequency that can be told from such samples with some margin, 0.4 of the sample rate.</summary>
    public Frequency HighestFrequency => 0.4 * SampleRate;

    /// <summary>Asks for a record that can be worked with.</summary>
    /// <exception cref="InvalidStatueException">The record has problems; all of them are listed.</exception>
    internal void Require()
    {
        var v = new Validator();
        Validate(v.At(nameof(SiteRecord)));
        v.ThrowIfAny();
    }

    /// <summary>Asks that a frequency lies within what the samples can show, and that enough cycles were recorded.</summary>
    /// <exception cref="SiteRecordException">They do not.</exception>
    internal void RequireCycles(double f, double fewest, string purpose)
    {
        if (!(f > 0 && double.IsFinite(f)))
            throw new SiteRecordException(Invariant($"\"{Name}\": {f} Hz is not a frequency."));
        if (f > HighestFrequency.Hertz)
            throw new SiteRecordException(Invariant($"\"{Name}\" is sampled too slowly: {f:0.###} Hz needs at least {2.5 * f:0.###} samples a second, it has {SampleRate.Hertz:0.###}."));
        double cycles = f * Duration.Seconds;
        if (cycles < fewest)
            throw new SiteRecordException(Invariant($"\"{Name}\" is too short for {purpose}: it holds {cycles:0.#} cycles of {f:0.###} Hz, at least {fewest:0} are needed, {fewest / f:0.#} s."));
    }

    private void Validate(Validator v)
    {
        v.Named(Name);
        v.Positive(SampleRate, SampleRate.Hertz, 0.1, 100_000);
        if (Values is null)
        {
            v.Required(Values);
            return;
        }
        if (Values.Count is < FewestSamples or > MostSamples)
            v.Add(nameof(Values), $"must hold {FewestSamples} to {MostSamples} samples, holds {Values.Count}", "Record longer, or cut the record.");
        int bad = 0, first = -1;
        bool varies = false;
        for (int i = 0; i < Values.Count; i++)
        {
            if (!double.IsFinite(Values[i]))
                (bad, first) = (bad + 1, first < 0 ? i : first);
            varies |= Values[i] != Values[0];
        }
        if (bad > 0)
            v.Add($"{nameof(Values)}[{first}]", Invariant($"is not finite: {Values[first]}; there are {bad} such samples"), "Cut the record around them; do not fill gaps with zeros.");
        else if (Values.Count > 0 && !varies)
            v.Add(nameof(Values), "are all the same", "Was the sensor connected?");
    }
}
