using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>The motion of the ground below a rocking block: smooth between its breaks, still after the last. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class RockingGround
{
    private const int PartsOfPulse = 64;

    private readonly double[]? ahead, up;
    private readonly double step;
    private readonly BasePulse? pulse;

    private RockingGround(double[] ahead, double[] up, double step) =>
        (this.ahead, this.up, this.step, Breaks) = (ahead, up, step, ahead.Length - 1);

    private RockingGround(BasePulse pulse) =>
        (this.pulse, step, Breaks) = (pulse, pulse.Duration.Seconds / PartsOfPulse, PartsOfPulse);

    /// <summary>Ground that is still.</summary>
    public static RockingGround Still { get; } = new([0], [0], 1);

    /// <summary>Number of smooth parts.</summary>
    public int Breaks { get; }

    public static RockingGround Of(BasePulse pulse) => new(pulse);

    /// <summary>The component of a record along a horizontal direction, with its vertical component.</summary>
    public static RockingGround Of(BaseMotionRecord record, Vector3D direction)
    {
        double[] x = record.Component(0), y = record.Component(1);
        for (int i = 0; i < x.Length; i++)
            x[i] = direction.X * x[i] + direction.Y * y[i];
        return new RockingGround(x, record.Component(2), record.Step.Seconds);
    }

    /// <summary>When a smooth part starts; that of the last one ends the motion.</summary>
    public double Start(int part) => part * step;

    /// <summary>Horizontal and vertical acceleration at a time.</summary>
    public (double Ahead, double Up) At(double t) => At(t >= Start(Breaks) ? Breaks : (int)(t / step), t);

    /// <summary>Horizontal and vertical acceleration within a smooth part; part = Breaks is the stillness after it.</summary>
    public (double Ahead, double Up) At(int part, double t)
    {
        if (part >= Breaks)
            return (0, 0);
        if (pulse is not null)
            return (pulse.AtSi(Math.Clamp(t, 0, pulse.Duration.Seconds)), 0);
        double s = t / step - part;
        return (ahead![part] + s * (ahead[part + 1] - ahead[part]), up![part] + s * (up[part + 1] - up[part]));
    }
}
