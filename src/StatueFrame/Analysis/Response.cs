using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// What happens in a situation: a <see cref="LoadCase"/> for every wind heading, the worst of them for each quantity,
/// and the statue's stability under them.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed class Response
{
    private readonly LoadCase[] cases;
    private readonly Lazy<BarEnvelope> bars;
    private readonly Lazy<LatticeEnvelope> lattice;
    private readonly Lazy<Stability> stability;
    private readonly Lazy<double> error;
    private readonly Lazy<(double, double, double)?> balance;

    internal Response(StatueModel model, Situation situation, string label = "")
    {
        Model = model;
        Situation = situation;
        Angle?[] headings = situation.Wind?.Action is WindAction wind ? [.. wind.Headings.Select(h => (Angle?)h)] : [null];
        int size = model.Frame.FreedomCount;
        var nodal = new double[headings.Length * size];
        var loads = new Loads[headings.Length];
        Heat = HeatField.Of(model, situation);
        for (int i = 0; i < headings.Length; i++)
            loads[i] = Loads.Of(model, situation, headings[i], Heat, nodal.AsSpan(i * size, size), label);
        cases = model.HasTensionOnly ? TensionOnlyBracing.Solve(model, loads, nodal) : Solve(model, loads, nodal);
        balance = new Lazy<(double, double, double)?>(() => model.HasTensionOnly ? null : Balanced(nodal.AsSpan(0, size)));
        error = new Lazy<double>(() => model.Statics.ErrorOf(nodal.AsSpan(0, size), model.Statics.Solve(nodal.AsSpan(0, size))));
        bars = new Lazy<BarEnvelope>(() => new BarEnvelope(model, cases));
        lattice = new Lazy<LatticeEnvelope>(() => new LatticeEnvelope(model, cases));
        stability = new Lazy<Stability>(() => Stability.Of(model, cases, nodal));
    }

    /// <summary>The model that responds.</summary>
    public StatueModel Model { get; }

    /// <summary>What acts.</summary>
    public Situation Situation { get; }

    /// <summary>One load case for every wind heading, in the order of the headings.</summary>
    public IReadOnlyList<LoadCase> Cases => cases;

    /// <summary>The load case with the greatest overturning moment at the base.</summary>
    public LoadCase OverturningGoverns => cases.FirstGreatest(c => c.Base.Overturning.NewtonMeters);

    /// <summary>The load case with the greatest total wind force.</summary>
    public LoadCase WindForceGoverns => cases.FirstGreatest(c => c.WindForce.Newtons);

    /// <summary>The greatest sway of a named point over all headings.</summary>
    /// <param name="point">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public Movement GreatestSway(string point) => Array.ConvertAll(cases, c => c.Of(point)).FirstGreatest(m => m.Sway.Meters);

    /// <summary>The greatest twist of a named point about z over all headings.</summary>
    /// <param name="point">The point's name.</param>
    /// <exception cref="ArgumentException">The statue has no such point.</exception>
    public Movement GreatestTwist(string point) => Array.ConvertAll(cases, c => c.Of(point)).FirstGreatest(m => Math.Abs(m.Twist.Radians));

    /// <summary>Every standoff with the worst stress and the greatest deflection over all headings and both assumptions.</summary>
    public IReadOnlyList<BarResult> Bars => bars.Value.Results;

    /// <summary>The standoff with the worst stress; null when the statue has none.</summary>
    public BarResult? WorstBar => bars.Value.WorstStress;

    /// <summary>The standoff with the greatest deflection; null when the statue has none.</summary>
    public BarResult? MostDeflectedBar => bars.Value.GreatestDeflection;

    /// <summary>Second-order effects and buckling, in the load case in which the statue buckles first.</summary>
    public Stability Stability => stability.Value;

    /// <summary>Every standoff as a line of comma-separated values: its greatest stress and deflection, with the skin and the heading they are found under.</summary>
    /// <param name="units">The units to write in.</param>
    public string BarsToCsv(DisplayUnits units = DisplayUnits.Metric) => ResponseCsv.Bars(this, units);

    /// <summary>Every lattice member in every load case as a line of comma-separated values; compression is negative.</summary>
    /// <inheritdoc cref="BarsToCsv"/>
    public string MembersToCsv(DisplayUnits units = DisplayUnits.Metric) => ResponseCsv.Members(this, units);

    /// <summary>What the statue puts on its base, about the base's center, a load case a line of comma-separated values.</summary>
    /// <inheritdoc cref="BarsToCsv"/>
    public string ReactionsToCsv(DisplayUnits units = DisplayUnits.Metric) => ResponseCsv.Reactions(this, units);

    /// <summary>The wind on every band in every load case, with what it is the product of, as a line of comma-separated values.</summary>
    /// <inheritdoc cref="BarsToCsv"/>
    public string WindToCsv(DisplayUnits units = DisplayUnits.Metric) => ResponseCsv.Wind(this, units);

    /// <summary>How far displacements are off by rounding, relative to the greatest; see <see cref="Mechanics.Statics.LinearStatics.ErrorOf"/>.</summary>
    internal double SolutionError => error.Value;

    /// <summary>
    /// Of the first load case the size of all that acts, N, and by how much what the ground carries, from the forces of elements
    /// and springs, differs from it: force in N, moment about the base in N·m. Null where braces go slack.
    /// </summary>
    internal (double Applied, double Force, double Moment)? Balance => balance.Value;

    private (double, double, double)? Balanced(ReadOnlySpan<double> nodal)
    {
        Mechanics.Frame frame = Model.Frame;
        double[] reactions = Mechanics.Statics.Equilibrium.Reactions(frame, Model.Statics.Solve(nodal), nodal);
        (Mechanics.Vector3D acting, Mechanics.Vector3D moment) = Mechanics.Statics.Equilibrium.Resultant(frame, nodal, Model.BaseCenter);
        (Mechanics.Vector3D carried, Mechanics.Vector3D held) = Mechanics.Statics.Equilibrium.Resultant(frame, reactions, Model.BaseCenter);
        return (acting.Length, (acting + carried).Length, (moment + held).Length);
    }

    internal BarEnvelope BarEnvelope => bars.Value;

    /// <summary>The heat of the situation; null without.</summary>
    internal HeatField? Heat { get; }

    /// <summary>The lattice members with the greatest and the least axial force over all load cases; null without a lattice.</summary>
    internal LatticeEnvelope Lattice => lattice.Value;

    internal (MemberForce? Greatest, MemberForce? Least) LatticeExtremes()
    {
        (LoadCase Case, SegmentModel Segment, int Member, double Axial)? greatest = null, least = null;
        foreach (SegmentModel segment in Model.LatticeSegments)
        {
            ReadOnlySpan<LatticeEnvelope.Extreme> members = Lattice.Of(segment);
            for (int i = 0; i < members.Length; i++)
            {
                if (greatest is null || Extremes.Exceeds(members[i].Greatest, greatest.Value.Axial))
                    greatest = (members[i].GreatestCase!, segment, i, members[i].Greatest);
                if (least is null || Extremes.Exceeds(-members[i].Least, -least.Value.Axial))
                    least = (members[i].LeastCase!, segment, i, members[i].Least);
            }
        }
        return (greatest?.Case.ForceOf(greatest.Value.Segment, greatest.Value.Member, greatest.Value.Axial),
            least?.Case.ForceOf(least.Value.Segment, least.Value.Member, least.Value.Axial));
    }

    private static LoadCase[] Solve(StatueModel model, Loads[] loads, double[] nodal)
    {
        double[] u = model.Statics.Solve(nodal);
        int size = model.Frame.FreedomCount;
        var cases = new LoadCase[loads.Length];
        for (int i = 0; i < cases.Length; i++)
            cases[i] = new LoadCase(model, loads[i], u.AsMemory(i * size, size), null);
        return cases;
    }
}
