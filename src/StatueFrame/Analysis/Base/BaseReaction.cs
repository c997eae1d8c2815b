using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What the statue puts on its base: forces, and moments about the center of the tower's base.</summary>
/// <remarks>
/// <para>
/// Found from the equilibrium of the whole statue, so exact to rounding. Positive along the axes: a statue at rest has a
/// negative <see cref="ForceZ"/>.
/// </para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
public sealed record BaseReaction
{
    private readonly Resultant resultant;

    internal BaseReaction(Resultant resultant) => this.resultant = resultant;

    /// <summary>Force on the base along x.</summary>
    public Force ForceX => Force.FromNewtons(resultant.Force.X);

    /// <summary>Force on the base along y.</summary>
    public Force ForceY => Force.FromNewtons(resultant.Force.Y);

    /// <summary>Force on the base along z; negative downwards.</summary>
    public Force ForceZ => Force.FromNewtons(resultant.Force.Z);

    /// <summary>Moment on the base about x.</summary>
    public Torque MomentX => Torque.FromNewtonMeters(resultant.Moment.X);

    /// <summary>Moment on the base about y.</summary>
    public Torque MomentY => Torque.FromNewtonMeters(resultant.Moment.Y);

    /// <summary>Twisting moment on the base about z.</summary>
    public Torque MomentZ => Torque.FromNewtonMeters(resultant.Moment.Z);

    /// <summary>Horizontal force, without direction.</summary>
    public Force Shear => Force.FromNewtons(Math.Sqrt(resultant.Force.X * resultant.Force.X + resultant.Force.Y * resultant.Force.Y));

    /// <summary>Overturning moment about a horizontal axis, without direction.</summary>
    public Torque Overturning => Torque.FromNewtonMeters(Math.Sqrt(resultant.Moment.X * resultant.Moment.X + resultant.Moment.Y * resultant.Moment.Y));

    /// <summary>Distance from the base's center at which the vertical force acts; infinite when there is none.</summary>
    internal double Eccentricity => Overturning.NewtonMeters / Math.Abs(resultant.Force.Z);
}
