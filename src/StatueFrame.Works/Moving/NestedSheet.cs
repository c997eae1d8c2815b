using StatueFrame.Mechanics;
using StatueFrame.Shape;

namespace StatueFrame.Works;

/// <summary>A sheet as heights over a grid of its own plane, outside up, to lay it upon another.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class NestedSheet
{
    /// <summary>Nodes of the grid along each way.</summary>
    private const int Nodes = 60;

    private readonly double[] lower = new double[Nodes * Nodes], upper = new double[Nodes * Nodes];

    public NestedSheet(MetalSheet sheet, double length, double width)
    {
        Sheet = sheet;
        var frame = new SheetAxes(sheet);
        (Vector3D least, Vector3D most) = (frame.Least, frame.Most);
        (Along, Across, Depth) = (most.X - least.X, most.Y - least.Y, most.Z - least.Z);
        Array.Fill(lower, double.PositiveInfinity);
        Array.Fill(upper, double.NegativeInfinity);
        // One grid for all sheets, so that heights can be compared node by node; every sheet lies in its middle.
        (double du, double dv) = (length / (Nodes - 1), width / (Nodes - 1));
        Vector3D middle = 0.5 * (least + most);
        Mesh mesh = sheet.Surface;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = (Corner(3 * t), Corner(3 * t + 1), Corner(3 * t + 2));
            double twice = (b - a).Cross(c - a).Z;
            if (twice == 0)
                continue;
            int toU = At(Math.Max(a.X, Math.Max(b.X, c.X)), length, du), toV = At(Math.Max(a.Y, Math.Max(b.Y, c.Y)), width, dv);
            for (int u = At(Math.Min(a.X, Math.Min(b.X, c.X)), length, du); u <= toU; u++)
            {
                for (int v = At(Math.Min(a.Y, Math.Min(b.Y, c.Y)), width, dv); v <= toV; v++)
                {
                    var p = new Vector3D(u * du - 0.5 * length, v * dv - 0.5 * width, 0);
                    double wb = (p - a).Cross(c - a).Z / twice, wc = (b - a).Cross(p - a).Z / twice;
                    const double Slack = -1e-9;
                    if (wb < Slack || wc < Slack || 1 - wb - wc < Slack)
                        continue;
                    double z = a.Z + wb * (b.Z - a.Z) + wc * (c.Z - a.Z);
                    int at = u * Nodes + v;
                    (lower[at], upper[at]) = (Math.Min(lower[at], z), Math.Max(upper[at], z));
                }
            }
        }
        CenterHeight = -least.Z;

        // From the middle of the sheet along and across, from its lowest point up.
        Vector3D Corner(int i) => frame.Points[mesh.Corners[i]] - new Vector3D(middle.X, middle.Y, least.Z);

        static int At(double x, double size, double step) => Math.Clamp((int)Math.Floor((x + 0.5 * size) / step), 0, Nodes - 1);
    }

    public MetalSheet Sheet { get; }

    /// <summary>Extent along its longer way, m.</summary>
    public double Along { get; }

    public double Across { get; }

    public double Depth { get; }

    /// <summary>Height of the center of gravity above its lowest point, m.</summary>
    public double CenterHeight { get; }

    /// <summary>How high this sheet's lowest point must lie above that of the one below so that they do not touch, m.</summary>
    public double Above(NestedSheet below)
    {
        double most = double.NegativeInfinity;
        for (int i = 0; i < lower.Length; i++)
            most = Math.Max(most, below.upper[i] - lower[i]);
        return double.IsNegativeInfinity(most) ? below.Depth : Math.Max(0, most);
    }
}
