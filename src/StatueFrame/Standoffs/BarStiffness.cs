using StatueFrame.Mechanics;

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
/// <para>Slide. Along the free direction s the saddle moves until no force is left: K′ = K − K s sᵀK/(sᵀK s).</para>
/// <para>Small displacements; the axial force does not change the bending stiffness. Warping torsion is left out.</para>
/// <para>Immutable and safe to share between threads.</para>
/// </remarks>
internal sealed class BarStiffness
{
    private const double NegligibleSlide = 1e-12, NegligibleForce = 1e-9;

    private readonly double[] k = new double[36];
    private readonly double[] slide = new double[6];
    private readonly double[] slip = new double[6];
    private readonly FlatRectangle section;
    private readonly EndSprings tower;
    private readonly double L, E, G;

    /// <summary>Makes the stiffness of a bar.</summary>
    /// <param name="section">The flat.</param>
    /// <param name="L">Length, m; positive.</param>
    /// <param name="E">Young's modulus, Pa; positive.</param>
    /// <param name="G">Shear modulus, Pa; positive and finite.</param>
    /// <param name="tower">Springs of the tower end.</param>
    /// <param name="skin">Springs of the skin end.</param>
    /// <param name="slide">The free direction of the saddle in bar axes; zero for none. Components below 1e-12 of it are taken as zero, being rounding.</param>
    public BarStiffness(FlatRectangle section, double L, double E, double G, EndSprings tower, EndSprings skin, Vector3D slide = default)
    {
        (this.section, this.L, this.E, this.G, this.tower) = (section, L, E, G, tower);
        K(0, 0) = E * section.A / L;
        K(3, 3) = 1 / (L / (G * section.J) + 1 / tower.Twist + 1 / skin.Twist);
        // A rotation about z lifts the far end along +y, one about y along −z: hence the two signs.
        AddBending(E * section.WeakI, tower.Weak, skin.Weak, deflection: 1, rotation: 5, sign: -1);
        AddBending(E * section.StrongI, tower.Strong, skin.Strong, deflection: 2, rotation: 4, sign: 1);
        if (slide != Vector3D.Zero)
            Release(slide.Normalized());
    }

    public double Length => L;

    /// <summary>The 6×6, row-major.</summary>
    public ReadOnlySpan<double> Matrix => k;

    /// <summary>The stiffness of a placed standoff.</summary>
    public static BarStiffness Of(BarPlacement place)
    {
        Standoff s = place.Standoff;
        return new BarStiffness(
            new FlatRectangle(s.Section.Width.Meters, s.Section.Thickness.Meters), place.Length,
            s.Material.YoungsModulus.Pascals, s.Material.ShearModulus.Pascals,
            s.TowerFixity.Springs, s.SkinFixity.Springs, place.Axes.ToLocal(place.Slide));
    }

    /// <summary>The forces on the bar at its two ends, tower end first (12 values), when the skin end has moved by d (6 values).</summary>
    public void Forces(ReadOnlySpan<double> d, Span<double> forces)
    {
        for (int i = 0; i < 6; i++)
        {
            double sum = 0;
            for (int j = 0; j < 6; j++)
                sum += k[6 * i + j] * d[j];
            forces[6 + i] = sum;
        }
        Balance(forces);
    }

    /// <summary>How far the saddle has slid along its free direction, m, when the skin has moved by d (6 values).</summary>
    public double Slip(ReadOnlySpan<double> d)
    {
        double sum = 0;
        for (int i = 0; i < 6; i++)
            sum += slip[i] * d[i];
        return sum;
    }

    /// <summary>Takes the saddle's slip out of the motion d of the skin (6 values); what is left is the deflection of the bar.</summary>
    public void RemoveSlip(Span<double> d)
    {
        double lambda = Slip(d);
        for (int i = 0; i < 3; i++)
            d[i] -= lambda * slide[i];
    }

    /// <summary>
    /// The bar alone, as a cantilever from its tower end under a force at its free skin end: the help that remains where
    /// the skin is limp. The saddle, its spring and its slide play no part.
    /// </summary>
    /// <param name="force">The force at the skin end in bar axes, N.</param>
    /// <param name="forces">The forces on the bar at its two ends (12 values).</param>
    /// <param name="deflection">The motion of the skin end, tower end held (6 values).</param>
    /// <returns>False, with all values zero, when a hinge at the tower end lets the bar swing under this force.</returns>
    public bool Cantilever(Vector3D force, Span<double> forces, Span<double> deflection)
    {
        forces.Clear();
        deflection.Clear();
        double least = NegligibleForce * force.Length;
        bool bendsWeak = Math.Abs(force.Y) > least, bendsStrong = Math.Abs(force.Z) > least;
        if ((bendsWeak && !(tower.Weak > 0)) || (bendsStrong && !(tower.Strong > 0)))
            return false;
        (forces[6], deflection[0]) = (force.X, force.X * L / (E * section.A));
        if (bendsWeak)
        {
            forces[7] = force.Y;
            (deflection[1], deflection[5]) = Tip(force.Y, E * section.WeakI, tower.Weak);
        }
        if (bendsStrong)
        {
            forces[8] = force.Z;
            (deflection[2], double rotation) = Tip(force.Z, E * section.StrongI, tower.Strong);
            deflection[4] = -rotation;
        }
        Balance(forces);
        return true;
    }

    /// <summary>
    /// The stresses that end forces (12 values, bar axes) make. Normal stress at an end is
    /// |N|/A + |M_weak|/W_weak + |M_strong|/W_strong, reached at one corner.
    /// </summary>
    public BarStress Stress(ReadOnlySpan<double> forces) => new(
        Normal(forces[..6]), Normal(forces[6..]), Math.Abs(forces[9]) / section.TorsionW,
        1.5 * Math.Sqrt(forces[7] * forces[7] + forces[8] * forces[8]) / section.A);

    private double Normal(ReadOnlySpan<double> end) =>
        Math.Abs(end[0]) / section.A + Math.Abs(end[5]) / section.WeakW + Math.Abs(end[4]) / section.StrongW;

    private ref double K(int row, int column) => ref k[6 * row + column];

    private void AddBending(double EI, double k1, double k2, int deflection, int rotation, int sign)
    {
        double shear = 1 / (G * section.ShearArea * L);
        double a = L / (3 * EI) + shear, c = -L / (6 * EI) + shear;
        double p1 = 1 / (a + 1 / k1), p2 = 1 / (a + 1 / k2);
        double D = 1 - c * c * p1 * p2;
        double k11 = p1 / D, k22 = p2 / D, k12 = -c * p1 * p2 / D;
        K(deflection, deflection) = (k11 + 2 * k12 + k22) / (L * L);
        K(deflection, rotation) = K(rotation, deflection) = sign * (k12 + k22) / L;
        K(rotation, rotation) = k22;
    }

    private void Release(Vector3D direction)
    {
        Vector3D s = new Vector3D(Clean(direction.X), Clean(direction.Y), Clean(direction.Z)).Normalized();
        (slide[0], slide[1], slide[2]) = (s.X, s.Y, s.Z);
        Span<double> ks = stackalloc double[6];
        double sks = 0;
        for (int i = 0; i < 6; i++)
        {
            ks[i] = K(i, 0) * s.X + K(i, 1) * s.Y + K(i, 2) * s.Z;
            sks += slide[i] * ks[i];
        }
        // A bar that resists nothing along s has nothing to release: all motion along s is slip.
        for (int i = 0; i < 6; i++)
            slip[i] = sks > 0 ? ks[i] / sks : slide[i];
        if (!(sks > 0))
            return;
        for (int i = 0; i < 6; i++)
        {
            for (int j = i; j < 6; j++)
                K(j, i) = K(i, j) -= slip[i] * ks[j];
        }

        static double Clean(double component) => Math.Abs(component) < NegligibleSlide ? 0 : component;
    }

    private (double Deflection, double Rotation) Tip(double V, double EI, double spring) =>
        (V * (L * L * L / (3 * EI) + L / (G * section.ShearArea) + L * L / spring), V * (L * L / (2 * EI) + L / spring));

    /// <summary>Fills in the forces at the tower end that keep those at the skin end in balance.</summary>
    private void Balance(Span<double> forces)
    {
        for (int i = 0; i < 6; i++)
            forces[i] = -forces[6 + i];
        forces[4] += L * forces[8];
        forces[5] -= L * forces[7];
    }
}
