namespace StatueFrame;

/// <summary>
/// The topographic factor K_zt = (1 + K₁K₂K₃)²: K₁ by the slope and the shape of the rise, K₂ = 1 − |x|/(μ L_h) by the distance from the
/// crest, K₃ = exp(−γ z/L_h) by the height. L_h is the distance upwind from the crest to half the height of the rise: with a straight
/// slope half its length. On slopes beyond H/L_h = 0.5, K₁ stays and L_h is 2H. A hill is taken as a ridge, which speeds the wind up more;
/// rises too low for the standard to ask for it count as well.
/// </summary>
/// <remarks>Source: ASCE/SEI 7-16 and 7-22, 26.8 (26.8-1) with Figure 26.8-1, from memory.</remarks>
internal static class AsceTopography
{
    private const double Steepest = 0.5, Upwind = 1.5, BehindRidge = 1.5, BehindEscarpment = 4;

    /// <summary>K_zt, 1 or more.</summary>
    /// <param name="rise">The rise.</param>
    /// <param name="exposure">Exposure of the site.</param>
    /// <param name="z">Height above the ground of the site, m.</param>
    public static double Factor(Orography rise, AsceExposure exposure, double z)
    {
        double H = rise.Height.Meters, x = rise.DistanceFromCrest.Meters, given = rise.UpwindLength.Meters / 2;
        double L_h = Math.Max(given, H / Steepest);
        bool isRidge = rise.Kind == OrographyKind.HillOrRidge;
        (double ofSlope, double gamma) = (isRidge, exposure) switch
        {
            (true, AsceExposure.B) => (1.30, 3.0),
            (true, AsceExposure.C) => (1.45, 3.0),
            (true, AsceExposure.D) => (1.55, 3.0),
            (false, AsceExposure.B) => (0.75, 2.5),
            (false, AsceExposure.C) => (0.85, 2.5),
            (false, AsceExposure.D) => (0.95, 2.5),
            _ => throw new ArgumentOutOfRangeException(nameof(exposure)),
        };
        double K_1 = ofSlope * H / L_h, K_2 = Math.Max(0, 1 - Math.Abs(x) / ((x <= 0 ? Upwind : isRidge ? BehindRidge : BehindEscarpment) * L_h));
        double speedUp = 1 + K_1 * K_2 * Math.Exp(-gamma * z / L_h);
        return speedUp * speedUp;
    }
}
