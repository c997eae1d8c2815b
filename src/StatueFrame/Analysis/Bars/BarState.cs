namespace StatueFrame.Analysis;

/// <summary>One bar in one load case under the bounds on the skin that it can stand in; SI units.</summary>
/// <param name="Stress">Greatest normal stress, Pa.</param>
/// <param name="AtStress">The bound it comes from.</param>
/// <param name="Deflection">Greatest deflection, m.</param>
/// <param name="AtDeflection">The bound it comes from.</param>
/// <param name="StandsAlone">False when hinges at both ends leave it unable to stand alone.</param>
internal readonly record struct BarState(double Stress, SkinAssumption AtStress, double Deflection, SkinAssumption AtDeflection, bool StandsAlone);
