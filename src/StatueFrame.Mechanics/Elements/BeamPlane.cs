namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// The bending of a beam in one of its two principal planes, shear-flexible and of any section along its length.
/// </summary>
/// <remarks>
/// The bending moment of a beam loaded at its ends is M(x) = M_c + V (c − x). With c at the elastic center,
/// c = ∫x/EI ÷ ∫1/EI, the two parts do not disturb each other: M_c works on the turn θ₂ − θ₁ with the flexibility ∫1/EI,
/// and V on the sway v₂ − v₁ − c θ₁ − (L−c) θ₂ with the flexibility ∫(c−x)²/EI + ∫1/GA. The same curvature M/EI and shear
/// strain V/GA, integrated from the start, give the displacement field, exact for the given section. θ is the rotation of
/// the cross-section; the slope of the axis is θ + V/GA. Immutable and safe to share between threads.
/// </remarks>
internal readonly struct BeamPlane
{
    private const int Size = FrameElement.Size;
    private const int Shapes = 4;

    private readonly bool xz;
    private readonly double L, center, turnStiffness, swayStiffness;

    /// <summary>Integrates the flexibility.</summary>
    /// <param name="xz">True for deflection along local z (bending about y), false for deflection along local y.</param>
    /// <param name="L">Length of the beam, m.</param>
    /// <param name="rule">The integration rule.</param>
    /// <param name="sections">The sections at the points of the rule.</param>
    public BeamPlane(bool xz, double L, GaussRule rule, ReadOnlySpan<BeamSection> sections)
    {
        this.xz = xz;
        this.L = L;
        double turn = 0, moment = 0, sway = 0;
        for (int i = 0; i < sections.Length; i++)
        {
            double bending = L * rule.Weights[i] * Bending(sections[i]);
            turn += bending;
            moment += bending * L * rule.Points[i];
        }
        center = moment / turn;
        for (int i = 0; i < sections.Length; i++)
        {
            double lever = center - L * rule.Points[i];
            sway += L * rule.Weights[i] * (lever * lever * Bending(sections[i]) + Shear(sections[i]));
        }
        turnStiffness = 1 / turn;
        swayStiffness = 1 / sway;
    }

    /// <summary>Adds the stiffness to a 12×12 matrix in local axes.</summary>
    public void AddStiffness(Span<double> k)
    {
        Span<double> turn = stackalloc double[Shapes], sway = stackalloc double[Shapes];
        Deformations(turn, sway);
        Add(turnStiffness, turn, k);
        Add(swayStiffness, sway, k);
    }

    /// <summary>Adds the consistent mass, lateral and rotary, to a 12×12 matrix in local axes.</summary>
    public void AddMass(GaussRule rule, ReadOnlySpan<BeamSection> sections, Span<double> m)
    {
        Span<double> v = stackalloc double[Shapes * GaussRule.MaxCount], theta = stackalloc double[v.Length], slope = stackalloc double[v.Length];
        Fields(rule, sections, v, theta, slope);
        for (int i = 0; i < sections.Length; i++)
        {
            double w = L * rule.Weights[i];
            AddAt(i, w * sections[i].Mass, v, m);
            AddAt(i, w * (xz ? sections[i].RotaryY : sections[i].RotaryZ), theta, m);
        }
    }

    /// <summary>Adds the geometric stiffness ∫N v′² to a 12×12 matrix in local axes, with v′ the slope of the axis.</summary>
    public void AddGeometricStiffness(GaussRule rule, ReadOnlySpan<BeamSection> sections, double N, Span<double> kg)
    {
        Span<double> theta = stackalloc double[Shapes * GaussRule.MaxCount], slope = stackalloc double[theta.Length];
        Fields(rule, sections, [], theta, slope);
        for (int i = 0; i < sections.Length; i++)
            AddAt(i, N * L * rule.Weights[i], slope, kg);
    }

    private double Bending(in BeamSection section) => 1 / (xz ? section.EIy : section.EIz);

    private double Shear(in BeamSection section) => 1 / (xz ? section.GAz : section.GAy);

    /// <summary>Where v₁, θ₁, v₂, θ₂ stand among the twelve freedoms.</summary>
    private ReadOnlySpan<int> Places => xz ? [2, 4, 8, 10] : [1, 5, 7, 11];

    /// <summary>In the xz plane a positive rotation about y lowers z along x, so θ is its opposite.</summary>
    private double Sign(int shape) => xz && shape % 2 == 1 ? -1 : 1;

    private void Deformations(Span<double> turn, Span<double> sway)
    {
        (turn[0], turn[1], turn[2], turn[3]) = (0, -1, 0, 1);
        (sway[0], sway[1], sway[2], sway[3]) = (-1, -center, 1, center - L);
    }

    /// <summary>Deflection (when there is room for it), rotation and slope at the points, for a unit value of each of the four freedoms in turn.</summary>
    private void Fields(
        GaussRule rule, ReadOnlySpan<BeamSection> sections, Span<double> v, Span<double> theta, Span<double> slope)
    {
        int n = sections.Length;
        Span<double> turn = stackalloc double[Shapes], sway = stackalloc double[Shapes], strain = stackalloc double[n];
        Deformations(turn, sway);
        for (int shape = 0; shape < Shapes; shape++)
        {
            double M = turnStiffness * turn[shape], V = swayStiffness * sway[shape];
            Span<double> thetas = theta.Slice(GaussRule.MaxCount * shape, n);
            Span<double> slopes = slope.Slice(GaussRule.MaxCount * shape, n);
            for (int i = 0; i < n; i++)
                strain[i] = L * (M + V * (center - L * rule.Points[i])) * Bending(sections[i]);
            rule.Accumulate(strain, thetas);
            for (int i = 0; i < n; i++)
            {
                thetas[i] += shape == 1 ? 1 : 0;
                slopes[i] = thetas[i] + V * Shear(sections[i]);
                strain[i] = L * slopes[i];
            }
            if (v.IsEmpty)
                continue;
            Span<double> vs = v.Slice(GaussRule.MaxCount * shape, n);
            rule.Accumulate(strain, vs);
            if (shape == 0)
            {
                for (int i = 0; i < n; i++)
                    vs[i] += 1;
            }
        }
    }

    private void AddAt(int point, double factor, ReadOnlySpan<double> field, Span<double> m)
    {
        Span<double> values = stackalloc double[Shapes];
        for (int shape = 0; shape < Shapes; shape++)
            values[shape] = field[GaussRule.MaxCount * shape + point];
        Add(factor, values, m);
    }

    private void Add(double factor, ReadOnlySpan<double> a, Span<double> m)
    {
        ReadOnlySpan<int> places = Places;
        for (int i = 0; i < Shapes; i++)
            for (int j = 0; j < Shapes; j++)
                m[Size * places[i] + places[j]] += factor * Sign(i) * a[i] * Sign(j) * a[j];
    }
}
