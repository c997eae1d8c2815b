namespace StatueFrame.Studies;

/// <summary>One input of a design window, with the range that is looked at.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">What it is, as in "bar thickness".</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Least">Its least value in SI units.</param>
/// <param name="Greatest">Its greatest value in SI units, more than the least.</param>
public sealed record WindowInput(string Name, Dimension Dimension, double Least, double Greatest)
{
    internal void Validate(string parameter)
    {
        if (!(double.IsFinite(Least) && double.IsFinite(Greatest) && Least < Greatest))
            throw new ArgumentException($"The range of {Name} must ascend and be finite, is {Least} to {Greatest}.", parameter);
    }
}
