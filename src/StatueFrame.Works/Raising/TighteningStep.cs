using UnitsNet;

namespace StatueFrame.Works;

/// <summary>One anchor bar tightened once.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Step">Number of the step, from 1.</param>
/// <param name="Round">Number of the round, from 1.</param>
/// <param name="Bar">Number of the bar, from 1, as on the sheet and the base drawing.</param>
/// <param name="Force">Force that the bar is brought to in this step.</param>
/// <param name="Torque">Torque of the wrench, k d F.</param>
/// <param name="Elongation">Elongation of the bar's free length by that force.</param>
public sealed record TighteningStep(int Step, int Round, int Bar, Force Force, Torque Torque, Length Elongation);
