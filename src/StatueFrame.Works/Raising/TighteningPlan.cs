using System.Text;
using MathNet.Numerics.LinearAlgebra;
using StatueFrame.Reporting;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>
/// The order and the torques by which the hold-down bars are brought to their pre-tension, and what each keeps when its
/// neighbors are tightened after it: every plate is rigid on the elastic bed of the block, so that a bar that pulls it down
/// slackens those beside it.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Embedding, relaxation and creep are those of the sheet's losses, and come on
/// top. The bed is that of the checks: the block's modulus over the bed's depth.
/// </remarks>
public sealed record TighteningPlan
{
    private TighteningPlan()
    {
    }

    /// <summary>The steps.</summary>
    public required ValueList<TighteningStep> Steps { get; init; }

    /// <summary>Force in every bar after the last step, in the order of the description.</summary>
    public required ValueList<Force> Left { get; init; }

    /// <summary>The least of <see cref="Left"/> over the bar's pre-tension.</summary>
    public required double LeastPart { get; init; }

    /// <summary>Plans the tightening.</summary>
    /// <param name="statue">A statue with hold-down bars that have pre-tension, and a pedestal or foundation to bed the plates.</param>
    /// <param name="torqueFactor">k of T = k d F, 0.08 to 0.35, by test of the lubricated thread; 0.2 dry and 0.12 lubricated (common practice, no source).</param>
    /// <param name="rounds">Rounds over all bars, 1 to 6: of three the first brings half and the second three quarters.</param>
    /// <exception cref="InvalidStatueException">There is nothing to tighten, or an input is out of range.</exception>
    public static TighteningPlan Of(Statue statue, double torqueFactor, int rounds = 3)
    {
        ArgumentNullException.ThrowIfNull(statue);
        var v = new Validator();
        statue.Validate(v);
        v.InRange(torqueFactor, 0.08, 0.35, "It is 0.2 for dry threads, 0.12 for lubricated ones, by test.");
        v.InRange(rounds, 1, 6, "Three rounds are usual.");
        if (statue.HoldDown is not { Bars.Count: > 0 } holdDown || holdDown.Bars.All(b => b.PreTension.Newtons == 0))
            v.Add(nameof(Statue.HoldDown), "has no bars with pre-tension", "Give AnchorBar.PreTension.");
        if (statue.Pedestal is not { Courses.Count: > 0 })
            v.Add(nameof(Statue.Pedestal), "is not described: the bed under the plates has no stiffness", "Describe what the statue stands on.");
        v.ThrowIfAny();
        holdDown = statue.HoldDown!;
        double bed = statue.Pedestal!.Courses[0].Material.E / holdDown.BedDepthInUse;
        var plates = holdDown.Plates.Select(p => new BeddedPlate(p, bed)).ToArray();
        int[] plateOf = [.. holdDown.Bars.Select(bar => Nearest(plates, bar))];
        var steps = new List<TighteningStep>();
        int[] order = [.. Crosswise(holdDown.Bars, plateOf)];
        for (int round = 1; round <= rounds; round++)
        {
            double part = rounds == 1 ? 1 : 0.5 + 0.5 * (round - 1) / (rounds - 1);
            foreach (int i in order)
            {
                AnchorBar bar = holdDown.Bars[i];
                double F = part * bar.PreTension.Newtons;
                if (F == 0)
                    continue;
                BeddedPlate plate = plates[plateOf[i]];
                plate.Tighten(bar, i, F);
                steps.Add(new TighteningStep(steps.Count + 1, round, i + 1, Force.FromNewtons(F), Torque.FromNewtonMeters(torqueFactor * bar.Diameter.Meters * F), Length.FromMeters(F / bar.Stiffness)));
            }
        }
        double[] left = [.. holdDown.Bars.Select((bar, i) => plates[plateOf[i]].ForceOf(i))];
        return new TighteningPlan
        {
            Steps = [.. steps],
            Left = [.. left.Select(f => Force.FromNewtons(f))],
            LeastPart = holdDown.Bars.Select((bar, i) => bar.PreTension.Newtons > 0 ? left[i] / bar.PreTension.Newtons : double.PositiveInfinity).Min(),
        };
    }

    /// <summary>The steps as comma-separated values (RFC 4180), with a heading.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["step", "round", "bar", "force [kN]", "torque [N·m]", "elongation [mm]"]);
        foreach (TighteningStep s in Steps)
            CsvText.AppendLine(text, [Invariant($"{s.Step}"), Invariant($"{s.Round}"), Invariant($"{s.Bar}"), Invariant($"{s.Force.Kilonewtons:0.0}"), Invariant($"{s.Torque.NewtonMeters:0}"), Invariant($"{s.Elongation.Millimeters:0.00}")]);
        return text.ToString();
    }

    /// <summary>Rounds, torques and what is left, as plain text.</summary>
    public override string ToString() => Invariant(
        $"{Steps.Count} steps in {Steps[^1].Round} rounds, order of the first round {string.Join(", ", Steps.Where(s => s.Round == 1).Select(s => s.Bar))}; last torque {Steps[^1].Torque.NewtonMeters:0} N·m, elongation {Steps[^1].Elongation.Millimeters:0.0} mm. After the last step the bars keep at least {100 * LeastPart:0.0} % of their pre-tension before later losses. Measure the elongation: torque alone tells the force to ±30 % (common practice, no source). {Drawing.Caution}");

    private static int Nearest(BeddedPlate[] plates, AnchorBar bar)
    {
        int best = 0;
        for (int i = 1; i < plates.Length; i++)
        {
            if (plates[i].Distance(bar) < plates[best].Distance(bar))
                best = i;
        }
        return best;
    }

    /// <summary>Plate by plate opposite each other, and on each plate the bar farthest from those that were tightened before it.</summary>
    private static IEnumerable<int> Crosswise(ValueList<AnchorBar> bars, int[] plateOf)
    {
        var left = Enumerable.Range(0, bars.Count).ToList();
        var done = new List<int>();
        while (left.Count > 0)
        {
            int fewest = left.Select(i => plateOf[i]).Distinct().Min(p => done.Count(d => plateOf[d] == p));
            int next = left.Where(i => done.Count(d => plateOf[d] == plateOf[i]) == fewest)
                .MaxBy(i => Math.Round(1e6 * (done.Count == 0 ? 0 : Gap(i, done[^1]) + 1e-3 * done.Min(d => Gap(i, d)))));
            left.Remove(next);
            done.Add(next);
        }
        return done;

        double Gap(int i, int j) => Math.Sqrt(Math.Pow(bars[i].X.Meters - bars[j].X.Meters, 2) + Math.Pow(bars[i].Y.Meters - bars[j].Y.Meters, 2));
    }

    /// <summary>A rigid plate on its bed: it goes down by w + a x + b y, which shortens the bars that are tight.</summary>
    private sealed class BeddedPlate(BasePlate plate, double bed)
    {
        private readonly List<(int Index, AnchorBar Bar, double Pulled)> tight = [];
        private Vector<double> down = Vector<double>.Build.Dense(3);

        public double Distance(AnchorBar bar) =>
            Math.Pow(Math.Max(0, Math.Abs(bar.X.Meters - plate.X.Meters) - 0.5 * plate.WidthX.Meters), 2) + Math.Pow(Math.Max(0, Math.Abs(bar.Y.Meters - plate.Y.Meters) - 0.5 * plate.WidthY.Meters), 2);

        public double ForceOf(int index) => tight.FirstOrDefault(t => t.Index == index) is { Bar: { } bar } t ? bar.Stiffness * (t.Pulled - Down(bar)) : 0;

        /// <summary>Pulls a bar until it has a force, with the nut then resting on the plate.</summary>
        public void Tighten(AnchorBar bar, int index, double force)
        {
            tight.RemoveAll(t => t.Index == index);
            // The force is kept while the nut turns: the plate settles under it and the tight bars that are left.
            Solve(Row(bar) * force);
            tight.Add((index, bar, force / bar.Stiffness + Down(bar)));
        }

        private void Solve(Vector<double> load)
        {
            (double bx, double by) = (plate.WidthX.Meters, plate.WidthY.Meters);
            double k = bed * bx * by;
            Matrix<double> K = Matrix<double>.Build.DenseOfDiagonalArray([k, k * bx * bx / 12, k * by * by / 12]);
            foreach ((_, AnchorBar bar, double pulled) in tight)
            {
                Vector<double> row = Row(bar);
                K += bar.Stiffness * row.OuterProduct(row);
                load += bar.Stiffness * pulled * row;
            }
            down = K.Cholesky().Solve(load);
        }

        private Vector<double> Row(AnchorBar bar) => Vector<double>.Build.Dense([1, bar.X.Meters - plate.X.Meters, bar.Y.Meters - plate.Y.Meters]);

        private double Down(AnchorBar bar) => Row(bar).DotProduct(down);
    }
}
