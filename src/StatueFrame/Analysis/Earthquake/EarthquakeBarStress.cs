using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The stress of standoffs in an earthquake, corner by corner, with that of what else acts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="model">The model.</param>
/// <param name="motion">The coordinates of the base's motion.</param>
/// <param name="spectral">How their peaks are combined.</param>
/// <param name="cases">The load cases of what else acts.</param>
/// <param name="factor">Factor on the earthquake, zero or more.</param>
internal sealed class EarthquakeBarStress(
    StatueModel model, BaseMotionModes motion, SpectralCombination spectral, IReadOnlyList<LoadCase> cases, double factor)
{
    /// <summary>The bar of a ring whose stress is the greatest part of its yield strength.</summary>
    public EarthquakeBar WorstOf(RingElement ring, int band) =>
        Enumerable.Range(0, ring.Bars.Length).Select(i => Of(ring, i, band)).ToArray().FirstGreatest(bar => bar.OfYield);

    private EarthquakeBar Of(RingElement ring, int number, int band)
    {
        BarModel bar = ring.Bars[number];
        FlatRectangle section = BaseMotionBars.SectionOf(bar.Bar);
        var stress = new double[BaseMotionBars.Corners * motion.Count];
        var axial = new double[motion.Count];
        Span<double> forces = stackalloc double[FrameElement.Size];
        (SkinAssumption Assumption, double Static, double Shaken, double Axial) worst = (SkinAssumption.RigidRing, -1, 0, 0);
        bool standsAlone = true;
        foreach (SkinAssumption assumption in (ReadOnlySpan<SkinAssumption>)[SkinAssumption.RigidRing, SkinAssumption.LimpSkin])
        {
            if (!BaseMotionBars.Stresses(model, motion, ring, bar, band, assumption, stress, axial))
            {
                standsAlone = false;
                continue;
            }
            for (int corner = 0; corner < BaseMotionBars.Corners; corner++)
            {
                double still = 0;
                foreach (LoadCase loadCase in cases)
                {
                    if (loadCase.ForcesOf(ring, bar, band, assumption, forces))
                        still = Math.Max(still, Math.Abs(BaseMotionBars.AtCorner(section, forces, corner)));
                    else
                        standsAlone = false;
                }
                double shaken = factor * spectral.Peak(stress.AsSpan(corner * motion.Count, motion.Count));
                if (Extremes.Exceeds(still + shaken, worst.Static + worst.Shaken))
                    worst = (assumption, still, shaken, factor * spectral.Peak(axial));
            }
        }
        return new EarthquakeBar
        {
            Level = ring.Level,
            Band = ring.BandName,
            Number = number + 1,
            Standoff = bar.Bar.Place.Standoff,
            Assumption = worst.Assumption,
            StaticStress = Pressure.FromPascals(Math.Max(0, worst.Static)),
            EarthquakeStress = Pressure.FromPascals(worst.Shaken),
            Axial = Force.FromNewtons(worst.Axial),
            StandsAlone = standsAlone,
        };
    }
}
