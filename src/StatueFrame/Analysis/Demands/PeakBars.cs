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
        Span<double> forces = stackalloc double[FrameElement.Size], room = stackalloc double[Motions];
        ends = default;
        if (skin == SkinAssumption.RigidRing)
        {
            room.Clear();
            bar.Bar.Forces(room, motion, forces);
        }
        else
        {
            (BodyModel body, int index) = model.BandAt(band);
            Vector3D arm = bar.Bar.Place.SkinEnd - body.BandPlaces[index].NodeAt;
            Vector3D acceleration = new Vector3D(motion[0], motion[1], motion[2]) + new Vector3D(motion[3], motion[4], motion[5]).Cross(arm);
            if (SkinBounds.FactorOf(skin, bar) is not { } factor || !bar.Bar.Cantilever(factor * model.StripMass(bar) * acceleration, forces, room))
                return false;
        }
        ends = BarEnds.Of(forces);
        return true;
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
