namespace StatueFrame.Studies;

/// <summary>A number that is adjusted until the model meets the measurements, above zero: a stiffness, a mass factor.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">What is adjusted.</param>
/// <param name="Start">Where the search begins, above zero, SI.</param>
/// <param name="Least">The least it may be, above zero.</param>
/// <param name="Greatest">The greatest it may be.</param>
public sealed record Adjustable(string Name, double Start, double Least, double Greatest);
