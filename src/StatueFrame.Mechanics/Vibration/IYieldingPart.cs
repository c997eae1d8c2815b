namespace StatueFrame.Mechanics.Vibration;

/// <summary>The part of a frame that yields, as <see cref="DirectIntegration"/> sees it: by how much less it resists than K u.</summary>
public interface IYieldingPart
{
    /// <summary>Adds K u − f(u), the elastic forces less the true ones, from the last accepted state on.</summary>
    /// <param name="displacements">A full vector; m, rad.</param>
    /// <param name="relief">A full vector to add to; N, N·m.</param>
    public void AddRelief(ReadOnlySpan<double> displacements, Span<double> relief);

    /// <summary>Accepts the state that goes with the displacements.</summary>
    public void Accept(ReadOnlySpan<double> displacements);

    /// <summary>Elastic energy of the accepted state less ½ uᵀK u of the yielding parts, J.</summary>
    public double StrainCorrection { get; }

    /// <summary>Energy that yielding has turned into heat, J.</summary>
    public double PlasticWork { get; }
}
