using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame;

/// <summary>A bracket where it is, in the axes of its standoff. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Bracket">What it is made of.</param>
/// <param name="Foot">Its end on the tower, m.</param>
/// <param name="Tip">Its end under the standoff, m.</param>
/// <param name="Axes">x from foot to tip, y and z the section's principal axes.</param>
internal sealed record PlacedBracket(Bracket Bracket, Vector3D Foot, Vector3D Tip, Axes3D Axes)
{
    public static PlacedBracket Between(Vector3D foot, Vector3D tip, Bracket bracket) =>
        new(bracket, foot, tip, Axes3D.Along(tip - foot, Vector3D.UnitZ).Rolled(bracket.Roll.Radians));

    public double Length => (Tip - Foot).Length;

    /// <summary>Its mass, kg.</summary>
    public double Mass => Bracket.Material.Density.KilogramsPerCubicMeter * Bracket.Section.Properties.A * Length;

    public Vector3D Middle => 0.5 * (Foot + Tip);

    public PlacedBracket Moved(Axes3D body, Vector3D origin) => this with
    {
        Foot = origin + body.ToGlobal(Foot),
        Tip = origin + body.ToGlobal(Tip),
        Axes = new Axes3D(body.ToGlobal(Axes.X), body.ToGlobal(Axes.Y), body.ToGlobal(Axes.Z)),
    };

    /// <summary>The stiffness (6×6, row-major) that it opposes to a motion of its tip, written in other axes through the tip.</summary>
    public void StiffnessAtTip(in Axes3D written, Span<double> k36)
    {
        new BarStiffness(Bracket.Section.Of(Bracket.Material), Length, Bracket.TowerFixity.Springs, EndSprings.Rigid).CopyTo(k36);
        var turn = new Axes3D(written.ToLocal(Axes.X), written.ToLocal(Axes.Y), written.ToLocal(Axes.Z));
        SmallMatrix.ToGlobal(k36, Frame.NodeSize, turn);
    }
}
