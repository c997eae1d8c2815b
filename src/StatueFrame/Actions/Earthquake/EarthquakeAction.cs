using UnitsNet;

namespace StatueFrame;

/// <summary>
/// An earthquake, given by spectra: two horizontal components square to each other, and a vertical one. A situation has at
/// most one, as in <c>Actions = [new SelfWeight(), new EarthquakeAction { Horizontal = spectrum }]</c>.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record EarthquakeAction : StatueAction
{
    /// <summary>Spectrum of the first horizontal component, and of the second unless it has its own.</summary>
    public required DesignSpectrum Horizontal { get; init; }

    /// <summary>Spectrum of the second horizontal component; null takes that of the first.</summary>
    public DesignSpectrum? SecondHorizontal { get; init; }

    /// <summary>Spectrum of the vertical component; null leaves it out, which the sheet says.</summary>
    public DesignSpectrum? Vertical { get; init; }

    /// <summary>Plan angle of the first component, anticlockwise from +x; −360° to 360°.</summary>
    public Angle Orientation { get; init; }

    /// <summary>How modes are combined.</summary>
    public ModalRule ModalRule { get; init; } = ModalRule.Cqc;

    /// <summary>How the components are combined.</summary>
    public DirectionRule DirectionRule { get; init; } = DirectionRule.HundredThirtyThirty;

    /// <summary>
    /// Damping ratios of the lowest modes, 0.001 to 0.5, the last one for all that follow; empty for that of the
    /// spectrum. Spectra must have a rule for other damping, as the elastic one of EN 1998-1 has.
    /// </summary>
    public ValueList<double> ModalDamping { get; init; } = [];

    /// <summary>
    /// Whether the mass that moves in no mode that was taken follows the ground as a rigid body, with the acceleration at
    /// period zero.
    /// </summary>
    public bool MissingMass { get; init; } = true;

    /// <summary>
    /// Modes at or above this frequency count as missing mass, 1 to 1000 Hz; null takes every mode found as a mode.
    /// </summary>
    public Frequency? RigidFrequency { get; init; }

    /// <inheritdoc/>
    public override string Title => "earthquake";

    internal DesignSpectrum? SpectrumOf(EarthquakeComponent component) => component switch
    {
        EarthquakeComponent.First => Horizontal,
        EarthquakeComponent.Second => SecondHorizontal ?? Horizontal,
        _ => Vertical,
    };

    internal double DampingOf(int mode) => ModalDamping.Count == 0
        ? Horizontal.DampingRatio
        : ModalDamping[Math.Min(mode, ModalDamping.Count - 1)];

    internal IEnumerable<Assumption> Assumptions()
    {
        foreach (DesignSpectrum spectrum in Spectra())
        {
            foreach (Assumption assumption in spectrum.Assumptions)
                yield return assumption;
        }
        if (Vertical is null)
            yield return new Assumption("vertical component of the earthquake", "left out", Source.Assumed("earthquake"));
        if (!MissingMass)
            yield return new Assumption("mass beyond the modes taken", "does not shake", Source.Assumed("earthquake"));
    }

    internal IEnumerable<DesignSpectrum> Spectra()
    {
        yield return Horizontal;
        if (SecondHorizontal is not null)
            yield return SecondHorizontal;
        if (Vertical is not null)
            yield return Vertical;
    }

    internal override void Validate(Validator v)
    {
        ValidateSpectrum(v, v.Required(Horizontal), nameof(Horizontal));
        ValidateSpectrum(v, SecondHorizontal, nameof(SecondHorizontal));
        ValidateSpectrum(v, Vertical, nameof(Vertical));
        v.Within(Orientation, Orientation.Degrees, -360, 360);
        v.Defined(ModalRule);
        v.Defined(DirectionRule);
        if (RigidFrequency is { } rigid)
            v.Positive(rigid, rigid.Hertz, 1, 1000, nameof(RigidFrequency));
        if (ModalDamping is null)
            v.Required(ModalDamping);
        else if (v.AtMost(ModalDamping.Count, StatueSize.TableRows, nameof(ModalDamping)))
        {
            for (int i = 0; i < ModalDamping.Count; i++)
                v.InRange(ModalDamping[i], 0.001, 0.5, "It is a part of critical damping, as in 0.02.", $"{nameof(ModalDamping)}[{i}]");
        }
    }

    private void ValidateSpectrum(Validator v, DesignSpectrum? spectrum, string member)
    {
        if (spectrum is null)
            return;
        int before = v.Problems.Count;
        spectrum.Validate(v.At(member));
        if (v.Problems.Count == before && ModalDamping?.Any(ratio => ratio is >= 0.001 and <= 0.5 && spectrum.WithDamping(ratio) is null) == true)
            v.Add(nameof(ModalDamping), $"cannot be used with the spectrum {member}: it has no rule for other damping", "Use an elastic En1998Spectrum, or leave ModalDamping empty.");
    }
}
