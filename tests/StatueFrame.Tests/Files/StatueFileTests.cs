using System.Text;
using System.Text.Json;
using CsCheck;
using StatueFrame.Tests.Analyses;
using StatueFrame.Tests.Checks.Metals;
using StatueFrame.Tests.Studies;
using StatueFrame.Tests.Validation;
using UnitsNet;

namespace StatueFrame.Tests.Files;

public class StatueFileTests
{
    private static readonly string good = StatueFile.Write(Document(SmallStatue.Good));

    private static readonly StatueDocument[] samples =
    [
        Document(SmallStatue.Good),
        new() { Statue = new SampleStatue { Base = SampleStatue.Springs, Seams = new SeamStiffness(2.Megapascals, 1.Megapascals) }.Statue },
        new() { Statue = Figures.Leaning, Situations = [Figures.Storm] },
        new() { Statue = HeronMetals.Statue, Situations = [HeronMetals.Storm], Criteria = HeronMetals.Criteria },
    ];

    [Fact]
    public void Statues_come_back_equal()
    {
        foreach (StatueDocument document in samples)
        {
            string text = StatueFile.Write(document);
            StatueDocument read = StatueFile.Read(text);
            Assert.Equal(document, read);
            Assert.Equal(text, StatueFile.Write(read));
        }
    }

    [Fact]
    public void Streams_and_paths_hold_the_same_text()
    {
        StatueDocument document = Document(SmallStatue.Good);
        using var stream = new MemoryStream();
        StatueFile.Write(stream, document);
        Assert.Equal(good, Encoding.UTF8.GetString(stream.ToArray()));
        stream.Position = 0;
        Assert.Equal(document, StatueFile.Read(stream));
        string path = Path.Combine(Directory.CreateTempSubdirectory("statue").FullName, "statue.json");
        StatueFile.Save(path, document);
        Assert.Equal(document, StatueFile.Load(path));
        Assert.Equal(document, StatueFile.Read("\uFEFF" + good));
    }

    [Fact]
    public void Any_statue_that_is_valid_comes_back_equal()
    {
        int written = 0;
        AnyInputTests.Statues.Sample(statue =>
        {
            StatueDocument document = Document(statue);
            string text;
            try
            {
                text = StatueFile.Write(document);
            }
            catch (InvalidStatueException)
            {
                return true;
            }
            Interlocked.Increment(ref written);
            return StatueFile.Read(text).Equals(document);
        }, iter: 300);
        Assert.True(written > 60, $"{written} written");
    }

    [Theory]
    [InlineData(typeof(Statue))]
    [InlineData(typeof(Situation))]
    [InlineData(typeof(Criteria))]
    public void Parts_with_any_members_come_back_bit_by_bit(Type type)
    {
        FileForm form = FileForms.Of(type);
        Gen.Int[0, int.MaxValue - 1].Sample(seed =>
        {
            object part = new AnyPart(new Random(seed)).Of(type)!;
            string text = Text(form, part);
            var problems = new FileProblems();
            object? read = form.Read(FileNode.Parse(Encoding.UTF8.GetBytes(text)), "", problems);
            problems.ThrowIfAny();
            return part.Equals(read) && Text(form, read) == text;
        }, iter: 40);
    }

    [Fact]
    public void Values_of_the_library_stand_by_name_and_quantities_as_given()
    {
        StatueDocument document = Document(SmallStatue.Good.With(s => s with
        {
            Skin = s.Skin! with { Thickness = 0.1.Inches, Material = Copper.SoftR220 with { Name = "old copper" } },
            BaseAboveGround = 20.Feet,
        }));
        string text = StatueFile.Write(document);
        Assert.Contains("\"thickness\": \"0.1 in\"", text);
        Assert.Contains("\"baseAboveGround\": \"20 ft\"", text);
        Assert.Contains("\"material\": \"StructuralSteel.S355\"", text);
        Assert.Contains("\"towerFixity\": \"EndFixity.Rigid\"", text);
        Assert.Contains("\"name\": \"old copper\"", text);
        Assert.Contains("\"youngsModulus\": \"", text);
        Assert.Contains("\"kind\": \"SelfWeight\"", text);
        Assert.Equal(document, StatueFile.Read(text));
    }

    [Fact]
    public void Units_may_be_typed_plainly()
    {
        Assert.Equal(9.KilogramsPerSquareMeter, Armature("9 kg/m^2"));
        Assert.Equal(9.KilogramsPerSquareMeter, Armature("9 kg/m²"));
        Assert.Equal(9.KilogramsPerSquareMeter, Armature("9.0e0kg/m^2"));

        static AreaDensity Armature(string text) => StatueFile.Read(Changed("\"thickness\": \"2.5 mm\"", $"\"thickness\": \"2.5 mm\", \"armatureMass\": \"{text}\"")).Statue.Skin!.ArmatureMass;
    }

    [Theory]
    [InlineData("\"thickness\": \"2.5 mm\"", "\"thicknes\": \"2.5 mm\"", "is no member of Skin. Did you mean \"thickness\"?")]
    [InlineData("\"2.5 mm\"", "\"2.5 kg\"", "statue.skin.thickness: \"kg\" is no unit of Length. Units are mm, m, in, ft")]
    [InlineData("\"2.5 mm\"", "\"2.5\"", "statue.skin.thickness: has no unit")]
    [InlineData("\"2.5 mm\"", "\"thin\"", "statue.skin.thickness: does not begin with a number: \"thin\"")]
    [InlineData("\"2.5 mm\"", "2.5", "statue.skin.thickness: must be a text with number and unit of Length, is the number 2.5")]
    [InlineData("\"2.5 mm\"", "\"NaN mm\"", "does not begin with a number")]
    [InlineData("\"2.5 mm\"", "\"1e999 mm\"", "is too great a number")]
    [InlineData("\"2.5 mm\"", "\"2.5 m\"", "statue.skin.thickness: is not plausible: 2.5 m. Accepted are")]
    [InlineData("\"2.5 mm\"", "null", "statue.skin.thickness: must not be null")]
    [InlineData("\"count\": 6", "\"count\": 6.5", "must be a whole number, is the number 6.5")]
    [InlineData("\"count\": 6,", "", "statue.standoffs[0].count: is missing. Every EvenRing needs it.")]
    [InlineData("\"kind\": \"EvenRing\"", "\"kind\": \"EventRing\"", "is no kind of StandoffRing: \"EventRing\". Did you mean \"EvenRing\"?")]
    [InlineData("\"kind\": \"EvenRing\",", "", "statue.standoffs[0].kind: is missing. Say which StandoffRing it is: EvenRing, ExplicitRing.")]
    [InlineData("\"EndFixity.Rigid\"", "\"EndFixity.Rigit\"", "there is no EndFixity called \"EndFixity.Rigit\". Did you mean \"EndFixity.Rigid\"?")]
    [InlineData("\"StructuralSteel.S355\"", "7", "must be an object in braces for Material, is the number 7. Write { … }, or a name")]
    [InlineData("\"format\": 1", "\"format\": 2", "line 2, format: must be 1, is the number 2")]
    [InlineData("\"format\": 1,", "", "format: is missing")]
    [InlineData("\"format\": 1,", "\"format\": 1, \"format\": 1,", "format")]
    [InlineData("\"name\": \"small heron\",", "\"name\": \"a\", \"name\": \"b\",", "statue.name: is given twice")]
    [InlineData("\"limitState\": \"Strength\"", "\"limitState\": \"strong\"", "is not a word for LimitState: \"strong\"")]
    [InlineData("\"format\": 1,", "\"format\": 1 oops,", "line 2: is not JSON")]
    public void What_is_wrong_is_told_with_its_line_and_path(string from, string to, string message)
    {
        var e = Assert.Throws<StatueFileException>(() => StatueFile.Read(Changed(from, to)));
        Assert.Contains(message, e.Message);
        Assert.All(e.Problems, p => Assert.True(p.Line > 0 && (p.Path.Length > 0 || e.InnerException is JsonException)));
    }

    [Fact]
    public void Lines_are_those_of_the_text()
    {
        string text = Changed("\"thickness\": \"2.5 mm\"", "\"thickness\": \"2.5 m\"");
        int line = 1 + Array.FindIndex(text.Split('\n'), l => l.Contains("\"thickness\": \"2.5 m\"", StringComparison.Ordinal));
        Assert.Equal(line, Assert.Throws<StatueFileException>(() => StatueFile.Read(text)).Problems[0].Line);
    }

    [Fact]
    public void All_problems_are_told_at_once()
    {
        string text = Changed("\"thickness\": \"2.5 mm\"", "\"thickness\": \"2.5 kg\"").Replace("\"count\": 6", "\"count\": \"six\"", StringComparison.Ordinal);
        Assert.Equal(4, Assert.Throws<StatueFileException>(() => StatueFile.Read(text)).Problems.Count);
    }

    [Fact]
    public void An_invalid_statue_is_not_written() =>
        Assert.Contains("Statue.Skin.Thickness", Assert.Throws<InvalidStatueException>(() =>
            StatueFile.Write(Document(SmallStatue.Good.With(s => s with { Skin = s.Skin! with { Thickness = 2.Meters } })))).Message);

    [Fact]
    public void What_cannot_be_written_is_named()
    {
        Assert.Contains("statue.shape: is a Func`1, which cannot be written", Assert.Throws<StatueFileException>(() =>
            Text(FileForms.Of(typeof(Func<double>)), () => 1.0, "statue.shape")).Message);
        Assert.Contains("profile: MeanPressureWind cannot be written", Assert.Throws<StatueFileException>(() =>
            Text(FileForms.Of(typeof(WindAction)), SmallStatue.Wind with { Profile = new MeanPressureWind(SmallStatue.Wind.Profile) }, "")).Message);
    }

    [Fact]
    public void Hostile_files_are_refused()
    {
        Assert.Throws<StatueFileException>(() => StatueFile.Read(new string('[', 1_000_000)));
        Assert.Throws<StatueFileException>(() => StatueFile.Read(string.Concat(Enumerable.Repeat("{\"a\":", 100_000))));
        Assert.Throws<StatueFileException>(() => StatueFile.Read(new MemoryStream(new byte[StatueFile.LargestFile + 1])));
        Assert.Contains("more than", Assert.Throws<StatueFileException>(() => StatueFile.Read("[" + string.Join(',', Enumerable.Repeat("1", (1 << 20) + 1)) + "]")).Message);
        Assert.Throws<StatueFileException>(() => StatueFile.Read(""));
        Assert.Throws<StatueFileException>(() => StatueFile.Read("\"\\uD800\""));
        Assert.Throws<StatueFileException>(() => StatueFile.Read(new MemoryStream([0x22, 0xFF, 0xFE, 0x22])));
        var many = Assert.Throws<StatueFileException>(() => StatueFile.Read("{\"format\":1,\"situations\":[" + string.Join(',', Enumerable.Repeat("7", 100_000)) + "]}"));
        Assert.Equal(StatueFileException.MostProblems, many.Problems.Count);
    }

    [Fact]
    public void Spoiled_text_gives_an_error_or_a_valid_statue()
    {
        string[] tokens = ["{", "}", "[", "]", ",", ":", "\"", "null", "true", "-1", "1e999", "0", "\"NaN m\"", "\"\"", "\\", "\"kind\"", "\"2 m\"", "1e-320", "\u0000", "é", "\n"];
        string[] values = [.. samples.Select(StatueFile.Write)];
        int read = 0, refused = 0;
        Gen.Select(Gen.Int[0, values.Length - 1], Gen.Int[0, int.MaxValue - 1], Gen.Int[1, 4]).Sample((which, seed, edits) =>
        {
            var random = new Random(seed);
            var text = new StringBuilder(values[which]);
            for (int i = 0; i < edits; i++)
                Spoil(text, random, tokens);
            try
            {
                StatueDocument document = StatueFile.Read(text.ToString());
                Interlocked.Increment(ref read);
                return document.FindProblems().Count == 0 && StatueFile.Read(StatueFile.Write(document)).Equals(document);
            }
            catch (StatueFileException e)
            {
                Interlocked.Increment(ref refused);
                return e.Problems.Count > 0 && e.Problems.All(p => p.Line > 0 && p.Message.Length > 0);
            }
        }, iter: 400);
        Assert.True(read > 0 && refused > 100, $"{read} read, {refused} refused");
    }

    private static void Spoil(StringBuilder text, Random random, string[] tokens)
    {
        int at = random.Next(text.Length), length = Math.Min(random.Next(1, 12), text.Length - at);
        switch (random.Next(7))
        {
            case 0:
                text.Remove(at, length);
                break;
            case 1:
                text.Insert(at, tokens[random.Next(tokens.Length)]);
                break;
            case 2:
                text[at] = (char)random.Next(32, 127);
                break;
            case 3:
                text.Insert(at, text.ToString(random.Next(text.Length - length), length));
                break;
            case 4:
            case 5:
                while (!char.IsAsciiDigit(text[at]))
                    at = (at + 1) % text.Length;
                text[at] = (char)('0' + random.Next(10));
                break;
            default:
                string[] lines = text.ToString().Split('\n');
                int a = random.Next(lines.Length), b = random.Next(lines.Length);
                (lines[a], lines[b]) = (lines[b], lines[a]);
                text.Clear().AppendJoin('\n', lines);
                break;
        }
    }

    private static StatueDocument Document(SmallStatue statue) => new() { Statue = statue.Statue, Situations = [.. statue.Situations], Criteria = statue.Criteria };

    private static string Changed(string from, string to)
    {
        int at = good.IndexOf(from, StringComparison.Ordinal);
        Assert.True(at >= 0, $"The file has no {from}.");
        return good[..at] + to + good[(at + from.Length)..];
    }

    private static string Text(FileForm form, object part, string path = "")
    {
        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
            form.Write(writer, part, path);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
