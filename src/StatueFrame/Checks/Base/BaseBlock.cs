namespace StatueFrame.Checks;

/// <summary>A block of what the statue stands on.</summary>
/// <param name="Section">Its plan.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Height">Its height, m.</param>
internal sealed record BaseBlock(BlockSection Section, BlockMaterial Material, double Height)
{
    /// <summary>The block that the plates stand on; null when neither pedestal nor foundation is described.</summary>
    public static BaseBlock? Under(Statue statue) => All(statue).FirstOrDefault();

    /// <summary>The block at a depth below the plates, whether all down to it is concrete, and the weight of the courses above.</summary>
    public static (BaseBlock? At, bool IsConcrete, double WeightAbove) At(Statue statue, double depth)
    {
        double top = 0, weight = 0;
        bool concrete = true;
        foreach (BaseBlock block in All(statue))
        {
            concrete &= block.Material is Concrete;
            double inside = Math.Min(block.Height, depth - top);
            weight += block.Section.Plan.Whole.A * inside * block.Material.Weight;
            top += block.Height;
            if (depth <= top * (1 + 1e-9))
                return (block, concrete, weight);
        }
        return (null, false, weight);
    }

    private static IEnumerable<BaseBlock> All(Statue statue)
    {
        foreach (PedestalCourse course in statue.Pedestal?.Courses ?? [])
            yield return new BaseBlock(course.Section, course.Material, course.Height.Meters);
        if (statue.Foundation is { } foundation)
            yield return new BaseBlock(BlockSection.Rectangle(foundation.WidthX, foundation.WidthY), foundation.Material, foundation.Thickness.Meters);
    }
}
