using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>A bracket with what the standoff puts on its tip: the demand of its checks. SI units, in the bracket's axes.</summary>
/// <param name="Bracket">The bracket.</param>
/// <param name="Where">Its standoff, as in "band 3, bar 2".</param>
/// <param name="When">Where the forces come from, in words.</param>
/// <param name="Design">The rules.</param>
/// <param name="Joined">The metal of the tower there; null when not known.</param>
/// <param name="N">Axial force; tension is positive.</param>
/// <param name="V">Resultant shear.</param>
/// <param name="T">Torsion, without sign.</param>
/// <param name="Tip">Moments about the strong and the weak axis at the tip, without sign.</param>
/// <param name="Foot">The same at the tower.</param>
internal readonly record struct BracketLoad(
    PlacedBracket Bracket, string Where, string When, BarDesign Design, Material? Joined, double N, double V, double T,
    (double Strong, double Weak) Tip, (double Strong, double Weak) Foot)
{
    /// <summary>From the forces on a standoff's tower end, which the bracket takes: F and M at the tip, M + L x × F at the foot.</summary>
    /// <param name="bar">The standoff; it stands on a bracket.</param>
    /// <param name="end">What acts on its tower end.</param>
    /// <param name="peaks">True for peaks that need not come at one time: each may have either sign.</param>
    /// <param name="when">Where the forces come from.</param>
    /// <param name="design">The rules.</param>
    /// <param name="joined">The metal of the tower there.</param>
    public static BracketLoad Of(BarModel bar, in FlatForces end, bool peaks, string when, BarDesign design, Material? joined)
    {
        PlacedBracket bracket = bar.Bar.Place.Bracket!;
        Axes3D own = bracket.Axes, barAxes = bar.Bar.Place.Axes;
        double L = bracket.Length;
        Vector3D force = Turned(end.N, end.AlongThickness, end.AlongWidth), moment = Turned(end.T, -end.Strong, -end.Weak);
        (double y, double z) = peaks
            ? (Math.Abs(moment.Y) + L * Math.Abs(force.Z), Math.Abs(moment.Z) + L * Math.Abs(force.Y))
            : (Math.Abs(moment.Y - L * force.Z), Math.Abs(moment.Z + L * force.Y));
        // Peaks press as well as they pull.
        double N = peaks ? -Math.Abs(force.X) : force.X;
        return new BracketLoad(
            bracket, bar.Where, when, design, joined, N, double.Hypot(force.Y, force.Z), Math.Abs(moment.X), (Math.Abs(moment.Y), Math.Abs(moment.Z)), (y, z));

        Vector3D Turned(double x, double y, double z) => peaks
            ? new Vector3D(Sum(own.X, x, y, z), Sum(own.Y, x, y, z), Sum(own.Z, x, y, z))
            : own.ToLocal(barAxes.ToGlobal(new Vector3D(x, y, z)));

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
        Where = Place,
        Situation = situation,
    };

    public string Place => When.Length > 0 ? $"{Where}, {When}" : Where;

    /// <summary>Whether another state asks as much of every number, on a bracket that is as long.</summary>
    public bool IsCoveredBy(in BracketLoad other) =>
        N < 0 == other.N < 0 && Math.Abs(N) <= Math.Abs(other.N) && V <= other.V && T <= other.T
        && Strong <= other.Strong && Weak <= other.Weak && Bracket.Length <= other.Bracket.Length;
}
