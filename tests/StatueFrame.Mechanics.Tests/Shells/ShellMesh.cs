using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Statics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Mechanics.Tests.Shells;

/// <summary>A rectangle of triangles laid over a surface, for problems with known answers. Diagonals change from cell to cell.</summary>
internal sealed class ShellMesh
{
    private readonly FrameBuilder builder = new();
    private readonly ShellSection section;
    private readonly int[,] nodes;
    private readonly List<(ShellElement Element, int[] Nodes)> triangles = [];
    private readonly Dictionary<int, Vector3D> positions = [];
    private readonly List<(int Node, Vector3D Force, Vector3D Moment)> forces = [];
    private Func<ShellElement, Vector3D>? surfaceLoad;
    private (double Strain, double Curvature) free;
    private Frame? frame;

    public ShellMesh(int m, int n, ShellSection section, Func<double, double, Vector3D> at)
    {
        this.section = section;
        nodes = new int[m + 1, n + 1];
        var known = new Dictionary<(double, double, double), int>();
        for (int i = 0; i <= m; i++)
        {
            for (int j = 0; j <= n; j++)
            {
                Vector3D position = at((double)i / m, (double)j / n);
                var key = (Math.Round(position.X, 9), Math.Round(position.Y, 9), Math.Round(position.Z, 9));
                if (!known.TryGetValue(key, out nodes[i, j]))
                    known[key] = nodes[i, j] = builder.AddNode(position);
                positions[nodes[i, j]] = position;
            }
        }
        for (int i = 0; i < m; i++)
        {
            for (int j = 0; j < n; j++)
            {
                (int a, int b, int c, int d) = (nodes[i, j], nodes[i + 1, j], nodes[i + 1, j + 1], nodes[i, j + 1]);
                if ((i + j) % 2 == 0)
                {
                    Add(a, b, c);
                    Add(a, c, d);
                }
                else
                {
                    Add(a, b, d);
                    Add(b, c, d);
                }
            }
        }
    }

    public int M => nodes.GetLength(0) - 1;

    public int N => nodes.GetLength(1) - 1;

    public Frame Frame => frame ??= builder.Build();

    public IEnumerable<ShellElement> Elements => triangles.Select(t => t.Element);

    public int this[int i, int j] => nodes[i, j];

    public ShellMesh Hold(Func<Vector3D, bool> where, Freedoms freedoms)
    {
        foreach ((int node, Vector3D at) in positions)
        {
            if (where(at))
                builder.Restrain(node, freedoms);
        }
        return this;
    }

    public ShellMesh Hold(int node, Freedoms freedoms)
    {
        builder.Restrain(node, freedoms);
        return this;
    }

    public ShellMesh Load(int node, Vector3D force, Vector3D moment = default)
    {
        forces.Add((node, force, moment));
        return this;
    }

    public ShellMesh Press(Func<ShellElement, Vector3D> force)
    {
        surfaceLoad = force;
        return this;
    }

    public ShellMesh Heat(double strain, double curvature)
    {
        free = (strain, curvature);
        return this;
    }

    public double[] Loads()
    {
        var loads = new double[Frame.FreedomCount];
        foreach ((int node, Vector3D force, Vector3D moment) in forces)
        {
            double[] six = [force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z];
            for (int d = 0; d < 6; d++)
                loads[6 * node + d] += six[d];
        }
        var own = new double[18];
        foreach ((ShellElement element, int[] at) in triangles)
        {
            Array.Clear(own);
            if (surfaceLoad is not null)
                element.AddSurfaceLoad(surfaceLoad(element), own);
            element.AddStrainLoad(free.Strain, free.Curvature, own);
            for (int i = 0; i < own.Length; i++)
                loads[6 * at[i / 6] + i % 6] += own[i];
        }
        return loads;
    }

    public double[] Solve() => new LinearStatics(Frame).Solve(Loads());

    public Vector3D Move(double[] u, int node) => new(u[6 * node], u[6 * node + 1], u[6 * node + 2]);

    public ShellStress Stress(double[] u, ShellElement element)
    {
        var own = new double[18];
        element.Gather(u, own);
        return element.StressFrom(own, free.Strain, free.Curvature);
    }

    public double[] Hertz(int count, double shift = 0)
    {
        ModeSet modes = Modes.Solve(Frame, count, new ModeOptions { Shift = shift });
        return [.. Enumerable.Range(0, modes.Count).Select(i => modes.Frequency(i))];
    }

    public double Buckling()
    {
        Frame built = Frame;
        return LinearBuckling.Solve(built, Solve(), 1, 1e12).LoadFactors[0];
    }

    private void Add(int a, int b, int c)
    {
        if (a == b || b == c || a == c)
            return;
        var element = new ShellElement([a, b, c], [positions[a], positions[b], positions[c]], section);
        builder.Add(element);
        triangles.Add((element, [a, b, c]));
    }
}
