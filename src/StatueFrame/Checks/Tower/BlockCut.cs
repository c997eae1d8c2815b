using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>A cut through masonry or concrete with what acts on it: a core at a level, a bed joint of a pedestal.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Forces and moments are those that the part above puts on the part below,
/// about the section's center.
/// </remarks>
public sealed record BlockCut
{
    /// <summary>The section.</summary>
    public required BlockSection Section { get; init; }

    /// <summary>What it is made of.</summary>
    public required BlockMaterial Material { get; init; }

    /// <summary>Vertical bars of reinforced concrete; null for none.</summary>
    public Reinforcement? Reinforcement { get; init; }

    /// <summary>Compressive force, positive; negative lifts.</summary>
    public required Force Compression { get; init; }

    /// <summary>Shear along x.</summary>
    public Force ShearX { get; init; }

    /// <summary>Shear along y.</summary>
    public Force ShearY { get; init; }

    /// <summary>Moment about x, right-handed; positive presses the side of −y.</summary>
    public Torque MomentX { get; init; }

    /// <summary>Moment about y, right-handed; positive presses the side of +x.</summary>
    public Torque MomentY { get; init; }

    /// <summary>Height of what stands free above the cut, for slenderness; zero leaves it out.</summary>
    public Length FreeHeight { get; init; }

    /// <summary>The level or joint.</summary>
    public string Where { get; init; } = "";

    /// <summary>The situation.</summary>
    public string Situation { get; init; } = "";

    /// <summary>How what acts on it comes about; null in a script.</summary>
    internal DemandOrigin? Origin { get; init; }

    internal double N => Compression.Newtons;

    internal double mx => MomentY.NewtonMeters;

    internal double my => -MomentX.NewtonMeters;

    internal double V => Math.Sqrt(ShearX.Newtons * ShearX.Newtons + ShearY.Newtons * ShearY.Newtons);

    /// <summary>Magnitude of the moment.</summary>
    internal double M => Math.Sqrt(mx * mx + my * my);

    internal CheckSubject Subject(string id, string title) => new(id, title, Where, Situation);

    /// <summary>The ways in which it can bow out and buckle: where the thrust pulls it, and the way in which it is thinnest.</summary>
    internal IEnumerable<Bow> Bows
    {
        get
        {
            PlanMoments m = Section.Plan.Whole;
            if (M > 0)
                yield return Way(mx / M, my / M);
            bool thinAlongX = m.XX <= m.YY;
            yield return Way(thinAlongX ? 1 : 0, thinAlongX ? 0 : 1);

            Bow Way(double x, double y) => new(x, y, Math.Sqrt(12 * (x * x * m.XX + y * y * m.YY) / m.A));
        }
    }

    internal void Validate()
    {
        var v = new Validator();
        v.Required(Section)?.Validate(v.At(nameof(Section)));
        v.Required(Material)?.Validate(v.At(nameof(Material)));
        Reinforcement?.Validate(v.At(nameof(Reinforcement)));
        v.ThrowIfAny();
        CheckInput.Finite(Compression.Newtons, nameof(Compression));
        CheckInput.Finite(ShearX.Newtons, nameof(ShearX));
        CheckInput.Finite(ShearY.Newtons, nameof(ShearY));
        CheckInput.Finite(MomentX.NewtonMeters, nameof(MomentX));
        CheckInput.Finite(MomentY.NewtonMeters, nameof(MomentY));
        CheckInput.NotNegative(FreeHeight.Meters, nameof(FreeHeight));
    }
}
