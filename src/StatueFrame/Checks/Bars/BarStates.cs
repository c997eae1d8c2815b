using StatueFrame.Analysis;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Checks;

/// <summary>
/// The states of a ring's bars, over all load cases and both bounds on the skin, that can be worst for something that
/// grows with the magnitude of every force at one end: no other state of a like bar has all of them as great.
/// </summary>
/// <remarks>For one thread. SI units.</remarks>
internal sealed class BarStates
{
    private const int EndSize = FrameElement.Size / 2;

    private readonly List<(int Bar, SkinAssumption Skin, double[] Forces)> states = [];
    private readonly int from;

    /// <summary>Gathers the states of a ring.</summary>
    /// <param name="response">The response.</param>
    /// <param name="ring">The ring.</param>
    /// <param name="bandInStatue">Number of its band in the statue.</param>
    /// <param name="atSkin">True for the skin end.</param>
    public BarStates(Response response, RingElement ring, int bandInStatue, bool atSkin)
    {
        from = atSkin ? EndSize : 0;
        Span<double> forces = stackalloc double[FrameElement.Size];
        foreach (LoadCase loadCase in response.Cases)
        {
            foreach (BarModel bar in ring.Bars)
            {
                for (SkinAssumption skin = SkinAssumption.RigidRing; skin <= SkinAssumption.LimpSkin; skin++)
                {
                    if (loadCase.ForcesOf(ring, bar, bandInStatue, skin, forces))
                        Keep(ring, bar, skin, forces);
                }
            }
        }
    }

    /// <summary>The bars, the bounds and the end forces (12 values, bar axes).</summary>
    public IReadOnlyList<(int Bar, SkinAssumption Skin, double[] Forces)> All => states;

    private void Keep(RingElement ring, BarModel bar, SkinAssumption skin, ReadOnlySpan<double> forces)
    {
        Standoff standoff = bar.Bar.Place.Standoff;
        for (int i = states.Count - 1; i >= 0; i--)
        {
            if (!ReferenceEquals(ring.Bars[states[i].Bar].Bar.Place.Standoff, standoff))
                continue;
            if (IsCovered(forces, states[i].Forces))
                return;
            if (IsCovered(states[i].Forces, forces))
                states.RemoveAt(i);
        }
        states.Add((bar.Index, skin, forces.ToArray()));
    }

    private bool IsCovered(ReadOnlySpan<double> forces, ReadOnlySpan<double> by)
    {
        for (int i = from; i < from + EndSize; i++)
        {
            if (Math.Abs(forces[i]) > Math.Abs(by[i]))
                return false;
        }
        return true;
    }
}
