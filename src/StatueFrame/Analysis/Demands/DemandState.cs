namespace StatueFrame.Analysis;

/// <summary>One state in which the parts of a statue bear something: a load case of what acts steadily, alone or with what shakes the statue.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="when">What tells it from others of its situation, in words: the wind's heading, the earthquake's direction, the time of a shock.</param>
/// <param name="steady">The load case of what acts steadily; null when the forces are not made of one.</param>
/// <param name="shaken">What is in the forces beside it, in words; empty for nothing.</param>
internal sealed class DemandState(string when, LoadCase? steady = null, string shaken = "")
{
    public string When => when;

    public LoadCase? Steady => steady;

    public string Shaken => shaken;

    /// <summary>The local pressure on a standoff's strip that stands in the place of all wind, outward positive, Pa; null for none.</summary>
    public double? LocalPressure { get; init; }
}
