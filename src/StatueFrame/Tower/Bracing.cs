namespace StatueFrame;

/// <summary>How the faces of a lattice panel are braced, bay by bay.</summary>
public enum Bracing
{
    /// <summary>Two crossing diagonals in every bay; both carry tension and compression.</summary>
    Cross,

    /// <summary>
    /// Two crossing slender flats in every bay that go slack in compression. Which of them act is found for every load;
    /// modes and buckling take one diagonal of each pair to act (each at half its stiffness), and the sheet lists it.
    /// </summary>
    TensionOnlyCross,

    /// <summary>One diagonal in every bay, its direction alternating from bay to bay and face to face.</summary>
    SingleDiagonal,

    /// <summary>Two braces in every bay that run from the feet of the legs to the middle of the horizontal above.</summary>
    KBrace,
}
