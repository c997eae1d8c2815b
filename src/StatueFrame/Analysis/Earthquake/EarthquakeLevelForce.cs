using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The peak inertia force of a level or band in an earthquake; without sign, and not at one time with others.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Part">The level or band.</param>
/// <param name="X">Along x.</param>
/// <param name="Y">Along y.</param>
/// <param name="Z">Along z.</param>
public sealed record EarthquakeLevelForce(string Part, Force X, Force Y, Force Z);
