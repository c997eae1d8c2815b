namespace StatueFrame;

/// <summary>How well the surroundings let a pair of metals attack each other; sets the difference of potential that is let be.</summary>
public enum GalvanicEnvironment
{
    /// <summary>Heated and dry rooms: 0.50 V.</summary>
    Controlled,

    /// <summary>Rooms neither heated nor dried, dry country air: 0.25 V.</summary>
    Normal,

    /// <summary>Outdoors, damp, salt: 0.15 V.</summary>
    Harsh,
}
