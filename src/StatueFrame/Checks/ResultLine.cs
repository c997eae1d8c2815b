namespace StatueFrame.Checks;

/// <summary>A number on a <see cref="CheckSheet"/> that is for information: a mass, a reaction, a frequency, a sway.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Group">The group it is printed in, as in "masses".</param>
/// <param name="Name">What it is, as in "skin"; a group and a name occur once on a sheet.</param>
/// <param name="Value">The value in SI units.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Note">A remark; may be empty.</param>
public sealed record ResultLine(string Group, string Name, double Value, Dimension Dimension, string Note = "")
{
    /// <summary>The result on one line in metric units.</summary>
    public override string ToString() => $"{Group}, {Name}: {TextLayout.Format(Value, Dimension, DisplayUnits.Metric)}";
}
