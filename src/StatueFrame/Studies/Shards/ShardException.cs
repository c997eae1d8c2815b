namespace StatueFrame.Studies;

/// <summary>The files of a sharded study are not what is needed: the message names each one that is missing, unfinished, duplicate or foreign.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class ShardException : Exception
{
    internal ShardException(string message)
        : base(message)
    {
    }

    internal ShardException(ShardSurvey survey)
        : base($"The shards cannot be merged: {survey}") => Survey = survey;

    /// <summary>What there is and what is wrong; null when one file was refused.</summary>
    public ShardSurvey? Survey { get; }
}
