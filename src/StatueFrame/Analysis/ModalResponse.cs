using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>The lowest modes of vibration of a statue, undamped.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class ModalResponse
{
    private readonly ModeResult[] modes;

    internal ModalResponse(StatueModel model, ModeSet set)
    {
        Set = set;
        MissedNone = set.MissedNone;
        modes = new ModeResult[set.Count];
        var room = new double[model.Frame.FreedomCount];
        for (int i = 0; i < modes.Length; i++)
            modes[i] = ModeReader.Read(model, set, i, room);
    }

    /// <summary>The modes, lowest first.</summary>
    public IReadOnlyList<ModeResult> Modes => modes;

    /// <summary>The lowest mode.</summary>
    public ModeResult First => modes[0];

    /// <summary>True when a count of pivots (Sylvester's law of inertia) proves that no lower mode was missed.</summary>
    public bool MissedNone { get; }

    /// <summary>The modes as the kernel knows them, mass-normalized.</summary>
    internal ModeSet Set { get; }
}
