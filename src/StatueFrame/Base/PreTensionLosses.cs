using UnitsNet;

namespace StatueFrame;

/// <summary>What takes pre-tension from the anchor bars after they have been locked off.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PreTensionLosses
{
    /// <summary>Embedding of threads, nut, plate and grout, 0 to 10 mm.</summary>
    public Length Embedding { get; init; }

    /// <summary>Relaxation of the steel after 1000 hours at the initial stress, in parts of the force, 0 to 0.2; 0.04 is class 3 of EN 1992-1-1, bars.</summary>
    public double Relaxation1000Hours { get; init; }

    /// <summary>The bar warmer than the block since lock-off: positive slackens it; −100 to 100 K.</summary>
    public TemperatureDelta BarWarmer { get; init; }

    internal void Validate(Validator v)
    {
        v.NotNegative(Embedding, Embedding.Meters, 0.01);
        v.InRange(Relaxation1000Hours, 0, 0.2, "It is the part of the force lost after 1000 hours, 0.04 for bars.");
        v.Within(BarWarmer, BarWarmer.Kelvins, -100, 100);
    }
}
