using System.Numerics;
using MathNet.Numerics.IntegralTransforms;
using StatueFrame.Analysis;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;
using static StatueFrame.Tests.Analysis.Gusts.GustStatues;

namespace StatueFrame.Tests.Analysis.Gusts;

/// <summary>
/// Gusts simulated in time, with spectra and coherence written out anew, and the modes stepped through them: sixteen
/// spells of 614 s after 205 s of settling. The mean square of a spell scatters; theirs is known to the standard error
/// that the scatter gives, about 2 % of the deviation. Straight lines between samples and none above 10 Hz take about 1 % off the
/// acceleration.
/// </summary>
public class GustSimulationTests
{
    private const int Bands = 10, Samples = 1 << 14, Settling = 1 << 12, Spells = 16;
    private const double Step = 0.05, Height = 40, Width = 4, Ratio = 0.012, DecayConstant = 11.5;

    private static readonly Statue statue = Uniform(Height, Width, 0.8, bands: Bands);

    private static readonly En1991Wind wind = Wind();

    private static readonly (double Y, double Z)[] middles = [.. Enumerable.Range(0, Bands).Select(a => (0.0, (a + 0.5) * Height / Bands))];

    [Fact]
    public void Deviations_are_those_of_simulated_gusts()
    {
        StatueModel model = StatueModel.Build(statue);
        ModalResponse modes = model.Modes(4);
        GustResponse gusts = GustResponse.Of(
            model, modes, Action(wind), 0.Degrees, DampingModel.OfRatio(Ratio), new GustOptions { AerodynamicDamping = false, PointsAcross = 1, PointsAlong = 1 });
        var bands = new StatueWind(model, Action(wind), 0.Degrees);
        double[][] patterns = [.. Enumerable.Range(0, Bands).Select(a => Pattern(model, bands, a))];
        double[][,] factors = Factors(middles);
        int freedom = model.PlaceOf("top").Node * Mechanics.Frame.NodeSize;
        double[] sway = new double[Spells], acceleration = new double[Spells];
        for (int spell = 0; spell < Spells; spell++)
        {
            double[][] u = Simulate(factors, new Random(1000 + spell));
            ForceHistory[] forces = [.. Enumerable.Range(0, Bands).Select(a => new ForceHistory(patterns[a], u[a]))];
            var history = ModalTimeHistory.Run(modes.Set, Ratio, forces, Step, Samples - 1);
            sway[spell] = MeanSquare(history.Of(freedom));
            acceleration[spell] = MeanSquare(history.Of(freedom, Motion.Acceleration));
        }
        AssertAgrees(sway, gusts.Of("tip").Sway.Deviation.Meters);
        AssertAgrees(acceleration, gusts.Of("tip").Acceleration.Deviation.MetersPerSecondSquared);
    }

    /// <summary>
    /// Bending and shear of cuts at three heights, stepped through the same gusts with twenty modes: what a gust factor found from
    /// overturning does not tell.
    /// </summary>
    [Fact]
    public void Deviations_of_cuts_higher_up_are_those_of_simulated_gusts()
    {
        StatueModel model = StatueModel.Build(statue);
        GustDemand[] demands = [.. GustResponse.Of(
            model, model.Modes(12), Action(wind), 0.Degrees, DampingModel.OfRatio(Ratio), new GustOptions { AerodynamicDamping = false, PointsAcross = 1, PointsAlong = 1 }).Effects()];
        var bands = new StatueWind(model, Action(wind), 0.Degrees);
        double[][] patterns = [.. Enumerable.Range(0, Bands).Select(a => Pattern(model, bands, a))];
        double[][,] factors = Factors(middles);
        ModalResponse modes = model.Modes(20);
        SegmentModel[] segments = [.. new[] { 0, 4, 7 }.Select(i => model.Segments[i])];
        double[][] moments = [.. segments.Select(_ => new double[Spells])], shears = [.. segments.Select(_ => new double[Spells])];
        for (int spell = 0; spell < Spells; spell++)
        {
            double[][] u = Simulate(factors, new Random(2000 + spell));
            ForceHistory[] forces = [.. Enumerable.Range(0, Bands).Select(a => new ForceHistory(patterns[a], u[a]))];
            var history = ModalTimeHistory.Run(modes.Set, Ratio, forces, Step, Samples - 1);
            for (int s = 0; s < segments.Length; s++)
            {
                double[][] cut = Forces(model, segments[s], history);
                (moments[s][spell], shears[s][spell]) = (MeanSquare(cut[4]), MeanSquare(cut[0]));
            }
        }
        for (int s = 0; s < segments.Length; s++)
        {
            AssertAgrees(moments[s], Of("bending"));
            AssertAgrees(shears[s], Of("shear"));

            double Of(string what) => demands.Single(d => d.Where == $"{segments[s].Name}, bottom" && d.What == what).Deviation;
        }
    }

    /// <summary>
    /// Twist at the foot of a round tower 6 m wide, soft against it, that resonates at 1.3 Hz: the gusts of forty points, eight across each of five
    /// bands, turn it in time. The library has one odd gust a band. Midpoints of eighths turn by 1 % less than a whole width, and straight lines
    /// between samples take 1.4 % at that frequency, sin²(πnΔt)/(πnΔt)².
    /// </summary>
    [Fact]
    public void Deviation_of_twist_is_that_of_simulated_gusts_at_many_points()
    {
        const int few = 5, across = 8;
        const double wide = 6;
        Statue stiff = Uniform(Height, wide, 0.8, bands: few);
        StatueModel model = StatueModel.Build(stiff with { Tower = stiff.Tower with { Segments = [.. stiff.Tower.Segments.Select(s => (TowerSegment)((CoreSegment)s with { Torsion = Rigidity.FromNewtonSquareMeters(((CoreSegment)s).Torsion.NewtonSquareMeters / 400) }))] } });
        var options = new GustOptions { AerodynamicDamping = false, AcrossIntensity = 0, PointsAlong = 1, PointsAcross = across };
        GustResponse gusts = GustResponse.Of(model, model.Modes(20), Action(wind), 0.Degrees, DampingModel.OfRatio(Ratio), options);
        Assert.True(gusts.BaseTwist.Resonant.NewtonMeters > 0.3 * gusts.BaseTwist.Background.NewtonMeters);
        var bands = new StatueWind(model, Action(wind), 0.Degrees);
        (double Y, double Z)[] points = [.. Enumerable.Range(0, few * across).Select(i => (((i % across + 0.5) / across - 0.5) * wide, (i / across + 0.5) * Height / few))];
        double[][] patterns = [.. points.Select((point, i) => Pattern(model, bands, i / across, 1.0 / across, point.Y))];
        double[][,] factors = Factors(points);
        ModalResponse modes = model.Modes(20);
        var twist = new double[Spells];
        for (int spell = 0; spell < Spells; spell++)
        {
            double[][] u = Simulate(factors, new Random(3000 + spell));
            ForceHistory[] forces = [.. points.Select((_, i) => new ForceHistory(patterns[i], u[i]))];
            twist[spell] = MeanSquare(Forces(model, model.Segments[0], ModalTimeHistory.Run(modes.Set, Ratio, forces, Step, Samples - 1))[5]);
        }
        AssertAgrees(twist, 0.99 * 0.986 * gusts.BaseTwist.Deviation.NewtonMeters);
    }

    /// <summary>
    /// The root of an arm held out level across the wind, which swings at about 1.2 Hz: its own gusts, those of the trunk that shakes it, and what
    /// they have in common. Straight lines between samples take 1.2 % there.
    /// </summary>
    [Fact]
    public void Deviation_at_the_root_of_a_limb_is_that_of_simulated_gusts()
    {
        Limb arm = Arm("L7", 90, 8, 1.5);
        var soft = Rigidity.FromNewtonSquareMeters(2.2e6);
        arm = arm with { Tower = arm.Tower with { Segments = [.. arm.Tower.Segments.Select(s => (TowerSegment)((CoreSegment)s with { BendingX = soft, BendingY = soft }))] } };
        StatueModel model = StatueModel.Build(Uniform(Height, Width, 0.8, bands: Bands, limbs: arm));
        var options = new GustOptions { AerodynamicDamping = false, PointsAcross = 1, PointsAlong = 1, AcrossIntensity = 0 };
        double computed = GustResponse.Of(model, model.Modes(12), Action(wind), 0.Degrees, DampingModel.OfRatio(Ratio), options)
            .Effects().Single(d => d.Where == "arm/root–A1, bottom" && d.What == "bending").Deviation;
        var parts = new StatueWind(model, Action(wind), 0.Degrees);
        double[][] patterns = [.. parts.Parts.Select((_, a) => Pattern(model, parts, a))];
        double[][,] factors = Factors([.. parts.Parts.Select(part => (part.At.Dot(parts.Across), part.At.Z))]);
        ModalResponse modes = model.Modes(20);
        SegmentModel root = model.Segments.Single(segment => segment.Name == "arm/root–A1");
        var bending = new double[Spells];
        for (int spell = 0; spell < Spells; spell++)
        {
            double[][] u = Simulate(factors, new Random(6000 + spell));
            ForceHistory[] forces = [.. patterns.Select((pattern, a) => new ForceHistory(pattern, u[a]))];
            double[][] cut = Forces(model, root, ModalTimeHistory.Run(modes.Set, Ratio, forces, Step, Samples - 1));
            bending[spell] = MeanSquare(cut[3]) + MeanSquare(cut[4]);
        }
        AssertAgrees(bending, 0.988 * computed);
    }

    /// <summary>The six forces at a segment's lower end, from the motions of both of its ends and the inertia of its own mass.</summary>
    private static double[][] Forces(StatueModel model, SegmentModel segment, ModalTimeHistory history)
    {
        const int n = Mechanics.Frame.NodeSize;
        double[][] all = [.. Enumerable.Range(0, n).Select(_ => new double[Samples])];
        foreach (int node in new[] { segment.Element.Start, segment.Element.End })
        {
            for (int k = 0; k < n; k++)
            {
                var unit = new double[model.Frame.FreedomCount];
                unit[node * n + k] = 1;
                SectionForce force = segment.SectionForces(segment.Element, unit).Bottom;
                double[] accelerated = new double[2 * n], inertia = new double[2 * n];
                accelerated[(node == segment.Element.Start ? 0 : n) + k] = -1;
                segment.TakeInertia(accelerated, inertia);
                double[] u = history.Of(node * n + k), a = history.Of(node * n + k, Mechanics.Vibration.Motion.Acceleration);
                double[] six = [.. ((Mechanics.Vector3D[])[force.Forces, force.Moments]).SelectMany(v => (double[])[v.X, v.Y, v.Z])];
                for (int f = 0; f < n; f++)
                {
                    for (int i = 0; i < u.Length; i++)
                        all[f][i] += six[f] * u[i] + inertia[f] * a[i];
                }
            }
        }
        return all;
    }

    private static void AssertAgrees(double[] meanSquares, double deviation)
    {
        double mean = meanSquares.Average();
        double error = Math.Sqrt(meanSquares.Sum(s => (s - mean) * (s - mean)) / (Spells - 1) / Spells);
        Assert.InRange(error / mean, 0.001, 0.06);
        Assert.True(Math.Abs(mean - deviation * deviation) < 2.5 * error, $"simulated {Math.Sqrt(mean):g5} ± {0.5 * error / Math.Sqrt(mean):g2}, computed {deviation:g5}");
    }

    private static double MeanSquare(double[] history)
    {
        double[] kept = history[Settling..];
        return kept.Sum(x => x * x) / kept.Length;
    }

    /// <summary>Nodal loads of a gust of 1 m/s at one band: ρ C_f A V.</summary>
    private static double[] Pattern(StatueModel model, StatueWind bands, int a, double share = 1, double beside = 0)
    {
        var nodal = new double[model.Frame.FreedomCount];
        StatueWind.Part band = bands.Parts[a];
        Mechanics.Vector3D force = share * 2 / band.Speed * band.MeanForce * bands.Direction, moment = (band.At + beside * bands.Across - band.Place.NodeAt).Cross(force);
        new[] { force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z }.CopyTo(nodal, band.Place.Node * Mechanics.Frame.NodeSize);
        return nodal;
    }

    /// <summary>The Cholesky factor of the gusts' cross-spectra at each frequency k/(Samples·Step).</summary>
    private static double[][,] Factors((double Y, double Z)[] points)
    {
        var factors = new double[Samples / 2][,];
        double spacing = 1 / (Samples * Step);
        for (int k = 0; k < factors.Length; k++)
        {
            // The lowest line stands for all that is slower, too.
            double n = k == 0 ? 0.25 * spacing : k * spacing, weight = k == 0 ? 0.5 : 1;
            var S = new double[points.Length, points.Length];
            for (int a = 0; a < points.Length; a++)
            {
                for (int b = 0; b < points.Length; b++)
                {
                    (double za, double zb) = (points[a].Z, points[b].Z);
                    double V = 0.5 * (Speed(za) + Speed(zb)), x = DecayConstant * n / V;
                    S[a, b] = weight * spacing * Math.Sqrt(Spectrum(za, n) * Spectrum(zb, n)) * Math.Exp(-x * double.Hypot(za - zb, points[a].Y - points[b].Y));
                }
            }
            factors[k] = Cholesky(S);
        }
        return factors;

        static double Speed(double z) => 0.19 * 26 * Math.Log(Math.Max(z, 2) / 0.05);

        static double Spectrum(double z, double n)
        {
            double sigma = 0.19 * 26, L = 300 * Math.Pow(Math.Max(z, 2) / 200, 0.67 + 0.05 * Math.Log(0.05)), f = n * L / Speed(z);
            return sigma * sigma / n * 6.8 * f / Math.Pow(1 + 10.2 * f, 5.0 / 3);
        }
    }

    private static double[,] Cholesky(double[,] S)
    {
        int n = S.GetLength(0);
        var L = new double[n, n];
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = S[i, j];
                for (int m = 0; m < j; m++)
                    sum -= L[i, m] * L[j, m];
                L[i, j] = i == j ? Math.Sqrt(sum) : sum / L[j, j];
            }
        }
        return L;
    }

    /// <summary>Gusts at all bands: the real part of a Fourier sum with Gaussian amplitudes.</summary>
    private static double[][] Simulate(double[][,] factors, Random random)
    {
        int count = factors[0].GetLength(0);
        Complex[][] lines = [.. Enumerable.Range(0, count).Select(_ => new Complex[Samples])];
        var noise = new Complex[count];
        for (int k = 0; k < factors.Length; k++)
        {
            for (int a = 0; a < count; a++)
                noise[a] = new Complex(Gauss(), Gauss());
            for (int a = 0; a < count; a++)
            {
                for (int b = 0; b <= a; b++)
                    lines[a][k] += factors[k][a, b] * noise[b];
            }
        }
        foreach (Complex[] line in lines)
            Fourier.Inverse(line, FourierOptions.NoScaling);
        return [.. lines.Select(line => Array.ConvertAll(line, c => c.Real))];

        double Gauss() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
