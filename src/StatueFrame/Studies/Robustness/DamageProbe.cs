using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>
/// The few numbers by which removals are compared: for every ring the worst stress over yield strength, for every lattice
/// segment the same, for every limited point its sway over the limit.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class DamageProbe(Statue statue, Criteria criteria, ValueList<Situation> situations)
{
    /// <summary>A change by less than this part does not count as worse.</summary>
    public const double Noticeable = 1e-3;

    private readonly Dictionary<string, double> whole = Measure(StatueModel.Build(statue), criteria, situations);

    /// <summary>How bad the statue is without a part.</summary>
    public ScreenedRemoval Screen(Removal removal)
    {
        if (removal.Kind is RemovalKind.Anchor or RemovalKind.Other)
            return new ScreenedRemoval(removal, null, "", null);
        try
        {
            (double worst, string item) = (0, "");
            foreach ((string name, double value) in Measure(StatueModel.Build(removal.From(statue)), criteria, situations))
            {
                if (value > whole.GetValueOrDefault(name) * (1 + Noticeable) && Extremes.Exceeds(value, worst))
                    (worst, item) = (value, name);
            }
            return new ScreenedRemoval(removal, worst, item, null);
        }
        catch (InvalidStatueException e)
        {
            return new ScreenedRemoval(removal, double.PositiveInfinity, "", e.Problems[0].ToString());
        }
    }

    private static Dictionary<string, double> Measure(StatueModel model, Criteria criteria, ValueList<Situation> situations)
    {
        var found = new Dictionary<string, double>();
        foreach (Situation situation in situations.AsSpan())
        {
            Response response = model.Respond(situation);
            if (situation.LimitState == LimitState.Strength)
            {
                AddBars(model, response, found);
                AddLattices(model, response, found);
            }
            else
            {
                foreach (SwayLimit limit in criteria.Sway)
                    Raise(found, $"sway at {limit.Point}", response.GreatestSway(limit.Point).Sway / limit.Limit);
            }
        }
        return found;
    }

    private static void AddBars(StatueModel model, Response response, Dictionary<string, double> found)
    {
        int firstBar = 0;
        foreach ((RingElement ring, _) in model.Rings)
        {
            BarResult bar = response.BarEnvelope.ResultOf(response.BarEnvelope.WorstOfRing(firstBar, ring.Bars.Length));
            Raise(found, $"standoffs of {ring.BandName} at {ring.Level}", bar.Stress / bar.Standoff.Material.YieldStrength);
            firstBar += ring.Bars.Length;
        }
    }

    private static void AddLattices(StatueModel model, Response response, Dictionary<string, double> found)
    {
        foreach (SegmentModel segment in model.LatticeSegments)
        {
            double yield = ((LatticeSegment)segment.Segment).Material.YieldStrength.Pascals;
            var axial = new double[segment.Members.Count];
            foreach (LoadCase loadCase in response.Cases)
            {
                loadCase.AxialForces(segment, axial);
                for (int i = 0; i < axial.Length; i++)
                    Raise(found, $"members of {segment.Name}", Math.Abs(axial[i]) / segment.Members[i].Section.Properties.A / yield);
            }
        }
    }

    private static void Raise(Dictionary<string, double> found, string name, double value) =>
        found[name] = Math.Max(value, found.GetValueOrDefault(name));
}
