// Writes the code cells of a notebook as one script, which prints the values that the notebook would show:
// dotnet run .ci/NotebookScript.cs -- notebook.ipynb script.cs "#:project …"

using System.Text.Json;
using System.Text.RegularExpressions;

(string notebook, string script, string reference) = (args[0], args[1], args[2]);
using JsonDocument document = JsonDocument.Parse(File.ReadAllText(notebook));
var usings = new List<string>();
var body = new List<string>();
foreach (JsonElement cell in document.RootElement.GetProperty("cells").EnumerateArray())
{
    if (cell.GetProperty("cell_type").GetString() != "code")
        continue;
    string[] lines = [.. string.Concat(cell.GetProperty("source").EnumerateArray().Select(line => line.GetString())).Split('\n').Where(line => !line.StartsWith('#'))];
    usings.AddRange(lines.Where(line => Regex.IsMatch(line, @"^using [\w.]+;$")));
    List<string> code = [.. lines.Where(line => !Regex.IsMatch(line, @"^using [\w.]+;$"))];
    // A last line without a semicolon is the value that the cell shows.
    if (code.Count > 0 && code[^1].Length > 0 && code[^1][^1] is not (';' or '}'))
        code[^1] = $"Console.WriteLine({code[^1]});";
    body.AddRange(code);
}
File.WriteAllLines(script, [reference, .. usings.Distinct(), .. body]);
