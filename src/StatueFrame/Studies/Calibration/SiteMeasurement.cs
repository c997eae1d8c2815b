using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>Something measured on a statue: a frequency, a mode's shape, a sway in a wind, a bar's strain.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class SiteMeasurement
{
    /// <summary>So many of the lowest modes are looked at when a shape is sought.</summary>
    private const int Sought = 12;

    private readonly Func<StatueModel, double[]> model;

    private SiteMeasurement(ValueList<Measured> values, Func<StatueModel, double[]> model) => (Values, this.model) = (values, model);

    /// <summary>The measured numbers.</summary>
    public ValueList<Measured> Values { get; }

    /// <summary>The frequency of a mode by its number, lowest first. Where modes are close, give their shapes instead.</summary>
    /// <param name="mode">The mode, from 1.</param>
    /// <param name="value">Its frequency.</param>
    /// <param name="error">Standard error.</param>
    public static SiteMeasurement ModeFrequency(int mode, Frequency value, Frequency error)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(mode, 1);
        return new([new Measured($"frequency of mode {mode}", value.Hertz, error.Hertz)], model => [model.Modes(mode).Modes[mode - 1].Frequency.Hertz]);
    }

    /// <summary>
    /// A mode by its shape: of the twelve lowest modes the one that is most alike (greatest modal assurance criterion) is taken,
    /// so that modes may change places; frequency and shape are both met. The scale of a shape means nothing.
    /// </summary>
    /// <param name="name">The mode's name.</param>
    /// <param name="value">Its frequency.</param>
    /// <param name="error">Standard error of the frequency.</param>
    /// <param name="shape">Movement along x and y of levels, bands or named points, in any one scale; two places or more.</param>
    /// <param name="shapeError">Standard error of each of the movements, in their scale.</param>
    /// <exception cref="ArgumentException">There are fewer than two places, or nothing moves.</exception>
    public static SiteMeasurement Mode(string name, Frequency value, Frequency error, IReadOnlyList<(string Place, double X, double Y)> shape, double shapeError)
    {
        double[] seen = [.. shape.SelectMany(s => new[] { s.X, s.Y })];
        if (shape.Count < 2 || !(Dot(seen, seen) > 0))
            throw new ArgumentException("A shape needs two places or more, of which one moves.", nameof(shape));
        (string Place, double, double)[] places = [.. shape];
        return new(
            [new Measured($"frequency of {name}", value.Hertz, error.Hertz), .. shape.SelectMany(s => new[] { new Measured($"{name} at {s.Place} along x", s.X, shapeError), new Measured($"{name} at {s.Place} along y", s.Y, shapeError) })],
            model =>
            {
                ModalResponse modes = model.Modes(Sought);
                (double Alike, double Hertz, double[] Moved) best = (-1, 0, []);
                for (int mode = 0; mode < modes.Modes.Count; mode++)
                {
                    double[] moved = [.. places.SelectMany(p => Moved(model, modes.Set.Shape(mode), p.Place))];
                    double along = Dot(moved, seen), square = Dot(moved, moved);
                    double alike = square > 0 ? along * along / (square * Dot(seen, seen)) : 0;
                    if (alike > best.Alike)
                        best = (alike, modes.Modes[mode].Frequency.Hertz, [.. moved.Select(m => square > 0 ? along / square * m : 0)]);
                }
                return [best.Hertz, .. best.Moved];
            });
    }

    /// <summary>The sway of a named point in a situation with one wind.</summary>
    /// <param name="point">The point.</param>
    /// <param name="situation">What acted, without partial factors.</param>
    /// <param name="value">The sway.</param>
    /// <param name="error">Standard error.</param>
    public static SiteMeasurement Sway(string point, Situation situation, Length value, Length error) =>
        new([new Measured($"sway of {point}", value.Meters, error.Meters)], model => [model.Respond(situation).GreatestSway(point).Sway.Meters]);

    /// <summary>The strain of the most stressed fiber of a bar in a situation.</summary>
    /// <param name="band">The band that the bar holds, as "band 12".</param>
    /// <param name="bar">The bar's number, from 1.</param>
    /// <param name="situation">What acted, without partial factors.</param>
    /// <param name="value">The strain, above zero.</param>
    /// <param name="error">Standard error.</param>
    public static SiteMeasurement BarStrain(string band, int bar, Situation situation, double value, double error) =>
        new([new Measured($"strain of {band}, bar {bar}", value, error)], model =>
        {
            BarResult found = model.Respond(situation).Bars.FirstOrDefault(b => b.Band == band && b.Number == bar)
                ?? throw new ArgumentException($"There is no bar {bar} of \"{band}\".");
            return [found.Stress / found.Standoff.Material.YoungsModulus];
        });

    /// <summary>Any number that a model gives.</summary>
    /// <param name="measured">The measured number.</param>
    /// <param name="model">What the model gives, as a pure function, SI.</param>
    public static SiteMeasurement Of(Measured measured, Func<StatueModel, double> model) => new([measured], m => [model(m)]);

    internal double[] In(StatueModel statue) => model(statue);

    private static double[] Moved(StatueModel model, ReadOnlySpan<double> shape, string place)
    {
        NamedPoint? point = model.Statue.Points.FirstOrDefault(p => p.Name == place);
        Place at = model.PlaceOf(point?.On ?? place);
        var moved = model.Motion(shape, at, point is null ? at.Center : model.PositionOf(point)).Displacement;
        return [moved.X, moved.Y];
    }

    private static double Dot(double[] a, double[] b) => a.Zip(b, (x, y) => x * y).Sum();
}
