namespace StatueFrame;

/// <summary>The shape in time of a pulse of the ground's acceleration, of the duration T and the peak a.</summary>
public enum PulseShape
{
    /// <summary>a from 0 to T.</summary>
    Rectangle,

    /// <summary>a·sin(πt/T): half a wave.</summary>
    HalfSine,

    /// <summary>a·sin(2πt/T): one full wave, to one side and back.</summary>
    FullSine,

    /// <summary>a·cos(2πt/T): one full wave that starts at its peak.</summary>
    FullCosine,

    /// <summary>From a down to zero in a straight line.</summary>
    FallingTriangle,
}
