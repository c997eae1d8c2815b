namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// What a beam is made of and how it is held, apart from where it lies: one definition may serve many beams.
/// </summary>
/// <remarks>
/// Immutable, and safe to share between threads when its section function is. The function must be smooth along the beam
/// and always give the same section for the same place: put a node where the section jumps.
/// </remarks>
public sealed record BeamDefinition
{
    private readonly Func<double, BeamSection>? varying;
    private readonly BeamSection uniform;

    /// <summary>A beam of one section along its length.</summary>
    public BeamDefinition(BeamSection section) => uniform = section;

    /// <summary>A beam whose section varies along its length.</summary>
    /// <param name="section">The section at ξ, which runs from 0 at the start of the beam to 1 at its end.</param>
    /// <exception cref="ArgumentNullException"><paramref name="section"/> is null.</exception>
    public BeamDefinition(Func<double, BeamSection> section)
    {
        ArgumentNullException.ThrowIfNull(section);
        varying = section;
    }

    /// <summary>The side on which local z lies, in global axes (see <see cref="Axes3D.Along"/>); global z by default.</summary>
    public Vector3D Up { get; init; } = Vector3D.UnitZ;

    /// <summary>Turn of the section about local x after <see cref="Up"/> has placed it, rad, right-handed.</summary>
    public double Roll { get; init; }

    /// <summary>Rigid arm from the start node to the start of the beam, m, global axes.</summary>
    public Vector3D StartOffset { get; init; }

    /// <summary>Rigid arm from the end node to the end of the beam, m, global axes.</summary>
    public Vector3D EndOffset { get; init; }

    /// <summary>How the start is joined to its arm; rigid by default.</summary>
    public BeamJoint StartJoint { get; init; } = BeamJoint.Rigid;

    /// <summary>How the end is joined to its arm; rigid by default.</summary>
    public BeamJoint EndJoint { get; init; } = BeamJoint.Rigid;

    internal bool IsUniform => varying is null;

    /// <summary>The section at <paramref name="xi"/>, from 0 at the start of the beam to 1 at its end.</summary>
    public BeamSection SectionAt(double xi) => varying is null ? uniform : varying(xi);
}
