namespace StatueFrame;

/// <summary>What a wind speed measures: the short gust, or the mean that gusts ride on. A gust is about 1.5 times the mean.</summary>
public enum WindSpeedBasis
{
    /// <summary>The gust that loads the structure (about 1 s to 3 s). Its stagnation pressure is the peak pressure.</summary>
    GustSpeed,

    /// <summary>The mean over 10 minutes to an hour. Gusts are added with the turbulence intensity.</summary>
    MeanSpeed,
}
