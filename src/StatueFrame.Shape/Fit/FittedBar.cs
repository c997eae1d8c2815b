using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>A bar from the largest tower straight outward to the skin.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Angle">Plan angle of the bar.</param>
/// <param name="TowerEnd">Its end on the tower, in the body's axes.</param>
/// <param name="SkinEnd">Its end on the skin, in the body's axes.</param>
/// <param name="TooShort">True when it is shorter than <see cref="TowerFitting.LeastBar"/>.</param>
/// <param name="Strikes">True when the skin reaches the tower in the worst sway.</param>
public sealed record FittedBar(Angle Angle, Point3 TowerEnd, Point3 SkinEnd, bool TooShort, bool Strikes)
{
    /// <summary>Length of the bar.</summary>
    public Length Length => UnitsNet.Length.FromMeters((ShapeAxis.At(SkinEnd) - ShapeAxis.At(TowerEnd)).Length);
}
