using CsCheck;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Vibration;

public class ModalStepperTests
{
    [Fact]
    public void Every_oscillator_steps_as_it_would_alone() =>
        Gen.Select(Gen.Double[0, 300].Array[1, 11], Gen.Double[0, 0.9]).Sample((omega, damping) =>
        {
            const double h = 0.003;
            const int steps = 20;
            var stepper = new ModalStepper(omega, [.. omega.Select(_ => damping)], h);
            int n = stepper.Stride;
            double[] u = new double[(steps + 1) * n], v = new double[(steps + 1) * n], before = new double[steps * n], after = new double[steps * n];
            for (int i = 0; i < before.Length; i++)
                (before[i], after[i]) = (Math.Sin(i), Math.Cos(2 * i));
            stepper.Run(steps, before, after, u, v);
            for (int m = 0; m < omega.Length; m++)
            {
                var alone = new PiecewiseLinearOscillator(omega[m], damping, h);
                double x = 0, y = 0;
                for (int i = 0; i < steps; i++)
                    alone.Step(ref x, ref y, before[i * n + m], after[i * n + m]);
                Assert.Equal(x, u[steps * n + m], 1e-14);
                Assert.Equal(y, v[steps * n + m], 1e-12);
            }
        }, iter: 50);

    [Fact]
    public void Packed_rows_multiply_as_rows_do() =>
        Gen.Select(Gen.Int[1, 37], Gen.Int[0, 9]).Sample((rows, columns) =>
        {
            var packed = new PackedRows(rows, columns);
            double[] x = [.. Enumerable.Range(0, columns).Select(j => Math.Sin(j + 1.0))], y = new double[packed.Stride];
            for (int j = 0; j < columns; j++)
                packed.SetColumn(j, [.. Enumerable.Range(0, rows).Select(i => Math.Cos(i + 10.0 * j))], 2);
            packed.AddProduct(x, y);
            for (int i = 0; i < rows; i++)
                Assert.Equal(Enumerable.Range(0, columns).Sum(j => 2 * Math.Cos(i + 10.0 * j) * x[j]), y[i], 1e-12);
        }, iter: 50);

    [Fact]
    public void Room_and_damping_must_fit()
    {
        Assert.Throws<ArgumentException>(() => new ModalStepper([1, 2], [0.1], 0.1));
        var stepper = new ModalStepper([1], [0.1], 0.1);
        Assert.Throws<ArgumentException>(() => stepper.Run(2, [], [], new double[8], new double[12]));
        Assert.Throws<ArgumentException>(() => stepper.Run(1, new double[4], [], new double[8], new double[8]));
    }
}
