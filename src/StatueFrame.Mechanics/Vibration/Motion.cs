namespace StatueFrame.Mechanics.Vibration;

/// <summary>Which derivative of the motion is meant.</summary>
public enum Motion
{
    /// <summary>Displacement; m, rad.</summary>
    Displacement,
    /// <summary>Velocity; m/s, rad/s.</summary>
    Velocity,
    /// <summary>Acceleration; m/s², rad/s².</summary>
    Acceleration,
}
