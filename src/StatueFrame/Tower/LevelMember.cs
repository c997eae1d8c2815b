using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>A straight member that lies in a level: of its frame, or an arm of its hub. SI units, in the axes of its tower.</summary>
/// <param name="From">One end, m.</param>
/// <param name="To">The other end, m.</param>
/// <param name="Section">Its section.</param>
/// <param name="Material">Its metal.</param>
internal readonly record struct LevelMember(Vector3D From, Vector3D To, Section Section, Material Material)
{
    public double Mass => Material.Density.KilogramsPerCubicMeter * Section.Properties.A * (To - From).Length;
}
