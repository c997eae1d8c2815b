using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;

namespace StatueFrame.Analysis;

/// <summary>What is looked at while a statue rocks: energies of its bars, tower and skin, and the stress of every bar.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class RockingLooks
{
    private readonly ShockProbes probes;
    private readonly BarPeaks bars;
    private readonly double[][] looks, bands, bandsOfTurn;
    private readonly double[] at, bandAt;
    private readonly List<double> times = [];
    private (double, double) barStrain, towerStrain, skin;

    public RockingLooks(RockingModes body)
    {
        StatueModel model = body.Model;
        probes = new ShockProbes(model);
        bars = new BarPeaks(model, model.RespondValid(new Situation { Name = "rest", Actions = [new SelfWeight()] }).Cases[0]);
        (at, bandAt) = (new double[probes.Count], new double[Frame.NodeSize * probes.BandCount]);
        looks = [.. Enumerable.Range(0, body.Count).Select(i => Looked(body.Modes.Shape(i)))];
        bands = [.. Enumerable.Range(0, body.Count).Select(i => Bands(body.Modes.Shape(i)))];
        bandsOfTurn = [Bands(RigidTurn(body, 0)), Bands(RigidTurn(body, 1))];
    }

    /// <summary>Greatest elastic energy of the standoffs, J, and when, s.</summary>
    public (double Value, double Time) BarStrain => barStrain;

    /// <summary>Greatest elastic energy of all else.</summary>
    public (double Value, double Time) TowerStrain => towerStrain;

    /// <summary>Greatest kinetic energy of the skin.</summary>
    public (double Value, double Time) Skin => skin;

    /// <summary>Looks at a time.</summary>
    /// <param name="t">The time, s.</param>
    /// <param name="q">Where the modes are.</param>
    /// <param name="v">How fast they move.</param>
    /// <param name="strain">All elastic energy.</param>
    /// <param name="turn">The side that the base turns on and how fast; null while it stands.</param>
    public void Look(double t, ReadOnlySpan<double> q, ReadOnlySpan<double> v, double strain, (int Side, double Rate)? turn)
    {
        at.AsSpan().Clear();
        bandAt.AsSpan().Clear();
        for (int i = 0; i < looks.Length; i++)
        {
            DenseVector.AddScaled(at, q[i], looks[i]);
            DenseVector.AddScaled(bandAt, v[i], bands[i]);
        }
        if (turn is var (side, rate))
            DenseVector.AddScaled(bandAt, rate, bandsOfTurn[side]);
        double inBars = probes.BarStrain(at);
        Greater(ref barStrain, inBars, t);
        Greater(ref towerStrain, strain - inBars, t);
        Greater(ref skin, DenseVector.Dot(bandAt, bandAt), t);
        bars.Look(at, times.Count);
        times.Add(t);
    }

    /// <summary>The standoff nearest to its yield strength; null without any.</summary>
    public ShockBar? WorstBar()
    {
        ShockBar[] all = bars.Results(sample => times[sample]);
        return all.Length == 0 ? null : all.FirstGreatest(bar => bar.YieldFraction);
    }

    /// <summary>Keeps the greater with its time.</summary>
    public static void Greater(ref (double Value, double Time) peak, double value, double t)
    {
        if (value > peak.Value)
            peak = (value, t);
    }

    private double[] Looked(ReadOnlySpan<double> shape)
    {
        var values = new double[probes.Count];
        probes.Look(shape, values);
        return values;
    }

    private double[] Bands(ReadOnlySpan<double> shape)
    {
        var values = new double[Frame.NodeSize * probes.BandCount];
        probes.LookAtBands(shape, values);
        return values;
    }

    /// <summary>A unit turn on a side as a full vector.</summary>
    private static double[] RigidTurn(RockingModes body, int side)
    {
        (Vector3D move, Vector3D turn) = body.Motion(side);
        Frame frame = body.Model.Frame;
        var u = new double[frame.FreedomCount];
        for (int node = 0; node < frame.Nodes.Count; node++)
        {
            Vector3D v = move + turn.Cross(frame.Nodes[node].Position - body.Model.BaseCenter);
            (u[Frame.NodeSize * node], u[Frame.NodeSize * node + 1], u[Frame.NodeSize * node + 2]) = (v.X, v.Y, v.Z);
            (u[Frame.NodeSize * node + 3], u[Frame.NodeSize * node + 4], u[Frame.NodeSize * node + 5]) = (turn.X, turn.Y, turn.Z);
        }
        return u;
    }
}
