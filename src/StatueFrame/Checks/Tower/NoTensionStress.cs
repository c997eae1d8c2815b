using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>The stress of a section without tension, as <see cref="NoTension"/> finds it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class NoTensionStress
{
    private readonly ContactPlane plane;
    private readonly double whole;

    internal NoTensionStress(ContactPlane plane, double whole) => (this.plane, this.whole) = (plane, whole);

    /// <summary>The greatest compressive stress, at the toe.</summary>
    public Pressure ToeStress => Pressure.FromPascals(plane.GreatestPressure);

    /// <summary>Place of the toe along x.</summary>
    public Length ToeX => Length.FromMeters(plane.Toe.X);

    /// <summary>Place of the toe along y.</summary>
    public Length ToeY => Length.FromMeters(plane.Toe.Y);

    /// <summary>Whether a part of the section has cracked.</summary>
    public bool IsCracked => plane.LeastPressure < 0;

    /// <summary>The part of the section that is pressed.</summary>
    public Area PressedArea => Area.FromSquareMeters(plane.Pressed.A);

    /// <summary>Pressed over whole area, above 0 to 1.</summary>
    public double PressedFraction => plane.Pressed.A / whole;

    /// <summary>The compressive stress at a point of the section; zero where it has cracked.</summary>
    /// <param name="x">The point's x.</param>
    /// <param name="y">The point's y.</param>
    public Pressure At(Length x, Length y) => Pressure.FromPascals(plane.PressureAt(x.Meters, y.Meters));
}
