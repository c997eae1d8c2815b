using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Something sudden: a wave of pressure, a blow, a striking mass, the release of a pull. The response to it is worked out
/// in time. In a <see cref="Situation"/> it acts together with the weight; its factor multiplies it.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Size and duration are given by the user, from whoever is competent for
/// the cause; the library does not work them out.
/// </remarks>
public abstract record ShockAction : StatueAction
{
    private protected ShockAction()
    {
    }

    /// <summary>Short name, as in "ship's wash".</summary>
    public required string Name { get; init; }

    /// <summary>The plan angle it acts towards, anticlockwise from +x, −360° to 720°.</summary>
    public Angle Heading { get; init; }

    /// <summary>How far it acts upwards from the horizontal, −90° to 90°; 0 unless given.</summary>
    public Angle Inclination { get; init; }

    /// <inheritdoc/>
    public override string Title => Name;

    /// <summary>The unit vector it acts along.</summary>
    internal Vector3D Direction
    {
        get
        {
            (double sin, double cos) = Math.SinCos(Heading.Radians);
            (double up, double level) = Math.SinCos(Inclination.Radians);
            return new Vector3D(level * cos, level * sin, up);
        }
    }

    internal sealed override void Validate(Validator v)
    {
        v.Named(Name);
        v.Within(Heading, Heading.Degrees, -360, 720);
        v.Within(Inclination, Inclination.Degrees, -90, 90);
        ValidateSize(v);
    }

    private protected abstract void ValidateSize(Validator v);

    /// <summary>Asks that the places it acts on are there.</summary>
    internal abstract void ValidatePlaces(Validator v, StatueNames names);
}
