using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>The sum of forces, and of their moments about the origin: the base's center. N, N·m.</summary>
internal readonly record struct Resultant(Vector3D Force, Vector3D Moment)
{
    public static Resultant Of(Vector3D force, Vector3D at) => new(force, at.Cross(force));

    public static Resultant operator +(Resultant a, Resultant b) => new(a.Force + b.Force, a.Moment + b.Moment);
}
