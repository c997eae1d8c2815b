using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>A statue that swings in one of its modes, mass-normalized, with the accelerations ω²φ.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class ModeShape : MotionShapes
{
    private readonly ModeSet set;
    private readonly int mode;
    private readonly double[] accelerations;

    public ModeShape(StatueModel model, ModeSet set, int mode) : base(model)
    {
        (this.set, this.mode) = (set, mode);
        accelerations = new double[model.Frame.FreedomCount];
        DenseVector.AddScaled(accelerations, set.CircularFrequency(mode) * set.CircularFrequency(mode), set.Shape(mode));
    }

    public override int Count => 1;

    public override ReadOnlySpan<double> Displacements(int coordinate) => set.Shape(mode);

    public override ReadOnlySpan<double> Accelerations(int coordinate) => accelerations;

    public override Resultant[] Base() => [OfMode(set.Shape(mode), set.CircularFrequency(mode))];
}
