using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>What the gust methods ask of their arguments.</summary>
internal static class GustGuard
{
    public static void Require(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping, GustOptions? options = null)
    {
        Require(model, modes, CatchesWind(model));
        ArgumentNullException.ThrowIfNull(wind);
        var v = new Validator();
        wind.Validate(v.At("Wind"));
        v.Within(heading, heading.Degrees, -360, 720);
        Validate(v, damping, options);
        v.ThrowIfAny();
    }

    public static void Require(StatueModel model, ModalResponse modes, DampingModel? damping, GustOptions? options)
    {
        Require(model, modes, CatchesWind(model));
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

    /// <summary>The standards' gust factors are of a figure: skin it must have.</summary>
    public static void RequireSkin(StatueModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (model.BandCount == 0)
            throw new ArgumentException("The statue has no skin to catch the wind.", nameof(model));
    }

    /// <summary>Whether skin, bare tower or a fitting meets the wind.</summary>
    public static bool CatchesWind(StatueModel? model) =>
        model is not null && (model.BandCount > 0 || model.BareSlices.Any(slice => slice.HasShape) || model.FittingsInWind.Any());

    private static void Require(StatueModel model, ModalResponse modes, bool catchesWind)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(modes);
        if (modes.Set.Frame != model.Frame)
            throw new ArgumentException("The modes are of another model.", nameof(modes));
        if (!catchesWind)
            throw new ArgumentException("The statue has nothing that catches the wind.", nameof(model));
    }

    private static void Validate(Validator v, DampingModel? damping, GustOptions? options)
    {
        damping?.Validate(v.At("Damping"));
        options?.Validate(v.At("Options"));
    }
}
