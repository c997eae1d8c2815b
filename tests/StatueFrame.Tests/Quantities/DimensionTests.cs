using System.Globalization;
using System.Reflection;
using CsCheck;

namespace StatueFrame.Tests.Quantities;

public class DimensionTests
{
    public static IEnumerable<PublishedValue> Rows =>
    [
        Row("1 in in mm", "exact by the international yard and pound agreement, 1959", 25.4, "mm", () => 1 / Dimension.SmallLength.Value(1, DisplayUnits.UsCustomary) * 1000),
        Row("1 lbf/ft² in Pa", "from the exact foot, pound and standard gravity", 0.45359237 * 9.80665 / (0.3048 * 0.3048), "Pa", () => 1 / Dimension.Pressure.Value(1, DisplayUnits.UsCustomary)),
        Row("1 ksi in MPa", "from the exact inch, pound and standard gravity", 0.45359237 * 9.80665 / (0.0254 * 0.0254) / 1000, "MPa", () => 1e-6 / Dimension.Stress.Value(1, DisplayUnits.UsCustomary)),
        Row("1 kip·ft in kN·m", "from the exact foot, pound and standard gravity", 0.45359237 * 9.80665 * 0.3048, "kN·m", () => 1e-3 / Dimension.Moment.Value(1, DisplayUnits.UsCustomary)),
        Row("1 kip/in in kN/m", "from the exact inch, pound and standard gravity", 0.45359237 * 9.80665 / 0.0254, "kN/m", () => 1e-3 / Dimension.Stiffness.Value(1, DisplayUnits.UsCustomary), 2e-9),
        Row("1 mph in m/s", "exact by the international mile", 0.44704, "m/s", () => 1 / Dimension.Speed.Value(1, DisplayUnits.UsCustomary)),
        Row("1 in⁴ in cm⁴", "exact by the international inch", 2.54 * 2.54 * 2.54 * 2.54, "cm⁴", () => 1e8 / Dimension.AreaMomentOfInertia.Value(1, DisplayUnits.UsCustomary)),
    ];

    private static PublishedValue Row(string feature, string source, double expected, string unit, Func<double> compute, double tolerance = 1e-11) =>
        new(feature, source, expected, unit, tolerance, compute, ValueKind.IndependentComputation);

    [Theory]
    [InlineData("Stress", 101e6, "101 MPa", "14.6 ksi")]
    [InlineData("Stress", 210e9, "210,000 MPa", "30,458 ksi")]
    [InlineData("SmallLength", 0.0024, "2.4 mm", "0.09449 in")]
    [InlineData("Length", 12.75, "12.75 m", "41.83 ft")]
    [InlineData("Area", 23.456, "23.5 m²", "252 ft²")]
    [InlineData("Force", 1234.5, "1.23 kN", "0.278 kip")]
    [InlineData("Force", -1e6, "-1,000 kN", "-225 kip")]
    [InlineData("Moment", 5e6, "5,000 kN·m", "3,688 kip·ft")]
    [InlineData("Pressure", 2394, "2.39 kPa", "50 psf")]
    [InlineData("Mass", 31234.4, "31,234 kg", "68,860 lb")]
    [InlineData("Speed", 26, "26 m/s", "58.2 mph")]
    [InlineData("Angle", Math.PI / 2, "90°", "90°")]
    [InlineData("Temperature", 293.15, "20 °C", "68 °F")]
    [InlineData("TemperatureDelta", 30, "30 K", "54 °F")]
    [InlineData("Stiffness", 24_500, "24.5 kN/m", "0.14 kip/in")]
    [InlineData("AreaMomentOfInertia", 1.77e-6, "177 cm⁴", "4.25 in⁴")]
    [InlineData("SectionModulus", 2.7e-4, "270 cm³", "16.5 in³")]
    [InlineData("Density", 7850, "7,850 kg/m³", "490 lb/ft³")]
    [InlineData("AreaDensity", 21.432, "21.4 kg/m²", "4.39 lb/ft²")]
    [InlineData("Frequency", 1.2345, "1.23 Hz", "1.23 Hz")]
    [InlineData("Percent", 0.0125, "1.25 %", "1.25 %")]
    [InlineData("Number", 1.3, "1.3", "1.3")]
    public void Prints_in_both_systems(string dimension, double si, string metric, string usCustomary)
    {
        Assert.Equal(metric, Named(dimension).Format(si, DisplayUnits.Metric));
        Assert.Equal(usCustomary, Named(dimension).Format(si, DisplayUnits.UsCustomary));
    }

    [Theory]
    [InlineData(0, "0")]
    [InlineData(-1e-12, "0")]
    [InlineData(0.00012345, "0.000123")]
    [InlineData(0.000012345, "1.23e-5")]
    [InlineData(-0.0000120, "-1.2e-5")]
    [InlineData(9.996, "10")]
    [InlineData(99.96, "100")]
    [InlineData(999.6, "1,000")]
    [InlineData(1234567.8, "1,234,568")]
    [InlineData(123456789012, "1.23e11")]
    [InlineData(double.PositiveInfinity, "∞")]
    [InlineData(double.NegativeInfinity, "-∞")]
    [InlineData(double.NaN, "n/a")]
    public void Prints_numbers_of_every_size(double value, string text) =>
        Assert.Equal(text, Dimension.Number.Format(value, DisplayUnits.Metric));

    [Fact]
    public void Minus_zero_prints_as_zero() => Assert.Equal("0 kN", Dimension.Force.Format(double.NegativeZero, DisplayUnits.Metric));

    [Fact]
    public void A_value_that_is_not_a_number_has_no_unit() => Assert.Equal("n/a", Dimension.Stress.Format(double.NaN, DisplayUnits.Metric));

    [Fact]
    public void The_culture_of_the_thread_changes_nothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator = ",";
            CultureInfo.CurrentCulture.NumberFormat.NumberGroupSeparator = ".";
            Assert.Equal("1.23 kN", Dimension.Force.Format(1234.5, DisplayUnits.Metric));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void What_is_printed_is_within_half_a_unit_of_the_third_digit() =>
        Gen.Double[-4, 8.9].Sample(exponent =>
        {
            double value = Math.Pow(10, exponent);
            double printed = double.Parse(Dimension.Number.Format(value, DisplayUnits.Metric), NumberStyles.Any, CultureInfo.InvariantCulture);
            Assert.InRange(printed / value, 1 - 0.0050001, 1 + 0.0050001);
        });

    [Fact]
    public void A_sign_only_adds_a_minus() =>
        Gen.Double[1e-3, 1e8].Sample(value =>
            Dimension.Force.Format(-value, DisplayUnits.UsCustomary) == "-" + Dimension.Force.Format(value, DisplayUnits.UsCustomary));

    [Fact]
    public void All_dimensions_name_their_units()
    {
        Assert.Equal(28, All.Length);
        foreach (Dimension dimension in All)
        {
            foreach (DisplayUnits units in Enum.GetValues<DisplayUnits>())
                Assert.EndsWith(dimension.Unit(units), dimension.Format(1, units));
            Assert.NotEmpty(dimension.Name);
        }
        Assert.Equal(All.Length, All.Select(d => d.Name).Distinct().Count());
    }

    private static Dimension[] All =>
        [.. typeof(Dimension).GetProperties(BindingFlags.Public | BindingFlags.Static).Select(p => (Dimension)p.GetValue(null)!)];

    private static Dimension Named(string name) => (Dimension)typeof(Dimension).GetProperty(name)!.GetValue(null)!;
}
