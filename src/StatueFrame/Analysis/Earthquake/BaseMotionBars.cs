using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// The normal stress of a standoff at the four corners of its two ends, by coordinate of the base's motion, under each
/// bound on the skin: at a corner the stress is linear in the loads, and keeps its sign.
/// </summary>
internal static class BaseMotionBars
{
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
        FlatRectangle section = bar.Standoff.Rectangle;
        Span<double> u = stackalloc double[FrameElement.Size], forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Frame.NodeSize];
        (BodyModel body, int index) = model.BandAt(bandInStatue);
        for (int k = 0; k < motion.Count; k++)
        {
            if (assumption != SkinAssumption.RigidRing)
            {
                (Vector3D a, _) = model.Motion(motion.Accelerations(k), body.BandPlaces[index], bar.Bar.Place.SkinEnd);
                if (SkinBounds.FactorOf(assumption, bar) is not { } factor || !bar.Bar.Cantilever(factor * model.StripMass(bar) * a, forces, tip))
                    return false;
            }
            else
            {
                ring.Gather(motion.Displacements(k), u);
                bar.Bar.Forces(u[..Frame.NodeSize], u[Frame.NodeSize..], forces);
            }
            axial[k] = forces[6];
            for (int corner = 0; corner < BarEnds.Corners; corner++)
                stress[corner * motion.Count + k] = BarEnds.Of(forces).AtCorner(section, corner);
        }
        return true;
    }
}
