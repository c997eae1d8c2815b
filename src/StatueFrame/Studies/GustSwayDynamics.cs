using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Studies;

/// <summary>
/// Random vibration in gusts for a <see cref="SwayCurve"/>: at each speed and heading a <see cref="GustResponse"/>, its
/// structural factor and the accelerations of all named points.
/// </summary>
/// <remarks>
/// <para>
/// Accelerations are horizontal, along and across the wind together: the root of the sum of squares. For the deviations
/// that is exact; for the peaks it is on the safe side unless they come at once. What vortices and gusts across the wind
/// add is not in them, as in the gust response.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed class GustSwayDynamics : ISwayDynamics
{
    private readonly StatueModel model;
    private readonly ModalResponse modes;
    private readonly DampingModel? damping;
    private readonly GustOptions? options;

    /// <summary>Takes the statue that vibrates.</summary>
    /// <param name="model">The statue's model, the one that the curve is drawn for.</param>
    /// <param name="modes">Its modes; those above the last one take part as in statics.</param>
    /// <param name="damping">Damping in still air; null takes that of welded lattice towers, and the curve says so.</param>
    /// <param name="options">Defaults when null.</param>
    /// <exception cref="ArgumentException">The modes are of another model, or the statue has nothing that catches the wind.</exception>
    /// <exception cref="InvalidStatueException">The damping or the options have problems; all are listed.</exception>
    public GustSwayDynamics(StatueModel model, ModalResponse modes, DampingModel? damping = null, GustOptions? options = null)
    {
        GustGuard.Require(model, modes, damping, options);
        (this.model, this.modes, this.damping, this.options) = (model, modes, damping, options);
        double lowest = modes.First.Frequency.Hertz, decrement = GustGuard.DampingInUse(damping, []).DecrementAt(lowest, lowest);
        string air = options is { AerodynamicDamping: false } ? "without" : "and";
        Title = Invariant($"random vibration along the wind, {modes.Modes.Count} modes from {lowest:0.00} Hz, logarithmic decrement {decrement:0.####} {air} that of the air");
    }

    /// <inheritdoc/>
    public string Title { get; }

    /// <inheritdoc/>
    /// <exception cref="InvalidStatueException">The wind or the heading has problems; all are listed.</exception>
    public SwayDynamics At(WindAction wind, Angle heading)
    {
        GustResponse gusts = GustResponse.Of(model, modes, wind, heading, damping, options);
        return new SwayDynamics
        {
            GustFactor = gusts.StructuralFactor,
            Points = gusts.Points.Select(p => new PointAcceleration(
                p.Point,
                Together(p.Acceleration.Deviation, p.AccelerationAcross.Deviation),
                Together(p.Acceleration.Peak, p.AccelerationAcross.Peak))).ToValueList(),
            Assumptions = gusts.Assumptions.ToValueList(),
        };
    }

    private static Acceleration Together(Acceleration along, Acceleration across) =>
        Acceleration.FromMetersPerSecondSquared(double.Hypot(along.MetersPerSecondSquared, across.MetersPerSecondSquared));
}
