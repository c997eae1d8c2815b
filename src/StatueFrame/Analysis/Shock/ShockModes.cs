using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>Chooses as many modes as a shock sets moving.</summary>
internal static class ShockModes
{
    private const double Enough = 0.995;
    private const int First = 8, Most = 1024;

    /// <summary>Modes above this frequency are not asked for by a blow without duration: no contact is that short. Hz.</summary>
    private const double ShortestContact = 1000;

    /// <summary>The modes, how many of them to take, and the part of the energy that these take of what all would take.</summary>
    public static (ModeSet Modes, int Count, double Captured) Of(StatueModel model, ShockLoads loads, int? count)
    {
        List<(double[] Force, double Epsilon, bool IsPull)> drives = Drives(model, loads);
        double[] all = [.. drives.Select(d => d.IsPull ? model.Statics.Solve(d.Force).Zip(d.Force, (u, f) => u * f).Sum() : ShockLoads.Mobility(model, d.Force, d.Epsilon))];
        for (int n = count ?? First; ; n = Math.Min(2 * n, model.Frame.EquationCount))
        {
            ModeSet modes = Modes.Solve(model.Statics, Math.Min(n, model.Frame.EquationCount));
            double[] captured = Captured(modes, drives, all);
            int enough = Array.FindIndex(captured, c => c >= Enough);
            if (count is null && enough >= 0)
                return (modes, enough + 1, captured[enough]);
            if (count is not null || n >= Most || modes.Count < n || n >= model.Frame.EquationCount)
                return (modes, modes.Count, captured[^1]);
        }
    }

    /// <summary>
    /// What moves the statue, with ε so that modes well above the frequencies that it holds count little: these follow
    /// statically. A pulse of the duration t_d is taken to hold frequencies up to 2/t_d.
    /// </summary>
    private static List<(double[] Force, double Epsilon, bool IsPull)> Drives(StatueModel model, ShockLoads loads)
    {
        var drives = new List<(double[], double, bool)>();
        if (loads.Patterns.Count > 0)
        {
            var sum = new double[model.Frame.FreedomCount];
            foreach (ShockLoads.Pattern pattern in loads.Patterns)
                Mechanics.Statics.DenseVector.AddScaled(sum, 1, pattern.Nodal);
            drives.Add((sum, Trace(2 / loads.Shortest), false));
        }
        if (loads.HasImpulse)
            drives.Add((loads.Impulse, Trace(ShortestContact), false));
        if (loads.HasPull)
            drives.Add((loads.Pull, 0, true));
        return drives;
    }

    private static double Trace(double frequency) => 1 / (4 * Math.PI * Math.PI * frequency * frequency);

    /// <summary>For every count of modes the part of the energy that they take, of the shock of which they take the least.</summary>
    private static double[] Captured(ModeSet modes, List<(double[] Force, double Epsilon, bool IsPull)> drives, double[] all)
    {
        var captured = new double[modes.Count];
        Array.Fill(captured, 1);
        for (int i = 0; i < drives.Count; i++)
        {
            double sum = 0;
            for (int m = 0; all[i] > 0 && m < modes.Count; m++)
            {
                double f = modes.ModalForce(m, drives[i].Force), square = modes.CircularFrequency(m) * modes.CircularFrequency(m);
                sum += f * f / (drives[i].IsPull ? square : 1 + drives[i].Epsilon * square);
                captured[m] = Math.Min(captured[m], sum / all[i]);
            }
        }
        return captured;
    }
}
