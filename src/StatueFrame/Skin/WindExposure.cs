using StatueFrame.Mechanics;

namespace StatueFrame;

/// <summary>What a band of skin shows to a wind.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="ProjectedArea">Area projected on the plane across the wind, m².</param>
/// <param name="PressureCenter">Point in body axes, m, through which the wind force acts.</param>
internal readonly record struct WindExposure(double ProjectedArea, Vector3D PressureCenter);
