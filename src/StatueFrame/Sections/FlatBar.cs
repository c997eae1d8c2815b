using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>A flat bar: a solid rectangle, wider than thick. The width runs along the section's axis z.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Width">The longer side b.</param>
/// <param name="Thickness">The shorter side t.</param>
public sealed record FlatBar(Length Width, Length Thickness) : Section
{
    /// <inheritdoc/>
    public override string Designation =>
        string.Create(CultureInfo.InvariantCulture, $"flat {Width.Millimeters:g4}×{Thickness.Millimeters:g4} mm");

    internal override SectionProperties Properties
    {
        get
        {
            var r = new FlatRectangle(Width.Meters, Thickness.Meters);
            return new SectionProperties(r.A, r.StrongI, r.WeakI, r.J, r.ShearArea, r.ShearArea, r.StrongW, r.WeakW);
        }
    }

    internal override Section Blend(Section other, double t) =>
        other is FlatBar flat ? new FlatBar(Width + t * (flat.Width - Width), Thickness + t * (flat.Thickness - Thickness)) : this;

    internal override void Validate(Validator v)
    {
        v.Positive(Width, Width.Meters, 1e-3, 2);
        v.Positive(Thickness, Thickness.Meters, 1e-4, 0.5);
    }
}
