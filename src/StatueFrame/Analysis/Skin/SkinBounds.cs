using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>The bounds on the skin, and what those of a skin without stiffness of its own put on single bars, in whatever acts.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class SkinBounds
{
    /// <summary>All of them; the shell of a fine model is none.</summary>
    public static readonly SkinAssumption[] All = [SkinAssumption.RigidRing, SkinAssumption.LimpSkin, SkinAssumption.SlidingSkin];

    /// <summary>
    /// What a bar takes of the strips round it where saddles slide, over its own. Shell models of figures with every bar a
    /// beam gave 1.13 to 1.67; a thin ring on radial holds gives 1.125 in closed form.
    /// </summary>
    public const double SlidingFactor = 5.0 / 3;

    /// <summary>The bound in a sentence.</summary>
    public static string InWords(this SkinAssumption bound) => bound switch
    {
        SkinAssumption.RigidRing => "band as a rigid ring",
        SkinAssumption.LimpSkin => "limp skin, the bar alone",
        SkinAssumption.Shell => "skin as a shell",
        _ => "limp skin on sliding saddles",
    };

    /// <summary>How many times its own strip a bar takes under a bound; null where the bound is not for it.</summary>
    public static double? FactorOf(SkinAssumption bound, BarModel bar) => bound switch
    {
        SkinAssumption.LimpSkin => 1,
        SkinAssumption.SlidingSkin when bar.Bar.Place.Slide != Vector3D.Zero => SlidingFactor,
        _ => null,
    };
}
