using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>A bracket with what the standoff puts on its tip: the demand of its checks. SI units, in the bracket's axes.</summary>
/// <param name="Bracket">The bracket.</param>
/// <param name="Where">Its standoff, as in "band 3, bar 2".</param>
/// <param name="Words">Where the forces come from, unless from a standoff.</param>
/// <param name="Design">The rules.</param>
/// <param name="Joined">The metal of the tower there; null when not known.</param>
/// <param name="N">Axial force; tension is positive.</param>
/// <param name="V">Resultant shear.</param>
/// <param name="T">Torsion, without sign.</param>
/// <param name="Tip">Moments about the strong and the weak axis at the tip, without sign.</param>
/// <param name="Foot">The same at the tower.</param>
/// <param name="From">The end of a standoff that they come from.</param>
internal readonly record struct BracketLoad(
    PlacedBracket Bracket, string Where, string Words, BarDesign Design, Material? Joined, double N, double V, double T,
    (double Strong, double Weak) Tip, (double Strong, double Weak) Foot, BarEnd From = default) : ITraced
{
    /// <summary>Where the forces come from, in words.</summary>
    public string When => From.Bar is null ? Words : From.When;

    /// <summary>How the forces of the standoff's tower end come about, which it takes.</summary>
    public DemandOrigin? Origin => From.Origin();

    /// <summary>From the forces on a standoff's tower end, which the bracket takes: F and M at the tip, M + L x × F at the foot.</summary>
    /// <param name="bar">The standoff; it stands on a bracket.</param>
    /// <param name="ends">What acts on it; what is loose of it counts with whatever signs are worse.</param>
    /// <param name="design">The rules.</param>
    /// <param name="joined">The metal of the tower there.</param>
    /// <param name="from">That end in its state, when somebody may ask.</param>
    public static BracketLoad Of(BarModel bar, in BarEnds ends, BarDesign design, Material? joined, in BarEnd from = default)
    {
        PlacedBracket bracket = bar.Bar.Place.Bracket!;
        Axes3D own = bracket.Axes, barAxes = bar.Bar.Place.Axes;
        double L = bracket.Length;
        FlatForces together = ends.Tower + -1 * ends.Loose, loose = ends.Loose;
        Vector3D force = own.ToLocal(barAxes.ToGlobal(together.OnSupport.Force)), moment = own.ToLocal(barAxes.ToGlobal(together.OnSupport.Moment));
        Vector3D more = Sizes(loose.N, loose.AlongThickness, loose.AlongWidth), turn = Sizes(loose.T, loose.Strong, loose.Weak);
        // What is loose presses as well as it pulls; pressing is worse.
        double N = more.X > 0 ? -(Math.Abs(force.X) + more.X) : force.X;
        return new BracketLoad(
            bracket, bar.Where, "", design, joined, N, double.Hypot(Math.Abs(force.Y) + more.Y, Math.Abs(force.Z) + more.Z), Math.Abs(moment.X) + turn.X,
            (Math.Abs(moment.Y) + turn.Y, Math.Abs(moment.Z) + turn.Z),
            (Math.Abs(moment.Y - L * force.Z) + turn.Y + L * more.Z, Math.Abs(moment.Z + L * force.Y) + turn.Z + L * more.Y), from);

        Vector3D Sizes(double x, double y, double z) => new(Sum(own.X, x, y, z), Sum(own.Y, x, y, z), Sum(own.Z, x, y, z));

        double Sum(Vector3D axis, double x, double y, double z) =>
            Math.Abs(axis.Dot(barAxes.X) * x) + Math.Abs(axis.Dot(barAxes.Y) * y) + Math.Abs(axis.Dot(barAxes.Z) * z);
    }

    public double Strong => Math.Max(Tip.Strong, Foot.Strong);

    public double Weak => Math.Max(Tip.Weak, Foot.Weak);

    /// <summary>The bracket as a member; its tip is free to sway.</summary>
    public LoadedMember Member(string situation) => new()
    {
        Family = "brackets",
        Section = Bracket.Bracket.Section,
        Material = Bracket.Bracket.Material,
        Length = Length.FromMeters(Bracket.Length),
        Axial = Force.FromNewtons(N),
        StrongMoment = Torque.FromNewtonMeters(Strong),
        WeakMoment = Torque.FromNewtonMeters(Weak),
        Shear = Force.FromNewtons(V),
        Torsion = Torque.FromNewtonMeters(T),
        WeakFactor = 2,
        StrongFactor = 2,
        TwistFactor = 2,
        Where = Where,
        When = When,
        Situation = situation,
    };

    /// <summary>How many sizes say what decides its utilization.</summary>
    public const int SizeCount = 8;

    /// <summary>Gives them: compression, tension, shear, torsion, and the moments at tip and foot.</summary>
    public void SizesTo(Span<double> sizes) =>
        (sizes[0], sizes[1], sizes[2], sizes[3], sizes[4], sizes[5], sizes[6], sizes[7]) = (Math.Max(0, -N), Math.Max(0, N), V, T, Tip.Strong, Tip.Weak, Foot.Strong, Foot.Weak);

    /// <summary>The bracket in a state of given sizes.</summary>
    public BracketLoad With(double[] sizes, bool isPressed) => this with
    {
        N = isPressed ? -sizes[0] : sizes[1],
        V = sizes[2],
        T = sizes[3],
        Tip = (sizes[4], sizes[5]),
        Foot = (sizes[6], sizes[7]),
    };
}
