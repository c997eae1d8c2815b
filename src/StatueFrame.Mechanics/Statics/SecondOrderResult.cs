namespace StatueFrame.Mechanics.Statics;

/// <summary>Displacements that are in equilibrium with the loads on the displaced frame.</summary>
/// <remarks>Immutable and safe to share between threads; its arrays must not be written to.</remarks>
/// <param name="Displacements">A full vector; m, rad.</param>
/// <param name="FirstOrder">The displacements of the first-order analysis, for comparison; m, rad.</param>
/// <param name="Iterations">Number of factorizations of the stiffness with geometric stiffness.</param>
/// <param name="Amplification">
/// Largest displacement of a node (length of its three displacements) divided by the largest of the first-order analysis;
/// 1 when nothing moves.
/// </param>
/// <param name="Change">Greatest change of a displacement in the last round, over the greatest displacement; no unit.</param>
public sealed record SecondOrderResult(double[] Displacements, double[] FirstOrder, int Iterations, double Amplification, double Change);
