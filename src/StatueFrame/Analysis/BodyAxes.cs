using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>The axes of a body, trunk or limb, in the statue's own.</summary>
/// <param name="Axes">Directions of the body's x, y and z.</param>
/// <param name="Origin">Position of the body's origin, m.</param>
internal readonly record struct BodyAxes(Axes3D Axes, Vector3D Origin)
{
    public Vector3D ToGlobal(Vector3D local) => Origin + Axes.ToGlobal(local);

    public Vector3D ToLocal(Vector3D global) => Axes.ToLocal(global - Origin);
}
