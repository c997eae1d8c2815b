using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// A method that tells how the statue vibrates in gusts, for a <see cref="SwayCurve"/>: a random-vibration analysis, as
/// <see cref="GustSwayDynamics"/> is, or a standard's procedure.
/// </summary>
/// <remarks>
/// It is asked at every speed of the curve, at every heading, and some ten times for each limit; the same question must
/// get the same answer. Implementations must be safe to use from many threads.
/// </remarks>
public interface ISwayDynamics
{
    /// <summary>What is added to the curve's print, as in "random vibration, 12 modes, damping 0.8 %".</summary>
    public string Title { get; }

    /// <summary>The vibration at one speed.</summary>
    /// <param name="wind">The design wind with its profile brought to the speed in question; a valid action.</param>
    /// <param name="heading">The plan angle that the wind blows towards.</param>
    public SwayDynamics At(WindAction wind, Angle heading);
}
