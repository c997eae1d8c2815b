using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Writes the checks of sheet, armature and seams into a sheet.</summary>
/// <remarks>For one thread; used once a situation.</remarks>
internal sealed class SkinSheet(Criteria criteria, SheetWriter lists, string situation)
{
    internal static readonly Assumption StressFraction = new("allowable stress of sheet, armature and seams", "proof or yield strength / 1.5", Source.CommonPractice);

    private static readonly Assumption evenRivets = new("rivets of straps", "share its pull evenly; the strap's edge does not pry", Source.Assumed("sheets"));

    private static readonly DemandState localPressure = new("local pressure and suction on the band");

    private static readonly (string, Dimension)[] seamForces = [("n", Dimension.LineLoad), ("q", Dimension.LineLoad)];

    private readonly SkinDesign design = criteria.Skin;

    /// <summary>The situation's local pressures on a body's bands, with its heat where seams hold it.</summary>
    /// <param name="body">The trunk or a limb.</param>
    /// <param name="bands">Numbers of its bands in the statue.</param>
    /// <param name="local">The pressures.</param>
    /// <param name="heat">The heat; null without.</param>
    public void AddBands(BodyModel body, IReadOnlyList<int> bands, LocalWind local, HeatField? heat)
    {
        Skin skin = body.Skin!;
        PlateBending? known = skin.Armature is { } a ? PanelOf(skin, a, body.Bands[0].MidThickness, "", null).Bending : null;
        for (int i = 0; i < body.Bands.Length; i++)
        {
            int firstCheck = lists.Checks.Count;
            double inward = local.Inward(bands[i]), suction = local.Suction(bands[i]);
            SkinBand band = body.Bands[i];
            string where = body.BandName(i);
            if (skin.Armature is { } armature)
                AddBand(skin, armature, band, where, Pressure.FromPascals(inward), Pressure.FromPascals(suction), known!);
            if (skin.SheetSeam is { } seam)
                AddSeam(body, seam, band, where, Pressure.FromPascals(Math.Max(inward, suction)), Pressure.FromPascals(suction), heat);
            lists.Assume([.. local.Assumptions(bands[i]), .. Assumed()], firstCheck);
        }
    }

    /// <summary>What depends on the description alone: denting, sag, frequency, buckling, and the rules for rivets; once a statue.</summary>
    public static void AddAtRest(StatueModel model, Criteria criteria, SheetWriter lists)
    {
        var sheet = new SkinSheet(criteria, lists, "");
        foreach (BodyModel body in model.Bodies.Where(b => b.Bands.Length > 0))
        {
            sheet.AddAtRest(body);
            if (criteria.Fine is null)
                lists.Checks.Add(FineSheet.ShellStress.NotChecked(FineSheet.ShellStress.Needs, body.Name));
        }
    }

    private void AddAtRest(BodyModel body)
    {
        Skin skin = body.Skin!;
        double thinnest = body.Bands.Min(b => b.MidThickness), tallest = body.Bands.Max(b => b.Top - b.Bottom);
        int firstCheck = lists.Checks.Count;
        if (skin.Armature is { } armature)
        {
            SheetPanel panel = PanelOf(skin, armature, thinnest, body.Name, null);
            if (armature.Straps is { } straps)
                lists.Checks.Add(StrapChecks.Distances(straps, body.Name));
            lists.Run(ArmatureChecks.SpanEntry, ArmatureChecks.Spans(body, armature));
            lists.Checks.Add(SheetChecks.Sag(panel, design.SagLimit));
            lists.Checks.Add(SheetChecks.Buckling(panel, Length.FromMeters(tallest), design.BucklingSafety));
            lists.Checks.Add(design.MaintenanceLoad is { } load
                ? SheetChecks.Denting(panel, load, design.MaintenancePatch, design.AllowedDent)
                : Check.NotChecked(panel.Subject("sheet.denting", "dent left by a load on a panel"), "no maintenance load is given", Source.User));
            lists.Checks.Add(design.LeastPanelFrequency is { } least
                ? SheetChecks.PanelFrequency(panel, least)
                : Check.NotChecked(panel.Subject("sheet.frequency", "lowest frequency of a panel"), "no least frequency is given", Source.User));
            lists.Results.Add(new ResultLine("sheet panels", $"lowest frequency, {body.Name}", SheetChecks.NaturalFrequency(panel).Hertz, Dimension.Frequency, Invariant($"{armature.Edges.ToString().ToLowerInvariant()} edges")));
        }
        else
        {
            lists.Checks.Add(Check.NotChecked(new CheckSubject("sheet.panel-bending", "sheet between standoffs", body.Name), "the skin's armature is not described", Source.User));
            lists.Checks.Add(Check.NotChecked(new CheckSubject("armature.bending", "armature between standoffs", body.Name), "the skin's armature is not described", Source.User));
        }
        if (skin.SheetSeam is { } seam)
            lists.Checks.Add(SeamChecks.Pitch(seam, Length.FromMeters(thinnest), body.Name));
        else
            lists.Checks.Add(Check.NotChecked(new CheckSubject("seams.shear", "seams and their rivets", body.Name), "the skin's seams are not described", Source.User));
        lists.Assume([new Assumption("safety of sheet against buckling under its own weight", Invariant($"{design.BucklingSafety:0.##}"), Source.CommonPractice)], firstCheck);
    }

    private void AddBand(Skin skin, Armature armature, SkinBand band, string where, Pressure inward, Pressure suction, PlateBending known)
    {
        SheetPanel panel = PanelOf(skin, armature, band.MidThickness, where, known);
        Pressure greater = Pressure.FromPascals(Math.Max(inward.Pascals, suction.Pascals));
        lists.Checks.Add(SheetChecks.PanelBending(panel, inward, suction, Fraction));
        lists.Checks.Add(SheetChecks.PanelDeflection(panel, inward, suction, armature.DeflectionLimit));
        lists.Checks.Add(ArmatureChecks.Bending(armature, greater, Pressure.FromPascals(panel.Weight), Fraction, where, situation));
        lists.Checks.Add(ArmatureChecks.Deflection(armature, greater, where, situation));
        if (armature.Straps is null)
            return;
        int firstCheck = lists.Checks.Count;
        lists.Checks.AddRange(StrapChecks.All(skin, Length.FromMeters(band.MidThickness), suction, SeamDesign(skin, criteria), Fraction, where, situation));
        lists.Assume([evenRivets], firstCheck);
    }

    private void AddSeam(BodyModel body, RivetedSeam seam, SkinBand band, string where, Pressure greater, Pressure suction, HeatField? field)
    {
        Skin skin = body.Skin!;
        BarDesign rules = SeamDesign(skin, criteria);
        Length thickness = Length.FromMeters(band.MidThickness), width = skin.Armature?.Spacing ?? Length.FromMeters(band.Top - band.Bottom);
        double heat = seam.HeatRestraint > 0 ? field?.MostBeyondTower(body, band.Index) ?? 0 : 0;
        SeamForces forces = SeamForces.Of(
            greater, Length.FromMeters(band.MidOutline.Perimeter / (2 * Math.PI)), width, Length.FromMeters(band.Top - band.Bottom), skin.Material, thickness,
            TemperatureDelta.FromKelvins(heat), seam.HeatRestraint);
        SeamForces outward = SeamForces.Of(suction, Length.Zero, width, Length.Zero, skin.Material, thickness);
        forces = forces with { Outward = outward.Outward };
        DemandOrigin origin = OriginOf(forces, greater.Pascals, suction.Pascals, band, skin.Material);
        lists.Checks.Add(SeamChecks.Shear(seam, skin.Material, thickness, forces, rules, where, situation).From(origin));
        lists.Checks.Add(SeamChecks.Bearing(seam, skin.Material, thickness, forces, rules, where, situation).From(origin));
        lists.Checks.Add(SeamChecks.NetSection(seam, skin.Material, thickness, forces, rules, where, situation).From(origin));
        lists.Checks.Add(SeamChecks.PullThrough(seam, skin.Material, thickness, forces, rules, where, situation).From(origin));
    }

    /// <summary>What the forces on a seam are the sums of: membrane of the pressure, hanging sheet, heat; and suction.</summary>
    private static DemandOrigin OriginOf(SeamForces forces, double greater, double suction, SkinBand band, Material sheet)
    {
        double radius = band.MidOutline.Perimeter / (2 * Math.PI), membrane = greater * radius;
        double hanging = sheet.Density.KilogramsPerCubicMeter * SelfWeight.Gravity * band.MidThickness * (band.Top - band.Bottom);
        return new DemandOrigin(localPressure, seamForces, _ => [], [forces.InPlane.NewtonsPerMeter, forces.Outward.NewtonsPerMeter])
        {
            Besides =
            [
                ("the greater pressure times R", [membrane, 0]), ("sheet of the band, which hangs on it", [hanging, 0]), ("suction on half the panel's width", [0, forces.Outward.NewtonsPerMeter]),
            ],
            Rest = "heat that is held back",
            Then = w =>
            {
                w.Given("p", greater, Dimension.Pressure, "local pressure or suction with its factor, the greater");
                w.Given("p_s", suction, Dimension.Pressure, "local suction with its factor");
                w.Given("R", radius, Dimension.Length, "radius of a circle of the band's perimeter");
            },
        };
    }

    private SheetPanel PanelOf(Skin skin, Armature armature, double thickness, string where, PlateBending? known) => PanelOf(skin, armature, thickness, where, design, situation, known);

    internal static SheetPanel PanelOf(Skin skin, Armature armature, double thickness, string where, SkinDesign design, string situation, PlateBending? known) => new()
    {
        Length = armature.PanelLength,
        Width = armature.Spacing,
        Thickness = Length.FromMeters(thickness),
        Material = skin.Material,
        Edges = armature.Edges,
        EdgesHeldInPlane = design.PanelsHeldInPlane,
        Radius = armature.PanelRadius,
        Where = where,
        Situation = situation,
        KnownBending = known,
    };

    /// <summary>Rules and factors for the seams of a skin.</summary>
    internal static BarDesign SeamDesign(Skin skin, Criteria criteria) =>
        criteria.Apply(BarDesign.For(skin.Material, criteria.Skin.SeamCode) with { AllowableFraction = FractionOf(criteria.Skin) });

    private double Fraction => FractionOf(design);

    internal static double FractionOf(SkinDesign design) => design.StressFraction ?? 1 / 1.5;

    private IEnumerable<Assumption> Assumed() => AssumedBy(design);

    internal static IEnumerable<Assumption> AssumedBy(SkinDesign design)
    {
        if (design.StressFraction is null)
            yield return StressFraction;
    }
}
