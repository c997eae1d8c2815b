using UnitsNet;

namespace StatueFrame.Works;

/// <summary>Sheets that travel together, nested into each other in stacks side by side.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Number">Number, from 1: the order in which they are opened when the figure is raised from below.</param>
/// <param name="Stacks">The stacks along the crate's width, each with the sheets' numbers from the floor up.</param>
/// <param name="Mass">Mass of the sheets, packing not included.</param>
/// <param name="Height">Height of the highest stack with its padding.</param>
/// <param name="Center">Center of gravity of the sheets: along the length and across the width from the crate's middle (x, y), above its floor (z).</param>
public sealed record Crate(int Number, ValueList<ValueList<int>> Stacks, Mass Mass, Length Height, Point3 Center)
{
    /// <summary>All sheets in it.</summary>
    public IEnumerable<int> Sheets => Stacks.SelectMany(stack => stack);
}
