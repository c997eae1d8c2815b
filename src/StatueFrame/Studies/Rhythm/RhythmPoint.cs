using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What a rhythm of one frequency does at a point.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Rhythm">Steps or jumps a second.</param>
/// <param name="Peak">Sum of the harmonics' acceleration amplitudes: no phases between them can make more.</param>
/// <param name="Rms">Root mean square of the acceleration, whatever the phases are.</param>
public sealed record RhythmPoint(Frequency Rhythm, Acceleration Peak, Acceleration Rms);
