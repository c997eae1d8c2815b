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
        ["Statues", "Actions"],
        ["Analysis"],
        ["Checks"],
        ["Files"],
        ["Studies"],
    ];

    [Fact]
    public void A_room_uses_only_rooms_below_it()
    {
        Dictionary<string, (string Room, int Floor)> placeOf = Places();
        var wrong = new List<string>();
        int looked = 0;
        foreach (Type type in typeof(Statue).Assembly.GetTypes().Where(type => type.DeclaringType is null))
        {
            if (!placeOf.TryGetValue(NameOf(type), out (string Room, int Floor) own))
                continue;
            looked++;
            wrong.AddRange(UsedTypes.Of(type)
                .Where(used => used.Assembly == type.Assembly && placeOf.TryGetValue(NameOf(used), out (string Room, int Floor) other) && other.Floor > own.Floor)
                .Select(used => $"{own.Room}/{type.Name} uses {placeOf[NameOf(used)].Room}/{used.Name}"));
        }
        Assert.True(looked > 400, "The rooms were not found.");
        Assert.Empty(wrong.Order());
    }

    [Fact]
    public void Every_file_of_the_domain_is_in_a_room() =>
        Assert.Empty(Directory.EnumerateFiles(Domain, "*.cs").Select(Path.GetFileName));

    /// <summary>The same subject has the same name in every large room; what belongs to one room alone is named here once.</summary>
    [Fact]
    public void The_rooms_in_a_large_room_are_named_alike()
    {
        string[] shared = ["Wind", "Earthquake", "Shock", "Heat", "Bars", "Skin", "Tower", "Base", "Movement", "Metals", "Rhythm", "Ice"];
        string[] own =
        [
            "Actions/AcrossWind", "Actions/BareTower", "Actions/Cladding", "Actions/Combinations", "Actions/Corrosion", "Actions/Damping",
            "Analysis/Demands", "Analysis/Fine", "Analysis/Harmonic", "Checks/Catalogue", "Checks/Fatigue",
        ];
        IEnumerable<string> found = new[] { "Actions", "Analysis", "Checks" }
            .SelectMany(room => Directory.EnumerateDirectories(Path.Combine(Domain, room)).Select(folder => $"{room}/{Path.GetFileName(folder)}"));
        Assert.Empty(found.Where(name => !own.Contains(name) && !shared.Contains(name.Split('/')[1])).Order());
    }

    private static readonly string Domain = Path.Combine(Repository.Root, "src", "StatueFrame");

    /// <summary>The room and the floor of each file of the domain.</summary>
    private static Dictionary<string, (string Room, int Floor)> Places() =>
        Floors.SelectMany((rooms, floor) => rooms.SelectMany(room => FilesOf(Path.Combine(Domain, room)).Select(file => (file, room, floor))))
            .ToDictionary(place => Path.GetFileNameWithoutExtension(place.file), place => (place.room, place.floor));

    private static string NameOf(Type type) => type.Name.Split('`')[0];

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

    [GeneratedRegex(@"^public (?:static |sealed |abstract |readonly |partial )*(?:class|record|struct|enum|interface)\b", RegexOptions.Multiline)]
    private static partial Regex PublicType();
}
