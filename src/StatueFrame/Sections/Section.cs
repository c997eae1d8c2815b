using System.Globalization;
using StatueFrame.Mechanics.Elements;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// A cross-section, in its principal axes: y and z, with I_y ≥ I_z, so that z is the weak axis. Shapes are flat bars
/// and plates, angles, round bars, tubes, solid rectangles and rectangular tubes.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. The properties of a section with impossible dimensions cannot be read:
/// they throw an <see cref="InvalidStatueException"/> that lists what is wrong.
/// </remarks>
public abstract record Section
{
    private object? computed;

    private protected Section()
    {
    }

    /// <summary>Copies nothing: what was computed for one section must not outlive a <c>with</c>.</summary>
    /// <param name="original">The section that is copied.</param>
    protected Section(Section original)
    {
    }

    /// <summary>Cross-sectional area A.</summary>
    public Area Area => Area.FromSquareMeters(Properties.A);

    /// <summary>Second moment of area about the strong principal axis y.</summary>
    public AreaMomentOfInertia StrongInertia => AreaMomentOfInertia.FromMetersToTheFourth(Properties.Iy);

    /// <summary>Second moment of area about the weak principal axis z.</summary>
    public AreaMomentOfInertia WeakInertia => AreaMomentOfInertia.FromMetersToTheFourth(Properties.Iz);

    /// <summary>St. Venant torsion constant J.</summary>
    public AreaMomentOfInertia TorsionConstant => AreaMomentOfInertia.FromMetersToTheFourth(Properties.J);

    /// <summary>Least elastic section modulus about the strong axis y.</summary>
    public Volume StrongModulus => Volume.FromCubicMeters(Properties.Wy);

    /// <summary>Least elastic section modulus about the weak axis z.</summary>
    public Volume WeakModulus => Volume.FromCubicMeters(Properties.Wz);

    /// <summary>Distance from the strong axis y to the fiber farthest from it.</summary>
    public Length StrongExtremeFiber => Length.FromMeters(Properties.Iy / Properties.Wy);

    /// <summary>Distance from the weak axis z to the fiber farthest from it.</summary>
    public Length WeakExtremeFiber => Length.FromMeters(Properties.Iz / Properties.Wz);

    /// <summary>Radius of gyration about the strong axis, √(I_y/A).</summary>
    public Length StrongRadiusOfGyration => Length.FromMeters(Math.Sqrt(Properties.Iy / Properties.A));

    /// <summary>Radius of gyration about the weak axis, √(I_z/A): the one that flexural buckling looks at.</summary>
    public Length WeakRadiusOfGyration => Length.FromMeters(Math.Sqrt(Properties.Iz / Properties.A));

    /// <summary>A short text such as "flat 60×8 mm".</summary>
    public abstract string Designation { get; }

    /// <summary>Outer diameter of a round section, m; null for others.</summary>
    internal virtual double? OutlineDiameter => null;

    /// <summary>The larger and the smaller side of the rectangle round the section, m: what it shows to the wind.</summary>
    internal abstract (double Width, double Depth) Envelope { get; }

    /// <summary>The numbers of the section in SI units; computed once for each section.</summary>
    internal SectionProperties Properties => (SectionProperties)(computed ??= ComputeValid());

    /// <summary>Computes the numbers of the section; its dimensions are valid.</summary>
    private protected abstract SectionProperties Compute();

    /// <summary>Whether the other section is of the same shape, so that the two can be the ends of a taper.</summary>
    internal bool SameShape(Section other) => EqualityContract == other.EqualityContract;

    /// <summary>The section of the same shape with dimensions a fraction <paramref name="t"/> of the way to <paramref name="other"/>.</summary>
    /// <exception cref="ArgumentException">The shapes differ; ask <see cref="SameShape"/> when validating.</exception>
    internal abstract Section Blend(Section other, double t);

    internal abstract void Validate(Validator v);

    internal BeamSection Of(Material material)
    {
        SectionProperties p = Properties;
        double E = material.YoungsModulus.Pascals, G = material.ShearModulus.Pascals, rho = material.Density.KilogramsPerCubicMeter;
        return new BeamSection
        {
            EA = E * p.A,
            EIy = E * p.Iy,
            EIz = E * p.Iz,
            GJ = G * p.J,
            GAy = G * p.Asy,
            GAz = G * p.Asz,
            Mass = rho * p.A,
            RotaryY = rho * p.Iy,
            RotaryZ = rho * p.Iz,
        };
    }

    /// <summary>Sections are equal when their shapes and dimensions are.</summary>
    public virtual bool Equals(Section? other) => other is not null && SameShape(other);

    /// <inheritdoc/>
    public override int GetHashCode() => EqualityContract.GetHashCode();

    /// <summary>The <see cref="Designation"/>.</summary>
    public sealed override string ToString() => Designation;

    /// <summary>The far end of a taper that starts at a section of the shape <typeparamref name="T"/>.</summary>
    private protected static T TaperEnd<T>(Section other) where T : Section =>
        other as T ?? throw new ArgumentException($"Cannot taper a {typeof(T).Name} to another shape ({other}).", nameof(other));

    private protected static Length Between(Length from, Length to, double t) => from * (1 - t) + to * t;

    /// <summary>A name and dimensions in millimeters, as in "flat 60×8 mm".</summary>
    private protected static string Describe(string shape, params ReadOnlySpan<Length> dimensions)
    {
        var texts = new string[dimensions.Length];
        for (int i = 0; i < texts.Length; i++)
            texts[i] = dimensions[i].Millimeters.ToString("0.###", CultureInfo.InvariantCulture);
        return $"{shape} {string.Join('×', texts)} mm";
    }

    private object ComputeValid()
    {
        var v = new Validator();
        Validate(v);
        v.ThrowIfAny();
        return Compute();
    }
}
