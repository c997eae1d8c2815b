namespace StatueFrame;

/// <summary>How one end of a standoff is fastened: by bolts (<see cref="BoltedFixing"/>) or by welds (<see cref="WeldedFixing"/>).</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record StandoffFixing
{
    private protected StandoffFixing()
    {
    }

    /// <summary>Looks at the fixing at the end of a flat of a width, m.</summary>
    internal abstract void Validate(Validator v, double width);

    /// <summary>Refuses a fixing that does not fit a flat of a width, m.</summary>
    /// <exception cref="InvalidStatueException">Something is not valid.</exception>
    internal void Require(double width)
    {
        var v = new Validator();
        Validate(v, width);
        v.ThrowIfAny();
    }
}
