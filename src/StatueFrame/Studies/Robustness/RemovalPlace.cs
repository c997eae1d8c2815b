namespace StatueFrame.Studies;

/// <summary>Where a removed bar or brace is in the model.</summary>
/// <param name="Body">Index of its body; the trunk is 0.</param>
/// <param name="Part">Index of its ring, or of its segment.</param>
/// <param name="Member">Number of the bar from 1, or index of the brace in its segment.</param>
internal sealed record RemovalPlace(int Body, int Part, int Member);
