using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// How the wind presses and sucks on the outside of a body: the external pressure coefficient c_pe by the angle between
/// the surface's outward normal and the direction the wind comes from. Positive presses inward, negative sucks outward.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record ExternalPressure
{
    internal ExternalPressure() { }

    /// <summary>The model on one line, as in "round body, 4 m across".</summary>
    public abstract string Name { get; }

    /// <summary>Where the coefficients come from.</summary>
    public abstract Source Source { get; }

    /// <summary>Every value that the model took for the user.</summary>
    public virtual IReadOnlyList<Assumption> Assumptions => [];

    /// <summary>External pressure coefficient c_pe; positive inward.</summary>
    /// <param name="fromWind">Angle between the outward normal and the direction the wind comes from: 0 faces the wind.</param>
    /// <param name="loadedArea">Area whose pressure adds up in the part that is designed, 0.01 to 1000 m².</param>
    /// <param name="gustSpeed">Gust speed, for the Reynolds number; 1 to 200 m/s.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    /// <exception cref="InvalidStatueException">The model is not valid.</exception>
    public double Coefficient(Angle fromWind, Area loadedArea, Speed gustSpeed)
    {
        var v = new Validator();
        Validate(v);
        v.ThrowIfAny();
        double alpha = fromWind.Radians, area = loadedArea.SquareMeters, gust = gustSpeed.MetersPerSecond;
        if (!(area is >= 0.01 and <= 1000))
            throw new ArgumentOutOfRangeException(nameof(loadedArea), Invariant($"The loaded area must be from 0.01 to 1000 m², is {area} m²."));
        if (!(gust is >= 1 and <= 200))
            throw new ArgumentOutOfRangeException(nameof(gustSpeed), Invariant($"The gust speed must be from 1 to 200 m/s, is {gust} m/s."));
        return At(Math.Abs(Math.IEEERemainder(alpha, 2 * Math.PI)), area, gust);
    }

    /// <summary>The coefficient at an angle from 0 to π, for an area in m² and a gust in m/s.</summary>
    internal abstract double At(double alpha, double area, double gust);

    /// <summary>The coefficient as a function of the angle, with what does not depend on the angle worked out once.</summary>
    internal virtual Func<double, double> Around(double area, double gust) => alpha => At(alpha, area, gust);

    /// <summary>What is outside the range the coefficients are meant for, one sentence each.</summary>
    internal abstract IEnumerable<string> RangeWarnings(double gust);

    internal abstract void Validate(Validator v);
}
