namespace StatueFrame.Analysis;

/// <summary>Where the energy is in one step, J, counted from rest.</summary>
/// <param name="Input">What the shock has put in.</param>
/// <param name="Kinetic">All kinetic energy.</param>
/// <param name="SkinKinetic">That of the bands.</param>
/// <param name="Strain">All elastic energy.</param>
/// <param name="BarStrain">That of the standoffs.</param>
/// <param name="Damped">What damping has taken.</param>
/// <param name="Plastic">What yielding has taken.</param>
internal readonly record struct StepEnergy(
    double Input, double Kinetic, double SkinKinetic, double Strain, double BarStrain, double Damped, double Plastic);
