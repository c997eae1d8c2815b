using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>The sum of forces, and of their moments about the center of the tower's base. N, N·m.</summary>
internal readonly record struct Resultant(Vector3D Force, Vector3D Moment)
{
    /// <summary>A single force.</summary>
    /// <param name="force">The force.</param>
    /// <param name="arm">From the base's center to where it acts.</param>
    public static Resultant Of(Vector3D force, Vector3D arm) => new(force, arm.Cross(force));

    public static Resultant operator +(Resultant a, Resultant b) => new(a.Force + b.Force, a.Moment + b.Moment);
}
