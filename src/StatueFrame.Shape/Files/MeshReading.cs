using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// What must be known to read a mesh file, and how much of one is accepted. Files do not say reliably what their numbers
/// mean, so unit and upward axis are stated and never guessed.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record MeshReading
{
    /// <summary>The length that the number 1 in the file stands for, 1 nm to 1 km: <c>1.Millimeters</c> for a file in millimeters.</summary>
    public required Length Unit { get; init; }

    /// <summary>The file's upward axis.</summary>
    public required UpAxis Up { get; init; }

    /// <summary>The most triangles accepted, 1 to 100 million; 5 million by default.</summary>
    public int MaxTriangles { get; init; } = 5_000_000;

    /// <summary>The most bytes read from the file, buffers beside it included; 1 GiB by default.</summary>
    public long MaxBytes { get; init; } = 1L << 30;

    /// <summary>Told the part of the file that is read, from 0 to 1, where its length is known.</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>Stops the reading, which then throws an <see cref="OperationCanceledException"/>.</summary>
    public CancellationToken Cancellation { get; init; }

    internal double Scale
    {
        get
        {
            double unit = Unit.Meters;
            if (!(unit is >= 1e-9 and <= 1e3))
                throw new ArgumentOutOfRangeException(nameof(Unit), Unit, "one unit of the file must be 1 nm to 1 km");
            if (MaxTriangles is < 1 or > 100_000_000)
                throw new ArgumentOutOfRangeException(nameof(MaxTriangles), MaxTriangles, "must be 1 to 100 million");
            if (MaxBytes < 1)
                throw new ArgumentOutOfRangeException(nameof(MaxBytes), MaxBytes, "must be positive");
            if (!Enum.IsDefined(Up))
                throw new ArgumentOutOfRangeException(nameof(Up), Up, "is no axis");
            return unit;
        }
    }

    /// <summary>The most vertices a file within the limit of triangles may have.</summary>
    internal int MaxVertices => (int)Math.Min(3L * MaxTriangles, 300_000_000);
}
