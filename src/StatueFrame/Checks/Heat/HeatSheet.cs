using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Writes what the heat of one situation does by itself into a sheet: stress and deflection of bars, travel of saddles,
/// gaps of joints, the stress of a held skin. What it adds to other actions is in the checks of the situation.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class HeatSheet
{
    private const double SkinFraction = 1 / 1.5;

    private static readonly Source page = Source.Assumed("heat");
    private static readonly Assumption thinRing = new("strain of the skin round a band", "bends a thin ring of even stiffness, each height by itself, no more than it must to close", page);
    private static readonly Assumption barChange = new("temperature of standoffs", "mean of skin and tower", page);
    private static readonly Assumption untied = new("growth of the skin along its axis", "each band by itself, as neither seams nor joints are described", page);
    private static readonly Assumption skinFraction = new("allowable stress of a skin held against heat", "yield or proof strength / 1.5", Source.CommonPractice);
    private static readonly Assumption heldByTower = new("what holds the sheets at seams against heat", "keeps to the tower's length, on the side of the band that differs most", page);
    private static readonly Assumption noFriction = new("friction of sliding saddles", "none, as it is not described", page);

    private readonly StatueModel model;
    private readonly Criteria criteria;
    private readonly SheetWriter lists;
    private readonly string situation;
    private readonly Response response;
    private readonly HeatField heat;

    private HeatSheet(StatueModel model, Criteria criteria, Situation situation, SheetWriter lists)
    {
        (this.model, this.criteria, this.lists, this.situation) = (model, criteria, lists, situation.Name);
        response = AloneIn(model, situation);
        heat = response.Heat!;
    }

    /// <summary>Adds the lines of a situation with heat, unless the same heat is on the sheet already.</summary>
    public static void Add(StatueModel model, Criteria criteria, Situation situation, SheetWriter lists)
    {
        ValueList<FactoredAction> actions = HeatOf(situation);
        if (actions.Count > 0 && model.BarCount > 0 && lists.HeatOwners.GetValueOrDefault(actions, situation.Name) == situation.Name)
            new HeatSheet(model, criteria, situation, lists).Add();
    }

    /// <summary>The response to the heat of a situation alone.</summary>
    private static Response AloneIn(StatueModel model, Situation situation) =>
        model.Respond(situation with { Actions = HeatOf(situation), Factors = [] });

    internal static ValueList<FactoredAction> HeatOf(Situation situation) => situation.Actions.Where(a => a.Action is TemperatureAction).ToValueList();

    private void Add()
    {
        if (response.WorstBar is { } worst)
            lists.Results.Add(new ResultLine(situation, "greatest bar stress by heat alone", worst.Stress.Pascals, Dimension.Stress, worst.Where));
        AddBars();
        AddJoints();
        foreach (BodyModel body in model.Bodies.Where(b => b.Rings.Length > 0))
            AddRestraint(body);
        foreach (BodyModel body in model.Bodies.Where(b => b.Skin?.SheetSeam is { HeatRestraint: > 0 }))
            AddSeams(body, body.Skin!, body.Skin!.SheetSeam!);
    }

    /// <summary>What is taken where heat acts, by every check of a situation that has it.</summary>
    public static IEnumerable<Assumption> Assumptions(StatueModel model, Response response)
    {
        if (response.Heat is not { } heat || model.BarCount == 0)
            yield break;
        yield return thinRing;
        yield return barChange;
        if (heat.Fields.Any(f => f.Body.Skin!.Joints is null && !f.Body.HasSeams && f.Body.Bands.Length > 1))
            yield return untied;
        foreach (TemperatureAction action in response.Situation.Actions.Select(a => a.Action).OfType<TemperatureAction>())
        {
            if (action.TowerExpansion is null && model.Bodies.Any(b => b.Tower.Segments.Any(s => TowerGrowth.OwnExpansion(s) is null)))
                yield return new Assumption("expansion of cores given by their stiffness", Invariant($"{1e6 * TemperatureAction.CoreExpansion:0} ppm/K"), new Source("EN 1991-1-5:2003", "Table C.1, structural steel, from memory"));
            if (action.TowerSunRise.Kelvins > 0 && model.Bodies.Any(TowerGrowth.LacksWidth))
                yield return new Assumption("tower segments without a plan", "do not bend with the sun on one side", page);
        }
    }

    private void AddBars()
    {
        int firstBar = 0;
        bool slides = false, lacksFriction = false;
        string? withoutTravel = null;
        int firstCheck = lists.Checks.Count;
        foreach ((int number, (RingElement ring, int band)) in model.Rings.Index())
        {
            List<Check> deflection = [], travel = [];
            var stress = new Worst<BarLoad>(HeatChecks.BarStressEntry);
            for (int i = 0; i < ring.Bars.Length; i++)
            {
                BarModel bar = ring.Bars[i];
                BarResult result = response.Bars[firstBar + i];
                Standoff standoff = result.Standoff;
                LookAtBar(ref stress, number, bar);
                deflection.Add(HeatChecks.Deflection(result.Deflection, result.Length, result.Where, situation));
                if (standoff.Slide == SaddleSlide.None)
                    continue;
                slides = true;
                lacksFriction |= standoff.Saddle is null;
                if (standoff.Saddle?.Travel is { } free)
                    travel.Add(HeatChecks.SaddleTravel(Length.FromMeters(response.Cases[0].SlipOf(ring, bar)), free, standoff.Saddle.Reserve, result.Where, situation));
                else
                    withoutTravel ??= result.Where;
            }
            lists.Add(stress);
            lists.AddWorst(deflection);
            lists.AddWorst(travel);
            firstBar += ring.Bars.Length;
        }
        if (criteria.BarStressFraction is null)
            lists.Assume([BarSheet.AllowableStress], firstCheck);
        if (lacksFriction)
            lists.Assume([noFriction], firstCheck);
        if (withoutTravel is not null)
            NotChecked("heat.saddle-travel", "travel of a saddle with heat", $"the travel is not described (Saddle.{nameof(Saddle.Travel)})", withoutTravel);
        else if (!slides)
            NotChecked("heat.saddle-travel", "travel of a saddle with heat", $"no saddle slides (Standoff.{nameof(Standoff.Slide)})", "");
    }

    /// <summary>A bar under every bound; a saddle that slides drags it along.</summary>
    private void LookAtBar(ref Worst<BarLoad> stress, int number, BarModel bar)
    {
        (RingElement ring, int band) = model.Rings[number];
        Span<double> forces = stackalloc double[12];
        CheckedBar rules = BarSheet.Of(bar, number, criteria);
        foreach (SkinAssumption skin in SkinBounds.All)
        {
            if (response.Cases[0].ForcesOf(ring, bar, band, skin, forces))
                stress.Look(BarLoad.Of(rules, skin, SaddleDrag.Worse(BarEnds.Of(forces), SaddleDrag.InHeat(response.Cases[0], ring, bar, skin, 1), rules), response.Cases[0].State));
        }
    }

    private void AddJoints()
    {
        bool any = false;
        foreach (BodyModel body in model.Bodies.Where(b => b.Bands.Length > 0))
        {
            SkinField[] fields = [.. heat.Fields.Where(f => f.Body == body)];
            foreach (SkinJoint joint in body.Skin!.Joints ?? [])
            {
                int above = Array.FindIndex(fields, f => Skin.IsAt(joint, f.Bottom));
                any = true;
                lists.Checks.Add(HeatChecks.JointGap(Length.FromMeters(heat.Closing(fields[above - 1], fields[above])), joint.Gap, joint.Reserve, $"joint under {body.BandName(fields[above].First)}", situation));
            }
        }
        if (!any)
            NotChecked("heat.joint-gap", "gap of joints in the skin", model.Bodies.All(b => b.Skin?.Joints is null) ? $"joints in the skin are not described (Skin.{nameof(Skin.Joints)})" : "the skin has no joints", "");
    }

    /// <summary>The band whose sheet is stressed most by the bars of its body, each forced alone.</summary>
    private void AddRestraint(BodyModel body)
    {
        List<Check> all = [];
        Vector3D axis = body.Axes.Axes.Z;
        foreach (SkinField field in heat.Fields.Where(f => f.Body == body))
        {
            double above = 0;
            for (int band = field.Last; band >= field.First; band--)
            {
                double before = above, around = 0;
                foreach (RingElement ring in body.Rings.Where(r => r.Band == band))
                {
                    foreach (BarModel bar in ring.Bars)
                    {
                        Vector3D force = response.Cases[0].HeatForce(ring, bar);
                        above += force.Dot(axis);
                        around += Math.Abs(force.Dot(bar.Bar.Place.Outward));
                    }
                }
                all.Add(Restraint(body, band, Math.Max(Math.Abs(before), Math.Abs(above)), around));
            }
        }
        int firstCheck = lists.Checks.Count;
        lists.AddWorst(all);
        lists.Assume([skinFraction], firstCheck);
    }

    /// <summary>The seam of a body that is worst off with the part of the heat that it holds.</summary>
    private void AddSeams(BodyModel body, Skin skin, RivetedSeam seam)
    {
        BarDesign rules = SkinSheet.SeamDesign(skin, criteria);
        List<Check> all = [];
        for (int i = 0; i < body.Bands.Length; i++)
        {
            SkinBand band = body.Bands[i];
            all.Add(SeamChecks.Heat(
                seam, skin.Material, Length.FromMeters(band.MidThickness), TemperatureDelta.FromKelvins(heat.MostBeyondTower(body, i)),
                Length.FromMeters(band.Top - band.Bottom), rules, body.BandName(i), situation));
        }
        int firstCheck = lists.Checks.Count;
        lists.AddWorst(all);
        lists.Assume(criteria.Skin.StressFraction is null ? [heldByTower, SkinSheet.StressFraction] : [heldByTower], firstCheck);
    }

    private Check Restraint(BodyModel body, int index, double along, double around)
    {
        SkinBand band = body.Bands[index];
        Skin skin = body.Skin!;
        (double T, double alpha_tower) = heat.MostHeld(body, index);
        var movement = new HeatMovement
        {
            Skin = skin.Material.ThermalExpansion,
            Tower = CoefficientOfThermalExpansion.FromPerKelvin(alpha_tower),
            SkinChange = TemperatureDelta.FromKelvins(T),
            TowerChange = TemperatureDelta.FromKelvins(heat.TowerChange),
            Distance = Length.Zero,
        };
        return HeatChecks.Restraint(
            Force.FromNewtons(along), Area.FromSquareMeters(band.MidOutline.Perimeter * band.MidThickness),
            Force.FromNewtons(around), Area.FromSquareMeters((band.Top - band.Bottom) * band.MidThickness),
            movement, skin.Material, SkinFraction, body.BandName(index), situation);
    }

    private void NotChecked(string id, string title, string reason, string where) =>
        lists.Checks.Add(Check.NotChecked(new CheckSubject(id, title, where, situation), reason, page));
}
