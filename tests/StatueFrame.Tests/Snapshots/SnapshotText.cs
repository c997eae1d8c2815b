using Snapshooter.Xunit3;

namespace StatueFrame.Tests;

/// <summary>
/// Compares a text with the one that was accepted before, in the folder __snapshots__ beside the test. A text that is
/// meant to change is accepted by moving the file from __mismatch__ over the old one.
/// </summary>
public static class SnapshotText
{
    public static void Match(string text) => Snapshot.Match(text.ReplaceLineEndings("\n"));
}
