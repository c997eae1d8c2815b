using System.Globalization;
using System.Numerics;
using System.Runtime.CompilerServices;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Lets a number be written with its unit: <c>2.4.Millimeters</c>, <c>26.MetersPerSecond</c>, <c>210.Gigapascals</c>.
/// The names are those of UnitsNet, and any kind of number will do.
/// </summary>
/// <remarks>
/// Pure functions, safe on any thread. A number that is not finite is refused with an <see cref="ArgumentException"/>
/// that names the unit, so that a NaN is caught where it enters.
/// </remarks>
public static class QuantityExtensions
{
    extension<T>(T value) where T : INumber<T>
    {
        /// <summary>So many micrometers.</summary>
        public Length Micrometers => Length.FromMicrometers(Finite(value));

        /// <summary>So many millimeters.</summary>
        public Length Millimeters => Length.FromMillimeters(Finite(value));

        /// <summary>So many centimeters.</summary>
        public Length Centimeters => Length.FromCentimeters(Finite(value));

        /// <summary>So many meters.</summary>
        public Length Meters => Length.FromMeters(Finite(value));

        /// <summary>So many inches.</summary>
        public Length Inches => Length.FromInches(Finite(value));

        /// <summary>So many feet.</summary>
        public Length Feet => Length.FromFeet(Finite(value));

        /// <summary>So many square millimeters.</summary>
        public Area SquareMillimeters => Area.FromSquareMillimeters(Finite(value));

        /// <summary>So many square centimeters.</summary>
        public Area SquareCentimeters => Area.FromSquareCentimeters(Finite(value));

        /// <summary>So many square meters.</summary>
        public Area SquareMeters => Area.FromSquareMeters(Finite(value));

        /// <summary>So many square inches.</summary>
        public Area SquareInches => Area.FromSquareInches(Finite(value));

        /// <summary>So many square feet.</summary>
        public Area SquareFeet => Area.FromSquareFeet(Finite(value));

        /// <summary>So many kilograms.</summary>
        public Mass Kilograms => Mass.FromKilograms(Finite(value));

        /// <summary>So many metric tons of 1000 kg.</summary>
        public Mass Tonnes => Mass.FromTonnes(Finite(value));

        /// <summary>So many pounds (mass).</summary>
        public Mass Pounds => Mass.FromPounds(Finite(value));

        /// <summary>So many newtons.</summary>
        public Force Newtons => Force.FromNewtons(Finite(value));

        /// <summary>So many kilonewtons.</summary>
        public Force Kilonewtons => Force.FromKilonewtons(Finite(value));

        /// <summary>So many pounds-force.</summary>
        public Force PoundsForce => Force.FromPoundsForce(Finite(value));

        /// <summary>So many kips, 1000 lbf.</summary>
        public Force KilopoundsForce => Force.FromKilopoundsForce(Finite(value));

        /// <summary>So many newton meters.</summary>
        public Torque NewtonMeters => Torque.FromNewtonMeters(Finite(value));

        /// <summary>So many kilonewton meters.</summary>
        public Torque KilonewtonMeters => Torque.FromKilonewtonMeters(Finite(value));

        /// <summary>So many pound-force feet.</summary>
        public Torque PoundForceFeet => Torque.FromPoundForceFeet(Finite(value));

        /// <summary>So many kip feet.</summary>
        public Torque KilopoundForceFeet => Torque.FromKilopoundForceFeet(Finite(value));

        /// <summary>So many pascals.</summary>
        public Pressure Pascals => Pressure.FromPascals(Finite(value));

        /// <summary>So many kilopascals.</summary>
        public Pressure Kilopascals => Pressure.FromKilopascals(Finite(value));

        /// <summary>So many megapascals, N/mm².</summary>
        public Pressure Megapascals => Pressure.FromMegapascals(Finite(value));

        /// <summary>So many gigapascals.</summary>
        public Pressure Gigapascals => Pressure.FromGigapascals(Finite(value));

        /// <summary>So many pounds-force per square foot, psf.</summary>
        public Pressure PoundsForcePerSquareFoot => Pressure.FromPoundsForcePerSquareFoot(Finite(value));

        /// <summary>So many pounds-force per square inch, psi.</summary>
        public Pressure PoundsForcePerSquareInch => Pressure.FromPoundsForcePerSquareInch(Finite(value));

        /// <summary>So many kips per square inch, ksi.</summary>
        public Pressure KilopoundsForcePerSquareInch => Pressure.FromKilopoundsForcePerSquareInch(Finite(value));

        /// <summary>So many meters per second.</summary>
        public Speed MetersPerSecond => Speed.FromMetersPerSecond(Finite(value));

        /// <summary>So many kilometers per hour.</summary>
        public Speed KilometersPerHour => Speed.FromKilometersPerHour(Finite(value));

        /// <summary>So many miles per hour.</summary>
        public Speed MilesPerHour => Speed.FromMilesPerHour(Finite(value));

        /// <summary>So many knots.</summary>
        public Speed Knots => Speed.FromKnots(Finite(value));

        /// <summary>So many meters per second squared.</summary>
        public Acceleration MetersPerSecondSquared => Acceleration.FromMetersPerSecondSquared(Finite(value));

        /// <summary>So many times the standard gravity, 9.80665 m/s².</summary>
        public Acceleration StandardGravity => Acceleration.FromStandardGravity(Finite(value));

        /// <summary>So many degrees of angle.</summary>
        public Angle Degrees => Angle.FromDegrees(Finite(value));

        /// <summary>So many radians.</summary>
        public Angle Radians => Angle.FromRadians(Finite(value));

        /// <summary>So many kilograms per cubic meter.</summary>
        public Density KilogramsPerCubicMeter => Density.FromKilogramsPerCubicMeter(Finite(value));

        /// <summary>So many pounds per cubic foot.</summary>
        public Density PoundsPerCubicFoot => Density.FromPoundsPerCubicFoot(Finite(value));

        /// <summary>So many kilograms per square meter.</summary>
        public AreaDensity KilogramsPerSquareMeter => AreaDensity.FromKilogramsPerSquareMeter(Finite(value));

        /// <summary>So many pounds (mass) per square foot.</summary>
        public AreaDensity PoundsPerSquareFoot => AreaDensity.FromKilogramsPerSquareMeter(
            Mass.FromPounds(Finite(value)).Kilograms / Area.FromSquareFeet(1).SquareMeters);

        /// <summary>So many kilograms per meter.</summary>
        public LinearDensity KilogramsPerMeter => LinearDensity.FromKilogramsPerMeter(Finite(value));

        /// <summary>So many pounds (mass) per foot.</summary>
        public LinearDensity PoundsPerFoot => LinearDensity.FromPoundsPerFoot(Finite(value));

        /// <summary>So many newtons per meter, as a line load or a spring stiffness.</summary>
        public ForcePerLength NewtonsPerMeter => ForcePerLength.FromNewtonsPerMeter(Finite(value));

        /// <summary>So many kilonewtons per meter.</summary>
        public ForcePerLength KilonewtonsPerMeter => ForcePerLength.FromKilonewtonsPerMeter(Finite(value));

        /// <summary>So many newtons per millimeter.</summary>
        public ForcePerLength NewtonsPerMillimeter => ForcePerLength.FromNewtonsPerMillimeter(Finite(value));

        /// <summary>So many pounds-force per foot.</summary>
        public ForcePerLength PoundsForcePerFoot => ForcePerLength.FromPoundsForcePerFoot(Finite(value));

        /// <summary>So many kips per inch.</summary>
        public ForcePerLength KilopoundsForcePerInch => ForcePerLength.FromKilopoundsForcePerInch(Finite(value));

        /// <summary>So many newton meters per radian.</summary>
        public RotationalStiffness NewtonMetersPerRadian => RotationalStiffness.FromNewtonMetersPerRadian(Finite(value));

        /// <summary>So many kilonewton meters per radian.</summary>
        public RotationalStiffness KilonewtonMetersPerRadian => RotationalStiffness.FromKilonewtonMetersPerRadian(Finite(value));

        /// <summary>So many pound-force feet per radian.</summary>
        public RotationalStiffness PoundForceFeetPerRadian => RotationalStiffness.FromPoundForceFeetPerRadian(Finite(value));

        /// <summary>So many hertz.</summary>
        public Frequency Hertz => Frequency.FromHertz(Finite(value));

        /// <summary>So many seconds.</summary>
        public Duration Seconds => Duration.FromSeconds(Finite(value));

        /// <summary>So many years of 365 days.</summary>
        public Duration Years365 => Duration.FromYears365(Finite(value));

        /// <summary>So many degrees Celsius, as a temperature; a difference is <c>Kelvins</c>.</summary>
        public Temperature DegreesCelsius => Temperature.FromDegreesCelsius(Finite(value));

        /// <summary>So many degrees Fahrenheit, as a temperature.</summary>
        public Temperature DegreesFahrenheit => Temperature.FromDegreesFahrenheit(Finite(value));

        /// <summary>So many kelvins, as a temperature difference.</summary>
        public TemperatureDelta Kelvins => TemperatureDelta.FromKelvins(Finite(value));

        /// <summary>So many millionths per kelvin, as in 12 for steel.</summary>
        public CoefficientOfThermalExpansion PpmPerKelvin => CoefficientOfThermalExpansion.FromPpmPerKelvin(Finite(value));
    }

    private static double Finite<T>(T value, [CallerMemberName] string unit = "") where T : INumber<T>
    {
        double number = double.CreateSaturating(value);
        return double.IsFinite(number)
            ? number
            : throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{number} is not a number of {Words(unit)}."), nameof(value));
    }

    /// <summary>"MetersPerSecond" as "meters per second".</summary>
    private static string Words(string unit) =>
        string.Concat(unit.Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{char.ToLowerInvariant(c)}"));
}
