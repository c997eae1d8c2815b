using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// The greatest acceleration that an earthquake gives to an oscillator, by its period: elastic, or reduced for design.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record DesignSpectrum
{
    /// <summary>Where the spectrum comes from.</summary>
    public abstract Source Source { get; }

    /// <summary>The damping ratio that the spectrum holds for; 0.05 unless it is given.</summary>
    public virtual double DampingRatio { get; init; } = 0.05;

    /// <summary>
    /// What displacements found with the spectrum are multiplied by, since a reduction for ductility holds for forces
    /// alone; 1 for elastic spectra.
    /// </summary>
    public virtual double DisplacementFactor => 1;

    /// <summary>The spectral acceleration.</summary>
    /// <param name="period">Natural period, zero or more; zero gives the peak ground acceleration.</param>
    /// <exception cref="ArgumentOutOfRangeException">The period is negative or not finite.</exception>
    /// <exception cref="InvalidStatueException">The spectrum has problems; all of them are listed.</exception>
    public Acceleration At(Duration period)
    {
        double T = period.Seconds;
        if (!(T >= 0 && double.IsFinite(T)))
            throw new ArgumentOutOfRangeException(nameof(period), Invariant($"A period must be zero or more, is {T} s."));
        var v = new Validator();
        Validate(v.At(GetType().Name));
        v.ThrowIfAny();
        return Acceleration.FromMetersPerSecondSquared(AtSi(T));
    }

    /// <summary>The spectral acceleration of a valid spectrum, m/s², at a period in seconds, zero or more.</summary>
    internal abstract double AtSi(double T);

    /// <summary>The same spectrum for another damping ratio; null when there is no rule for it.</summary>
    internal virtual DesignSpectrum? WithDamping(double ratio) => ratio == DampingRatio ? this : null;

    /// <summary>The longest period that the source covers, s.</summary>
    internal virtual double LongestPeriod => double.PositiveInfinity;

    /// <summary>What was taken for the user.</summary>
    internal virtual IEnumerable<Assumption> Assumptions => [];

    /// <summary>What a reader should know of this spectrum.</summary>
    internal virtual IEnumerable<string> Warnings => [];

    internal abstract void Validate(Validator v);
}
