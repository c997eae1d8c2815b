using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>Checks of standoffs.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class BarChecks
{
    private static readonly Source ElasticStress = Source.Roark("Table 8.1 and section 8.1: stress in a beam; axial and bending stresses add at a corner");
    private static readonly Source Allowable = Source.Assumed("standoffs: allowable stress is a fraction of the yield or proof strength");

    /// <summary>Normal stress of a standoff from axial force and bending about both axes, against a fraction of its yield strength.</summary>
    /// <param name="bar">The bar in its situation.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <param name="stressFraction">Allowable stress over yield or proof strength, above 0 to 1.</param>
    /// <remarks>
    /// Forces are those at the end with the greater stress, under the worse of the two assumptions on the skin. Torsion
    /// and transverse shear are not part of it.
    /// </remarks>
    public static Check Bending(BarResult bar, string situation, double stressFraction)
    {
        string heading = Headings.Describe(bar.StressHeading);
        string assumption = bar.StressAssumption == SkinAssumption.RigidRing ? "band as a rigid ring" : "limp skin, the bar alone";
        return Check.Of(
            new CheckSubject("bars.bending", "stress in a standoff", bar.Where, situation), Dimension.Stress, Allowable,
            w =>
            {
                w?.Note($"Worst of all headings: {heading}; {assumption}.");
                BarForces f = bar.Forces;
                double atTower = Math.Abs(f.WeakMomentAtTower.NewtonMeters), atSkin = Math.Abs(f.WeakMomentAtSkin.NewtonMeters);
                double strongTower = Math.Abs(f.StrongMomentAtTower.NewtonMeters), strongSkin = Math.Abs(f.StrongMomentAtSkin.NewtonMeters);
                return Bending(
                    w, f.Axial.Newtons, (atTower, strongTower), (atSkin, strongSkin),
                    bar.Section.Width.Meters, bar.Section.Thickness.Meters, bar.Standoff.Material.YieldStrength.Pascals, stressFraction);
            });
    }

    internal static CheckSubject LocalSubject(string where, string situation) =>
        new("bars.local", "standoff alone under the local pressure on its strip", where, situation);

    /// <summary>
    /// Each bar of a ring alone, as a cantilever from its tower end, under the greatest local pressure or suction of its
    /// band on its own strip of skin, square to the skin; the worst of the ring. Weight is not part of it.
    /// </summary>
    /// <param name="ring">The ring.</param>
    /// <param name="band">The band it carries.</param>
    /// <param name="pressure">Greatest pressure or suction, factor included, without sign, Pa.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <param name="stressFraction">Allowable stress over yield or proof strength, above 0 to 1.</param>
    internal static Check LocalPressure(RingElement ring, SkinBand band, double pressure, string situation, double stressFraction)
    {
        Span<double> forces = stackalloc double[12], tip = stackalloc double[6];
        (int Bar, double Area, double OfYield) worst = (-1, 0, 0);
        for (int i = 0; i < ring.Bars.Length; i++)
        {
            BarModel bar = ring.Bars[i];
            double area = bar.Share.PartOf(band.Top - band.Bottom) * band.OutlineArea;
            if (!bar.Bar.Cantilever(pressure * area * bar.Bar.Place.Outward, forces, tip))
                return Check.NotChecked(LocalSubject($"{ring.BandName}, bar {bar.Number}", situation), "a pin at the tower end leaves the bar unable to stand alone", Allowable);
            double ofYield = bar.Bar.Stiffness.NormalStress(forces) / bar.Bar.Place.Standoff.Material.YieldStrength.Pascals;
            if (worst.Bar < 0 || Extremes.Exceeds(ofYield, worst.OfYield))
                worst = (i, area, ofYield);
        }
        PlacedBar governing = ring.Bars[worst.Bar].Bar;
        Standoff standoff = governing.Place.Standoff;
        double p = pressure, a_strip = worst.Area;
        Vector3D along = governing.Place.Axes.ToLocal(governing.Place.Outward);
        return Check.Of(LocalSubject($"{ring.BandName}, bar {ring.Bars[worst.Bar].Number}", situation), Dimension.Stress, Allowable, w =>
        {
            w.Given(p, Dimension.Pressure, "greatest local pressure or suction on the band");
            w.Given(a_strip, Dimension.Area, "strip of skin that the bar serves");
            double F = w.Let("F", p * a_strip, Dimension.Force, meaning: "square to the skin");
            double L = w.Given("L", governing.Place.Length, Dimension.Length, "length");
            double n_x = w.Given("n_x", Math.Abs(along.X), Dimension.Number, "part of the skin's normal along the bar");
            double n_t = w.Given("n_t", Math.Abs(along.Y), Dimension.Number, "part along its thickness");
            double n_b = w.Given("n_b", Math.Abs(along.Z), Dimension.Number, "part along its width");
            double M_weak = w.Let("M_weak", F * n_t * L, Dimension.Moment), M_strong = w.Let("M_strong", F * n_b * L, Dimension.Moment);
            return Bending(
                w, F * n_x, (M_weak, M_strong), (0, 0), standoff.Section.Width.Meters, standoff.Section.Thickness.Meters,
                standoff.Material.YieldStrength.Pascals, stressFraction);
        });
    }

    /// <summary>The stress of a flat at the worse of its two ends, and what is allowed.</summary>
    /// <param name="w">Listener for the working; null for none.</param>
    /// <param name="N">Axial force, N.</param>
    /// <param name="tower">Moments about the weak and the strong axis at the tower end, N·m.</param>
    /// <param name="skin">Moments about the weak and the strong axis at the skin end, N·m.</param>
    /// <param name="b">Width, m; positive.</param>
    /// <param name="t">Thickness, m; positive.</param>
    /// <param name="f_y">Yield or proof strength, Pa.</param>
    /// <param name="fraction">Allowable stress over <paramref name="f_y"/>.</param>
    /// <returns>Stress and allowable stress, Pa.</returns>
    internal static (double Stress, double Allowable) Bending(
        Working? w, double N, (double Weak, double Strong) tower, (double Weak, double Strong) skin,
        double b, double t, double f_y, double fraction)
    {
        w.Given(b, Dimension.SmallLength, "width");
        w.Given(t, Dimension.SmallLength, "thickness");
        double A = w.Let("A", b * t, Dimension.SmallArea);
        double W_weak = w.Let("W_weak", b * t * t / 6, Dimension.SectionModulus);
        double W_strong = w.Let("W_strong", t * b * b / 6, Dimension.SectionModulus);
        bool towerGoverns = tower.Weak / W_weak + tower.Strong / W_strong >= skin.Weak / W_weak + skin.Strong / W_strong;
        (double M_weak, double M_strong) = towerGoverns ? tower : skin;
        w?.Note(towerGoverns ? "The tower end governs." : "The skin end governs.");
        w.Given(N, Dimension.Force, "axial force, tension positive");
        w.Given(M_weak, Dimension.Moment, "bending moment about the weak axis");
        w.Given(M_strong, Dimension.Moment, "bending moment about the strong axis");
        double sigma = w.Let("sigma", Math.Abs(N) / A + Math.Abs(M_weak) / W_weak + Math.Abs(M_strong) / W_strong, Dimension.Stress, ElasticStress);
        w.Given(f_y, Dimension.Stress, "yield or proof strength");
        w.Given(fraction, Dimension.Number, "allowable fraction");
        double allowable = w.Let("sigma_allow", fraction * f_y, Dimension.Stress, Allowable);
        return (sigma, allowable);
    }
}
