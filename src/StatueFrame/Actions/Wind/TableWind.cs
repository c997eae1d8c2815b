using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Wind by a table of heights and speeds, as a site study gives it: straight lines between the rows, constant beyond the
/// lowest and the highest.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record TableWind : SiteWind
{
    /// <summary>The rows, heights ascending; at least one.</summary>
    public required ValueList<WindTableRow> Rows { get; init; }

    /// <summary>Roughness length z₀, for turbulence only, 0.0001 to 3 m; null takes 0.05 m.</summary>
    public Length? RoughnessLength { get; init; }

    /// <inheritdoc/>
    public override string Name => $"table of {Rows.Count} {(SpeedIs == WindSpeedBasis.GustSpeed ? "gust" : "mean")} speeds";

    /// <inheritdoc/>
    public override Source Source => Source.User;

    private protected override double RoughnessLengthSi => RoughnessLength?.Meters ?? 0.05;

    private bool AssumesIntensity => SpeedIs == WindSpeedBasis.GustSpeed && Rows.Any(row => row.TurbulenceIntensity is null);

    internal override double MeanSpeedSi(double z)
    {
        (double speed, double intensity) = At(z);
        return SpeedIs == WindSpeedBasis.MeanSpeed ? speed : speed / Math.Sqrt(GustRatio(intensity));
    }

    internal override double TurbulenceIntensitySi(double z) => At(z).Intensity;

    private (double Speed, double Intensity) At(double z)
    {
        int above = 0;
        while (above < Rows.Count && Rows[above].Height.Meters < z)
            above++;
        if (above == 0 || above == Rows.Count)
            return Values(Math.Min(above, Rows.Count - 1));
        double below = Rows[above - 1].Height.Meters;
        double t = (z - below) / (Rows[above].Height.Meters - below);
        (double v0, double i0) = Values(above - 1);
        (double v1, double i1) = Values(above);
        return (double.Lerp(v0, v1, t), double.Lerp(i0, i1, t));
    }

    private (double Speed, double Intensity) Values(int row) => (
        Rows[row].Speed.MetersPerSecond,
        Rows[row].TurbulenceIntensity ?? 1 / Math.Log(Math.Max(Rows[row].Height.Meters, Math.Max(2, 10 * RoughnessLengthSi)) / RoughnessLengthSi));

    internal override WindProfile AtSpeed(double factor) =>
        this with { Rows = Rows.Select(row => row with { Speed = factor * row.Speed }).ToValueList() };

    internal override IEnumerable<string> RangeWarnings(double greatestHeight)
    {
        double last = Rows[^1].Height.Meters;
        if (greatestHeight > last)
            yield return Invariant($"Wind table: the top is {greatestHeight:g4} m above ground but the table ends at {last:g4} m; the last speed is held above it.");
    }

    private protected override IEnumerable<Assumption> Defaults()
    {
        foreach (Assumption assumption in base.Defaults())
            yield return assumption;
        if (RoughnessLength is null)
            yield return AssumedRoughness;
        if (AssumesIntensity)
            yield return new Assumption("turbulence intensity of the wind table", "1/ln(z/z₀) where the table has none", Source.En1991_1_4("4.4 (4.7)"));
        if (Rows.Count > 0 && Rows[0].Height.Meters > 0)
            yield return new Assumption("wind below the table", Invariant($"as at its lowest height, {Rows[0].Height.Meters:g3} m"), Source.Assumed("wind"));
    }

    internal override void Validate(Validator v)
    {
        base.Validate(v);
        ValidateRoughness(v, RoughnessLength, nameof(RoughnessLength));
        if (Rows?.Count == 0)
            v.Add(nameof(Rows), "must not be empty", "Give at least one height and speed.");
        WindTableRow? below = null;
        foreach ((_, WindTableRow row, Validator at) in v.Items(Rows, StatueSize.TableRows))
        {
            at.NotNegative(row.Height, row.Height.Meters, 2000, nameof(row.Height));
            at.Positive(row.Speed, row.Speed.MetersPerSecond, 1, 150, nameof(row.Speed));
            ValidateIntensity(at, row.TurbulenceIntensity, nameof(row.TurbulenceIntensity));
            if (row.TurbulenceIntensity is null && SpeedIs == WindSpeedBasis.MeanSpeed)
                at.Add(nameof(row.TurbulenceIntensity), "must be given with a mean speed", "Gusts follow from it.");
            if (below is not null && !(row.Height > below.Height))
                at.Add(nameof(row.Height), "must be above the height of the row before", "Sort the rows from the ground up.");
            below = row;
        }
    }
}
