namespace StatueFrame;

/// <summary>The mean of another wind: its pressure is ½ρv_m², without gusts. For loads in the mean wind.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed record MeanPressureWind(WindProfile Of) : WindProfile
{
    public override string Name => $"mean of {Of.Name}";

    public override Source Source => Of.Source;

    public override IReadOnlyList<Assumption> Assumptions => Of.Assumptions;

    private protected override double DefaultDensity => Of.Rho;

    internal override double MeanSpeedSi(double z) => Of.MeanSpeedSi(z);

    internal override double TurbulenceIntensitySi(double z) => Of.TurbulenceIntensitySi(z);

    internal override double PeakPressureSi(double z)
    {
        double v = Of.MeanSpeedSi(z);
        return 0.5 * Rho * v * v;
    }

    internal override double TurbulenceLengthScaleSi(double z) => Of.TurbulenceLengthScaleSi(z);

    internal override double AveragingTimeSi => Of.AveragingTimeSi;

    internal override string SpeedsInWords => Of.SpeedsInWords;

    internal override IEnumerable<string> SpeedWarnings => Of.SpeedWarnings;

    internal override bool IsForStrength => Of.IsForStrength;

    internal override bool IsCharacteristic => Of.IsCharacteristic;

    internal override LatticeRule LatticeRule => Of.LatticeRule;

    internal override (double Value, Source Source) RigidGustFactor => Of.RigidGustFactor;

    internal override double LoadOfMean => Of.LoadOfMean;

    internal override Source SpectrumSource => Of.SpectrumSource;

    internal override Assumption? StructuralFactorAssumption => Of.StructuralFactorAssumption;

    internal override WindProfile AtSpeed(double factor) => new MeanPressureWind(Of.AtSpeed(factor));

    internal override IEnumerable<string> RangeWarnings(double greatestHeight) => Of.RangeWarnings(greatestHeight);

    internal override void Validate(Validator v) => Of.Validate(v);
}
