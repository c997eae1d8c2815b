namespace StatueFrame.Analysis;

/// <summary>
/// How the energy of gusts along the wind is spread over frequency, as n·S(n)/σ² over f = n·L/V. All are one-sided and
/// integrate to the variance σ².
/// </summary>
public enum GustSpectrum
{
    /// <summary>6.8 f / (1 + 10.2 f)^(5/3): EN 1991-1-4:2005, (B.2).</summary>
    En1991,

    /// <summary>
    /// 6.867 f / (1 + 10.3 f)^(5/3): the form of Kaimal with the constant 10.3 of ASCE/SEI 7 (26.11-13), scaled to
    /// integrate to σ². ASCE's own 7.47 also holds constants of its response formula.
    /// </summary>
    Kaimal,

    /// <summary>4 f / (1 + 70.8 f²)^(5/6): von Kármán's, of isotropic turbulence.</summary>
    VonKarman,
}
