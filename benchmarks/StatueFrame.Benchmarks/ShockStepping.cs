using BenchmarkDotNet.Attributes;
using StatueFrame.Analysis;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Benchmarks;

/// <summary>
/// One second of the Saltmere Heron in steps of a millisecond: 64 modes stepped alone; the whole response with the peaks of
/// points, base, energies and every bar; and the same with bars that yield (a tenth of a second).
/// </summary>
[MemoryDiagnoser]
public class ShockStepping
{
    private const int Count = 64, Steps = 1000;

    private readonly StatueModel model = StatueModel.Build(StatueFile.Load(Heron()).Statue);
    private readonly ShockOptions options = new() { Modes = 40, Step = 0.001.Seconds, Length = 1.Seconds };
    private readonly PressurePulse wave = new() { Name = "wave", Shape = new TrianglePulse(), Peak = 2.Kilopascals, Duration = 0.05.Seconds };
    private ModalStepper stepper = null!;
    private double[] u = [], v = [], before = [], after = [];

    [GlobalSetup]
    public void Setup()
    {
        ModeSet modes = Modes.Solve(model.Statics, Count);
        stepper = new ModalStepper([.. Enumerable.Range(0, Count).Select(modes.CircularFrequency)], [.. Enumerable.Repeat(0.01, Count)], 0.001);
        (u, v) = (new double[(Steps + 1) * stepper.Stride], new double[(Steps + 1) * stepper.Stride]);
        (before, after) = (new double[Steps * stepper.Stride], new double[Steps * stepper.Stride]);
        Array.Fill(before, 1);
        Array.Fill(after, 1);
    }

    [Benchmark]
    public double SteppingAlone()
    {
        stepper.Run(Steps, before, after, u, v);
        return u[^1];
    }

    [Benchmark]
    public ShockResponse WholeResponse() => ShockResponse.Of(model, Shock(), DampingModel.OfRatio(0.01), options);

    [Benchmark]
    public ShockResponse YieldingTenthOfASecond() => ShockResponse.Of(
        model, Shock(), DampingModel.OfRatio(0.01), options with { Length = 0.1.Seconds, Yielding = new BarYielding { StrengthFactor = 0.3 } });

    private static string Heron()
    {
        const string File = "docs/examples/saltmere-heron.json";
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, File)))
            folder = folder.Parent;
        return Path.Combine(folder?.FullName ?? "", File);
    }

    private Situation Shock() => new() { Name = "wave", Actions = [new SelfWeight(), wave] };
}
