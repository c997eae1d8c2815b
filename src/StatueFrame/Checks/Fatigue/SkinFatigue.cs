using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// Writes the fatigue of the skin into a sheet: of every body the panel, the seam, the armature bar and the strap that local gusts tire
/// most. A thin panel is stressed less than in proportion to what presses it, so that every gust is worked out with its own pressure.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class SkinFatigue
{
    private const string NoWind = "no service situation has wind";

    /// <summary>Between neighboring gusts whose stress is worked out; those between have that of the greater.</summary>
    private const double Step = 0.97;

    /// <summary>Gusts below this share of the fifty-year one are counted with it.</summary>
    private const double LeastShare = 0.02;

    private static readonly Source page = Source.Assumed("fatigue");
    private static readonly Assumption local = new("fatigue of the skin", "greatest local pressure or suction of every gust on all of a panel, strap or span; nominal stresses; vortices and shaking left out", page);
    private static readonly Assumption rivets = new("rivets of the skin in fatigue", "pull and √3 times shear as one stress, at the strength of the sheet they hold", page);

    private static readonly (string, Dimension)[] pressures = [("p", Dimension.Pressure), ("p_s", Dimension.Pressure)];
    private static readonly DemandState atGust = new("fifty-year local pressure and suction, without factor");

    internal static readonly CheckEntry
        Sheet = Entry("sheet", "fatigue of a panel of sheet", "the panel of every band"),
        Seams = Entry("seams", "fatigue of a seam of the skin", "sheet between the rivets and rivets of the seams of every band", "local gusts, and of heat that seams hold,"),
        Armature = Entry("armature", "fatigue of an armature bar", "the armature of every band"),
        Straps = Entry("straps", "fatigue of a strap over the armature", "strap and rivets of the straps of every band");

    private readonly FatigueCauses causes;
    private readonly Criteria criteria;
    private readonly SheetWriter lists;
    private readonly LocalWind[] winds;
    private readonly HeatField[] heats;

    private SkinFatigue(FatigueCauses causes, Criteria criteria, SheetWriter lists)
    {
        (this.causes, this.criteria, this.lists) = (causes, criteria, lists);
        winds = [.. causes.Locals.OfType<LocalWind>()];
        heats = [.. causes.Heats.Select(heat => HeatField.Of(causes.Model, heat)).OfType<HeatField>()];
    }

    public static IEnumerable<CheckEntry> All => [Sheet, Seams, Armature, Straps];

    private static CheckEntry Entry(string name, string title, string parts, string causes = "local gusts") =>
        new($"fatigue.{name}", title, Nature.Strength, parts, $"damage of {causes} in the design life", "1", NoWind);

    /// <summary>Adds the lines, or why there are none.</summary>
    public static void Add(StatueModel model, FatigueCauses? causes, Criteria criteria, SheetWriter lists)
    {
        SkinFatigue? work = causes is null || model.BandCount == 0 ? null : new SkinFatigue(causes, criteria, lists);
        int first = 0;
        foreach (BodyModel body in model.Bodies.Where(body => body.Bands.Length > 0))
        {
            Skin skin = body.Skin!;
            foreach ((CheckEntry entry, bool isThere, DetailCategory? detail, Material metal, string member) in Described(skin))
            {
                if (!isThere)
                    continue;
                if (work is null)
                    lists.Checks.Add(entry.NotChecked(NoWind, body.Name));
                else if (detail is null)
                    lists.Checks.Add(entry.NotChecked($"the detail is not described ({member})", body.Name, work.causes.Situation));
                else if (detail.IsOfSteel && BarDesign.KindOf(metal) == MetalKind.Other)
                    lists.Checks.Add(entry.NotChecked($"EN 1993-1-9 does not cover {metal.Name}; give a category with its own source", body.Name, work.causes.Situation));
                else
                    work.AddWorst(entry, metal, detail, [.. body.Bands.SelectMany((band, i) => work.Parts(entry, body, band, first + i))]);
            }
            first += body.Bands.Length;
        }
    }

    /// <summary>What a skin has of each kind, with its detail, its metal and where that is given.</summary>
    private static IEnumerable<(CheckEntry Entry, bool IsThere, DetailCategory? Detail, Material Metal, string Member)> Described(Skin skin)
    {
        yield return (Sheet, skin.Armature is not null, skin.FatigueDetail, skin.Material, $"Skin.{nameof(Skin.FatigueDetail)}");
        yield return (Seams, skin.SheetSeam is not null, skin.FatigueDetail, skin.Material, $"Skin.{nameof(Skin.FatigueDetail)}");
        if (skin.Armature is not { } armature)
            yield break;
        yield return (Armature, true, armature.FatigueDetail, armature.Material, $"Armature.{nameof(StatueFrame.Armature.FatigueDetail)}");
        if (armature.Straps is { } straps)
            yield return (Straps, true, straps.FatigueDetail, straps.Material, $"SaddleStrap.{nameof(SaddleStrap.FatigueDetail)}");
    }

    /// <summary>A part under local pressure.</summary>
    /// <param name="Where">The band, and what of it.</param>
    /// <param name="Inward">Greatest pressure, Pa.</param>
    /// <param name="Suction">Greatest suction, Pa.</param>
    /// <param name="Stress">Its stress under a share of both, with how it comes about; Pa.</param>
    /// <param name="Heat">Its stress in a day's heat, Pa.</param>
    private sealed record Part(string Where, double Inward, double Suction, Func<Working?, double, double> Stress, double Heat = 0);

    private IEnumerable<Part> Parts(CheckEntry entry, BodyModel body, SkinBand band, int number)
    {
        Skin skin = body.Skin!;
        string where = body.BandName(band.Index);
        double inward = winds.Max(wind => wind.Inward(number)), suction = winds.Max(wind => wind.Suction(number)), greater = Math.Max(inward, suction);
        if (entry == Sheet)
        {
            SheetPanel panel = SkinSheet.PanelOf(skin, skin.Armature!, band.MidThickness, where, criteria.Skin, causes.Situation, null);
            yield return new Part(where, inward, suction, (w, share) => SheetChecks.Stress(w, panel, share * inward, share * suction));
        }
        else if (entry == Armature)
        {
            yield return new Part(where, inward, suction, (w, share) => ArmatureChecks.Stress(w, skin.Armature!, share * greater));
        }
        else if (entry == Straps)
        {
            yield return new Part($"{where}, strap", inward, suction, (w, share) => StrapChecks.Stress(w, skin.Armature!, share * suction));
            yield return new Part($"{where}, rivets of a strap", inward, suction, (w, share) => StrapChecks.RivetStress(w, skin.Armature!, share * suction));
        }
        else
        {
            RivetedSeam seam = skin.SheetSeam!;
            double width = skin.Armature?.Spacing.Meters ?? band.Top - band.Bottom, radius = band.MidOutline.Perimeter / (2 * Math.PI);
            double held = seam.HeatRestraint > 0 ? heats.Select(heat => Math.Abs(heat.MostBeyondTower(body, band.Index))).DefaultIfEmpty().Max() : 0;
            double hot = SeamForces.Of(Pressure.Zero, Length.Zero, Length.Zero, Length.Zero, skin.Material, Length.FromMeters(band.MidThickness), TemperatureDelta.FromKelvins(held), seam.HeatRestraint).InPlane.NewtonsPerMeter;
            yield return new Part($"{where}, sheet between rivets", inward, suction, (w, share) => SeamChecks.NetStress(w, seam, band.MidThickness, Membrane(w, share * greater, radius)), SeamChecks.NetStress(null, seam, band.MidThickness, hot));
            yield return new Part(
                $"{where}, rivets", inward, suction, (w, share) => SeamChecks.RivetStress(w, seam, Membrane(w, share * greater, radius), Edge(w, share * suction, width)), SeamChecks.RivetStress(null, seam, hot, 0));
        }

        static double Membrane(Working? w, double p, double R)
        {
            w.Given(p, Dimension.Pressure, "the greater of pressure and suction");
            w.Given(R, Dimension.Length, "radius of a circle of the band's perimeter");
            return w.Let("n", p * R, Dimension.LineLoad, meaning: "in the plane of the sheet");
        }

        static double Edge(Working? w, double p_s, double b_p)
        {
            w.Given(p_s, Dimension.Pressure, "suction");
            w.Given(b_p, Dimension.SmallLength, "width of a panel");
            return w.Let("q", p_s * b_p / 2, Dimension.LineLoad, meaning: "square to it");
        }
    }

    private void AddWorst(CheckEntry entry, Material metal, DetailCategory detail, Part[] parts)
    {
        ValueList<StressBlock>[] blocks = Array.ConvertAll(parts, part => BlocksOf(part, detail));
        double[] damages = Array.ConvertAll(blocks, of => FatigueChecks.Damage(of, detail, causes.GammaMf));
        bool anyHarm = Array.Exists(damages, D => D > 0);
        int worst = Enumerable.Range(0, parts.Length).ToArray().FirstGreatest(i => anyHarm ? damages[i] : blocks[i][0].Range.Pascals);
        Part found = parts[worst];
        var origin = new DemandOrigin(atGust, pressures, _ => [], [found.Inward, found.Suction])
        {
            Besides = [("the wind of fifty years", [found.Inward, found.Suction])],
            Then = w => w.Given("Delta_1", found.Stress(w, 1), Dimension.Stress, "range of the fifty-year gust"),
        };
        int firstCheck = lists.Checks.Count;
        lists.Checks.Add(FatigueChecks.Miner(blocks[worst], causes.Years, detail, causes.GammaMf, entry.Subject(found.Where, causes.Situation)).From(origin));
        lists.Assume([.. causes.AssumptionsFor(metal, detail), local, .. entry == Seams || entry == Straps ? [rivets] : Array.Empty<Assumption>()], firstCheck);
    }

    /// <summary>The gusts of the design life, each with the stress of its own pressure or of a slightly greater one, and its heat.</summary>
    private ValueList<StressBlock> BlocksOf(Part part, DetailCategory detail)
    {
        double share = 1, stress = part.Stress(null, 1);
        var blocks = new List<StressBlock>();
        foreach (StressBlock gust in GustStressSpectrum.Blocks(Pressure.FromPascals(1), causes.Years))
        {
            // What does no harm is not worked out more finely.
            while (share * Step >= Math.Max(gust.Range.Pascals, LeastShare) && stress * causes.GammaMf >= detail.CutOff.Pascals)
                stress = part.Stress(null, share *= Step);
            blocks.Add(gust with { Range = Pressure.FromPascals(stress) });
        }
        if (part.Heat > 0)
            blocks.Add(StressBlock.DailyHeat(Pressure.FromPascals(part.Heat), causes.Years));
        return blocks.ToValueList();
    }
}
