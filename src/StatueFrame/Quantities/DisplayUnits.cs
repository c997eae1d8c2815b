namespace StatueFrame;

/// <summary>The units that tables, workings and reports are printed in. Results do not depend on it.</summary>
public enum DisplayUnits
{
    /// <summary>Meters, kilonewtons, megapascals.</summary>
    Metric,

    /// <summary>Feet and inches, kips, ksi and psf.</summary>
    UsCustomary,
}
