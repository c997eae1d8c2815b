namespace StatueFrame.Shape;

/// <summary>A mesh file that is not accepted: damaged, larger than allowed, or not what its name says.</summary>
public sealed class MeshFileException : IOException
{
    /// <summary>Creates the exception.</summary>
    /// <param name="message">What is wrong.</param>
    /// <param name="place">Where in the file: "line 12", "byte 84".</param>
    /// <param name="inner">What a library said, if any.</param>
    public MeshFileException(string message, string place, Exception? inner = null)
        : base(place.Length == 0 ? message : $"{place}: {message}", inner) => Place = place;

    /// <summary>Where in the file; empty when it concerns the file as a whole.</summary>
    public string Place { get; }
}
