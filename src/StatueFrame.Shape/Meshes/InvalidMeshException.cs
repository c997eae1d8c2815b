namespace StatueFrame.Shape;

/// <summary>A mesh with flaws that stand in the way of what was asked.</summary>
public sealed class InvalidMeshException : ArgumentException
{
    /// <summary>Creates the exception.</summary>
    /// <param name="message">What cannot be done and why, with places.</param>
    public InvalidMeshException(string message) : base(message)
    {
    }

    /// <summary>Creates the exception for flaws.</summary>
    /// <param name="message">What cannot be done.</param>
    /// <param name="flaws">The flaws that stand in the way.</param>
    public InvalidMeshException(string message, IReadOnlyList<MeshFlaw> flaws)
        : base($"{message}:{Environment.NewLine}{string.Join(Environment.NewLine, flaws.Select(f => "  " + f))}") => Flaws = flaws;

    /// <summary>The flaws that stand in the way, if it is these.</summary>
    public IReadOnlyList<MeshFlaw> Flaws { get; } = [];
}
