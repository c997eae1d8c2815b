using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// Writes what gusts, vortices and local pressures do in one situation into a sheet: whether the gust factor in use is
/// enough, what happens across the wind, how people feel it, and what the skin feels.
/// </summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class WindSheet(StatueModel model, Criteria criteria, ModalResponse modes, Response response, WindAction wind, LocalWind? local, SheetWriter lists)
{
    private readonly string name = response.Situation.Name;

    public void Add()
    {
        lists.Checks.Add(DynamicChecks.RigidForWind(modes.First, wind, name));
        int firstCheck = lists.Checks.Count;
        if (model.BandCount == 0)
        {
            if (lists.WindOwners.GetValueOrDefault(wind, name) == name && GustGuard.CatchesWind(model))
            {
                AddGustEffects();
                AddAcross();
            }
            if (GustGuard.CatchesWind(model))
                AddPlatforms();
            return;
        }
        // What depends on the wind alone is told once for all situations that have it.
        if (lists.WindOwners.GetValueOrDefault(wind, name) == name)
        {
            bool isPermitted = AddGustFactor();
            if (wind.Profile is AsceWind)
                AddLeastForce();
            if (!isPermitted)
                AddGustEffects();
            AddAcross();
        }
        AddPlatforms();
        AddLocalPressure();
        lists.Assume(wind.Assumptions(model.AllBandsHaveCoefficient, hasLimbs: false), firstCheck);
    }

    /// <summary>
    /// The gust factor in use against that of the standard in every heading, fed by the statue's own modes. True when the standard
    /// permits the one in use whatever is found: 0.85 of a rigid structure by ASCE 7, 26.11.4.
    /// </summary>
    private bool AddGustFactor()
    {
        const double permitted = 0.85;
        if (wind.Profile is AsceWind)
        {
            Asce7StatueGust asce = wind.Headings.Select(heading => GustFactors.Asce7(model, modes, wind, heading, criteria.Damping)!).MaxBy(gust => gust.Factor)!;
            Source source = Source.Asce7_22(asce.IsFlexible ? "26.11.5" : "26.11.4");
            bool isPermitted = !asce.IsFlexible && wind.GustByBand.Count == 0 && wind.GustFactorInUse >= permitted;
            AddGustCheck(isPermitted ? Math.Min(permitted, asce.Factor) : asce.Factor, asce.IsFlexible ? "G_f" : "G", source, asce.Heading, asce.Assumptions);
            return isPermitted;
        }
        En1991StatueGust en = wind.Headings.Select(heading => GustFactors.En1991(model, modes, wind, heading, criteria.Damping)!).MaxBy(gust => gust.AnnexB.Factor)!;
        AddGustCheck(en.AnnexB.Factor, "c_s c_d, Annex B", Source.En1991_1_4("6.3.1 (6.1), Annex B"), en.Heading, en.Assumptions);
        lists.Results.Add(new ResultLine(name, "gust factor c_s c_d, Annex C", en.AnnexC.Factor, Dimension.Number, Headings.Describe(en.Heading)));
        return false;
    }

    private void AddGustCheck(double needed, string symbol, Source source, Angle heading, ValueList<Assumption> assumed)
    {
        lists.Results.Add(new ResultLine(name, $"gust factor {symbol}", needed, Dimension.Number, Headings.Describe(heading)));
        if (wind.GustByBand.Count > 0)
            return;
        lists.Checks.Add(DynamicChecks.GustFactor(wind.GustFactorInUse, needed, source, name));
        lists.Assume(assumed, lists.Checks.Count - 1);
    }

    /// <summary>The least wind force of ASCE 7 on the skin that the wind meets, in the heading where it comes nearest.</summary>
    private void AddLeastForce()
    {
        const double least = 770;
        double factor = response.Situation.Wind!.Factor;
        (double needed, double force, Angle heading) = response.Cases.Where(c => c.Heading is not null && factor > 0)
            .Select(c => (Needed: least * new StatueWind(model, wind, c.Heading!.Value).Area, Force: c.BandWindForces().Sum(band => band.Along.Newtons) / factor, Heading: c.Heading!.Value))
            .MaxBy(c => c.Force > 0 ? c.Needed / c.Force : double.PositiveInfinity);
        lists.Checks.Add(Check.Of(Catalogue.Find("wind.minimum")!.Subject(situation: name), Dimension.Force, Source.Asce7_22("29.7, from memory"), w =>
        {
            w?.Note($"Wind towards {heading.Degrees.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)}°, without its factor.");
            w.Given("F_least", needed, Dimension.Force, "0.77 kPa on the area of skin that the wind meets");
            w.Given("F", force, Dimension.Force, "wind force on the skin that is worked with");
            return (needed, force);
        }));
    }

    /// <summary>Every effect of gusts, as one factor found from overturning is too small higher up and on limbs: of each body the worst cut, of standoffs and points the worst.</summary>
    private void AddGustEffects()
    {
        int first = lists.Checks.Count;
        List<Assumption> assumed = [GustDemand.LeftOut];
        ModalResponse many = modes.Modes.Count < GustFactors.GustModes ? model.Modes(GustFactors.GustModes) : modes;
        foreach (var group in GustDemand.Of(model, many, wind, criteria.Damping, assumed).GroupBy(found => (found.Demand.Group, found.Demand.What)))
            lists.AddWorst(group.Select(found => DynamicChecks.GustEffect(found.Demand, found.InUse, name)));
        lists.Assume(assumed.Distinct(), first);
    }

    /// <summary>Vortices, galloping and the twist of plates, which depend on the wind alone: once for all situations with the same wind.</summary>
    private void AddAcross()
    {
        AcrossWindReport report = VortexForces.Find(model, criteria, modes, wind, lists).Report;
        lists.Checks.AddRange(report.Checks);
        lists.Results.AddRange(report.Results);
        if (report.Checks.Any(check => check.Verdict != Verdict.NotChecked))
            lists.Assumptions.AddRange(report.Assumptions);
        lists.Warnings.AddRange(report.Warnings);
        Check[] plates = [.. PlateChecks.Of(model, modes, wind, name)];
        lists.Checks.AddRange(plates);
        if (plates.Length > 0)
            lists.Assume(PlateChecks.Assumptions, lists.Checks.Count - plates.Length);
    }

    /// <summary>
    /// Acceleration of platforms in this situation's wind, when it is the one they are judged by: by gusts in every heading, along and across
    /// the wind at one time and at the frequency that the platform has in them, and by vortices in every mode that they come in step with.
    /// </summary>
    private void AddPlatforms()
    {
        Platform[] platforms = [.. criteria.Platforms.Where(platform => platform.Situation == name)];
        if (platforms.Length == 0)
            return;
        ModalResponse many = modes.Modes.Count < GustFactors.GustModes ? model.Modes(GustFactors.GustModes) : modes;
        GustResponse[] gusts = [.. wind.Headings.Select(heading => GustResponse.Of(model, many, wind, heading, criteria.Damping))];
        (ModalResponse shaken, AcrossWindReport across) = VortexForces.Find(model, criteria, modes, wind, lists);
        foreach (Platform platform in platforms)
        {
            int first = lists.Checks.Count;
            (Acceleration Peak, Frequency At, Angle Heading)[] found = [.. gusts.Select(gust => Of(gust.Of(platform.Point), gust.Heading))];
            (Acceleration most, _, Angle towards) = found.FirstGreatest(f => f.Peak.MetersPerSecondSquared);
            lists.Results.Add(new ResultLine(name, $"peak acceleration of {platform.Point}", most.MetersPerSecondSquared, Dimension.Acceleration, Headings.Describe(towards)));
            lists.AddWorst(found.Select(f => ComfortChecks.Sway($"{platform.Point}, {Headings.Describe(f.Heading)}", f.Peak, f.At, platform.Use, name)));
            lists.Assume(gusts[0].Assumptions, first);
            AcrossWindCase[] inStep = [.. across.Cases.Where(found => !found.Vortex.IsBeyondRange)];
            if (inStep.Length == 0)
                continue;
            first = lists.Checks.Count;
            lists.AddWorst(inStep.Select(found => ComfortChecks.Sway(FormattableString.Invariant($"{platform.Point}, vortices in mode {found.Mode.Number}"), InVortices(platform.Point, shaken, found), found.Mode.Frequency, platform.Use, name)));
            lists.Assume(across.Assumptions, first);
        }

        static (Acceleration, Frequency, Angle) Of(GustMovement movement, Angle heading) => (
            Acceleration.FromMetersPerSecondSquared(double.Hypot(movement.Acceleration.Peak.MetersPerSecondSquared, movement.AccelerationAcross.Peak.MetersPerSecondSquared)),
            (Math.Abs(movement.Acceleration.Peak.MetersPerSecondSquared) >= Math.Abs(movement.AccelerationAcross.Peak.MetersPerSecondSquared) ? movement.Acceleration : movement.AccelerationAcross).UpcrossingFrequency,
            heading);
    }

    /// <summary>The greatest horizontal acceleration of a point while vortices shake a mode.</summary>
    private Acceleration InVortices(string point, ModalResponse shaken, AcrossWindCase found)
    {
        NamedPoint named = model.Statue.Points.First(p => p.Name == point);
        Mechanics.Vector3D moved = model.Motion(shaken.Set.Shape(found.Mode.Number - 1), model.PlaceOf(named.On), model.PositionOf(named)).Displacement;
        double omega = 2 * Math.PI * found.Mode.Frequency.Hertz;
        return Acceleration.FromMetersPerSecondSquared(omega * omega * found.ModalAmplitude(model, shaken.Set) * double.Hypot(moved.X, moved.Y));
    }

    /// <summary>The greatest local pressure and suction on the skins, and what the sheets feel of them; the situation's factor is in both.</summary>
    private void AddLocalPressure()
    {
        foreach (BodyModel body in model.Bodies.Where(b => b.Bands.Length > 0))
            AddLocalPressure(body, local!);
    }

    private void AddLocalPressure(BodyModel body, LocalWind local)
    {
        int[] bands = [.. Enumerable.Range(0, model.BandCount).Where(i => model.BandAt(i).Body == body)];
        int inward = bands.FirstGreatest(local.Inward), suction = bands.FirstGreatest(local.Suction);
        string skin = local.IsTrunk(body) ? "the skin" : $"the skin of {body.Name}";
        AddPressure($"greatest local pressure on {skin}", local.Inward(inward), local.InwardHeading(inward), inward);
        AddPressure($"greatest local suction on {skin}", local.Suction(suction), local.SuctionHeading(suction), suction);
        lists.Assumptions.AddRange(bands.SelectMany(local.Assumptions));
        double Perimeter(int i) => body.Bands[model.BandAt(i).Band].MidOutline.Perimeter;
        lists.Warnings.AddRange([.. local.Warnings(bands.FirstGreatest(Perimeter)), .. local.Warnings(bands.FirstGreatest(i => -Perimeter(i)))]);
        if (response.Situation.LimitState == LimitState.Strength)
            new SkinSheet(criteria, lists, name).AddBands(body, bands, local, response.Heat);

        void AddPressure(string line, double pressure, Angle heading, int band) =>
            lists.Results.Add(new ResultLine(name, line, pressure, Dimension.Pressure, local.IsTrunk(body) ? $"{body.BandName(model.BandAt(band).Band)}, {Headings.Describe(heading)}" : body.BandName(model.BandAt(band).Band)));
    }
}
