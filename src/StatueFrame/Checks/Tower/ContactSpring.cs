namespace StatueFrame.Checks;

/// <summary>A spring that pulls where a plane lifts: its force is k (s − w) while that is positive, w the plane's sinking there. SI units.</summary>
/// <param name="X">Its place.</param>
/// <param name="Y">Its place.</param>
/// <param name="Stiffness">k, N/m.</param>
/// <param name="Stretch">s, m: how far it is stretched when the plane has not moved; zero without pre-tension.</param>
internal readonly record struct ContactSpring(double X, double Y, double Stiffness, double Stretch = 0);
