using System.Globalization;
using System.Text.Json;

namespace StatueFrame;

/// <summary>Leads from the paths of a description to the places in its file.</summary>
internal static class FilePaths
{
    /// <summary>The path in the file, as in "statue.skin.stations[3].thickness" for "Statue.Skin.Stations[3].Thickness".</summary>
    public static string Of(string path) => string.Join('.', path.Split('.').Select(JsonNamingPolicy.CamelCase.ConvertName));

    /// <summary>The node at a path of the description, or the last one on the way that is there.</summary>
    public static FileNode Closest(FileNode root, string path)
    {
        FileNode node = root;
        foreach (string step in Of(path).Replace("]", "", StringComparison.Ordinal).Split('.', '['))
        {
            FileNode? next = int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out int index)
                ? node.Items.ElementAtOrDefault(index)
                : node.Member(step);
            if (next is null)
                return node;
            node = next;
        }
        return node;
    }
}
