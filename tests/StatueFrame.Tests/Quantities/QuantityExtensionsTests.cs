using System.Reflection;
using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Quantities;

public class QuantityExtensionsTests
{
    [Fact]
    public void A_number_of_any_kind_takes_a_unit()
    {
        Assert.Equal(Length.FromMillimeters(2.4), 2.4.Millimeters);
        Assert.Equal(Speed.FromMetersPerSecond(26), 26.MetersPerSecond);
        Assert.Equal(Speed.FromMetersPerSecond(26), 26.0.MetersPerSecond);
        Assert.Equal(Pressure.FromGigapascals(210), 210.Gigapascals);
        Assert.Equal(Pressure.FromGigapascals(210), 210L.Gigapascals);
        Assert.Equal(Length.FromMeters(0.5), 0.5f.Meters);
        Assert.Equal(Length.FromMeters(0.5), 0.5m.Meters);
    }

    [Fact]
    public void Negative_numbers_keep_their_sign() => Assert.Equal(-12.5, (-12.5).DegreesCelsius.DegreesCelsius);

    [Fact]
    public void Every_unit_name_gives_the_quantity_that_reads_back_in_that_unit()
    {
        MethodInfo[] units = UnitGetters();
        Assert.True(units.Length > 50);
        foreach (MethodInfo getter in units)
        {
            string unit = getter.Name["get_".Length..];
            object quantity = getter.MakeGenericMethod(typeof(double)).Invoke(null, [2.5])!;
            if (unit == nameof(PoundsPerSquareFoot))
                continue;
            double back = (double)quantity.GetType().GetProperty(unit)!.GetValue(quantity)!;
            Assert.Equal(2.5, back, 1e-12);
        }
    }

    private static double PoundsPerSquareFoot => 0.45359237 / (0.3048 * 0.3048);

    [Fact]
    public void A_pound_per_square_foot_is_the_exact_pound_on_the_exact_foot() =>
        Assert.Equal(PoundsPerSquareFoot, 1.PoundsPerSquareFoot.KilogramsPerSquareMeter, 1e-12);

    [Theory]
    [InlineData(double.NaN, "NaN is not a number of millimeters.")]
    [InlineData(double.PositiveInfinity, "Infinity is not a number of millimeters.")]
    [InlineData(double.NegativeInfinity, "-Infinity is not a number of millimeters.")]
    public void A_number_that_is_not_finite_is_refused_with_the_unit(double value, string message) =>
        Assert.StartsWith(message, Assert.Throws<ArgumentException>(() => value.Millimeters).Message);

    [Fact]
    public void The_refusal_spells_the_unit_in_words() =>
        Assert.StartsWith("NaN is not a number of pounds force per square foot.",
            Assert.Throws<ArgumentException>(() => double.NaN.PoundsForcePerSquareFoot).Message);

    [Fact]
    public void Every_unit_refuses_NaN()
    {
        foreach (MethodInfo getter in UnitGetters())
        {
            var thrown = Assert.Throws<TargetInvocationException>(
                () => getter.MakeGenericMethod(typeof(double)).Invoke(null, [double.NaN]));
            Assert.IsType<ArgumentException>(thrown.InnerException);
        }
    }

    [Fact]
    public void Whole_numbers_and_their_doubles_give_the_same() =>
        Gen.Int[-1_000_000, 1_000_000].Sample(n => n.Kilonewtons.Newtons == ((double)n).Kilonewtons.Newtons);

    private static MethodInfo[] UnitGetters() =>
        [.. typeof(QuantityExtensions).GetMethods(BindingFlags.Public | BindingFlags.Static)
            .Where(m => m.Name.StartsWith("get_", StringComparison.Ordinal))];
}
