namespace StatueFrame;

/// <summary>Which exponent b the loss follows with the years, D = r t^b.</summary>
public enum LossExponent
{
    /// <summary>B1, the mean of exposures round the world.</summary>
    Average,

    /// <summary>B2, the mean and two standard deviations: for a safe estimate, and where chloride keeps a patina from closing.</summary>
    Upper,
}
