namespace StatueFrame.Tests.Actions.AcrossWind;

/// <summary>Bodies of constant section in the modes for which the standard has closed forms.</summary>
internal static class Bodies
{
    public static VortexInput Of(
        Func<double, double> mode, double length, double width, double mass = 300, double decrement = 0.02, double frequency = 1.5,
        double speed = 30, int strips = 200, BluffSection? section = null) => new()
        {
            Strips = Enumerable.Range(0, strips).Select(i => new VortexStrip(
                (length / strips).Meters, width.Meters, mode((i + 0.5) / strips), speed.MetersPerSecond, section ?? BluffSection.Round,
                mass.KilogramsPerMeter)).ToValueList(),
            Frequency = frequency.Hertz,
            EquivalentMass = mass.KilogramsPerMeter,
            LogDecrement = decrement,
        };

    public static double Parabola(double t) => t * t;

    public static double HalfSine(double t) => Math.Sin(Math.PI * t);

    public static double Clamped(double t) => 0.5 * (1 - Math.Cos(2 * Math.PI * t));
}
