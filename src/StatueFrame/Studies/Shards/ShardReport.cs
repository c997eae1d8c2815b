using System.Globalization;

namespace StatueFrame.Studies;

/// <summary>What one run of a shard did.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Shard">The shard.</param>
/// <param name="Path">Its file.</param>
/// <param name="Found">Pieces that were done before, and were kept.</param>
/// <param name="Done">Pieces that were done now.</param>
/// <param name="WasTorn">True when the end of the file was damaged, as by a kill in the middle of a line, and was done again.</param>
public sealed record ShardReport(Shard Shard, string Path, int Found, int Done, bool WasTorn)
{
    /// <summary>The report on one line.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{Shard}: {Found} found, {Done} done now{(WasTorn ? ", the torn end of the file done again" : "")}");
}
