using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// What shaking does to the standoffs, bar by bar and bound by bound: the end forces at the times when the stress of a
/// corner, or one of the forces, has its peak. All forces of a ring depend on the six motions of its band against its level,
/// or, under limp skin, on the six accelerations of its band: peaks of these are combined once a ring.
/// </summary>
/// <remarks>Immutable and safe to share between threads. Factor 1 on the shaking.</remarks>
internal sealed class PeakBars(StatueModel model, MotionShapes motion, PeakCombination peaks)
{
    private const int Motions = Frame.NodeSize, Corners = BarEnds.Corners, Parts = 8;

    /// <summary>Takes the end forces of a bar at one peak; every state also comes with all signs turned.</summary>
    public delegate void Visitor(BarModel bar, SkinAssumption skin, in BarEnds peak);

    /// <summary>The peaks of all bars of a ring.</summary>
    public void Visit(RingElement ring, int band, Visitor visit)
    {
        PeakCombination onRing = peaks.Through(motion.RelativeMotions(ring)), limp = peaks.Through(Accelerations(band));
        var unit = new BarEnds[Motions];
        Span<double> c = stackalloc double[Motions], state = stackalloc double[Motions];
        foreach (BarModel bar in ring.Bars)
        {
            FlatRectangle section = bar.Standoff.Rectangle;
            foreach (SkinAssumption skin in SkinBounds.All)
            {
                PeakCombination combination = skin == SkinAssumption.RigidRing ? onRing : limp;
                if (combination.IsSingle)
                {
                    if (Under(bar, band, skin, combination.OneState(Motions), out BarEnds only))
                        visit(bar, skin, only);
                    continue;
                }
                if (!ByUnitMotions(bar, band, skin, unit))
                    continue;
                for (int measure = 0; measure < Corners + Parts; measure++)
                {
                    for (int k = 0; k < Motions; k++)
                        c[k] = measure < Corners ? unit[k].AtCorner(section, measure) : Part(unit[k], measure - Corners);
                    if (!combination.StateAtPeak(c, state))
                        continue;
                    BarEnds peak = default;
                    for (int k = 0; k < Motions; k++)
                        peak += state[k] * unit[k];
                    visit(bar, skin, peak);
                }
            }
        }
    }

    /// <summary>The peak of how far the skin end of each bar of a ring comes nearer to the tower, square to the skin, under the worse bound, m.</summary>
    public double[] Approaches(RingElement ring, int band)
    {
        PeakCombination onRing = peaks.Through(motion.RelativeMotions(ring)), limp = peaks.Through(Accelerations(band));
        Span<double> c = stackalloc double[Motions], one = stackalloc double[Motions], moved = stackalloc double[Motions], forces = stackalloc double[FrameElement.Size];
        var peak = new double[ring.Bars.Length];
        foreach (BarModel bar in ring.Bars)
        {
            Vector3D outward = bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Outward);
            foreach (SkinAssumption skin in SkinBounds.All)
            {
                bool stands = true;
                for (int k = 0; k < Motions && stands; k++)
                {
                    one.Clear();
                    one[k] = 1;
                    stands = Move(bar, band, skin, one, moved, forces);
                    c[k] = outward.Dot(new Vector3D(moved[0], moved[1], moved[2]));
                }
                if (stands)
                    peak[bar.Index] = Math.Max(peak[bar.Index], (skin == SkinAssumption.RigidRing ? onRing : limp).Peak(c));
            }
        }
        return peak;
    }

    /// <summary>The most stressed bar of a ring as a part of its yield strength, with what else acts: the worst of the load cases.</summary>
    public EarthquakeBar WorstOf(RingElement ring, int band, IReadOnlyList<LoadCase> cases, double factor)
    {
        EarthquakeBar? worst = null;
        Visit(ring, band, (BarModel bar, SkinAssumption skin, in BarEnds peak) =>
        {
            FlatRectangle section = bar.Standoff.Rectangle;
            Span<double> forces = stackalloc double[FrameElement.Size];
            bool stands = true;
            for (int corner = 0; corner < Corners; corner++)
            {
                double still = 0, shaken = factor * Math.Abs(peak.AtCorner(section, corner));
                foreach (LoadCase loadCase in cases)
                {
                    stands &= loadCase.ForcesOf(ring, bar, band, skin, forces);
                    still = Math.Max(still, stands ? Math.Abs(BarEnds.Of(forces).AtCorner(section, corner)) : 0);
                }
                double ofYield = (still + shaken) / bar.Standoff.Material.YieldStrength.Pascals;
                if (stands && (worst is null || Extremes.Exceeds(ofYield, worst.OfYield)))
                {
                    worst = new EarthquakeBar
                    {
                        Level = ring.Level,
                        Band = ring.BandName,
                        Number = bar.Number,
                        Standoff = bar.Standoff,
                        Assumption = skin,
                        StaticStress = Pressure.FromPascals(still),
                        EarthquakeStress = Pressure.FromPascals(shaken),
                        Axial = Force.FromNewtons(factor * Math.Abs(peak.Skin.N)),
                    };
                }
            }
        });
        return worst ?? Unshaken(ring);
    }

    private static EarthquakeBar Unshaken(RingElement ring) => new()
    {
        Level = ring.Level,
        Band = ring.BandName,
        Number = ring.Bars[0].Number,
        Standoff = ring.Bars[0].Standoff,
        Assumption = SkinAssumption.RigidRing,
        StaticStress = Pressure.Zero,
        EarthquakeStress = Pressure.Zero,
        Axial = Force.Zero,
    };

    private static double Part(in BarEnds ends, int part) => part switch
    {
        0 => ends.Skin.N,
        1 => ends.Skin.AlongThickness,
        2 => ends.Skin.AlongWidth,
        3 => ends.Skin.T,
        4 => ends.Tower.Weak,
        5 => ends.Tower.Strong,
        6 => ends.Skin.Weak,
        _ => ends.Skin.Strong,
    };

    /// <summary>End forces for a unit of each motion of the band against its level, or of each acceleration of its node; false when the bar cannot stand so.</summary>
    private bool ByUnitMotions(BarModel bar, int band, SkinAssumption skin, Span<BarEnds> unit)
    {
        Span<double> one = stackalloc double[Motions];
        for (int k = 0; k < Motions; k++)
        {
            one.Clear();
            one[k] = 1;
            if (!Under(bar, band, skin, one, out unit[k]))
                return false;
        }
        return true;
    }

    /// <summary>End forces for a motion of the band against its level, or under limp skin for the accelerations of its node.</summary>
    private bool Under(BarModel bar, int band, SkinAssumption skin, ReadOnlySpan<double> motion, out BarEnds ends)
    {
        Span<double> forces = stackalloc double[FrameElement.Size], moved = stackalloc double[Motions];
        bool stands = Move(bar, band, skin, motion, moved, forces);
        ends = stands ? BarEnds.Of(forces) : default;
        return stands;
    }

    /// <summary>The motion of a bar's skin end in bar axes, and its end forces, under the same.</summary>
    private bool Move(BarModel bar, int band, SkinAssumption skin, ReadOnlySpan<double> motion, Span<double> moved, Span<double> forces)
    {
        if (skin == SkinAssumption.RigidRing)
        {
            Span<double> still = stackalloc double[Motions];
            still.Clear();
            bar.Bar.Motion(still, motion, moved);
            bar.Bar.Stiffness.Forces(moved, forces);
            return true;
        }
        (BodyModel body, int index) = model.BandAt(band);
        Vector3D arm = bar.Bar.Place.SkinEnd - body.BandPlaces[index].NodeAt;
        Vector3D acceleration = new Vector3D(motion[0], motion[1], motion[2]) + new Vector3D(motion[3], motion[4], motion[5]).Cross(arm);
        return SkinBounds.FactorOf(skin, bar) is { } factor && bar.Bar.Cantilever(factor * model.StripMass(bar) * acceleration, forces, moved);
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
