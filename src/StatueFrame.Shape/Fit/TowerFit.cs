using System.Globalization;
using System.Text;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// The largest tower inside a skin: at every level as wide as the outline there leaves room for, and, where the skin is
/// narrower between two levels than the straight legs between them, drawn in at both.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record TowerFit
{
    private const int SlicesBetween = 8;

    /// <summary>The levels.</summary>
    public required ValueList<FittedLevel> Levels { get; init; }

    /// <summary>What cannot be built as it is: levels without room, bars too short to flex, skin that would strike the tower.</summary>
    public required ValueList<string> Problems { get; init; }

    /// <summary>Fits a tower into a body.</summary>
    /// <param name="body">The trunk or a limb.</param>
    /// <param name="fitting">Levels, shape, clearance and bars.</param>
    /// <exception cref="ArgumentException">A member of <paramref name="fitting"/> is out of range.</exception>
    /// <exception cref="InvalidMeshException">The surface is open at a level.</exception>
    public static TowerFit Of(ShapeBody body, TowerFitting fitting)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(fitting);
        fitting.Validate();
        double[] z = [.. fitting.Levels.Select(l => l.Meters)];
        (double x, double y) = (fitting.Center.X.Meters, fitting.Center.Y.Meters);
        var heights = new List<double>();
        for (int i = 0; i < z.Length; i++)
        {
            heights.Add(z[i]);
            for (int k = 1; k < SlicesBetween && i + 1 < z.Length; k++)
                heights.Add(z[i] + k * (z[i + 1] - z[i]) / SlicesBetween);
        }
        PlanSlice[] slices = body.SlicesAt([.. heights]);
        double[] room = [.. slices.Select(s => HalfRoom(s, x, y, fitting))];
        double[] half = [.. z.Select((_, i) => room[i * SlicesBetween])];
        for (int i = 0; i + 1 < half.Length; i++)
        {
            // The legs run straight: where they pass a narrower place, both ends come in by the same part.
            double least = 1;
            for (int k = 1; k < SlicesBetween; k++)
            {
                double t = (double)k / SlicesBetween, wide = (1 - t) * half[i] + t * half[i + 1];
                if (wide > 0)
                    least = Math.Min(least, room[i * SlicesBetween + k] / wide);
            }
            half[i] *= least;
            half[i + 1] *= least;
        }
        var problems = new List<string>();
        return new TowerFit
        {
            Levels = [.. z.Select((e, i) => Level(slices[i * SlicesBetween], e, half[i], x, y, fitting, problems))],
            Problems = [.. problems],
        };
    }

    /// <summary>Half the side or the radius of the largest plan round the center that keeps the clearance.</summary>
    private static double HalfRoom(PlanSlice slice, double x, double y, TowerFitting fitting)
    {
        if (!IsInside(slice, x, y))
            return 0;
        Func<double, double, double, double> roomAt = fitting.Shape == TowerShape.Round ? RoundRoom : SquareRoom;
        double clearance = fitting.Clearance.Meters, room = double.PositiveInfinity;
        foreach (SliceLoop loop in slice.Loops)
        {
            for (int i = 0; i < loop.Count; i++)
            {
                int j = i + 1 == loop.Count ? 0 : i + 1;
                (double ax, double ay, double bx, double by) = (loop.X[i] - x, loop.Y[i] - y, loop.X[j] - x, loop.Y[j] - y);
                // Room changes by less than the way along the edge.
                if (roomAt(ax, ay, clearance) - Math.Sqrt((bx - ax) * (bx - ax) + (by - ay) * (by - ay)) < room)
                    room = Math.Min(room, LeastRoom(ax, ay, bx, by, clearance, roomAt));
            }
        }
        return Math.Max(0, room);
    }

    private static double RoundRoom(double x, double y, double clearance) => Math.Sqrt(x * x + y * y) - clearance;

    /// <summary>Half the side of the square about the origin that lies as far from a point as the clearance.</summary>
    private static double SquareRoom(double x, double y, double clearance)
    {
        double m = Math.Max(Math.Abs(x), Math.Abs(y)), n = Math.Min(Math.Abs(x), Math.Abs(y));
        // Beyond a side: m − h = c. Beyond a corner: (m − h)² + (n − h)² = c².
        return n <= m - clearance ? m - clearance : 0.5 * (m + n - Math.Sqrt(2 * clearance * clearance - (m - n) * (m - n)));
    }

    /// <summary>The least room along an edge: it has no more than one valley, as plans that keep away from it are convex.</summary>
    private static double LeastRoom(double ax, double ay, double bx, double by, double clearance, Func<double, double, double, double> roomAt)
    {
        const double golden = 0.6180339887498949;
        double low = 0, high = 1;
        for (int k = 0; k < 40; k++)
        {
            double p = high - golden * (high - low), q = low + golden * (high - low);
            (low, high) = At(p) <= At(q) ? (low, q) : (p, high);
        }
        return Math.Min(At(0.5 * (low + high)), Math.Min(At(0), At(1)));

        double At(double t) => roomAt(ax + t * (bx - ax), ay + t * (by - ay), clearance);
    }

    private static bool IsInside(PlanSlice slice, double x, double y)
    {
        bool inside = false;
        foreach (SliceLoop loop in slice.Loops)
        {
            for (int i = 0, j = loop.Count - 1; i < loop.Count; j = i++)
            {
                if (loop.Y[i] > y != loop.Y[j] > y && x < loop.X[i] + (y - loop.Y[i]) / (loop.Y[j] - loop.Y[i]) * (loop.X[j] - loop.X[i]))
                    inside = !inside;
            }
        }
        return inside;
    }

    private static FittedLevel Level(PlanSlice slice, double z, double half, double x, double y, TowerFitting fitting, List<string> problems)
    {
        const double least = 0.01;
        if (half < least)
        {
            problems.Add(string.Create(CultureInfo.InvariantCulture, $"at {z:g5} m no tower fits round ({x:g4}, {y:g4}) m"));
            return new FittedLevel(Length.FromMeters(z), Length.Zero, []);
        }
        var bars = new FittedBar[fitting.BarsPerLevel];
        for (int k = 0; k < bars.Length; k++)
        {
            double angle = 2 * Math.PI * k / bars.Length;
            (double sin, double cos) = Math.SinCos(angle);
            double tower = fitting.Shape == TowerShape.Round ? half : half / Math.Max(Math.Abs(sin), Math.Abs(cos));
            double skin = FirstMeeting(slice, x, y, cos, sin);
            double length = skin - tower;
            bool tooShort = length < fitting.LeastBar.Meters, strikes = length <= fitting.WorstSway.Meters;
            if (tooShort)
                problems.Add(string.Create(CultureInfo.InvariantCulture, $"at {z:g5} m, {angle * 180 / Math.PI:f0}°, the bar is {length:f3} m long; to flex it needs {fitting.LeastBar.Meters:f3} m"));
            if (strikes)
                problems.Add(string.Create(CultureInfo.InvariantCulture, $"at {z:g5} m, {angle * 180 / Math.PI:f0}°, the skin is {length:f3} m off and strikes the tower in a sway of {fitting.WorstSway.Meters:f3} m"));
            bars[k] = new FittedBar(Angle.FromRadians(angle), Point3.FromMeters(x + tower * cos, y + tower * sin, z), Point3.FromMeters(x + skin * cos, y + skin * sin, z), tooShort, strikes);
        }
        return new FittedLevel(Length.FromMeters(z), Length.FromMeters(2 * half), [.. bars]);
    }

    /// <summary>Distance along a ray from inside to where it first meets an outline.</summary>
    private static double FirstMeeting(PlanSlice slice, double px, double py, double dx, double dy)
    {
        double nearest = double.PositiveInfinity;
        foreach (SliceLoop loop in slice.Loops)
        {
            for (int i = 0; i < loop.Count; i++)
            {
                int j = i + 1 == loop.Count ? 0 : i + 1;
                double ui = (loop.Y[i] - py) * dx - (loop.X[i] - px) * dy, uj = (loop.Y[j] - py) * dx - (loop.X[j] - px) * dy;
                if (ui >= 0 == uj >= 0)
                    continue;
                double t = ui / (ui - uj);
                double s = (loop.X[i] + t * (loop.X[j] - loop.X[i]) - px) * dx + (loop.Y[i] + t * (loop.Y[j] - loop.Y[i]) - py) * dy;
                if (s > 0)
                    nearest = Math.Min(nearest, s);
            }
        }
        return nearest;
    }

    /// <summary>The levels as a table of text, and the problems.</summary>
    public override string ToString()
    {
        var text = new StringBuilder("height m   width m   bars from m   to m\n");
        foreach (FittedLevel l in Levels)
        {
            text.Append(CultureInfo.InvariantCulture, $"{l.Elevation.Meters,8:f2}{l.Width.Meters,10:f3}");
            if (l.Bars.Count > 0)
                text.Append(CultureInfo.InvariantCulture, $"{l.Bars.Min(b => b.Length.Meters),14:f3}{l.Bars.Max(b => b.Length.Meters),7:f3}");
            text.Append('\n');
        }
        foreach (string problem in Problems)
            text.Append("- ").Append(problem).Append('\n');
        return text.ToString();
    }
}
