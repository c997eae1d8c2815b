using StatueFrame.Mechanics;

namespace StatueFrame.Analysis;

/// <summary>
/// The one demand of a situation: from everything that acts, as it is given, with its wind off the middle of the figure and with
/// lift, each again with weights at their own value where the situation raises them and they may help; with bands apart and, where
/// the description leaves it open, tied.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SituationDemands : PartDemands
{
    /// <summary>Weight that helps against overturning, as a part of its own value: EN 1990:2002+A1:2005, Table A1.2(A).</summary>
    public const double EquilibriumWeight = 0.9;

    private const string OwnWeights = "weights at their own value";

    private readonly List<PartDemands> sources = [];
    private readonly List<Response> steady = [];
    private readonly List<PartDemands> inEquilibrium = [];

    private SituationDemands(StatueModel[] models, Situation situation, DampingModel damping, IReadOnlyList<ShakingWind> shaking, FineModel? fine)
    {
        Shaking = shaking;
        Response = models[0].Respond(situation);
        EarthquakeFactor = Math.Abs(situation.Earthquake?.Factor ?? 0);
        double weight = Response.Cases[0].WeightFactor;
        foreach (StatueModel model in models)
        {
            Response given = model == models[0] ? Response : model.Respond(situation);
            ShockResponse? shock = situation.HasShock ? ShockResponse.Of(model, situation, damping) : null;
            EarthquakeResponse? earthquake = situation.Earthquake?.Action is EarthquakeAction action ? EarthquakeResponse.Of(model, action) : null;
            if (model == models[0])
                (Shock, Earthquake) = (shock, earthquake);
            Add(given);
            foreach (Response response in InOtherWays(model, situation, ""))
                Add(response);
            if (weight > 1)
            {
                Situation own = WithWeight(situation, 1 / weight);
                Add(model.Respond(own, OwnWeights));
                foreach (Response response in InOtherWays(model, own, $"{OwnWeights}, "))
                    Add(response);
            }

            void Add(Response response)
            {
                steady.Add(response);
                sources.Add(Source(response, shock, earthquake));
            }
        }
        if (fine is not null && IsSteady)
        {
            Fine = fine.RespondValid(situation);
            sources.Add(new FineDemands(Fine));
        }
        if (fine is not null && Earthquake is not null)
            sources.Add(new ShakenFineDemands(fine.RespondValid(situation), Earthquake.Peaks, EarthquakeFactor, "earthquake"));
        foreach (ShakingWind wind in shaking)
        {
            sources.Add(Shaken(wind, wind.Still));
            if (fine is not null)
                sources.Add(new ShakenFineDemands(fine.RespondValid(wind.Still), wind.Peaks, wind.Factor, wind.What));
            if (weight > 1)
                sources.Add(Shaken(wind, WithWeight(wind.Still, 1 / weight), OwnWeights));
        }
        if (situation.LimitState != LimitState.Strength || weight <= EquilibriumWeight)
            return;
        const string nineTenths = "weights times 0.9";
        Situation tipping = WithWeight(situation, EquilibriumWeight / weight);
        foreach (Response response in InOtherWays(models[0], tipping, $"{nineTenths}, ").Prepend(models[0].Respond(tipping, nineTenths)))
            inEquilibrium.Add(Source(response, Shock, Earthquake));
        foreach (ShakingWind wind in shaking)
            inEquilibrium.Add(Shaken(wind, WithWeight(wind.Still, EquilibriumWeight / weight), nineTenths));

        PartDemands Shaken(ShakingWind wind, Situation still, string label = "") => new PeakDemands(models[0].RespondValid(still, label), wind.Peaks, wind.Factor, wind.What);
    }

    /// <summary>What acts steadily, as it is given, with bands apart unless the description ties them.</summary>
    public Response Response { get; }

    /// <summary>What acts steadily in all its ways: what points move by.</summary>
    public IReadOnlyList<Response> Steady => steady;

    public Situation Situation => Response.Situation;

    /// <summary>The shock; null without.</summary>
    public ShockResponse? Shock { get; }

    /// <summary>The earthquake at factor 1; null without.</summary>
    public EarthquakeResponse? Earthquake { get; }

    /// <summary>What its wind shakes the statue with.</summary>
    public IReadOnlyList<ShakingWind> Shaking { get; }

    /// <summary>What the fine model does, where it was asked for and nothing shakes; null else.</summary>
    public FineResponse? Fine { get; }

    /// <summary>The factor on it.</summary>
    public double EarthquakeFactor { get; }

    /// <summary>False when an earthquake or a shock is in the forces.</summary>
    public bool IsSteady => Shock is null && Earthquake is null;

    /// <summary>Works out a situation.</summary>
    /// <param name="models">The models of the statue of which the worst counts; the plain one first.</param>
    /// <param name="situation">A valid situation.</param>
    /// <param name="damping">Damping in shocks.</param>
    /// <param name="shaking">What its wind shakes the statue with, beside its steady pressure.</param>
    /// <param name="fine">The fine model of the plain one, as one more source of what acts steadily, but for shocks; null without.</param>
    public static SituationDemands Of(StatueModel[] models, Situation situation, DampingModel damping, IReadOnlyList<ShakingWind>? shaking = null, FineModel? fine = null) =>
        new(models, situation, damping, shaking ?? [], fine);

    public override void Bars(int ring, BarVisitor visit) => sources.ForEach(source => source.Bars(ring, visit));

    public override void Approaches(int ring, ApproachVisitor visit) => sources.ForEach(source => source.Approaches(ring, visit));

    public override void Members(int segment, MemberVisitor visit) => sources.ForEach(source => source.Members(segment, visit));

    public override IEnumerable<EndForces> EndsOf(int segment) => sources.SelectMany(source => source.EndsOf(segment));

    public override IEnumerable<BaseForces> OnBase() => sources.SelectMany(source => source.OnBase());

    /// <summary>
    /// The greatest accelerations of a fitting by what shakes the statue, sideways and up and down, m/s²; gusts and what acts steadily have none.
    /// </summary>
    /// <param name="model">The plain model.</param>
    /// <param name="fitting">Number of the fitting.</param>
    /// <param name="at">Where its center of mass is.</param>
    public (double Across, double Up) AccelerationsAt(StatueModel model, int fitting, Vector3D at)
    {
        Place place = model.PlaceOf(model.Statue.Fittings[fitting].On);
        (double across, double up) = Shock?.Fittings?[fitting] ?? default;
        if (Earthquake is not null)
            Take(Earthquake.Peaks, EarthquakeFactor);
        foreach (ShakingWind wind in Shaking)
            Take(wind.Peaks, wind.Factor);
        return (across, up);

        void Take(DynamicPeaks peaks, double factor)
        {
            (double sideways, double vertical) = peaks.AccelerationsAt(place, at);
            (across, up) = (Math.Max(across, factor * sideways), Math.Max(up, factor * vertical));
        }
    }

    /// <summary>The same with what weights give for static equilibrium, where strength cannot help.</summary>
    public IEnumerable<BaseForces> OnBaseInEquilibrium() => inEquilibrium.Count == 0 ? OnBase() : inEquilibrium.SelectMany(source => source.OnBase());

    private PartDemands Source(Response response, ShockResponse? shock, EarthquakeResponse? earthquake) =>
        shock is not null ? new ShockDemands(response, shock)
        : earthquake is not null ? new PeakDemands(response, earthquake.Peaks, EarthquakeFactor, "earthquake")
        : new SteadyDemands(response);

    /// <summary>Headings in which wind is also taken off the middle, and with lift, that of the greatest wind force among them; the code asks for the former along two axes.</summary>
    private const int MostAside = 8;

    /// <summary>
    /// The wind of a situation off the middle of the figure, to either side, and with lift on its limbs, up and down, in
    /// some of its headings, evenly chosen about that of the greatest force.
    /// </summary>
    private IEnumerable<Response> InOtherWays(StatueModel model, Situation situation, string label)
    {
        if (situation.Wind is not { Action: WindAction all })
            yield break;
        int step = (all.Headings.Count + MostAside - 1) / MostAside, hardest = all.Headings.ToList().FindIndex(heading => heading.Equals(Response.WindForceGoverns.Heading));
        ValueList<UnitsNet.Angle> headings = [.. all.Headings.Where((_, i) => (i - hardest) % step == 0)];
        foreach (int way in (int[])[1, -1])
        {
            if (all.PressesOffCenter)
                yield return With(WindAction.OffCenterShare, wind => wind with { Side = way, Headings = headings }, way > 0 ? "off its middle to the left" : "off its middle to the right");
            if (model.Statue.Limbs.Count > 0 && all.LiftCoefficientInUse > 0)
                yield return With(1, wind => wind with { LiftWay = way, Headings = headings }, way > 0 ? "lifting limbs" : "pressing limbs down");
        }

        Response With(double share, Func<WindAction, WindAction> change, string what) =>
            model.Respond(situation with { Actions = [.. situation.Actions.Select(a => a.Action is WindAction wind ? share * a.Factor * change(wind) : a)] }, label + what);
    }

    private static Situation WithWeight(Situation situation, double times) => situation with
    {
        Actions = [.. situation.Actions.Select(a => a.Action is SelfWeight ? new FactoredAction(times * a.Factor, a.Action) : a)],
    };
}
