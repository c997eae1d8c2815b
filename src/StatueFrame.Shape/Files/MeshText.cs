using System.Globalization;

namespace StatueFrame.Shape;

/// <summary>Words and numbers of a line of text, as bytes.</summary>
internal static class MeshText
{
    /// <summary>Cuts the first word off the line; empty when there is none.</summary>
    public static ReadOnlySpan<byte> Word(ref ReadOnlySpan<byte> line)
    {
        int from = 0;
        while (from < line.Length && line[from] <= ' ')
            from++;
        int to = from;
        while (to < line.Length && line[to] > ' ')
            to++;
        ReadOnlySpan<byte> word = line[from..to];
        line = line[to..];
        return word;
    }

    public static double Number(ref ReadOnlySpan<byte> line, MeshInput input)
    {
        ReadOnlySpan<byte> word = Word(ref line);
        return double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? value
            : throw new MeshFileException(word.IsEmpty ? "a number is missing" : "what should be a number is none", input.AtLine);
    }

    public static long Whole(ReadOnlySpan<byte> word, MeshInput input) =>
        long.TryParse(word, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value)
            ? value
            : throw new MeshFileException("what should be a whole number is none", input.AtLine);
}
