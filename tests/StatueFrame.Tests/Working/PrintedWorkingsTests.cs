using System.Text.RegularExpressions;
using StatueFrame.Checks;
using StatueFrame.Tests.Heron;

namespace StatueFrame.Tests;

/// <summary>The Heron as it is and under other rules; spoiled Herons are read in <c>WeakHeronTests</c>.</summary>
public class PrintedWorkingsTests
{
    private static readonly StatueDocument heron = SaltmereHeron.Document;

    [Fact]
    public void Every_printed_line_of_the_heron_can_be_followed() => PrintedWorkings.CanBeFollowed(SaltmereHeron.Sheet.Checks);

    [Theory]
    [InlineData(DesignCode.En1993, BaseCode.Eurocode)]
    [InlineData(DesignCode.AiscLrfd, BaseCode.American)]
    [InlineData(DesignCode.AiscAsd, BaseCode.American)]
    [InlineData(DesignCode.AllowableStress, BaseCode.Eurocode)]
    public void Every_printed_line_under_other_rules_can_be_followed(DesignCode steel, BaseCode stand)
    {
        Criteria criteria = heron.Criteria with { BarCode = steel, TowerCode = steel, Base = heron.Criteria.Base with { Code = stand }, DesignLife = null, Durability = null };
        PrintedWorkings.CanBeFollowed((heron with { Statue = mixed, Criteria = criteria }).Check().Checks);
    }

    /// <summary>The lines that no statue of these tests reaches are read in the source.</summary>
    [Fact]
    public void No_formula_of_the_source_has_code_in_it()
    {
        string[] files = Directory.GetFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories);
        string[] formulas = [.. files.Select(File.ReadAllText).SelectMany(text => Regex.Matches(text, "w\\.Let\\(\"[^\"]+\", ").Select(match => FirstArgument(text[(match.Index + match.Length)..])))];
        Assert.True(formulas.Length > 400);
        // The listener is no part of what is printed.
        Assert.DoesNotContain(formulas, formula => PrintedWorkings.HasCode(FormulaNode.Parse(formula.Replace("(w, ", "("))));
    }

    private static string FirstArgument(string text)
    {
        int depth = 0, end = 0;
        for (; depth > 0 || text[end] is not (',' or ')'); end++)
            depth += text[end] is '(' or '[' ? 1 : text[end] is ')' or ']' ? -1 : 0;
        return text[..end];
    }

    private static readonly BoltedFixing bolts = new()
    {
        Bolt = new Bolt { Diameter = 16.Millimeters, Grade = BoltGrade.Class88 },
        Rows = 2,
        Pitch = 50.Millimeters,
        EndDistance = 30.Millimeters,
        Heel = 40.Millimeters,
    };

    /// <summary>Rings as they are, of carbon steel, and of carbon steel that is bolted.</summary>
    private static readonly Statue mixed = heron.Statue with
    {
        Standoffs = [.. heron.Statue.Standoffs.Select((ring, i) => ((EvenRing)ring) with { Standoff = Changed(((EvenRing)ring).Standoff, i % 3) })],
    };

    private static Standoff Changed(Standoff bar, int kind) => kind switch
    {
        0 => bar,
        1 => bar with { Material = StructuralSteel.S355 },
        _ => bar with { Material = StructuralSteel.S355, TowerFixing = bolts, SkinFixing = bolts },
    };
}
