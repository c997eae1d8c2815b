using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>
/// What acts in a horizontal plane under the statue, about the tower's axis: N presses down, mx and my are N times its
/// place along x and y. SI units.
/// </summary>
/// <param name="N">Compression, N.</param>
/// <param name="Vx">Shear along x, N.</param>
/// <param name="Vy">Shear along y, N.</param>
/// <param name="mx">Moment about y, N·m.</param>
/// <param name="my">Minus the moment about x, N·m.</param>
/// <param name="Twist">Moment about z, N·m.</param>
internal readonly record struct BaseLoad(double N, double Vx, double Vy, double mx, double my, double Twist)
{
    public double V => Math.Sqrt(Vx * Vx + Vy * Vy);

    public double M => Math.Sqrt(mx * mx + my * my);

    /// <summary>A force and its moment about the tower's axis.</summary>
    public static BaseLoad Of(Vector3D force, Vector3D moment) => new(-force.Z, force.X, force.Y, moment.Y, -moment.X, moment.Z);

    public static BaseLoad Of(BaseReaction r) => Of(
        new Vector3D(r.ForceX.Newtons, r.ForceY.Newtons, r.ForceZ.Newtons),
        new Vector3D(r.MomentX.NewtonMeters, r.MomentY.NewtonMeters, r.MomentZ.NewtonMeters));

    /// <summary>The same in a plane so much deeper, with a centered weight added.</summary>
    public BaseLoad Below(double depth, double weight) => this with { N = N + weight, mx = mx + depth * Vx, my = my + depth * Vy };

    public static BaseLoad operator -(BaseLoad a, BaseLoad b) => new(a.N - b.N, a.Vx - b.Vx, a.Vy - b.Vy, a.mx - b.mx, a.my - b.my, a.Twist - b.Twist);

    public static BaseLoad operator *(double s, BaseLoad a) => new(s * a.N, s * a.Vx, s * a.Vy, s * a.mx, s * a.my, s * a.Twist);
}
