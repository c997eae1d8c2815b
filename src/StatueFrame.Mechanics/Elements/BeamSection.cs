namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// The rigidities and the mass of one cross-section of a beam, in its principal axes. Local x runs along the beam;
/// bending "about y" deflects the beam along z. An infinite shear rigidity means no shear deformation.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public readonly record struct BeamSection
{
    /// <summary>Axial rigidity E·A, N; positive.</summary>
    public required double EA { get; init; }

    /// <summary>Bending rigidity about local y, E·I_y, N·m²; positive.</summary>
    public required double EIy { get; init; }

    /// <summary>Bending rigidity about local z, E·I_z, N·m²; positive.</summary>
    public required double EIz { get; init; }

    /// <summary>St. Venant torsional rigidity G·J, N·m²; positive.</summary>
    public required double GJ { get; init; }

    /// <summary>Shear rigidity for a force along local y, κ·G·A, N; positive or +∞.</summary>
    public double GAy { get; init; } = double.PositiveInfinity;

    /// <summary>Shear rigidity for a force along local z, κ·G·A, N; positive or +∞.</summary>
    public double GAz { get; init; } = double.PositiveInfinity;

    /// <summary>Mass per length, kg/m; zero or more.</summary>
    public double Mass { get; init; }

    /// <summary>Rotary inertia per length about local y, ρ·I_y, kg·m; zero or more.</summary>
    public double RotaryY { get; init; }

    /// <summary>Rotary inertia per length about local z, ρ·I_z, kg·m; zero or more.</summary>
    public double RotaryZ { get; init; }

    /// <summary>Creates a section; the required members are set in an object initializer.</summary>
    public BeamSection()
    {
    }
}
