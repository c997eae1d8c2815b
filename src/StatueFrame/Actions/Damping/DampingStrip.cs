using UnitsNet;

namespace StatueFrame;

/// <summary>A piece of a body in the wind, for the aerodynamic damping of a mode.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Length">Length of the piece along the body's axis.</param>
/// <param name="Width">Width across the wind.</param>
/// <param name="ForceCoefficient">Force coefficient c_f along the wind.</param>
/// <param name="MeanSpeed">Mean wind speed there.</param>
/// <param name="Amplitude">Modal amplitude along the wind, in the scale of the generalized mass.</param>
public sealed record DampingStrip(Length Length, Length Width, double ForceCoefficient, Speed MeanSpeed, double Amplitude);
