using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The strap at a standoff's skin end: how hard it is clamped, how it rubs, and how far it can travel. A saddle that the
/// standoff's <see cref="Standoff.Slide"/> does not let slide holds the skin along its surface by friction; one that slides
/// passes on its friction until it moves.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record Saddle
{
    /// <summary>Clamping force of all its bolts together, after losses; zero or more, at most 1e7 N.</summary>
    public required Force Clamp { get; init; }

    /// <summary>Coefficient of friction μ, 0.001 to 1; by test. Take the least for a saddle that holds and the greatest for one that slides.</summary>
    public required double Friction { get; init; }

    /// <summary>
    /// The least coefficient of friction, 0.001 to <see cref="Friction"/>, for what friction must hold; null takes
    /// <see cref="Friction"/> for both.
    /// </summary>
    public double? LeastFriction { get; init; }

    /// <summary>
    /// What a stop, as a bolt head at the end of a slot, holds along the slide beside the least friction: its design strength, at most
    /// 1e7 N; null without one. The skin moves as far as the stop lets it, and the bar must bear what the stop takes.
    /// </summary>
    public Force? Stop { get; init; }

    /// <summary>Faces that rub, 1 or 2.</summary>
    public int Faces { get; init; } = 1;

    /// <summary>Free travel from the position as fitted, on the shorter side; null when it is not described, which leaves it unchecked.</summary>
    public Length? Travel { get; init; }

    /// <summary>What must be left of the travel, for tolerances and dirt; zero by default.</summary>
    public Length Reserve { get; init; }

    /// <summary>Friction that acts along the saddle when it slides, N.</summary>
    internal double SlidingForce => Faces * Friction * Clamp.Newtons;

    internal void Validate(Validator v)
    {
        v.NotNegative(Clamp, Clamp.Newtons, 1e7);
        if (Stop is { } stop)
            v.NotNegative(stop, stop.Newtons, 1e7, nameof(Stop));
        v.InRange(Friction, 1e-3, 1, "Coefficients of friction lie near 0.1 to 0.5.");
        if (LeastFriction is { } least)
            v.InRange(least, 1e-3, Friction, "It is at most Friction, which is the greatest for a saddle that slides.", nameof(LeastFriction));
        v.InRange(Faces, 1, 2, "A strap rubs on one face, or on both of the part in it.");
        if (Travel is { } travel)
            v.NotNegative(travel, travel.Meters, 1, nameof(Travel));
        v.NotNegative(Reserve, Reserve.Meters, 1);
    }
}
