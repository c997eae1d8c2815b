using CsCheck;

namespace StatueFrame.Tests.Standoffs;

public class FlatRectangleTests
{
    private const string Table = "Timoshenko and Goodier, Theory of Elasticity, torsion of rectangular bars, table";

    public static IEnumerable<PublishedValue> Rows =>
    [
        .. new[] { (1.0, 0.1406, 0.208), (1.5, 0.196, 0.231), (2, 0.229, 0.246), (3, 0.263, 0.267), (5, 0.291, 0.291), (10, 0.312, 0.312) }
            .SelectMany(r => new[]
            {
                new PublishedValue($"torsion constant J/(bt³) at b/t = {r.Item1}", Table, r.Item2, "-", 2.5e-3, () => new FlatRectangle(r.Item1, 1).J / r.Item1, ValueKind.FromMemory),
                new PublishedValue($"torsion modulus W/(bt²) at b/t = {r.Item1}", Table, r.Item3, "-", 2.5e-3, () => new FlatRectangle(r.Item1, 1).TorsionW / r.Item1, ValueKind.FromMemory),
            }),
    ];

    [Fact]
    public void Torsion_does_not_depend_on_which_side_is_called_the_width() => Bars.Section.Sample(s =>
    {
        var turned = new FlatRectangle(s.t, s.b);
        Assert.Equal(s.J, turned.J, 1e-14 * s.J);
        Assert.Equal(s.TorsionW, turned.TorsionW, 1e-14 * s.TorsionW);
    });

    [Fact]
    public void Torsion_constant_agrees_with_the_plain_series_summed_to_many_terms() => Gen.Double[1, 60].Sample(r =>
    {
        double sum = 0;
        for (int n = 1; n < 400; n += 2)
            sum += Math.Tanh(n * Math.PI * r / 2) / Math.Pow(n, 5);
        double expected = r / 3 * (1 - 192 / (Math.Pow(Math.PI, 5) * r) * sum);
        Assert.Equal(expected, new FlatRectangle(r, 1).J, 1e-10 * expected);
    });
}
