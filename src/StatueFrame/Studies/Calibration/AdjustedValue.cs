namespace StatueFrame.Studies;

/// <summary>An adjusted number with what the measurements say of it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">What was adjusted.</param>
/// <param name="Value">The best value, SI.</param>
/// <param name="Low">Lower end of its 95 % interval.</param>
/// <param name="High">Upper end of its 95 % interval.</param>
/// <param name="IsAtBound">True when the search stopped at its least or greatest value: then the interval says nothing.</param>
public sealed record AdjustedValue(string Name, double Value, double Low, double High, bool IsAtBound);
