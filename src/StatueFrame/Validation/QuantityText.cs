using System.Globalization;
using UnitsNet;
using UnitsNet.Units;

namespace StatueFrame;

/// <summary>Quantities in the text of problems: in the unit they were given in, the same in every culture.</summary>
internal static class QuantityText
{
    /// <summary>The units that people mix up, the most likely first.</summary>
    private static readonly Enum[] mixedUp =
    [
        LengthUnit.Millimeter, LengthUnit.Centimeter, LengthUnit.Meter, LengthUnit.Inch, LengthUnit.Foot,
        PressureUnit.Megapascal, PressureUnit.Gigapascal, PressureUnit.Kilopascal, PressureUnit.Pascal,
        PressureUnit.KilopoundForcePerSquareInch, PressureUnit.PoundForcePerSquareInch,
        DensityUnit.GramPerCubicCentimeter, DensityUnit.KilogramPerCubicMeter, DensityUnit.PoundPerCubicFoot,
        MassUnit.Kilogram, MassUnit.Gram, MassUnit.Tonne,
        ForceUnit.Newton, ForceUnit.Kilonewton,
        SpeedUnit.MeterPerSecond, SpeedUnit.KilometerPerHour, SpeedUnit.MilePerHour,
        AngleUnit.Degree, AngleUnit.Radian,
        LinearDensityUnit.KilogramPerMeter, LinearDensityUnit.KilogramPerMillimeter,
        ForcePerLengthUnit.NewtonPerMeter, ForcePerLengthUnit.KilonewtonPerMeter, ForcePerLengthUnit.NewtonPerMillimeter,
        RotationalStiffnessUnit.NewtonMeterPerRadian, RotationalStiffnessUnit.KilonewtonMeterPerRadian,
        CoefficientOfThermalExpansionUnit.PpmPerKelvin, CoefficientOfThermalExpansionUnit.PerKelvin,
    ];

    /// <summary>The value with its unit, as in "2.4 mm".</summary>
    public static string Of(IQuantity value) => Of((double)value.Value, value);

    /// <summary>The range that is accepted, in the unit of a value outside it, and the unit that was perhaps meant.</summary>
    /// <param name="value">The value.</param>
    /// <param name="si">The value in SI units.</param>
    /// <param name="least">The least SI value accepted.</param>
    /// <param name="most">The greatest SI value accepted.</param>
    public static string RangeHint(IQuantity value, double si, double least, double most)
    {
        double number = (double)value.Value, siPerUnit = si / number;
        if (!(double.IsFinite(siPerUnit) && siPerUnit > 0))
            return string.Create(CultureInfo.InvariantCulture, $"Accepted are values from {least:g4} to {most:g4} in SI units.");
        string range = $"Accepted are {Of(least / siPerUnit, value)} to {Of(most / siPerUnit, value)}";
        foreach (Enum unit in mixedUp)
        {
            if (unit.GetType() != value.Unit.GetType() || unit.Equals(value.Unit))
                continue;
            double meant = number * Quantity.From(1, unit).As(value.Unit) * siPerUnit;
            if (meant > 0 == number > 0 && meant >= least && meant <= most)
                return $"{range}; did you mean {Of(Quantity.From(number, unit))}?";
        }
        return $"{range}.";
    }

    private static string Of(double number, IQuantity unit) =>
        string.Create(CultureInfo.InvariantCulture, $"{number:g5} {unit.ToString("a", CultureInfo.InvariantCulture)}");
}
