namespace StatueFrame.Analysis;

/// <summary>The forces in the cuts at the two ends of a segment at one time, with everything that acts.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Bottom">At its lower level.</param>
/// <param name="Top">At its upper level.</param>
/// <param name="SteadyAxial">The axial force of what acts steadily, N; the buckling factor is about this.</param>
/// <param name="WeightFactor">The factor on weights in them.</param>
/// <param name="State">The state they are of.</param>
internal readonly record struct EndForces(SectionForce Bottom, SectionForce Top, double SteadyAxial, double WeightFactor, DemandState State);
