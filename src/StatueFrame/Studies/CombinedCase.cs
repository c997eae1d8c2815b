using StatueFrame.Analysis;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// Two load cases of a linear model added: what acts in calm, plus a multiple of the wind. Displacements, reactions and
/// bar forces add as vectors before any stress or sway is taken from them, so that nothing is lost by the sum.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="model">The model of both cases.</param>
/// <param name="calm">The case in calm; or the whole, when there is no wind to add.</param>
/// <param name="wind">The wind alone, or null.</param>
/// <param name="factor">The multiple of the wind.</param>
internal sealed class CombinedCase(StatueModel model, LoadCase calm, LoadCase? wind, double factor)
{
    public Angle? Heading => wind is null ? calm.Heading : factor > 0 ? wind.Heading : null;

    public double Sway(string point)
    {
        Movement a = calm.Of(point);
        Movement? b = wind?.Of(point);
        return Norm(a.X.Meters + factor * (b?.X.Meters ?? 0), a.Y.Meters + factor * (b?.Y.Meters ?? 0));
    }

    public double Overturning
    {
        get
        {
            BaseReaction a = calm.Base;
            BaseReaction? b = wind?.Base;
            return Norm(
                a.MomentX.NewtonMeters + factor * (b?.MomentX.NewtonMeters ?? 0),
                a.MomentY.NewtonMeters + factor * (b?.MomentY.NewtonMeters ?? 0));
        }
    }

    /// <summary>The standoff with the greatest stress over yield strength; null when there is none.</summary>
    public BarDemand? WorstBar()
    {
        (RingElement Ring, int Number, double Stress, double Fraction) worst = default;
        foreach ((RingElement ring, int band) in model.Rings)
        {
            for (int i = 0; i < ring.Bars.Length; i++)
            {
                BarModel bar = ring.Bars[i];
                double stress = Math.Max(
                    Stress(ring, bar, band, SkinAssumption.RigidRing), Stress(ring, bar, band, SkinAssumption.LimpSkin));
                double fraction = stress / bar.Bar.Place.Standoff.Material.YieldStrength.Pascals;
                if (worst.Ring is null || fraction > worst.Fraction)
                    worst = (ring, bar.Number, stress, fraction);
            }
        }
        return worst.Ring is null
            ? null
            : new BarDemand($"{worst.Ring.BandName}, bar {worst.Number}", Pressure.FromPascals(worst.Stress), worst.Fraction, Heading);
    }

    /// <summary>The normal stress of a bar; zero under limp skin when it cannot stand alone.</summary>
    private double Stress(RingElement ring, BarModel bar, int band, SkinAssumption assumption)
    {
        Span<double> forces = stackalloc double[FrameElement.Size], added = stackalloc double[FrameElement.Size];
        if (!calm.ForcesOf(ring, bar, band, assumption, forces))
            return 0;
        if (wind is not null)
        {
            if (!wind.ForcesOf(ring, bar, band, assumption, added))
                return 0;
            for (int i = 0; i < forces.Length; i++)
                forces[i] += factor * added[i];
        }
        return BarEnds.Of(forces).NormalStress(bar.Standoff.Section.Width.Meters, bar.Standoff.Section.Thickness.Meters);
    }

    private static double Norm(double x, double y) => Math.Sqrt(x * x + y * y);
}
