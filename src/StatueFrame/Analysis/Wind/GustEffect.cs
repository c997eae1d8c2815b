using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// One quantity in gusts: its mean in the mean wind, its standard deviation about that, and the peak to expect. The
/// deviation is made of the slow background, which follows the gusts as in statics, and of the resonance.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <typeparam name="T">The kind of quantity.</typeparam>
public sealed record GustEffect<T> where T : struct, IQuantity
{
    private readonly double peakOverMean;

    internal GustEffect(GustStatistics s, Func<QuantityValue, T> quantity)
    {
        Mean = quantity(s.Mean);
        Background = quantity(s.Background);
        Resonant = quantity(s.Resonant);
        Deviation = quantity(s.Deviation);
        UpcrossingFrequency = Frequency.FromHertz(s.UpcrossingInUse);
        PeakFactor = s.PeakFactor;
        Peak = quantity(s.Peak);
        peakOverMean = s.Peak / s.Mean;
    }

    /// <summary>Value in the mean wind.</summary>
    public T Mean { get; }

    /// <summary>Standard deviation if every gust acted as a static load.</summary>
    public T Background { get; }

    /// <summary>What resonance adds: √(deviation² − background²), zero when the structure's inertia takes more than it adds.</summary>
    public T Resonant { get; }

    /// <summary>Standard deviation about the mean.</summary>
    public T Deviation { get; }

    /// <summary>Mean frequency of crossings of the mean upwards, ν, at least 0.08 Hz (EN 1991-1-4, (B.5)).</summary>
    public Frequency UpcrossingFrequency { get; }

    /// <summary>Peak factor g of Davenport.</summary>
    public double PeakFactor { get; }

    /// <summary>Expected greatest value, on the side of the mean: mean ± g · deviation.</summary>
    public T Peak { get; }

    /// <summary>Peak over mean; null when the mean is zero.</summary>
    public double? GustFactor => double.IsFinite(peakOverMean) ? peakOverMean : null;

    /// <summary>Mean, deviation and peak on one line.</summary>
    public override string ToString() =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"mean {Mean:g4}, deviation {Deviation:g4}, peak {Peak:g4}");
}
