using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// Writes what gusts, vortices and local pressures do in one situation into a sheet: whether the gust factor in use is
/// enough, what happens across the wind, how people feel it, and what the skin feels.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class WindSheet(StatueModel model, Criteria criteria, ModalResponse modes, Response response, WindAction wind, SheetLists lists)
{
    /// <summary>Modes that wind can excite are looked for among at least this many.</summary>
    private const int ModesForVortices = 20;

    private static readonly Assumption acrossLimb = new("wind on the skin of limbs", "in full across the limb's axis, from all round", Source.CommonPractice);

    private static readonly ValueList<Angle> aroundLimb = Headings.Evenly(72);

    private readonly string name = response.Situation.Name;

    public void Add()
    {
        lists.Checks.Add(DynamicChecks.RigidForWind(modes.First, wind, name));
        if (model.BandCount == 0)
            return;
        int firstCheck = lists.Checks.Count;
        AddGustFactor();
        if (lists.WindsAcross.Add(wind))
            AddAcross();
        AddPlatforms();
        AddLocalPressure();
        lists.Assume(wind.Assumptions(model.AllBandsHaveCoefficient), firstCheck);
    }

    /// <summary>The gust factor in use against that of the standard, fed by the statue's own modes.</summary>
    private void AddGustFactor()
    {
        Angle heading = response.OverturningGoverns.Heading!.Value;
        if (GustFactors.Asce7(model, modes, wind, heading, criteria.Damping) is { } asce)
        {
            AddGustCheck(asce.Factor, asce.IsFlexible ? "G_f" : "G", Source.Asce7_22(asce.IsFlexible ? "26.11.5" : "26.11.4"), heading, asce.Assumptions);
        }
        else if (GustFactors.En1991(model, modes, wind, heading, criteria.Damping) is { } en)
        {
            AddGustCheck(en.AnnexB.Factor, "c_s c_d, Annex B", Source.En1991_1_4("6.3.1 (6.1), Annex B"), heading, en.Assumptions);
            lists.Results.Add(new ResultLine(name, "gust factor c_s c_d, Annex C", en.AnnexC.Factor, Dimension.Number, Headings.Describe(heading)));
        }
    }

    private void AddGustCheck(double needed, string symbol, Source source, Angle heading, ValueList<Assumption> assumed)
    {
        lists.Results.Add(new ResultLine(name, $"gust factor {symbol}", needed, Dimension.Number, Headings.Describe(heading)));
        lists.Checks.Add(DynamicChecks.GustFactor(wind.GustFactorInUse, needed, source, name));
        lists.Assume(assumed, lists.Checks.Count - 1);
    }

    /// <summary>Vortices and galloping, which depend on the wind alone: once for all situations with the same wind.</summary>
    private void AddAcross()
    {
        AcrossWindInput input = criteria.AcrossWind ?? new AcrossWindInput();
        input = input with { Damping = input.Damping ?? criteria.Damping };
        bool canBeChecked = input is { Damping: not null, Sections.Count: > 0 } && modes.Modes.Count < ModesForVortices;
        ModalResponse many = canBeChecked ? model.Modes(ModesForVortices) : modes;
        AcrossWindReport report = AcrossWind.Of(model, many, wind, input, name);
        lists.Vortices[wind] = (many, report);
        lists.Checks.AddRange(report.Checks);
        lists.Results.AddRange(report.Results);
        if (report.Checks.Any(check => check.Verdict != Verdict.NotChecked))
            lists.Assumptions.AddRange(report.Assumptions);
        lists.Warnings.AddRange(report.Warnings);
    }

    /// <summary>Acceleration of platforms in this situation's wind, when it is the one they are judged by.</summary>
    private void AddPlatforms()
    {
        foreach (Platform platform in criteria.Platforms)
        {
            if (platform.Situation != name)
                continue;
            Angle heading = response.GreatestSway(platform.Point).Heading!.Value;
            GustResponse gusts = GustResponse.Of(model, modes, wind, heading, criteria.Damping);
            GustMovement movement = gusts.Of(platform.Point);
            lists.Results.Add(new ResultLine(name, $"peak acceleration of {platform.Point}", movement.Acceleration.Peak.MetersPerSecondSquared, Dimension.Acceleration, Headings.Describe(heading)));
            lists.Checks.Add(ComfortChecks.Sway(platform.Point, movement.Acceleration.Peak, modes.First.Frequency, platform.Use, name));
            lists.Assume(gusts.Assumptions, lists.Checks.Count - 1);
        }
    }

    /// <summary>The greatest local pressure and suction on the skins, and what their bars feel of them; the situation's factor is in both.</summary>
    private void AddLocalPressure()
    {
        foreach (BodyModel body in model.Bodies.Where(b => b.Bands.Length > 0))
            AddLocalPressure(body);
    }

    private void AddLocalPressure(BodyModel body)
    {
        double factor = response.Situation.Wind!.Factor, length = body.Bands[^1].Top - body.Bands[0].Bottom;
        bool isTrunk = body == model.Bodies[0];
        var local = new CladdingWind { Profile = wind.Profile };
        CladdingPressure[] found = Array.ConvertAll(body.Bands, band =>
            local.OnStrip(band, 0, 1, Math.Max(0, model.Statue.BaseAboveGround.Meters + Highest(body, band)), length, isTrunk ? wind.Headings : aroundLimb));
        int[] bands = [.. Enumerable.Range(0, found.Length)];
        int inward = bands.FirstGreatest(i => found[i].Inward.Pascals), suction = bands.FirstGreatest(i => found[i].Suction.Pascals);
        string skin = isTrunk ? "the skin" : $"the skin of {body.Name}";
        AddPressure($"greatest local pressure on {skin}", factor * found[inward].Inward.Pascals, found[inward].InwardHeading, inward);
        AddPressure($"greatest local suction on {skin}", factor * found[suction].Suction.Pascals, found[suction].SuctionHeading, suction);
        Assumption[] across = isTrunk ? [] : [acrossLimb];
        lists.Assumptions.AddRange([.. found.SelectMany(pressure => pressure.Assumptions), .. across]);
        int widest = bands.FirstGreatest(i => body.Bands[i].MidOutline.Perimeter), narrowest = bands.FirstGreatest(i => -body.Bands[i].MidOutline.Perimeter);
        lists.Warnings.AddRange([.. found[widest].Warnings, .. found[narrowest].Warnings]);
        if (response.Situation.LimitState != LimitState.Strength)
            return;
        new SkinSheet(criteria, lists, name).AddBands(body, [.. found.Select(p => (factor * Math.Max(0, p.Inward.Pascals), factor * Math.Max(0, p.Suction.Pascals), (ValueList<Assumption>)[.. p.Assumptions, .. across]))]);
        foreach (RingElement ring in body.Rings)
        {
            CladdingPressure pressure = found[ring.Band];
            lists.Checks.Add(BarChecks.LocalPressure(ring, body.Bands[ring.Band], factor * Math.Max(pressure.Inward.Pascals, pressure.Suction.Pascals), name, criteria.BarStressFraction ?? SituationSheet.DefaultBarStressFraction));
            Assumption[] allowable = criteria.BarStressFraction is null ? [SituationSheet.AllowableStress] : [];
            lists.Assume([.. pressure.Assumptions, .. across, .. allowable], lists.Checks.Count - 1);
        }

        void AddPressure(string line, double pressure, Angle heading, int band) =>
            lists.Results.Add(new ResultLine(name, line, pressure, Dimension.Pressure, isTrunk ? $"{body.BandName(band)}, {Headings.Describe(heading)}" : body.BandName(band)));
    }

    /// <summary>Elevation of a band's highest point, m; of its upper edge on the trunk.</summary>
    private static double Highest(BodyModel body, SkinBand band) => Math.Max(Highest(body, band.BottomOutline, band.Bottom), Highest(body, band.TopOutline, band.Top));

    private static double Highest(BodyModel body, PlanCurve outline, double z) =>
        Enumerable.Range(0, outline.X.Length).Max(i => body.Axes.ToGlobal(new Vector3D(outline.X[i], outline.Y[i], z)).Z);
}
