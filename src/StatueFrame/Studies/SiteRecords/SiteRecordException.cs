namespace StatueFrame.Studies;

/// <summary>A record that does not hold what is asked of it: sampled too slowly, too short, or without a resonance.</summary>
public sealed class SiteRecordException : Exception
{
    /// <summary>Says what is wrong, and what would help.</summary>
    public SiteRecordException(string message) : base(message)
    {
    }
}
