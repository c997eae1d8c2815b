namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// The stretch or the twist of a beam of any section along its length: both follow from one force, constant along the
/// beam, and one rigidity.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal readonly struct BeamRod
{
    private const int Size = FrameElement.Size;

    private readonly bool twist;
    private readonly double L, stiffness;

    /// <summary>Integrates the flexibility.</summary>
    /// <param name="twist">True for twist (G·J), false for stretch (E·A).</param>
    /// <param name="L">Length of the beam, m.</param>
    /// <param name="rule">The integration rule.</param>
    /// <param name="sections">The sections at the points of the rule.</param>
    public BeamRod(bool twist, double L, GaussRule rule, ReadOnlySpan<BeamSection> sections)
    {
        this.twist = twist;
        this.L = L;
        double flexibility = 0;
        for (int i = 0; i < sections.Length; i++)
            flexibility += L * rule.Weights[i] * Flexibility(sections[i]);
        stiffness = 1 / flexibility;
    }

    /// <summary>The force, or the torque, that goes with a stretch or twist over the whole length.</summary>
    public double Force(double deformation) => stiffness * deformation;

    /// <summary>Adds the stiffness to a 12×12 matrix in local axes.</summary>
    public void AddStiffness(Span<double> k) => Add(stiffness, -1, 1, k);

    /// <summary>Adds the consistent mass (for a twist, the polar rotary inertia) to a 12×12 matrix in local axes.</summary>
    public void AddMass(GaussRule rule, ReadOnlySpan<BeamSection> sections, Span<double> m)
    {
        int n = sections.Length;
        Span<double> strain = stackalloc double[n], far = stackalloc double[n];
        for (int i = 0; i < n; i++)
            strain[i] = L * stiffness * Flexibility(sections[i]);
        rule.Accumulate(strain, far);
        for (int i = 0; i < n; i++)
        {
            double inertia = twist ? sections[i].RotaryY + sections[i].RotaryZ : sections[i].Mass;
            Add(L * rule.Weights[i] * inertia, 1 - far[i], far[i], m);
        }
    }

    /// <summary>
    /// Adds the geometric stiffness of a twist, ∫N i² φ′² with i² = (EI_y + EI_z)/EA, to a 12×12 matrix in local axes:
    /// the fibres of a twisted beam lean, and the axial force pulls them straight.
    /// </summary>
    public void AddGeometricStiffness(GaussRule rule, ReadOnlySpan<BeamSection> sections, double N, Span<double> kg)
    {
        for (int i = 0; i < sections.Length; i++)
        {
            BeamSection s = sections[i];
            double strain = stiffness * Flexibility(s);
            Add(N * (s.EIy + s.EIz) / s.EA * L * rule.Weights[i] * strain * strain, -1, 1, kg);
        }
    }

    private double Flexibility(in BeamSection section) => 1 / (twist ? section.GJ : section.EA);

    private void Add(double factor, double near, double far, Span<double> m)
    {
        int i = twist ? 3 : 0, j = i + 6;
        m[Size * i + i] += factor * near * near;
        m[Size * i + j] += factor * near * far;
        m[Size * j + i] += factor * near * far;
        m[Size * j + j] += factor * far * far;
    }
}
