using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The stress of standoffs in an earthquake, corner by corner, with that of what else acts. All stresses of a ring depend on
/// the six motions of its band against its level, or, under limp skin, on the six accelerations of its band: peaks of these
/// are combined once a ring.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="model">The model.</param>
/// <param name="motion">The coordinates of the base's motion.</param>
/// <param name="spectral">How their peaks are combined.</param>
/// <param name="cases">The load cases of what else acts.</param>
/// <param name="factor">Factor on the earthquake, zero or more.</param>
internal sealed class EarthquakeBarStress(
    StatueModel model, BaseMotionModes motion, SpectralCombination spectral, IReadOnlyList<LoadCase> cases, double factor)
{
    private const int Motions = Frame.NodeSize, Corners = BaseMotionBars.Corners;

    /// <summary>The bar of a ring whose stress is the greatest part of its yield strength.</summary>
    public EarthquakeBar WorstOf(RingElement ring, int band)
    {
        SpectralCombination onRing = spectral.Through(motion.RelativeMotions(ring)), limp = spectral.Through(Accelerations(band));
        return Enumerable.Range(0, ring.Bars.Length).Select(i => Of(ring, i, band, onRing, limp)).ToArray().FirstGreatest(bar => bar.OfYield);
    }

    private EarthquakeBar Of(RingElement ring, int number, int band, SpectralCombination onRing, SpectralCombination limp)
    {
        BarModel bar = ring.Bars[number];
        FlatRectangle section = BaseMotionBars.SectionOf(bar.Bar);
        (SkinAssumption Assumption, double Static, double Shaken, double Axial) worst = (SkinAssumption.RigidRing, -1, 0, 0);
        bool standsAlone = true;
        Span<double> axial = stackalloc double[Motions], stress = stackalloc double[Corners * Motions], still = stackalloc double[Corners];
        foreach (SkinAssumption assumption in (ReadOnlySpan<SkinAssumption>)[SkinAssumption.RigidRing, SkinAssumption.LimpSkin])
        {
            bool isRing = assumption == SkinAssumption.RigidRing;
            if (!(isRing ? OnRing(bar, section, stress, axial) : Alone(bar, section, band, stress, axial)))
            {
                standsAlone = false;
                continue;
            }
            standsAlone &= AtRest(ring, bar, band, section, assumption, still);
            SpectralCombination combination = isRing ? onRing : limp;
            for (int corner = 0; corner < Corners; corner++)
            {
                double shaken = factor * combination.Peak(stress.Slice(corner * Motions, Motions));
                if (Extremes.Exceeds(still[corner] + shaken, worst.Static + worst.Shaken))
                    worst = (assumption, still[corner], shaken, factor * combination.Peak(axial));
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

    /// <summary>The greatest stress without sign of each corner over the load cases; false when the bar cannot stand alone in one.</summary>
    private bool AtRest(RingElement ring, BarModel bar, int band, FlatRectangle section, SkinAssumption assumption, Span<double> still)
    {
        Span<double> forces = stackalloc double[FrameElement.Size];
        bool stands = true;
        still.Clear();
        foreach (LoadCase loadCase in cases)
        {
            if (!loadCase.ForcesOf(ring, bar, band, assumption, forces))
            {
                stands = false;
                continue;
            }
            for (int corner = 0; corner < Corners; corner++)
                still[corner] = Math.Max(still[corner], Math.Abs(BaseMotionBars.AtCorner(section, forces, corner)));
        }
        return stands;
    }

    /// <summary>Stress of each corner and axial force for a unit of each motion of the band against its level.</summary>
    private static bool OnRing(BarModel bar, FlatRectangle section, Span<double> stress, Span<double> axial)
    {
        Span<double> still = stackalloc double[Motions], unit = stackalloc double[Motions], forces = stackalloc double[FrameElement.Size];
        still.Clear();
        for (int k = 0; k < Motions; k++)
        {
            unit.Clear();
            unit[k] = 1;
            bar.Bar.Forces(still, unit, forces);
            Put(section, forces, k, stress, axial);
        }
        return true;
    }

    /// <summary>The same for a unit of each acceleration of the band's node, that shakes the mass of the bar's own strip.</summary>
    private bool Alone(BarModel bar, FlatRectangle section, int band, Span<double> stress, Span<double> axial)
    {
        (BodyModel body, int index) = model.BandAt(band);
        Vector3D arm = bar.Bar.Place.SkinEnd - body.BandPlaces[index].NodeAt;
        Span<double> forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Motions];
        for (int k = 0; k < Motions; k++)
        {
            Vector3D unit = (k % 3) switch { 0 => Vector3D.UnitX, 1 => Vector3D.UnitY, _ => Vector3D.UnitZ };
            if (!bar.Bar.Cantilever(bar.Share.Mass * (k < 3 ? unit : unit.Cross(arm)), forces, tip))
                return false;
            Put(section, forces, k, stress, axial);
        }
        return true;
    }

    private static void Put(FlatRectangle section, ReadOnlySpan<double> forces, int motion, Span<double> stress, Span<double> axial)
    {
        axial[motion] = forces[6];
        for (int corner = 0; corner < Corners; corner++)
            stress[corner * Motions + motion] = BaseMotionBars.AtCorner(section, forces, corner);
    }

    private double[][] Accelerations(int band)
    {
        (BodyModel body, int index) = model.BandAt(band);
        int first = Frame.NodeSize * body.BandPlaces[index].Node;
        double[][] rows = [.. Enumerable.Range(0, Motions).Select(_ => new double[motion.Count])];
        for (int k = 0; k < motion.Count; k++)
        {
            for (int i = 0; i < Motions; i++)
                rows[i][k] = motion.Accelerations(k)[first + i];
        }
        return rows;
    }
}
