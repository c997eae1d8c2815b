using StatueFrame.Shape;

namespace StatueFrame.Works;

/// <summary>The sheets that the skin of trunk or limb is cut into.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Body">"trunk" or the limb's name.</param>
/// <param name="Plan">The sheets.</param>
public sealed record BodySheets(string Body, SheetPlan Plan);
