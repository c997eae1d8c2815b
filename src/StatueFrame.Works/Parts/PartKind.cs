namespace StatueFrame.Works;

/// <summary>What a part of a <see cref="PartList"/> is. The first letter of its mark goes by it.</summary>
public enum PartKind
{
    /// <summary>Leg of a lattice, from level to level, or bay by bay where there are several.</summary>
    Leg,

    /// <summary>Diagonal of a lattice.</summary>
    Brace,

    /// <summary>Horizontal between bays of a lattice, or between the legs of a level, or bracing across a level.</summary>
    Horizontal,

    /// <summary>Tube, mast or other member from level to level.</summary>
    Member,

    /// <summary>Core of concrete, masonry or of stiffnesses given as numbers.</summary>
    Core,

    /// <summary>Bracket between tower and standoff.</summary>
    Bracket,

    /// <summary>Standoff.</summary>
    Standoff,

    /// <summary>Sheet of the skin.</summary>
    Sheet,

    /// <summary>Bars behind the sheet, as a length for each band.</summary>
    Armature,

    /// <summary>Straps that hold the sheet to its armature, as many as a band has.</summary>
    Strap,

    /// <summary>Gussets and splice plates of members, as far as their width and thickness are described.</summary>
    JointPlate,

    /// <summary>Rivets of seams and straps.</summary>
    Rivet,

    /// <summary>Bolts with nuts and washers.</summary>
    Bolt,

    /// <summary>Flange of a tube.</summary>
    Flange,

    /// <summary>Base plate.</summary>
    Plate,

    /// <summary>Anchor bar.</summary>
    Anchor,

    /// <summary>Pads and sleeves that keep metals apart.</summary>
    Insert,

    /// <summary>What rides on the statue.</summary>
    Fitting,

    /// <summary>Mass that the description gives as one number: gussets and splices, or armature, saddles and rivets by area.</summary>
    Allowance,
}
