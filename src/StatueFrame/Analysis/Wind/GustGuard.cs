using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What the gust methods ask of their arguments.</summary>
internal static class GustGuard
{
    public static void Require(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping, GustOptions? options = null)
    {
        Require(model, modes);
        ArgumentNullException.ThrowIfNull(wind);
        var v = new Validator();
        wind.Validate(v.At("Wind"));
        v.Within(heading, heading.Degrees, -360, 720);
        Validate(v, damping, options);
        v.ThrowIfAny();
    }

    public static void Require(StatueModel model, ModalResponse modes, DampingModel? damping, GustOptions? options)
    {
        Require(model, modes);
        var v = new Validator();
        Validate(v, damping, options);
        v.ThrowIfAny();
    }

    /// <summary>The damping given, or that of welded lattice towers, the least of their kind; what it assumes is added.</summary>
    public static DampingModel DampingInUse(DampingModel? given, List<Assumption> assumptions)
    {
        DampingModel damping = given ?? DampingModel.Of(DampingCategory.WeldedLattice);
        assumptions.AddRange(damping.Assumptions);
        return damping;
    }

    private static void Require(StatueModel model, ModalResponse modes)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(modes);
        if (modes.Set.Frame != model.Frame)
            throw new ArgumentException("The modes are of another model.", nameof(modes));
        if (model.BandCount == 0)
            throw new ArgumentException("The statue has no skin to catch the wind.", nameof(model));
    }

    private static void Validate(Validator v, DampingModel? damping, GustOptions? options)
    {
        damping?.Validate(v.At("Damping"));
        options?.Validate(v.At("Options"));
    }
}
