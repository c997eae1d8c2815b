using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame;

/// <summary>
/// The closed-form stiffness of one flat bar in its own axes (x from tower end to skin end, y along the thickness, z
/// along the width): a symmetric 6×6 that takes the motion d of the skin end, relative to where the tower end would
/// carry it rigidly, to the forces there. Motions and forces are three along and three about x, y, z; SI units.
/// </summary>
/// <remarks>
/// <para>Bending in one plane. The bar on two simple supports has the end-rotation flexibilities a (own end) and c
/// (far end), a = L/(3EI) + 1/(κGAL), c = −L/(6EI) + 1/(κGAL). A spring k in series makes the end's own flexibility
/// a + 1/k = 1/p; the inverse of [1/p₁ c; c 1/p₂] is k₁₁ = p₁/D, k₂₂ = p₂/D, k₁₂ = −c p₁p₂/D with D = 1 − c²p₁p₂. As
/// |c| &lt; a and p ≤ 1/a, D is positive, and all is finite from k = 0 to k = ∞ without a special case. The shears
/// follow from equilibrium.</para>
/// <para>Slide. Along the free direction s the saddle moves by λ = sᵀK d/(sᵀK s), until no force is left, and the bar takes
/// K (d − λ s): K′ = K − K s sᵀK/(sᵀK s).</para>
/// <para>A tower end that stands on what gives, as a bracket, is condensed out: every motion is that of the skin end relative
/// to where the tower itself would carry it.</para>
/// <para>Small displacements; the axial force does not change the bending stiffness. Warping torsion is left out.</para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
internal sealed class BarStiffness
{
    private const double NegligibleSlide = 1e-12, NegligibleForce = 1e-9;
    private const int Size = 6, Entries = Size * Size;

    private readonly double L, axial, twist;
    private readonly Bending weak, strong;
    private readonly Vector3D slide;

    /// <summary>The slip for a unit of each motion; null for a saddle that does not slide.</summary>
    private readonly double[]? slip;

    /// <summary>The part of a motion of the skin end that the bar itself sees, 6×6; null when the tower end does not give.</summary>
    private readonly double[]? own;

    /// <summary>What a unit of each force at the tower end moves it, 6×6; null when it does not give.</summary>
    private readonly double[]? give;

    /// <summary>One plane of bending: the stiffness by deflection and rotation of the skin end, and what a unit force moves a cantilever's tip.</summary>
    private readonly record struct Bending(double Shear, double Mixed, double Moment, double TipDeflection, double TipRotation, double SaddleDeflection)
    {
        public bool StandsOnTower => double.IsFinite(TipDeflection);

        public bool Swings => double.IsInfinity(TipDeflection) && double.IsInfinity(SaddleDeflection);
    }

    /// <summary>Makes the stiffness of a bar.</summary>
    /// <param name="section">The flat.</param>
    /// <param name="L">Length, m; positive.</param>
    /// <param name="E">Young's modulus, Pa; positive.</param>
    /// <param name="G">Shear modulus, Pa; positive and finite.</param>
    /// <param name="tower">Springs of the tower end.</param>
    /// <param name="skin">Springs of the skin end.</param>
    /// <param name="slide">The free direction of the saddle in bar axes; zero for none. Components below 1e-12 of it are taken as zero, being rounding.</param>
    public BarStiffness(FlatRectangle section, double L, double E, double G, EndSprings tower, EndSprings skin, Vector3D slide = default)
        : this(Of(section, E, G, section.J), L, tower, skin, slide)
    {
    }

    /// <summary>Makes the stiffness of any straight member in its principal axes.</summary>
    /// <param name="section">Rigidities: y is the strong axis.</param>
    /// <param name="L">Length, m; positive.</param>
    /// <param name="tower">Springs of the first end.</param>
    /// <param name="skin">Springs of the second end.</param>
    /// <param name="slide">The free direction of the second end; zero for none.</param>
    /// <param name="support">What the first end stands on opposes to its motion (6×6 in the member's axes); empty for what does not give.</param>
    public BarStiffness(in BeamSection section, double L, EndSprings tower, EndSprings skin, Vector3D slide = default, ReadOnlySpan<double> support = default)
    {
        this.L = L;
        axial = section.EA / L;
        twist = 1 / (L / section.GJ + 1 / tower.Twist + 1 / skin.Twist);
        weak = Bend(section.EIz, section.GAy, L, tower.Weak, skin.Weak);
        strong = Bend(section.EIy, section.GAz, L, tower.Strong, skin.Strong);
        if (slide != Vector3D.Zero)
            (this.slide, slip) = Release(slide.Normalized());
        if (!support.IsEmpty)
            (own, give) = Stand(support);
    }

    public double Length => L;

    /// <summary>The stiffness of a placed standoff.</summary>
    public static BarStiffness Of(BarPlacement place)
    {
        Standoff s = place.Standoff;
        Span<double> support = stackalloc double[place.Bracket is null ? 0 : Entries];
        place.Bracket?.StiffnessAtTip(place.Axes, support);
        return new BarStiffness(
            Of(new FlatRectangle(s.Section.Width.Meters, s.Section.Thickness.Meters), s.Material.YoungsModulus.Pascals, s.Material.ShearModulus.Pascals, s.Section.Properties.J),
            place.Length, s.TowerFixity.Springs, s.SkinFixity.Springs, place.Axes.ToLocal(place.Slide), support);
    }

    private static BeamSection Of(FlatRectangle flat, double E, double G, double J) => new()
    {
        EA = E * flat.A,
        EIy = E * flat.StrongI,
        EIz = E * flat.WeakI,
        GJ = G * J,
        GAy = G * flat.ShearArea,
        GAz = G * flat.ShearArea,
    };

    /// <summary>Fills in the 6×6, row-major.</summary>
    public void CopyTo(Span<double> k36)
    {
        Span<double> motion = stackalloc double[6], column = stackalloc double[6];
        for (int j = 0; j < 6; j++)
        {
            motion.Clear();
            motion[j] = 1;
            TakeOwn(motion);
            SkinForces(motion, column);
            for (int i = 0; i <= j; i++)
                k36[6 * i + j] = k36[6 * j + i] = column[i];
        }
    }

    /// <summary>The forces on the bar at its two ends, tower end first (12 values), when the skin end has moved by d (6 values).</summary>
    public void Forces(ReadOnlySpan<double> d, Span<double> forces)
    {
        Span<double> seen = stackalloc double[Size];
        d.CopyTo(seen);
        TakeOwn(seen);
        SkinForces(seen, forces[6..]);
        Balance(forces);
    }

    /// <summary>How far the saddle has slid along its free direction, m, when the skin has moved by d (6 values).</summary>
    public double Slip(ReadOnlySpan<double> d)
    {
        if (slip is null)
            return 0;
        Span<double> seen = stackalloc double[Size];
        d.CopyTo(seen);
        TakeOwn(seen);
        return SlipOf(seen);
    }

    private double SlipOf(ReadOnlySpan<double> d)
    {
        double sum = 0;
        for (int i = 0; i < slip?.Length; i++)
            sum += slip[i] * d[i];
        return sum;
    }

    /// <summary>Takes the saddle's slip and what the tower end gives out of the motion d of the skin (6 values); what is left is the deflection of the bar.</summary>
    public void RemoveSlip(Span<double> d)
    {
        TakeOwn(d);
        if (slip is null)
            return;
        Vector3D slid = SlipOf(d) * slide;
        (d[0], d[1], d[2]) = (d[0] - slid.X, d[1] - slid.Y, d[2] - slid.Z);
    }

    /// <summary>
    /// The bar alone, as a cantilever from its tower end under a force at its free skin end: the help that remains where
    /// the skin is limp. The saddle, its spring and its slide play no part, unless a hinge at the tower end leaves the
    /// moment to the saddle: it is then the same, at the other end.
    /// </summary>
    /// <param name="force">The force at the skin end in bar axes, N.</param>
    /// <param name="forces">The forces on the bar at its two ends (12 values).</param>
    /// <param name="deflection">The motion of the skin end, tower end held (6 values).</param>
    /// <returns>False, with all values zero, when hinges at both ends let the bar swing under this force.</returns>
    public bool Cantilever(Vector3D force, Span<double> forces, Span<double> deflection)
    {
        forces.Clear();
        deflection.Clear();
        double least = NegligibleForce * force.Length;
        bool bendsWeak = Math.Abs(force.Y) > least, bendsStrong = Math.Abs(force.Z) > least;
        if ((bendsWeak && weak.Swings) || (bendsStrong && strong.Swings))
            return false;
        (forces[6], deflection[0]) = (force.X, force.X / axial);
        if (bendsWeak && weak.StandsOnTower)
            (forces[7], deflection[1], deflection[5]) = (force.Y, force.Y * weak.TipDeflection, force.Y * weak.TipRotation);
        else if (bendsWeak)
            (forces[7], forces[11], deflection[1]) = (force.Y, -force.Y * L, force.Y * weak.SaddleDeflection);
        if (bendsStrong && strong.StandsOnTower)
            (forces[8], deflection[2], deflection[4]) = (force.Z, force.Z * strong.TipDeflection, -force.Z * strong.TipRotation);
        else if (bendsStrong)
            (forces[8], forces[10], deflection[2]) = (force.Z, force.Z * L, force.Z * strong.SaddleDeflection);
        Balance(forces);
        AddGive(forces, deflection);
        return true;
    }

    /// <summary>Adds to the motion of the skin end what the forces on the tower end move that end's support.</summary>
    private void AddGive(ReadOnlySpan<double> forces, Span<double> deflection)
    {
        if (give is null)
            return;
        Span<double> q = stackalloc double[Size];
        for (int i = 0; i < Size; i++)
        {
            q[i] = 0;
            for (int j = 0; j < Size; j++)
                q[i] -= give[Size * i + j] * forces[j];
        }
        for (int i = 0; i < Size; i++)
            deflection[i] += q[i];
        deflection[1] += L * q[5];
        deflection[2] -= L * q[4];
    }

    /// <summary>
    /// With a tower end that moves by q on a support of stiffness K_s, the bar sees d − G q, G carrying q to the skin end, and
    /// (K_s + GᵀKG) q = GᵀK d: what it sees is A d, A = I − G (K_s + GᵀKG)⁻¹ GᵀK, and the whole has the stiffness K A.
    /// </summary>
    private (double[] Own, double[] Give) Stand(ReadOnlySpan<double> support)
    {
        Span<double> k = stackalloc double[Entries], G = stackalloc double[Entries], kG = stackalloc double[Entries], GtkG = stackalloc double[Entries];
        CopyTo(k);
        SmallMatrix.SetUnit(G, Size);
        (G[Size * 1 + 5], G[Size * 2 + 4]) = (L, -L);
        SmallMatrix.Multiply(k, G, kG, Size);
        // (kG)ᵀ = Gᵀk, as k is symmetric.
        Span<double> Gtk = stackalloc double[Entries], solved = stackalloc double[Entries];
        kG.CopyTo(Gtk);
        SmallMatrix.Transpose(Gtk, Size);
        SmallMatrix.Multiply(Gtk, G, GtkG, Size);
        for (int i = 0; i < Entries; i++)
            GtkG[i] += support[i];
        SmallMatrix.InvertPositive(GtkG, Size);
        SmallMatrix.Multiply(GtkG, Gtk, solved, Size);
        var seen = new double[Entries];
        SmallMatrix.Multiply(G, solved, seen, Size);
        for (int i = 0; i < Entries; i++)
            seen[i] = (i % (Size + 1) == 0 ? 1 : 0) - seen[i];
        double[] flexibility = support.ToArray();
        SmallMatrix.InvertPositive(flexibility, Size);
        return (seen, flexibility);
    }

    /// <summary>Leaves of a motion of the skin end what the bar itself sees of it.</summary>
    private void TakeOwn(Span<double> d)
    {
        if (own is null)
            return;
        Span<double> all = stackalloc double[Size];
        d.CopyTo(all);
        for (int i = 0; i < Size; i++)
        {
            double sum = 0;
            for (int j = 0; j < Size; j++)
                sum += own[Size * i + j] * all[j];
            d[i] = sum;
        }
    }

    /// <summary>The forces at the skin end. A rotation about z lifts the far end along +y, one about y along −z: hence the signs.</summary>
    private void SkinForces(ReadOnlySpan<double> d, Span<double> f)
    {
        Vector3D u = new Vector3D(d[0], d[1], d[2]) - SlipOf(d) * slide;
        f[0] = axial * u.X;
        f[1] = weak.Shear * u.Y - weak.Mixed * d[5];
        f[2] = strong.Shear * u.Z + strong.Mixed * d[4];
        f[3] = twist * d[3];
        f[4] = strong.Mixed * u.Z + strong.Moment * d[4];
        f[5] = weak.Moment * d[5] - weak.Mixed * u.Y;
    }

    private static Bending Bend(double EI, double GA, double L, double k1, double k2)
    {
        double shear = 1 / (GA * L);
        double a = L / (3 * EI) + shear, c = -L / (6 * EI) + shear;
        double p1 = 1 / (a + 1 / k1), p2 = 1 / (a + 1 / k2);
        double D = 1 - c * c * p1 * p2;
        double k11 = p1 / D, k22 = p2 / D, k12 = -c * p1 * p2 / D;
        return new Bending(
            (k11 + 2 * k12 + k22) / (L * L), (k12 + k22) / L, k22,
            L * L * L / (3 * EI) + L / GA + L * L / k1, L * L / (2 * EI) + L / k1, L * L * L / (3 * EI) + L / GA + L * L / k2);
    }

    private (Vector3D Slide, double[] Slip) Release(Vector3D direction)
    {
        Vector3D s = new Vector3D(Clean(direction.X), Clean(direction.Y), Clean(direction.Z)).Normalized();
        ReadOnlySpan<double> motion = [s.X, s.Y, s.Z, 0, 0, 0];
        var released = new double[6];
        SkinForces(motion, released);
        double sks = s.X * released[0] + s.Y * released[1] + s.Z * released[2];
        // A bar that resists nothing along s has nothing to release: all motion along s is slip.
        for (int i = 0; i < 6; i++)
            released[i] = sks > 0 ? released[i] / sks : motion[i];
        return (s, released);

        static double Clean(double component) => Math.Abs(component) < NegligibleSlide ? 0 : component;
    }

    /// <summary>Fills in the forces at the tower end that keep those at the skin end in balance.</summary>
    private void Balance(Span<double> forces)
    {
        for (int i = 0; i < 6; i++)
            forces[i] = -forces[6 + i];
        forces[4] += L * forces[8];
        forces[5] -= L * forces[7];
    }
}
