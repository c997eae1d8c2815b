using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>The loads of a situation that do not change with the variants: wind, ice and imposed loads, without self-weight. SI units.</summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
internal sealed class LoadTable
{
    public LoadTable(StatueModel model, Situation situation)
    {
        Situation = situation;
        foreach (FactoredAction action in situation.Actions)
            WeightFactor += action.Action is SelfWeight ? action.Factor : 0;
        Situation rest = situation with { Actions = situation.Actions.Where(a => a.Action is not SelfWeight).ToValueList() };
        Angle?[] headings = situation.Wind?.Action is WindAction wind ? [.. wind.Headings.Select(h => (Angle?)h)] : [null];
        Cases = headings.Length;
        int size = model.Frame.FreedomCount;
        Nodal = new double[Cases * size];
        (Resultants, WindForces) = (new Resultant[Cases], new double[Cases]);
        for (int i = 0; i < Cases; i++)
        {
            Loads loads = Loads.Of(model, rest, headings[i], null, Nodal.AsSpan(i * size, size));
            (Resultants[i], WindForces[i]) = (loads.Resultant, loads.WindForce.Length);
        }
    }

    public Situation Situation { get; }

    public double WeightFactor { get; }

    /// <summary>Number of load cases: wind headings, or one without wind.</summary>
    public int Cases { get; }

    /// <summary>Nodal forces, one full vector a load case.</summary>
    public double[] Nodal { get; }

    public Resultant[] Resultants { get; }

    public double[] WindForces { get; }
}
