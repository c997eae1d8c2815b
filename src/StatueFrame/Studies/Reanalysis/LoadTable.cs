using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>The loads of a situation that do not change with the variants: wind, ice and imposed loads, without self-weight. SI units.</summary>
/// <remarks>Immutable and safe to share between threads; the arrays must not be written to.</remarks>
internal sealed class LoadTable
{
    private const int Lanes = 4;

    public LoadTable(StatueModel model, Situation situation, RingPart[] rings)
    {
        Situation = situation;
        foreach (FactoredAction action in situation.Actions)
            WeightFactor += action.Action is SelfWeight ? action.Factor : 0;
        Situation rest = situation with { Actions = situation.Actions.Where(a => a.Action is not SelfWeight).ToValueList() };
        Angle?[] headings = situation.Wind?.Action is WindAction wind ? [.. wind.Headings.Select(h => (Angle?)h)] : [null];
        Cases = headings.Length;
        Stride = (Cases + Lanes - 1) & -Lanes;
        int size = model.Frame.FreedomCount;
        Nodal = new double[Cases * size];
        (Resultants, WindForces) = (new Resultant[Cases], new double[Cases]);
        OnStrips = Array.ConvertAll(rings, ring => new double[ring.Ring.Bars.Length * 3 * Stride]);
        for (int i = 0; i < Cases; i++)
        {
            Loads loads = Loads.Of(model, rest, headings[i], null, Nodal.AsSpan(i * size, size));
            (Resultants[i], WindForces[i]) = (loads.Resultant, loads.WindForce.Length);
            AddStrips(new LoadCase(model, loads, ReadOnlyMemory<double>.Empty, null), rings, i);
        }
        LocalPressures = FindLocalPressures(model, situation);
    }

    public Situation Situation { get; }

    public double WeightFactor { get; }

    /// <summary>Number of load cases: wind headings, or one without wind.</summary>
    public int Cases { get; }

    /// <summary><see cref="Cases"/> rounded up to whole vectors.</summary>
    public int Stride { get; }

    /// <summary>Nodal forces, one full vector a load case.</summary>
    public double[] Nodal { get; }

    public Resultant[] Resultants { get; }

    public double[] WindForces { get; }

    /// <summary>Per ring, bar and direction of its axes, the force on the bar's own strip of skin in each load case.</summary>
    public double[][] OnStrips { get; }

    /// <summary>The greatest local pressure or suction on each band of the trunk, factor included; empty without wind or strength.</summary>
    public double[] LocalPressures { get; }

    private void AddStrips(LoadCase loadCase, RingPart[] rings, int at)
    {
        for (int r = 0; r < rings.Length; r++)
        {
            RingElement ring = rings[r].Ring;
            for (int bar = 0; bar < ring.Bars.Length; bar++)
            {
                (double x, double y, double z) = ring.Bars[bar].Bar.Place.Axes.ToLocal(loadCase.LimpForce(ring.Bars[bar], rings[r].Band));
                Span<double> row = OnStrips[r].AsSpan(bar * 3 * Stride, 3 * Stride);
                (row[at], row[Stride + at], row[2 * Stride + at]) = (x, y, z);
            }
        }
    }

    private static double[] FindLocalPressures(StatueModel model, Situation situation)
    {
        if (situation is not { LimitState: LimitState.Strength, Wind: { Action: WindAction wind } factored })
            return [];
        BodyModel trunk = model.Bodies[0];
        double length = trunk.Bands.Length == 0 ? 0 : trunk.Bands[^1].Top - trunk.Bands[0].Bottom;
        var local = new CladdingWind { Profile = wind.Profile };
        return Array.ConvertAll(trunk.Bands, band =>
        {
            CladdingPressure found = local.OnStrip(band, 0, 1, Math.Max(0, model.Statue.BaseAboveGround.Meters + band.Top), length, wind.Headings);
            return factored.Factor * Math.Max(found.Inward.Pascals, found.Suction.Pascals);
        });
    }
}
