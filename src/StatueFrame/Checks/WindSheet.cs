using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

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

    private readonly string name = response.Situation.Name;

    public void Add()
    {
        Check rigid = DynamicChecks.RigidForWind(modes.First, wind, name);
        lists.Checks.Add(rigid);
        if (model.BandCount == 0)
            return;
        AddGustFactor();
        if (lists.WindsAcross.Add(wind))
            AddAcross();
        AddPlatforms();
        AddLocalPressure();
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
        lists.Assumptions.AddRange(assumed);
        lists.Checks.Add(DynamicChecks.GustFactor(wind.GustFactorInUse, needed, source, name).Assuming([.. assumed.Select(a => a.Short)]));
    }

    /// <summary>Vortices and galloping, which depend on the wind alone: once for all situations with the same wind.</summary>
    private void AddAcross()
    {
        AcrossWindInput input = criteria.AcrossWind ?? new AcrossWindInput();
        input = input with { Damping = input.Damping ?? criteria.Damping };
        bool canBeChecked = input is { Damping: not null, Sections.Count: > 0 } && modes.Modes.Count < ModesForVortices;
        ModalResponse many = canBeChecked ? model.Modes(ModesForVortices) : modes;
        AcrossWindReport report = AcrossWind.Of(model, many, wind, input, name);
        lists.Checks.AddRange(report.Checks);
        lists.Results.AddRange(report.Results);
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
            lists.Assumptions.AddRange(gusts.Assumptions);
            lists.Checks.Add(ComfortChecks.Sway(platform.Point, movement.Acceleration.Peak, modes.First.Frequency, platform.Use, name)
                .Assuming([.. gusts.Assumptions.Select(a => a.Short)]));
        }
    }

    /// <summary>The greatest local pressure and suction on the trunk's skin, with the situation's factor.</summary>
    private void AddLocalPressure()
    {
        BodyModel trunk = model.Bodies[0];
        if (trunk.Bands.Length == 0)
            return;
        double factor = response.Situation.Wind!.Factor, length = trunk.Bands[^1].Top - trunk.Bands[0].Bottom;
        var local = new CladdingWind { Profile = wind.Profile };
        (CladdingPressure Pressure, int Band)? inward = null, suction = null;
        for (int i = 0; i < trunk.Bands.Length; i++)
        {
            SkinBand band = trunk.Bands[i];
            double top = Math.Max(0, model.Statue.BaseAboveGround.Meters + band.Top);
            CladdingPressure found = local.OnStrip(band, 0, 1, top, length, wind.Headings);
            if (inward is null || Extremes.Exceeds(found.Inward.Pascals, inward.Value.Pressure.Inward.Pascals))
                inward = (found, i + 1);
            if (suction is null || Extremes.Exceeds(found.Suction.Pascals, suction.Value.Pressure.Suction.Pascals))
                suction = (found, i + 1);
        }
        lists.Results.Add(new ResultLine(name, "greatest local pressure on the skin", factor * inward!.Value.Pressure.Inward.Pascals, Dimension.Pressure, Invariant($"band {inward.Value.Band}, {Headings.Describe(inward.Value.Pressure.InwardHeading)}")));
        lists.Results.Add(new ResultLine(name, "greatest local suction on the skin", factor * suction!.Value.Pressure.Suction.Pascals, Dimension.Pressure, Invariant($"band {suction.Value.Band}, {Headings.Describe(suction.Value.Pressure.SuctionHeading)}")));
        lists.Assumptions.AddRange(suction.Value.Pressure.Assumptions);
        lists.Warnings.AddRange(suction.Value.Pressure.Warnings);
    }
}
