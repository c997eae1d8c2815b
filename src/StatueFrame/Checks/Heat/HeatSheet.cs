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
    private readonly SheetLists lists;
    private readonly string situation;
    private readonly Response response;
    private readonly HeatField heat;

    private HeatSheet(StatueModel model, Criteria criteria, Situation situation, SheetLists lists)
    {
        (this.model, this.criteria, this.lists, this.situation) = (model, criteria, lists, situation.Name);
        response = AloneIn(model, situation);
        heat = response.Heat!;
    }

    /// <summary>Adds the lines of a situation with heat, unless the same heat is on the sheet already.</summary>
    public static void Add(StatueModel model, Criteria criteria, Situation situation, SheetLists lists)
    {
        FactoredAction[] actions = HeatOf(situation);
        if (actions.Length > 0 && model.BarCount > 0 && lists.Heats.Add(ValueList.Create<FactoredAction>(actions)))
            new HeatSheet(model, criteria, situation, lists).Add();
    }

    /// <summary>The response to the heat of a situation alone.</summary>
    private static Response AloneIn(StatueModel model, Situation situation) =>
        model.Respond(situation with { Actions = ValueList.Create<FactoredAction>(HeatOf(situation)), Factors = [] });

    private static FactoredAction[] HeatOf(Situation situation) => [.. situation.Actions.Where(a => a.Action is TemperatureAction)];

    private void Add()
    {
        int firstCheck = lists.Checks.Count;
        if (response.WorstBar is { } worst)
            lists.Results.Add(new ResultLine(situation, "greatest bar stress by heat alone", worst.Stress.Pascals, Dimension.Stress, worst.Where));
        AddBars();
        AddJoints();
        foreach (BodyModel body in model.Bodies.Where(b => b.Rings.Length > 0))
            AddRestraint(body);
        foreach (BodyModel body in model.Bodies.Where(b => b.Skin?.SheetSeam is { HeatRestraint: > 0 }))
            AddSeams(body, body.Skin!, body.Skin!.SheetSeam!);
        lists.Assume(Assumptions(), firstCheck);
    }

    private IEnumerable<Assumption> Assumptions()
    {
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
        foreach ((RingElement ring, int band) in model.Rings)
        {
            Check? stress = null, deflection = null, travel = null;
            Standoff first = ring.Bars[0].Bar.Place.Standoff;
            bool alike = first.Slide == SaddleSlide.None && Array.TrueForAll(ring.Bars, b => ReferenceEquals(b.Bar.Place.Standoff, first));
            int most = response.BarEnvelope.WorstOfRing(firstBar, ring.Bars.Length) - firstBar;
            for (int i = 0; i < ring.Bars.Length; i++)
            {
                BarModel bar = ring.Bars[i];
                BarResult result = response.Bars[firstBar + i];
                Standoff standoff = result.Standoff;
                BarDesign design = BarDesign.For(standoff.Material, criteria.BarCode) with { AllowableFraction = criteria.BarStressFraction ?? SituationSheet.DefaultBarStressFraction };
                if (!alike || i == most)
                    KeepWorse(ref stress, HeatChecks.BarStress(WithFriction(ring, bar, result, band), design));
                KeepWorse(ref deflection, HeatChecks.Deflection(result.Deflection, result.Length, result.Where, situation));
                if (standoff.Slide == SaddleSlide.None)
                    continue;
                slides = true;
                lacksFriction |= standoff.Saddle is null;
                if (standoff.Saddle?.Travel is { } free)
                    KeepWorse(ref travel, HeatChecks.SaddleTravel(Length.FromMeters(response.Cases[0].SlipOf(ring, bar)), free, standoff.Saddle.Reserve, result.Where, situation));
                else
                    withoutTravel ??= result.Where;
            }
            lists.Checks.Add(stress!);
            lists.Checks.Add(deflection!);
            if (travel is not null)
                lists.Checks.Add(travel);
            firstBar += ring.Bars.Length;
        }
        if (criteria.BarStressFraction is null)
            lists.Assume([SituationSheet.AllowableStress], firstCheck);
        if (lacksFriction)
            lists.Assume([noFriction], firstCheck);
        if (withoutTravel is not null)
            NotChecked("heat.saddle-travel", "travel of a saddle with heat", $"the travel is not described (Saddle.{nameof(Saddle.Travel)})", withoutTravel);
        else if (!slides)
            NotChecked("heat.saddle-travel", "travel of a saddle with heat", $"no saddle slides (Standoff.{nameof(Standoff.Slide)})", "");
    }

    /// <summary>The bar with the forces of its worst stress; a saddle that slides drags it along as far as its friction reaches.</summary>
    private LoadedBar WithFriction(RingElement ring, BarModel bar, BarResult result, int band)
    {
        LoadedBar loaded = LoadedBar.Of(result, situation);
        Standoff standoff = result.Standoff;
        if (standoff.Slide == SaddleSlide.None || standoff.Saddle is not { } saddle)
            return loaded;
        Span<double> forces = stackalloc double[12], drag = stackalloc double[12];
        response.Cases[0].ForcesOf(ring, bar, band, result.StressAssumption, forces);
        HeatChecks.Friction(loaded, bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Slide), response.Cases[0].SlipOf(ring, bar), saddle.SlidingForce, drag);
        // Drag acts against the slide, either way: of the two signs the worse counts.
        Span<double> plus = stackalloc double[12], minus = stackalloc double[12];
        for (int i = 0; i < 12; i++)
            (plus[i], minus[i]) = (forces[i] + drag[i], forces[i] - drag[i]);
        var worse = new BarForces(bar.Bar.Stiffness.NormalStress(plus) >= bar.Bar.Stiffness.NormalStress(minus) ? plus : minus);
        return loaded with { AtTower = BarSectionForces.AtTower(worse), AtSkin = BarSectionForces.AtSkin(worse) };
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
        Check? worst = null;
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
                KeepWorse(ref worst, Restraint(body, band, Math.Max(Math.Abs(before), Math.Abs(above)), around));
            }
        }
        int firstCheck = lists.Checks.Count;
        lists.Checks.Add(worst!);
        lists.Assume([skinFraction], firstCheck);
    }

    /// <summary>The seam of a body that is worst off with the part of the heat that it holds.</summary>
    private void AddSeams(BodyModel body, Skin skin, RivetedSeam seam)
    {
        BarDesign rules = SkinSheet.SeamDesign(skin, criteria.Skin);
        Check? worst = null;
        for (int i = 0; i < body.Bands.Length; i++)
        {
            SkinBand band = body.Bands[i];
            KeepWorse(ref worst, SeamChecks.Heat(
                seam, skin.Material, Length.FromMeters(band.MidThickness), TemperatureDelta.FromKelvins(heat.MostBeyondTower(body, i)),
                Length.FromMeters(band.Top - band.Bottom), rules, body.BandName(i), situation));
        }
        int firstCheck = lists.Checks.Count;
        lists.Checks.Add(worst!);
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

    private static void KeepWorse(ref Check? worst, Check found)
    {
        if (worst is null || Extremes.Exceeds(found.Utilization ?? double.MaxValue, worst.Utilization ?? double.MaxValue))
            worst = found;
    }
}
