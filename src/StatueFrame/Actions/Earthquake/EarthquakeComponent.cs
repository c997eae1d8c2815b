namespace StatueFrame;

/// <summary>One of the three components of the motion of the ground.</summary>
public enum EarthquakeComponent
{
    /// <summary>Horizontal, along the action's orientation.</summary>
    First,

    /// <summary>Horizontal, a quarter turn to the left of the first.</summary>
    Second,

    /// <summary>Vertical.</summary>
    Vertical,
}
