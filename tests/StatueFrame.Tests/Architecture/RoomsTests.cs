using System.Text.RegularExpressions;

namespace StatueFrame.Tests.Architecture;

/// <summary>The rooms of the domain, in order: a room may use those listed before it, never those after it.</summary>
public partial class RoomsTests
{
    private static readonly string[][] Floors =
    [
        ["Geometry", "Quantities", "Validation", "Working", "Notebooks"],
        ["Materials", "Sections"],
        ["Tower", "Skin", "Standoffs", "Limbs", "Base"],
        ["Actions"],
        ["Analysis"],
        ["Checks"],
        ["Files"],
        ["Studies"],
    ];

    [Fact]
    public void A_room_uses_only_rooms_below_it()
    {
        string domain = Path.Combine(Repository.Root, "src", "StatueFrame");
        var floorOf = new Dictionary<string, int>();
        for (int floor = 0; floor < Floors.Length; floor++)
        {
            foreach (string file in Floors[floor].SelectMany(room => FilesOf(Path.Combine(domain, room))))
                floorOf[Path.GetFileNameWithoutExtension(file)] = floor;
        }
        var wrong = new List<string>();
        for (int floor = 0; floor < Floors.Length; floor++)
        {
            foreach (string file in Floors[floor].SelectMany(room => FilesOf(Path.Combine(domain, room))))
            {
                foreach (string word in Words().Matches(Code(File.ReadAllText(file))).Select(m => m.Value).Distinct())
                {
                    if (floorOf.TryGetValue(word, out int other) && other > floor)
                        wrong.Add($"{Path.GetRelativePath(domain, file)} uses {word}");
                }
            }
        }
        Assert.True(floorOf.Count > 50, "The rooms were not found.");
        Assert.Empty(wrong);
    }

    [Fact]
    public void The_kernel_knows_nothing_of_statues()
    {
        var names = typeof(Mechanics.Vector3D).Assembly.GetReferencedAssemblies().Select(a => a.Name!).ToList();
        Assert.DoesNotContain(names, name => name is "StatueFrame" or "UnitsNet");
        Assert.All(names, name => Assert.True(name.StartsWith("System", StringComparison.Ordinal) || name is "MathNet.Numerics" or "netstandard", name));
    }

    [Fact]
    public void The_domain_knows_nothing_of_meshes() =>
        Assert.DoesNotContain(typeof(Statue).Assembly.GetReferencedAssemblies(), a => a.Name is "StatueFrame.Shape" or "SharpGLTF.Core");

    [Fact]
    public void A_file_holds_one_public_type()
    {
        var wrong = new List<string>();
        foreach (string file in FilesOf(Path.Combine(Repository.Root, "src")))
        {
            int types = PublicType().Count(Code(File.ReadAllText(file)));
            if (types > 1 && Path.GetFileName(file) != "ValueList.cs")
                wrong.Add($"{Path.GetFileName(file)} holds {types}");
        }
        Assert.Empty(wrong);
    }

    private static IEnumerable<string> FilesOf(string folder) =>
        Directory.Exists(folder)
            ? Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            : [];

    /// <summary>The text without comments and strings, where a name is only a word.</summary>
    private static string Code(string text) => CommentsAndStrings().Replace(text, " ");

    [GeneratedRegex(@"///?.*$|""(?:\\.|[^""\\])*""", RegexOptions.Multiline)]
    private static partial Regex CommentsAndStrings();

    [GeneratedRegex(@"(?<![.\w])[A-Z]\w+")]
    private static partial Regex Words();

    [GeneratedRegex(@"^public (?:static |sealed |abstract |readonly |partial )*(?:class|record|struct|enum|interface)\b", RegexOptions.Multiline)]
    private static partial Regex PublicType();
}
