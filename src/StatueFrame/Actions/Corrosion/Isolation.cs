namespace StatueFrame;

/// <summary>What is between two metals.</summary>
public enum Isolation
{
    /// <summary>Nothing: they touch.</summary>
    None,

    /// <summary>PTFE sheet or tape; breaks the contact.</summary>
    Ptfe,

    /// <summary>Neoprene or EPDM pads; break the contact, unless filled with carbon black that conducts.</summary>
    Neoprene,

    /// <summary>Sleeves and washers of nylon, polyethylene or the like, round the fasteners too; break the contact.</summary>
    PolymerSleeve,

    /// <summary>Paint. It wears through where parts move: counts outside harsh surroundings only.</summary>
    Paint,

    /// <summary>Sheet lead. It is a metal: the contact is then of each with lead.</summary>
    Lead,
}
