namespace StatueFrame.Analysis;

/// <summary>
/// The one demand of a situation: from everything that acts, as it is given and again with weights at their own value where
/// the situation raises them and they may help, with bands apart and, where the description leaves it open, tied.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class SituationDemands : PartDemands
{
    /// <summary>Weight that helps against overturning, as a part of its own value: EN 1990:2002+A1:2005, Table A1.2(A).</summary>
    public const double EquilibriumWeight = 0.9;

    private const string OwnWeights = "weights at their own value";

    private readonly List<PartDemands> sources = [];
    private readonly PartDemands? inEquilibrium;

    private SituationDemands(StatueModel[] models, Situation situation, DampingModel damping)
    {
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
            if (weight > 1)
                Add(model.Respond(WithWeight(situation, 1 / weight), OwnWeights));

            void Add(Response response) => sources.Add(Source(response, shock, earthquake));
        }
        if (situation.LimitState == LimitState.Strength && weight > EquilibriumWeight)
            inEquilibrium = Source(models[0].Respond(WithWeight(situation, EquilibriumWeight / weight), "weights times 0.9"), Shock, Earthquake);
    }

    /// <summary>What acts steadily, as it is given, with bands apart unless the description ties them.</summary>
    public Response Response { get; }

    public Situation Situation => Response.Situation;

    /// <summary>The shock; null without.</summary>
    public ShockResponse? Shock { get; }

    /// <summary>The earthquake at factor 1; null without.</summary>
    public EarthquakeResponse? Earthquake { get; }

    /// <summary>The factor on it.</summary>
    public double EarthquakeFactor { get; }

    /// <summary>False when an earthquake or a shock is in the forces.</summary>
    public bool IsSteady => Shock is null && Earthquake is null;

    /// <summary>Works out a situation.</summary>
    /// <param name="models">The models of the statue of which the worst counts; the plain one first.</param>
    /// <param name="situation">A valid situation.</param>
    /// <param name="damping">Damping in shocks.</param>
    public static SituationDemands Of(StatueModel[] models, Situation situation, DampingModel damping) => new(models, situation, damping);

    public override void Bars(int ring, BarVisitor visit) => sources.ForEach(source => source.Bars(ring, visit));

    public override void Members(int segment, MemberVisitor visit) => sources.ForEach(source => source.Members(segment, visit));

    public override IEnumerable<EndForces> EndsOf(int segment) => sources.SelectMany(source => source.EndsOf(segment));

    public override IEnumerable<BaseForces> OnBase() => sources.SelectMany(source => source.OnBase());

    /// <summary>The same with what weights give for static equilibrium, where strength cannot help.</summary>
    public IEnumerable<BaseForces> OnBaseInEquilibrium() => (inEquilibrium ?? this).OnBase();

    private PartDemands Source(Response response, ShockResponse? shock, EarthquakeResponse? earthquake) =>
        shock is not null ? new ShockDemands(response, shock)
        : earthquake is not null ? new PeakDemands(response, earthquake.Peaks, EarthquakeFactor, "earthquake")
        : new SteadyDemands(response);

    private static Situation WithWeight(Situation situation, double times) => situation with
    {
        Actions = [.. situation.Actions.Select(a => a.Action is SelfWeight ? new FactoredAction(times * a.Factor, a.Action) : a)],
    };
}
