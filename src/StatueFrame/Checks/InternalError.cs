namespace StatueFrame.Checks;

/// <summary>
/// An unexpected error costs the check or the part of the sheet it came from, which is then not done and says so; never the
/// sheet, and never in silence.
/// </summary>
internal static class InternalError
{
    private const int Longest = 160;

    /// <summary>Whether an error is none that a caller asked for or has to know of.</summary>
    public static bool Is(Exception e) => e is not (OperationCanceledException or InvalidStatueException or OutOfMemoryException);

    /// <summary>An error that leaves nothing of a sheet.</summary>
    public static InvalidStatueException AsProblem(Exception e) =>
        new([new Problem("", InWords(e), "It is an error of this library or of a type of your own; the inner exception says where.")], e);

    /// <summary>The error on one line.</summary>
    public static string InWords(Exception e)
    {
        string message = e.Message.Split('\r', '\n')[0];
        return $"internal error: {e.GetType().Name}: {(message.Length > Longest ? message[..Longest] + "…" : message)}";
    }
}
