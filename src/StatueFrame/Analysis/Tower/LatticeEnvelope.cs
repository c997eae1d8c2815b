namespace StatueFrame.Analysis;

/// <summary>The greatest tension and compression of every lattice member over all load cases of a situation.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class LatticeEnvelope
{
    private readonly Dictionary<SegmentModel, Extreme[]> members = new(ReferenceEqualityComparer.Instance);

    public LatticeEnvelope(StatueModel model, ReadOnlySpan<LoadCase> cases)
    {
        foreach (SegmentModel segment in model.LatticeSegments)
        {
            var extremes = new Extreme[segment.Members.Count];
            var axial = new double[extremes.Length];
            foreach (LoadCase loadCase in cases)
            {
                loadCase.AxialForces(segment, axial);
                for (int i = 0; i < axial.Length; i++)
                {
                    Extreme e = extremes[i];
                    if (e.GreatestCase is null || Extremes.Exceeds(axial[i], e.Greatest))
                        e = e with { Greatest = axial[i], GreatestCase = loadCase };
                    if (e.LeastCase is null || Extremes.Exceeds(-axial[i], -e.Least))
                        e = e with { Least = axial[i], LeastCase = loadCase };
                    extremes[i] = e;
                }
            }
            members.Add(segment, extremes);
        }
    }

    /// <summary>The extremes of a segment's members, in their order.</summary>
    public ReadOnlySpan<Extreme> Of(SegmentModel segment) => members[segment];

    /// <summary>The greatest and the least axial force of a member, N, tension positive, and where they come from.</summary>
    internal readonly record struct Extreme(double Greatest, LoadCase? GreatestCase, double Least, LoadCase? LeastCase);
}
