using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// What a plain number in SI units measures, and so how it is printed: the customary unit in either system and a
/// sensible number of digits. The conversion factors are those of UnitsNet.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class Dimension
{
    private const double Huge = 1e9;
    private const double Small = 1e-4;
    private const double Noise = 1e-9;

    private readonly Scale metric;
    private readonly Scale usCustomary;
    private readonly int digits;

    private Dimension(
        string name, (string Symbol, Func<double, double> FromSi) metric, (string Symbol, Func<double, double> FromSi) usCustomary, int digits = 3)
    {
        Name = name;
        this.metric = Scale.Of(metric.Symbol, metric.FromSi);
        this.usCustomary = Scale.Of(usCustomary.Symbol, usCustomary.FromSi);
        this.digits = digits;
    }

    private Dimension(string name, string symbol, double factor)
    {
        Name = name;
        metric = usCustomary = new Scale(symbol, factor, 0);
        digits = 3;
    }

    /// <summary>A length of the structure, m: in m or ft, with four digits.</summary>
    public static Dimension Length { get; } = new("length",
        ("m", v => v), ("ft", v => UnitsNet.Length.FromMeters(v).Feet), 4);

    /// <summary>A length of a detail, m: in mm or in, with four digits.</summary>
    public static Dimension SmallLength { get; } = new("small length",
        ("mm", v => UnitsNet.Length.FromMeters(v).Millimeters), ("in", v => UnitsNet.Length.FromMeters(v).Inches), 4);

    /// <summary>An area of skin or wind, m²: in m² or ft².</summary>
    public static Dimension Area { get; } = new("area",
        ("m²", v => v), ("ft²", v => UnitsNet.Area.FromSquareMeters(v).SquareFeet));

    /// <summary>An area of a cross-section, m²: in mm² or in².</summary>
    public static Dimension SmallArea { get; } = new("small area",
        ("mm²", v => UnitsNet.Area.FromSquareMeters(v).SquareMillimeters), ("in²", v => UnitsNet.Area.FromSquareMeters(v).SquareInches));

    /// <summary>A second moment of area, m⁴: in cm⁴ or in⁴.</summary>
    public static Dimension AreaMomentOfInertia { get; } = new("second moment of area",
        ("cm⁴", v => UnitsNet.AreaMomentOfInertia.FromMetersToTheFourth(v).CentimetersToTheFourth),
        ("in⁴", v => UnitsNet.AreaMomentOfInertia.FromMetersToTheFourth(v).InchesToTheFourth));

    /// <summary>A section modulus, m³: in cm³ or in³.</summary>
    public static Dimension SectionModulus { get; } = new("section modulus",
        ("cm³", v => Volume.FromCubicMeters(v).CubicCentimeters), ("in³", v => Volume.FromCubicMeters(v).CubicInches));

    /// <summary>A force, N: in kN or kip.</summary>
    public static Dimension Force { get; } = new("force",
        ("kN", v => UnitsNet.Force.FromNewtons(v).Kilonewtons), ("kip", v => UnitsNet.Force.FromNewtons(v).KilopoundsForce));

    /// <summary>A moment, N·m: in kN·m or kip·ft.</summary>
    public static Dimension Moment { get; } = new("moment",
        ("kN·m", v => Torque.FromNewtonMeters(v).KilonewtonMeters), ("kip·ft", v => Torque.FromNewtonMeters(v).KilopoundForceFeet));

    /// <summary>An energy, J: in kJ or kip·ft.</summary>
    public static Dimension Energy { get; } = new("energy",
        ("kJ", v => UnitsNet.Energy.FromJoules(v).Kilojoules), ("kip·ft", v => UnitsNet.Energy.FromJoules(v).FootPounds / 1000));

    /// <summary>A line load, N/m: in kN/m or lbf/ft.</summary>
    public static Dimension LineLoad { get; } = new("line load",
        ("kN/m", v => ForcePerLength.FromNewtonsPerMeter(v).KilonewtonsPerMeter),
        ("lbf/ft", v => ForcePerLength.FromNewtonsPerMeter(v).PoundsForcePerFoot));

    /// <summary>A stress or a modulus of elasticity, Pa: in MPa or ksi.</summary>
    public static Dimension Stress { get; } = new("stress",
        ("MPa", v => UnitsNet.Pressure.FromPascals(v).Megapascals),
        ("ksi", v => UnitsNet.Pressure.FromPascals(v).KilopoundsForcePerSquareInch));

    /// <summary>A wind or live pressure, Pa: in kPa or psf.</summary>
    public static Dimension Pressure { get; } = new("pressure",
        ("kPa", v => UnitsNet.Pressure.FromPascals(v).Kilopascals),
        ("psf", v => UnitsNet.Pressure.FromPascals(v).PoundsForcePerSquareFoot));

    /// <summary>A mass, kg: in kg or lb.</summary>
    public static Dimension Mass { get; } = new("mass",
        ("kg", v => v), ("lb", v => UnitsNet.Mass.FromKilograms(v).Pounds));

    /// <summary>A density, kg/m³: in kg/m³ or lb/ft³.</summary>
    public static Dimension Density { get; } = new("density",
        ("kg/m³", v => v), ("lb/ft³", v => UnitsNet.Density.FromKilogramsPerCubicMeter(v).PoundsPerCubicFoot));

    /// <summary>A mass per area, kg/m²: in kg/m² or lb/ft².</summary>
    public static Dimension AreaDensity { get; } = new("mass per area",
        ("kg/m²", v => v), ("lb/ft²", v => v / 1.PoundsPerSquareFoot.KilogramsPerSquareMeter));

    /// <summary>A mass per length, kg/m: in kg/m or lb/ft.</summary>
    public static Dimension LinearDensity { get; } = new("mass per length",
        ("kg/m", v => v), ("lb/ft", v => UnitsNet.LinearDensity.FromKilogramsPerMeter(v).PoundsPerFoot));

    /// <summary>A speed, m/s: in m/s or mph.</summary>
    public static Dimension Speed { get; } = new("speed",
        ("m/s", v => v), ("mph", v => UnitsNet.Speed.FromMetersPerSecond(v).MilesPerHour));

    /// <summary>An acceleration, m/s²: in m/s² or ft/s².</summary>
    public static Dimension Acceleration { get; } = new("acceleration",
        ("m/s²", v => v), ("ft/s²", v => UnitsNet.Acceleration.FromMetersPerSecondSquared(v).FeetPerSecondSquared));

    /// <summary>A spring stiffness, N/m: in kN/m or kip/in.</summary>
    public static Dimension Stiffness { get; } = new("stiffness",
        ("kN/m", v => ForcePerLength.FromNewtonsPerMeter(v).KilonewtonsPerMeter),
        ("kip/in", v => ForcePerLength.FromNewtonsPerMeter(v).KilopoundsForcePerInch));

    /// <summary>A rotational stiffness, N·m/rad: in kN·m/rad or kip·ft/rad.</summary>
    public static Dimension RotationalStiffness { get; } = new("rotational stiffness",
        ("kN·m/rad", v => Torque.FromNewtonMeters(v).KilonewtonMeters), ("kip·ft/rad", v => Torque.FromNewtonMeters(v).KilopoundForceFeet));

    /// <summary>An angle, rad: in degrees.</summary>
    public static Dimension Angle { get; } = new("angle",
        ("°", v => UnitsNet.Angle.FromRadians(v).Degrees), ("°", v => UnitsNet.Angle.FromRadians(v).Degrees));

    /// <summary>A frequency, Hz.</summary>
    public static Dimension Frequency { get; } = new("frequency", "Hz", 1);

    /// <summary>A duration, s.</summary>
    public static Dimension Duration { get; } = new("duration", "s", 1);

    /// <summary>A temperature, K: in °C or °F.</summary>
    public static Dimension Temperature { get; } = new("temperature",
        ("°C", v => UnitsNet.Temperature.FromKelvins(v).DegreesCelsius), ("°F", v => UnitsNet.Temperature.FromKelvins(v).DegreesFahrenheit));

    /// <summary>A temperature difference, K: in K or in degrees Fahrenheit of difference.</summary>
    public static Dimension TemperatureDelta { get; } = new("temperature difference",
        ("K", v => v), ("°F", v => UnitsNet.TemperatureDelta.FromKelvins(v).DegreesFahrenheit));

    /// <summary>A difference of electric potential, V.</summary>
    public static Dimension Potential { get; } = new("potential", "V", 1);

    /// <summary>A plain number, as a coefficient.</summary>
    public static Dimension Number { get; } = new("number", "", 1);

    /// <summary>A part of one, printed in percent.</summary>
    public static Dimension Percent { get; } = new("percent", "%", 100);

    /// <summary>What is measured, as in "section modulus".</summary>
    public string Name { get; }

    /// <summary>The symbol of the unit, as in "MPa"; empty for a plain number.</summary>
    public string Unit(DisplayUnits units) => ScaleOf(units).Symbol;

    /// <summary>The number of display units that an SI value makes.</summary>
    public double Value(double si, DisplayUnits units)
    {
        Scale scale = ScaleOf(units);
        return si * scale.Factor + scale.Offset;
    }

    /// <summary>
    /// The value with its unit, as in "101 MPa": three digits (four for lengths), whole numbers above that with
    /// thousands separated by commas, zeros at the end dropped, powers of ten only from 10⁹ up and below 10⁻⁴, and what
    /// is below 10⁻⁹ as 0. An infinite value prints as ∞, one that is not a number as "n/a".
    /// </summary>
    /// <param name="si">The value in SI units; an angle in radians, a temperature in kelvins, a percentage as a part of one.</param>
    /// <param name="units">The units to print in.</param>
    public string Format(double si, DisplayUnits units)
    {
        string number = FormatNumber(si, units), symbol = Unit(units);
        return double.IsNaN(si) ? number : symbol is "" or "°" ? number + symbol : $"{number} {symbol}";
    }

    /// <summary>The value as <see cref="Format"/> prints it, without the unit, for a table whose heading names the unit.</summary>
    /// <param name="si">The value in SI units.</param>
    /// <param name="units">The units to print in.</param>
    public string FormatNumber(double si, DisplayUnits units)
    {
        double value = Value(si, units), size = Math.Abs(value);
        if (double.IsNaN(value))
            return "n/a";
        if (double.IsInfinity(value))
            return value > 0 ? "∞" : "-∞";
        if (size < Noise)
            return "0";
        if (size is >= Huge or < Small)
            return value.ToString("0." + new string('#', digits - 1) + "e0", CultureInfo.InvariantCulture);
        int decimals = Math.Max(0, digits - 1 - (int)Math.Floor(Math.Log10(size)));
        string text = value.ToString("N" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return decimals == 0 ? text : text.TrimEnd('0').TrimEnd('.');
    }

    /// <summary>The name of the dimension.</summary>
    public override string ToString() => Name;

    private Scale ScaleOf(DisplayUnits units) => units switch
    {
        DisplayUnits.Metric => metric,
        DisplayUnits.UsCustomary => usCustomary,
        _ => throw new ArgumentOutOfRangeException(nameof(units), units, "There are metric and US customary units."),
    };

    private readonly record struct Scale(string Symbol, double Factor, double Offset)
    {
        /// <summary>The straight line through two points of a conversion; all conversions are straight lines.</summary>
        public static Scale Of(string symbol, Func<double, double> fromSi)
        {
            double offset = fromSi(0);
            return new Scale(symbol, fromSi(1) - offset, offset);
        }
    }
}
