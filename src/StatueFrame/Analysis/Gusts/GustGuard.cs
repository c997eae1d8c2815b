using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What the gust methods ask of their arguments.</summary>
internal static class GustGuard
{
    public static void Require(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, StructuralDamping? damping, GustOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(modes);
        ArgumentNullException.ThrowIfNull(wind);
        if (modes.Set.Frame != model.Frame)
            throw new ArgumentException("The modes are of another model.", nameof(modes));
        if (model.BandCount == 0)
            throw new ArgumentException("The statue has no skin to catch the wind.", nameof(model));
        var v = new Validator();
        wind.Validate(v.At("Wind"));
        v.Within(heading, heading.Degrees, -360, 720);
        damping?.Validate(v.At("Damping"));
        options?.Validate(v.At("Options"));
        v.ThrowIfAny();
    }
}
