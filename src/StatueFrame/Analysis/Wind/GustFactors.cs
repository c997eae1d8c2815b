using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The gust factors of the standards, fed with the statue's own frequency, mode shape, size, mass and damping. A result's
/// Factor goes into <see cref="WindAction.GustEffectFactor"/>.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class GustFactors
{
    /// <summary>
    /// c_s c_d of EN 1991-1-4; null for an <see cref="AsceWind"/>, whose hourly mean the annexes are not made for. For
    /// winds that the user describes, the annexes are applied to their mean and turbulence, and the result says so.
    /// </summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes.</param>
    /// <param name="wind">The wind.</param>
    /// <param name="heading">The plan angle that the wind blows towards.</param>
    /// <param name="damping">Damping in still air; null takes that of welded lattice towers and says so. The air's is added.</param>
    /// <exception cref="ArgumentException">The modes are of another model, or the statue has no skin to catch the wind.</exception>
    /// <exception cref="InvalidStatueException">The wind or the damping has problems; all are listed.</exception>
    public static En1991StatueGust? En1991(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping = null)
    {
        GustGuard.Require(model, modes, wind, heading, damping);
        if (wind.Profile is AsceWind)
            return null;
        var assumptions = new List<Assumption>();
        double delta = GustGuard.DampingInUse(damping, assumptions).StillAirDecrement;
        var bands = new BandWind(model, wind, heading);
        var mode = new AlongWindMode(model, modes, bands);
        double zs = mode.BaseHeight + 0.6 * mode.Height, cf = bands.Coefficient;
        double air = cf * wind.Profile.Rho * mode.Width * wind.Profile.MeanSpeedSi(zs) / (2 * mode.Frequency * mode.EquivalentMass);
        if (wind.Profile.StructuralFactorAssumption is { } borrowed)
            assumptions.Add(borrowed);
        if (mode.BaseHeight > 0)
            assumptions.Add(new Assumption("reference height of the structural factor", "pedestal and 0.6 of the statue's height", Source.Assumed("gusts")));
        AddModeAssumption(assumptions, mode);
        return new En1991StatueGust
        {
            Heading = heading,
            Mode = mode.Index + 1,
            Frequency = Frequency.FromHertz(mode.Frequency),
            Height = Length.FromMeters(mode.Height),
            Width = Length.FromMeters(mode.Width),
            ReferenceHeight = Length.FromMeters(zs),
            ModeExponent = mode.Exponent,
            EquivalentMass = LinearDensity.FromKilogramsPerMeter(mode.EquivalentMass),
            ForceCoefficient = cf,
            StructuralDecrement = delta,
            AerodynamicDecrement = air,
            AnnexB = En1991StructuralFactor.AnnexB(wind.Profile, mode.Height, mode.Width, zs, mode.Frequency, delta + air, mode.Exponent),
            AnnexC = En1991StructuralFactor.AnnexC(wind.Profile, mode.Height, mode.Width, zs, mode.Frequency, delta + air, mode.Exponent),
            Assumptions = assumptions.ToValueList(),
        };
    }

    /// <summary>G or G_f of ASCE/SEI 7; null unless the wind is an <see cref="AsceWind"/>, whose exposure the formulas need.</summary>
    /// <inheritdoc cref="En1991"/>
    public static Asce7StatueGust? Asce7(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping = null)
    {
        GustGuard.Require(model, modes, wind, heading, damping);
        if (wind.Profile is not AsceWind asce)
            return null;
        var assumptions = new List<Assumption>();
        double xi = DampingModel.RatioOf(GustGuard.DampingInUse(damping, assumptions).StillAirDecrement);
        var bands = new BandWind(model, wind, heading);
        var mode = new AlongWindMode(model, modes, bands);
        double h = mode.BaseHeight + mode.Height, depth = new BandWind(model, wind, heading + Angle.FromDegrees(90)).Area / mode.Height;
        double air = bands.Coefficient * asce.Rho * mode.Width * asce.MeanSpeedSi(Math.Max(0.6 * h, asce.Constants.ZMin))
            / (4 * Math.PI * mode.Frequency * mode.EquivalentMass);
        double beta = Math.Min(xi + air, 0.5);
        assumptions.Add(new Assumption("damping ratio of the gust-effect factor", "structure and air; the standard leaves it to the engineer", Source.Assumed("gusts")));
        AddModeAssumption(assumptions, mode);
        return new Asce7StatueGust
        {
            Heading = heading,
            Mode = mode.Index + 1,
            Frequency = Frequency.FromHertz(mode.Frequency),
            Height = Length.FromMeters(h),
            Width = Length.FromMeters(mode.Width),
            Depth = Length.FromMeters(depth),
            DampingRatio = beta,
            Rigid = Asce7GustFactor.Rigid(asce, h, mode.Width),
            Flexible = Asce7GustFactor.Flexible(asce, h, mode.Width, depth, mode.Frequency, beta),
            Assumptions = assumptions.ToValueList(),
        };
    }

    private static void AddModeAssumption(List<Assumption> assumptions, AlongWindMode mode) =>
        assumptions.Add(new Assumption(
            "sway of the gust factor",
            string.Create(CultureInfo.InvariantCulture, $"mode {mode.Index + 1} alone, {mode.Frequency:0.00} Hz, its shape (z/h)^{mode.Exponent:0.00}"),
            Source.Assumed("gusts")));
}
