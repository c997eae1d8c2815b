namespace StatueFrame.Works;

/// <summary>A stage with its statue and its check sheet.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Stage">The stage.</param>
/// <param name="Statue">What stands of the statue.</param>
/// <param name="Sheet">Its sheet under the wind of the stage; null when what stands has nothing to check, as <paramref name="Problem"/> says.</param>
/// <param name="Problem">Why there is no sheet; empty when there is one.</param>
public sealed record RaisedStage(RaisingStage Stage, Statue Statue, CheckSheet? Sheet, string Problem = "");
