using CsCheck;
using StatueFrame.Checks;
using UnitsNet;
using static StatueFrame.Tests.Checks.Metals.AnyOf;

namespace StatueFrame.Tests.Checks.Metals;

public class CorrosionLawTests
{
    private const string Table3 = "ISO 9224:2012, Table 3, as tabulated in a public data set";
    private const string Table2 = "ISO 9223:2012, Table 2, of carbon steel, second hand";

    public static IEnumerable<PublishedValue> Rows =>
    [
        Factor("carbon steel, B1", MetalFamily.CarbonSteel, LossExponent.Average, 2, 1.437),
        Factor("carbon steel, B1", MetalFamily.CarbonSteel, LossExponent.Average, 10, 3.334),
        Factor("carbon steel, B1", MetalFamily.CarbonSteel, LossExponent.Average, 20, 4.791),
        Factor("carbon steel, B2", MetalFamily.CarbonSteel, LossExponent.Upper, 20, 5.599),
        Factor("zinc, B1", MetalFamily.Zinc, LossExponent.Average, 20, 11.422),
        Factor("zinc, B2", MetalFamily.Zinc, LossExponent.Upper, 15, 10.635),
        Factor("copper, B1", MetalFamily.Copper, LossExponent.Average, 20, 7.375),
        Factor("copper, B2", MetalFamily.Copper, LossExponent.Upper, 20, 8.801),
        Factor("aluminum, B1", MetalFamily.Aluminum, LossExponent.Average, 20, 8.854),
        Factor("aluminum, B2", MetalFamily.Aluminum, LossExponent.Upper, 19, 10.764),
        Limit("upper limit of C1, carbon steel", MetalFamily.CarbonSteel, Corrosivity.C1, 1.3, ValueKind.Published),
        Limit("upper limit of C2, carbon steel", MetalFamily.CarbonSteel, Corrosivity.C2, 25, ValueKind.Published),
        Limit("upper limit of C3, carbon steel", MetalFamily.CarbonSteel, Corrosivity.C3, 50, ValueKind.Published),
        Limit("upper limit of C4, carbon steel", MetalFamily.CarbonSteel, Corrosivity.C4, 80, ValueKind.Published),
        Limit("upper limit of C5, carbon steel", MetalFamily.CarbonSteel, Corrosivity.C5, 200, ValueKind.Published),
        Limit("upper limit of CX, carbon steel", MetalFamily.CarbonSteel, Corrosivity.CX, 700, ValueKind.Published),
        Limit("upper limit of C5, copper", MetalFamily.Copper, Corrosivity.C5, 5.6, ValueKind.FromMemory),
        Limit("upper limit of C4, zinc", MetalFamily.Zinc, Corrosivity.C4, 4.2, ValueKind.FromMemory),
        new("dose-response of carbon steel, 10 °C, 80 %, 10 and 100 mg/(m²·d)", "ISO 9223:2012, equation (1), by hand", 1.77 * 3.31131 * 4.953032 + 0.102 * 17.37801 * 20.90524, "µm", 1e-4,
            () => DoseResponse.FirstYear(MetalFamily.CarbonSteel, Air(10, 80, 10, 100))!.Value.Micrometers, ValueKind.IndependentComputation),
        new("dose-response of copper, 10 °C, 80 %, 10 and 100 mg/(m²·d)", "ISO 9223:2012, equation (3), by hand", 0.0053 * 1.819701 * 112.1683 + 0.01025 * 3.467369 * 29.07854, "µm", 1e-4,
            () => DoseResponse.FirstYear(MetalFamily.Copper, Air(10, 80, 10, 100))!.Value.Micrometers, ValueKind.IndependentComputation),
        new("dose-response of zinc, 25 °C, 70 %, 5 and 20 mg/(m²·d)", "ISO 9223:2012, equation (2), by hand", 0.0129 * 2.030228 * 8.628488 + 0.0175 * 5.515436 * 14.65764, "µm", 1e-4,
            () => DoseResponse.FirstYear(MetalFamily.Zinc, Air(25, 70, 5, 20))!.Value.Micrometers, ValueKind.IndependentComputation),
        new("dose-response of aluminum, 0 °C, 75 %, 1 and 1 mg/(m²·d)", "ISO 9223:2012, equation (4), by hand", 0.0042 * 6.520819 * 0.9139312 + 0.0018 * 4.481689, "µm", 1e-4,
            () => DoseResponse.FirstYear(MetalFamily.Aluminum, Air(0, 75, 1, 1))!.Value.Micrometers, ValueKind.IndependentComputation),
        new("exponent of steel with 0.3 % Cu and 0.5 % Cr", "ISO 9224:2012, clause 6, by hand", 0.569 - 0.0207 - 0.062, "-", 1e-9, () => new SteelComposition { Copper = 0.3, Chromium = 0.5 }.Exponent, ValueKind.FromMemory),
        new("100 years of carbon steel over the first", "ISO 9224:2012, equation (3), by hand", 4.7911 + 0.523 * 4.7911 / 20 * 80, "-", 1e-4, () => CorrosionLaw.TimeFactor(100, 0.523), ValueKind.IndependentComputation),
    ];

    [Fact]
    public void Loss_grows_with_time_and_slows_down() => Gen.Select(Gen.Double[0, 300], Gen.Double[0.01, 50], Gen.Double[0.05, 1]).Sample((t, dt, b) =>
    {
        double before = CorrosionLaw.TimeFactor(t, b), then = CorrosionLaw.TimeFactor(t + dt, b), later = CorrosionLaw.TimeFactor(t + 2 * dt, b);
        Assert.True(then > before);
        Assert.True(later - then <= (then - before) * (1 + 1e-9) + 1e-12);
    });

    [Fact]
    public void The_steady_rate_goes_on_from_the_twentieth_year_without_a_jump_or_kink() => Gen.Double[0.05, 1].Sample(b =>
    {
        const double h = 1e-5;
        Assert.Equal(CorrosionLaw.TimeFactor(20, b), CorrosionLaw.TimeFactor(20 + 1e-12, b), 1e-9);
        double below = (CorrosionLaw.TimeFactor(20, b) - CorrosionLaw.TimeFactor(20 - h, b)) / h, above = (CorrosionLaw.TimeFactor(20 + h, b) - CorrosionLaw.TimeFactor(20, b)) / h;
        Assert.Equal(below, above, 1e-5);
    });

    [Theory]
    [InlineData(MetalFamily.CarbonSteel)]
    [InlineData(MetalFamily.Zinc)]
    [InlineData(MetalFamily.Copper)]
    [InlineData(MetalFamily.Aluminum)]
    public void A_worse_category_takes_more(MetalFamily metal)
    {
        Corrosivity[] all = Enum.GetValues<Corrosivity>();
        for (int i = 1; i < all.Length; i++)
        {
            var (lower, upper) = CorrosivityTable.Limits(metal, all[i])!.Value;
            Assert.Equal(CorrosivityTable.Limits(metal, all[i - 1])!.Value.Upper!.Value.Micrometers, lower.Micrometers, 1e-12);
            if (upper is not { } most)
                continue;
            Assert.True(most > lower);
            Assert.Equal(all[i], CorrosivityTable.CategoryOf(metal, (lower + most) / 2));
            Assert.Equal(all[i], CorrosivityTable.CategoryOf(metal, most));
        }
    }

    [Fact]
    public void More_pollution_and_humidity_never_take_less() =>
        Gen.Select(Gen.Double[-15, 28], Gen.Double[34, 90], Gen.Double[0.7, 150], Gen.Double[0.4, 700], Gen.Double[1, 1.1], Any(MetalFamily.CarbonSteel, MetalFamily.Zinc, MetalFamily.Copper, MetalFamily.Aluminum))
            .Sample((T, rh, pd, sd, more, metal) =>
            {
                double r = DoseResponse.FirstYear(metal, Air(T, rh, pd, sd))!.Value.Micrometers;
                Assert.True(r > 0);
                Assert.True(DoseResponse.FirstYear(metal, Air(T, rh * more, pd, sd))!.Value.Micrometers >= r);
                Assert.True(DoseResponse.FirstYear(metal, Air(T, rh, pd * more, sd))!.Value.Micrometers >= r);
                Assert.True(DoseResponse.FirstYear(metal, Air(T, rh, pd, sd * more))!.Value.Micrometers >= r);
            });

    [Fact]
    public void What_is_not_classed_is_not_guessed()
    {
        Atmosphere air = Atmosphere.Of(Corrosivity.CX);
        Assert.Null(air.FirstYear(MetalFamily.StainlessSteel));
        Assert.Null(air.FirstYear(MetalFamily.Lead));
        Assert.Null(air.FirstYear(MetalFamily.Aluminum));
        Assert.NotNull((air with { Value = CategoryValue.Lower }).FirstYear(MetalFamily.Aluminum));
        Assert.Equal(0.02, (air with { Known = [new(MetalFamily.StainlessSteel, 0.02.Micrometers, Source.User)] }).FirstYear(MetalFamily.StainlessSteel)!.Loss.Micrometers, 1e-12);
        Assert.Equal(450, air.FirstYear(MetalFamily.WroughtIron)!.Loss.Micrometers, 1e-9);
    }

    [Fact]
    public void The_library_s_metals_tell_their_family_and_names_decide_nothing()
    {
        Assert.Equal(MetalFamily.Copper, Copper.HalfHardR240.Family);
        Assert.Equal(MetalFamily.StainlessSteel, StainlessSteel.Grade316L.Family);
        Assert.Equal(MetalFamily.WroughtIron, WroughtIron.Puddled.Family);
        Assert.Equal(MetalFamily.Bronze, Bronze.GunmetalCuSn5Zn5Pb5.Family);
        Assert.Equal(MetalFamily.CarbonSteel, StructuralSteel.A992.Family);
        Assert.Equal(BarDesign.For(StructuralSteel.S355), BarDesign.For(StructuralSteel.S355 with { Name = "puddled wrought iron" }));
        Assert.Equal(MetalKind.Other, BarDesign.For(StructuralSteel.S355 with { Family = null }).Metal);
    }

    [Fact]
    public void Nonsense_is_refused_with_hints()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CorrosionLaw.TimeFactor(double.NaN, 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => CorrosionLaw.TimeFactor(-1, 0.5));
        Assert.Throws<InvalidStatueException>(() => DoseResponse.FirstYear(MetalFamily.Zinc, Air(10, 120, 1, 1)));
        Assert.Throws<InvalidStatueException>(() => new SteelComposition { Silicon = 5 }.Exponent);
    }

    private static AirConditions Air(double celsius, double percent, double so2, double chloride) => new()
    {
        Temperature = celsius.DegreesCelsius,
        Humidity = RelativeHumidity.FromPercent(percent),
        SulfurDioxide = AirConditions.Deposition(so2),
        Chloride = AirConditions.Deposition(chloride),
    };

    private static PublishedValue Factor(string name, MetalFamily metal, LossExponent exponent, double years, double expected) =>
        new($"loss of {years} years over that of the first, {name}", Table3, expected, "-", 3e-4, () => CorrosionLaw.TimeFactor(years, CorrosionLaw.Exponent(metal, exponent)!.Value));

    private static PublishedValue Limit(string name, MetalFamily metal, Corrosivity category, double expected, ValueKind kind) =>
        new(name, kind == ValueKind.Published ? Table2 : "ISO 9223:2012, Table 2", expected, "µm", 1e-9, () => CorrosivityTable.Limits(metal, category)!.Value.Upper!.Value.Micrometers, kind) { IsReadBack = true };
}
