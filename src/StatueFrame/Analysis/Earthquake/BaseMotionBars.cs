using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// The normal stress of a standoff at the four corners of its two ends, by coordinate of the base's motion, under both
/// assumptions on the skin: at a corner the stress is linear in the loads, and keeps its sign.
/// </summary>
internal static class BaseMotionBars
{
    public const int Corners = 8;

    /// <summary>The stress at a corner from the end forces of a bar (12 values).</summary>
    public static double AtCorner(FlatRectangle section, ReadOnlySpan<double> forces, int corner)
    {
        int end = corner / 4;
        double weak = (corner & 1) == 0 ? 1 : -1, strong = (corner & 2) == 0 ? 1 : -1;
        return forces[6] / section.A + weak * forces[6 * end + 5] / section.WeakW + strong * forces[6 * end + 4] / section.StrongW;
    }

    public static FlatRectangle SectionOf(PlacedBar bar)
    {
        FlatBar flat = bar.Place.Standoff.Section;
        return new FlatRectangle(flat.Width.Meters, flat.Thickness.Meters);
    }

    /// <summary>
    /// Stresses by coordinate and corner, and the axial forces. False when the bar cannot stand alone under limp skin.
    /// </summary>
    /// <param name="model">The model.</param>
    /// <param name="motion">The coordinates.</param>
    /// <param name="ring">The bar's ring.</param>
    /// <param name="bar">The bar.</param>
    /// <param name="bandInStatue">The band it carries.</param>
    /// <param name="assumption">How the skin shares its load: limp, each bar shakes the mass of its own strip alone.</param>
    /// <param name="stress">Receives Corners rows of as many values as there are coordinates.</param>
    /// <param name="axial">Receives the axial forces, N.</param>
    public static bool Stresses(
        StatueModel model, BaseMotionModes motion, RingElement ring, BarModel bar, int bandInStatue, SkinAssumption assumption,
        Span<double> stress, Span<double> axial)
    {
        FlatRectangle section = SectionOf(bar.Bar);
        Span<double> u = stackalloc double[FrameElement.Size], forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Frame.NodeSize];
        (BodyModel body, int index) = model.BandAt(bandInStatue);
        for (int k = 0; k < motion.Count; k++)
        {
            if (assumption == SkinAssumption.LimpSkin)
            {
                (Vector3D a, _) = model.Motion(motion.Accelerations(k), body.BandPlaces[index], bar.Bar.Place.SkinEnd);
                if (!bar.Bar.Cantilever(bar.Share.Mass * a, forces, tip))
                    return false;
            }
            else
            {
                LoadCase.Gather(ring, motion.Displacements(k), u);
                bar.Bar.Forces(u[..Frame.NodeSize], u[Frame.NodeSize..], forces);
            }
            axial[k] = forces[6];
            for (int corner = 0; corner < Corners; corner++)
                stress[corner * motion.Count + k] = AtCorner(section, forces, corner);
        }
        return true;
    }
}
