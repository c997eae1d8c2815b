namespace StatueFrame;

/// <summary>Whose force coefficients hold for a lattice that no skin covers.</summary>
public enum LatticeRule
{
    /// <summary>EN 1993-3-1:2006, Annex B: lattices of three or four legs, with the wind's angle to the face.</summary>
    En1993_3_1,

    /// <summary>ASCE/SEI 7-22, trussed towers: lattices of three or four legs, more for wind on the diagonal.</summary>
    Asce7,
}
