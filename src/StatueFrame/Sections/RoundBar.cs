using UnitsNet;

namespace StatueFrame;

/// <summary>A solid round bar; every axis is a principal axis.</summary>
/// <remarks>Immutable and safe to share between threads. Shear area as <see cref="Tube"/> without a bore.</remarks>
/// <param name="Diameter">The diameter; 1 mm to 5 m.</param>
public sealed record RoundBar(Length Diameter) : Section
{
    internal override double? OutlineDiameter => Diameter.Meters;

    internal override (double Width, double Depth) Envelope => (Diameter.Meters, Diameter.Meters);

    /// <inheritdoc/>
    public override string Designation => Describe("round", Diameter);

    private protected override SectionProperties Compute() => Tube.Ring(Diameter.Meters, 0);

    internal override Section Blend(Section other, double t) =>
        new RoundBar(Between(Diameter, TaperEnd<RoundBar>(other).Diameter, t));

    internal override void Validate(Validator v) => v.Positive(Diameter, Diameter.Meters, 1e-3, 5);
}
