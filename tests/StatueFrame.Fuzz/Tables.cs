using System.Globalization;
using System.Text;
using UnitsNet;

namespace StatueFrame.Fuzz;

/// <summary>Tables of stations, levels, bars and rings with changed cells, heads, separators and bytes.</summary>
internal sealed class Tables : Subject
{
    private static readonly string[] cells = ["", "0", "-1", "1e308", "1e999", "nan", "∞", "2,5", "2.5 mm", "7", "x", "\"a\"\"b\"", "\"open", "true", "L1", "5e-324", "1;2", "mm", "１"];

    private static readonly string[] heads = ["elevation", "elevation [m]", "name", "thickness [mm]", "outline.widthX [ft]", "outline.kind", "plan", "plan.widthX", "towerEnd.x [m]", "standoff.section.width [in]", "count", "lay [°]", "foldFactor", "[m]", "a.b.c.d", "elevation [parsec]", "length [kg]"];

    private static readonly Standoff flat = new() { Section = new FlatBar(Length.FromMillimeters(60), Length.FromMillimeters(8)), Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Pinned };

    public override string Name => "tables";

    public override int Weight => 1;

    public override IEnumerable<byte[]> SoundOnes() =>
    [
        Encoding.UTF8.GetBytes("elevation [m],outline.widthX [m],thickness [mm]\n0,1.5,2.5\n2,1.2,\n"),
        Encoding.UTF8.GetBytes("name;elevation;offsetX\r\nL0;0 m;\r\nL1;3000 mm;20 cm"),
        Encoding.UTF8.GetBytes("level\tcount\tlay [°]\nL1\t24\t30\n"),
        Encoding.UTF8.GetBytes("skinEnd.x [m],skinEnd.z [m]\n1.5,\"0.1\"\n"),
    ];

    public override byte[] Spoiled(Random random)
    {
        byte[][] sound = [.. SoundOnes()];
        byte[] one = sound[random.Next(sound.Length)];
        if (random.Next(3) == 0)
            return Bytes(one, random);
        char separator = ",;\t"[random.Next(3)];
        var text = new StringBuilder(string.Join(separator, Enumerable.Range(0, random.Next(1, 5)).Select(_ => heads[random.Next(heads.Length)])));
        for (int i = random.Next(6); i > 0; i--)
            text.Append(random.Next(5) == 0 ? "\r\n" : "\n").AppendJoin(separator, Enumerable.Range(0, random.Next(6)).Select(_ => cells[random.Next(cells.Length)]));
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    public override string? Judge(byte[] spoiled, int number, out bool taken)
    {
        taken = false;
        string text = Encoding.UTF8.GetString(spoiled);
        string? wrong = null;
        foreach (Func<object> read in (Func<object>[])
        [
            () => StatueTable.Read(text, SkinStation.Ellipse(Length.Zero, Length.FromMeters(1), Length.FromMeters(1))),
            () => StatueTable.Read(text, new TowerLevel("", Length.Zero) { Plan = TowerPlan.Square(Length.FromMeters(2)) }),
            () => StatueTable.Read(text, new EvenRing { Level = "L1", Count = 6, Standoff = flat }),
            () => StatueTable.Read(text, new StandoffBar { TowerEnd = new(Length.Zero, Length.Zero, Length.Zero), SkinEnd = new(Length.FromMeters(1), Length.Zero, Length.Zero), Standoff = flat }),
        ])
        {
            try
            {
                string? said = read().ToString();
                taken = true;
                if (said?.Contains(double.NaN.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal) == true)
                    wrong ??= $"it gives NaN: {said}";
            }
            catch (StatueFileException e)
            {
                if (e.Problems.Any(problem => problem.Message.Length == 0))
                    wrong ??= $"a problem without words: {e.Message}";
            }
            catch (Exception e)
            {
                wrong ??= e.ToString();
            }
        }
        return wrong;
    }
}
