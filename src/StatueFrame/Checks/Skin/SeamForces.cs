using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>What a seam must carry, per length of seam.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="InPlane">Pull or shear in the plane of the sheet, without sign: membrane of the pressure, hanging weight, heat.</param>
/// <param name="Outward">Pull square to the sheet, without sign: the reaction of a panel under suction.</param>
public sealed record SeamForces(ForcePerLength InPlane, ForcePerLength Outward)
{
    /// <summary>The forces on a seam of a skin under pressure.</summary>
    /// <param name="pressure">Greatest pressure or suction, without sign.</param>
    /// <param name="radius">Radius of the skin, whose membrane force is p R; zero for a flat skin.</param>
    /// <param name="panelWidth">Width of the panel that leans on the seam.</param>
    /// <param name="hanging">Height of sheet that hangs on the seam.</param>
    /// <param name="sheet">The sheet's metal.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    /// <param name="heat">Temperature difference that is held back.</param>
    /// <param name="restraint">The part of it that is held, 0 to 1.</param>
    public static SeamForces Of(Pressure pressure, Length radius, Length panelWidth, Length hanging, Material sheet, Length thickness, TemperatureDelta heat, double restraint)
    {
        double t = thickness.Meters, weight = sheet.Density.KilogramsPerCubicMeter * SelfWeight.Gravity * t * hanging.Meters;
        double held = restraint * sheet.YoungsModulus.Pascals * sheet.ThermalExpansion.PerKelvin * Math.Abs(heat.Kelvins) * t;
        return new SeamForces(
            ForcePerLength.FromNewtonsPerMeter(pressure.Pascals * radius.Meters + weight + held), ForcePerLength.FromNewtonsPerMeter(pressure.Pascals * panelWidth.Meters / 2));
    }

    /// <summary>The forces on a seam of a skin without heat.</summary>
    /// <param name="pressure">Greatest pressure or suction, without sign.</param>
    /// <param name="radius">Radius of the skin, whose membrane force is p R; zero for a flat skin.</param>
    /// <param name="panelWidth">Width of the panel that leans on the seam.</param>
    /// <param name="hanging">Height of sheet that hangs on the seam.</param>
    /// <param name="sheet">The sheet's metal.</param>
    /// <param name="thickness">The sheet's thickness.</param>
    public static SeamForces Of(Pressure pressure, Length radius, Length panelWidth, Length hanging, Material sheet, Length thickness) =>
        Of(pressure, radius, panelWidth, hanging, sheet, thickness, TemperatureDelta.Zero, 0);
}
