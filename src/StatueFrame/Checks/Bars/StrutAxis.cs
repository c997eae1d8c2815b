namespace StatueFrame.Checks;

/// <summary>What buckling about one axis of a flat needs. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Depth">The side that bends: thickness for the weak axis, width for the strong one, m.</param>
/// <param name="Across">The other side, m.</param>
/// <param name="EffectiveLength">KL, m.</param>
/// <param name="OnTower">Moment on the tower end, N·m.</param>
/// <param name="OnSkin">Moment on the skin end, N·m.</param>
internal readonly record struct StrutAxis(double Depth, double Across, double EffectiveLength, double OnTower, double OnSkin)
{
    public double GreatestMoment => Math.Max(Math.Abs(OnTower), Math.Abs(OnSkin));

    public double MomentRatio => SecondOrderBar.MomentRatio(OnTower, OnSkin);

    public double W => Across * Depth * Depth / 6;

    public double Wpl => Across * Depth * Depth / 4;

    public double I => Across * Depth * Depth * Depth / 12;

    public double CriticalForce(double E) => Math.PI * Math.PI * E * I / (EffectiveLength * EffectiveLength);
}
