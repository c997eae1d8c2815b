namespace StatueFrame.Shape;

/// <summary>A dimensionless number of the full-size body and of its model.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Name">The number's name.</param>
/// <param name="Formula">How it is computed.</param>
/// <param name="Full">At full size.</param>
/// <param name="Model">Of the model.</param>
/// <param name="Meaning">What goes wrong in the model when it does not match.</param>
public sealed record SimilarityNumber(string Name, string Formula, double Full, double Model, string Meaning)
{
    /// <summary>Model over full size; 1 is a match.</summary>
    public double Ratio => Model / Full;

    /// <summary>Whether the two agree within five percent.</summary>
    public bool Matches => Math.Abs(Ratio - 1) <= 0.05;
}
