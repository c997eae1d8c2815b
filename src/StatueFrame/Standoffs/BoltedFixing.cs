using UnitsNet;

namespace StatueFrame;

/// <summary>
/// The bolts that fasten one end of a flat bar, passing through its thickness: rows along the bar, columns across its
/// width, in the middle of the width.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record BoltedFixing : StandoffFixing
{
    /// <summary>The bolts.</summary>
    public required Bolt Bolt { get; init; }

    /// <summary>Number of rows along the bar, 1 to 10.</summary>
    public int Rows { get; init; } = 1;

    /// <summary>Number of bolts in a row across the width, 1 to 10.</summary>
    public int Columns { get; init; } = 1;

    /// <summary>Distance p₁ of rows; needed with more than one.</summary>
    public Length Pitch { get; init; }

    /// <summary>Distance p₂ of bolts in a row; needed with more than one.</summary>
    public Length Gauge { get; init; }

    /// <summary>Distance e₁ from the last row to the end of the bar.</summary>
    public required Length EndDistance { get; init; }

    /// <summary>Shear planes through each bolt, 1 or 2.</summary>
    public int ShearPlanes { get; init; } = 1;

    /// <summary>
    /// Lever arm from the outermost row to the edge the bar turns about when its weak moment pulls on the bolts; null
    /// takes the lesser of the end distance and half the width. The moments that pull at bolts need it.
    /// </summary>
    public Length? Heel { get; init; }

    internal int Count => Rows * Columns;

    internal double p_1 => Pitch.Meters;

    internal double p_2 => Gauge.Meters;

    internal double e_1 => EndDistance.Meters;

    internal double e_2(double width) => (width - (Columns - 1) * p_2) / 2;

    internal double X(int row) => (row - 0.5 * (Rows - 1)) * p_1;

    internal double Y(int column) => (column - 0.5 * (Columns - 1)) * p_2;

    /// <summary>What the holes of a row take of the flat's width, m.</summary>
    internal double HoleWidth => Columns * Bolt.d_0;

    /// <summary>∫ y² dA over the holes of a row through a thickness, m⁴.</summary>
    internal double HoleInertia(double thickness)
    {
        double sum = 0, d_0 = Bolt.d_0;
        for (int j = 0; j < Columns; j++)
            sum += thickness * d_0 * (d_0 * d_0 / 12 + Y(j) * Y(j));
        return sum;
    }

    internal override void Validate(Validator v, double width)
    {
        if (v.Required(Bolt) is null)
            return;
        Bolt.Validate(v.At(nameof(Bolt)));
        v.InRange(Rows, 1, 10, "Rows lie along the bar.");
        v.InRange(Columns, 1, 10, "Columns lie across the bar.");
        v.InRange(ShearPlanes, 1, 2, "One for a lap, two for a fork.");
        double least = Bolt.d_0;
        if (Rows > 1)
            v.Within(Pitch, p_1, 1.5 * least, 2);
        if (Columns > 1)
            v.Within(Gauge, p_2, 1.5 * least, 2);
        v.Within(EndDistance, e_1, 0.75 * least, 1);
        if (Heel is { } heel)
            v.Positive(heel, heel.Meters, 1e-3, 1, nameof(Heel));
        if (!(e_2(width) >= 0.75 * least))
            v.Add(nameof(Gauge), "the bolts come too near to the edges of the flat", "Edge distance must be at least 0.75 hole diameters.");
    }
}
