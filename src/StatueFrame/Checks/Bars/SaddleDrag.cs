using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Checks;

/// <summary>What the friction of saddles that slide does to their bars.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class SaddleDrag
{
    /// <summary>What the friction of a saddle that slides puts on its bar while it slides, one way: on a rigid ring its skin end does not turn.</summary>
    public static BarEnds Of(BarModel bar, SkinAssumption skin)
    {
        if (bar.Bar.Place.Slide == Vector3D.Zero || bar.Standoff.Saddle is not { } saddle)
            return default;
        Span<double> forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Frame.NodeSize];
        if (skin != SkinAssumption.RigidRing)
            return bar.Bar.Cantilever(saddle.SlidingForce * bar.Bar.Place.Slide, forces, tip) ? BarEnds.Of(forces) : default;
        double along = Stuck(bar, forces);
        return along > 0 ? saddle.SlidingForce / along * BarEnds.Of(forces) : default;
    }

    /// <summary>
    /// What the friction of a saddle does to its bar in a heat, one way or there and back; no more than holds the saddle fast while the bar
    /// itself gives by the way that it would slide.
    /// </summary>
    public static BarEnds InHeat(LoadCase hot, RingElement ring, BarModel bar, SkinAssumption skin, int ways)
    {
        if (bar.Bar.Place.Slide == Vector3D.Zero || bar.Standoff.Saddle is not { } saddle || saddle.SlidingForce == 0)
            return default;
        Span<double> forces = stackalloc double[FrameElement.Size];
        double along = Stuck(bar, forces), held = along * hot.SlipOf(ring, bar) / saddle.SlidingForce;
        return (along > 0 ? Math.Min(ways, held) : ways) * Of(bar, skin);
    }

    /// <summary>The force along a slide, N, that moves a bar's skin end by a meter along it when the saddle holds fast and does not turn; with all its forces.</summary>
    private static double Stuck(BarModel bar, Span<double> forces)
    {
        Span<double> tip = stackalloc double[Frame.NodeSize];
        Vector3D s = bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Slide);
        tip.Clear();
        (tip[0], tip[1], tip[2]) = (s.X, s.Y, s.Z);
        BarStiffness.Of(bar.Bar.Place with { Slide = Vector3D.Zero }).Forces(tip, forces);
        return s.X * forces[6] + s.Y * forces[7] + s.Z * forces[8];
    }

    /// <summary>The forces with the drag the way that is worse.</summary>
    public static BarEnds Worse(in BarEnds ends, in BarEnds drag, CheckedBar bar)
    {
        if (drag == default)
            return ends;
        BarEnds plus = ends + drag, minus = ends + -1 * drag;
        return plus.NormalStress(bar.b, bar.t) >= minus.NormalStress(bar.b, bar.t) ? plus : minus;
    }
}
