#:project ../../src/StatueFrame.Shape/StatueFrame.Shape.csproj

// From the sculptor's maquette to a check sheet: a mesh file is read, repaired, enlarged, divided into trunk and wing and
// sliced; no station is typed by hand. The maquette is a small Saltmere Heron at 1:20, made here so that the program needs
// no file from elsewhere. All data are invented for this example.

using StatueFrame;
using StatueFrame.Mechanics;
using StatueFrame.Shape;
using UnitsNet;

// 1. The maquette's file, in millimeters as a scanner writes it. Its maker states unit and upward axis.
string file = Path.Combine(Path.GetTempPath(), "saltmere-maquette.stl");
MeshFile.WriteStl(Maquette.Make(cell: 0.016).Enlarged(1000), file);
Mesh scan = MeshFile.Read(file, new MeshReading { Unit = 1.Millimeters, Up = UpAxis.Z });
MeshRepair repair = MeshRepair.Of(scan);
Console.WriteLine($"MAQUETTE\n{repair.Report}");

// 2. Full size, twenty times the maquette; the wing is cut off by a plane so that no sheet counts twice.
Mesh full = repair.Mesh.Enlarged(20);
var wingAxis = new ShapeAxis(Point3.FromMeters(0, 2.6, 14.2), Point3.FromMeters(0, 9.4, 19.0));
ShapeDivision parts = ShapeDivision.ByPlanes(full, [new LimbCut { Name = "wing", Axis = wingAxis, CutInclination = 0.Degrees }]);
SlicedSkin trunk = parts.Trunk.Slice(new SkinSlicing { Bands = 27, LeastWidth = 0.5.Meters });
SlicedSkin wing = parts.Limbs[0].Slice(new SkinSlicing
{
    Elevations = [.. Enumerable.Range(0, 5).Select(i => (1.2 + 1.45 * i).Meters)],
});
Console.WriteLine($"\nSHEET  trunk {trunk.SheetArea:f1}, wing {wing.SheetArea:f1}, together {parts.SheetArea:f1}");
Console.WriteLine($"slicing errors: plan areas {trunk.OutlineError:p2}, projected area {trunk.ProjectedError:p2}");

// 3. The statue: a level of the tower in the middle of every band, as wide as the skin leaves room for.
double[] heights = [.. trunk.Bands.Select(b => 0.5 * (b.Bottom.Meters + b.Top.Meters))];
int shoulder = Array.FindIndex(heights, z => z > 17.5);
double LegSpacing(double z) => 2.6 - 0.07 * z;
TowerFit room = TowerFit.Of(parts.Trunk, new TowerFitting { Levels = [.. heights.Take(shoulder).Select(z => z.Meters)], Clearance = 0.5.Meters });
Console.WriteLine($"\nTOWER  half a meter off the skin, {room.Levels.Count(l => l.Width.Meters >= LegSpacing(l.Elevation.Meters))} of {room.Levels.Count} levels have room for the legs");
double TubeDiameter(double z) => 0.75 - 0.025 * (z - 17);
var tower = new Tower
{
    Levels =
    [
        new TowerLevel("base", 0.Meters) { Plan = TowerPlan.Square(LegSpacing(0).Meters) },
        .. heights.Select((z, i) => new TowerLevel($"L{i + 1}", z.Meters) { Plan = i < shoulder ? TowerPlan.Square(LegSpacing(z).Meters) : null }),
    ],
    Segments =
    [
        .. Enumerable.Repeat<TowerSegment>(new LatticeSegment
        {
            Legs = new AngleBar(150.Millimeters, 15.Millimeters), Braces = new AngleBar(80.Millimeters, 8.Millimeters),
            Material = StructuralSteel.S355, ConnectionMassFraction = 0.10,
        }, shoulder),
        .. heights.Skip(shoulder).Select((z, i) => new MemberSegment
        {
            Section = new Tube(TubeDiameter(heights[shoulder + i - 1]).Meters, 14.Millimeters),
            TopSection = new Tube(TubeDiameter(z).Meters, 14.Millimeters), Material = StructuralSteel.S355,
        }),
    ],
    Base = TowerBase.Rocking(6e9.NewtonMetersPerRadian),
};
var flat = new Standoff
{
    Section = new FlatBar(60.Millimeters, 18.Millimeters), Material = StainlessSteel.Duplex2205,
    TowerFixity = EndFixity.Rigid, SkinFixity = EndFixity.Rigid,
};
Skin WithArmature(SlicedSkin s) => s.ToSkin(Copper.HalfHardR240, 2.4.Millimeters) with { ArmatureMass = 9.KilogramsPerSquareMeter };
var heron = new Statue
{
    Name = "Saltmere Heron, from the maquette",
    Tower = tower,
    Skin = WithArmature(trunk),
    Standoffs = [.. heights.Select((_, i) => new EvenRing { Level = $"L{i + 1}", Count = i < shoulder ? 34 : 12, Lay = 30.Degrees, Length = (i < shoulder ? 0.55 : 0.25).Meters, Standoff = flat })],
    Limbs =
    [
        new Limb
        {
            Name = "wing", From = $"L{Array.FindIndex(heights, z => z > 13.7) + 1}", Heading = wingAxis.Heading, Inclination = wingAxis.Inclination,
            Root = Point3.FromMeters(0, 2.6, 14.2 - heights[Array.FindIndex(heights, z => z > 13.7)]),
            Tower = new Tower
            {
                Levels = [new TowerLevel("root", 0.Meters), .. wing.Bands.Select((b, i) => new TowerLevel($"W{i + 1}", 0.5 * (b.Bottom + b.Top)))],
                Segments = [.. wing.Bands.Select(_ => new MemberSegment { Section = new Tube(400.Millimeters, 12.Millimeters), Material = StructuralSteel.S355 })],
            },
            Skin = WithArmature(wing),
            Standoffs = [.. wing.Bands.Select((_, i) => new EvenRing { Level = $"W{i + 1}", Count = 10, Lay = 25.Degrees, Length = 0.25.Meters, Standoff = flat })],
        },
    ],
    Points = [new NamedPoint("tip", "band 27"), new NamedPoint("wing tip", "wing/band 4")],
    BaseAboveGround = 6.Meters,
};

// 4. The check sheet.
var wind = new WindAction
{
    Profile = new En1991Wind { FundamentalVelocity = 27.MetersPerSecond, Terrain = TerrainCategory.Zero },
    GustEffectFactor = 1.3,
};
Console.WriteLine();
Console.WriteLine(heron.Check(
    new Criteria { BarStressFraction = 1 / 1.1, Damping = DampingModel.Of(DampingCategory.FrictionBoltedLattice), Sway = [new SwayLimit("tip", 200.Millimeters)] },
    new CharacteristicActions { Variable = [wind] }));

// 5. The workshop's schedule of sheets.
SheetPlan sheets = SheetPlan.Of(parts.Trunk.Surface, new SheetCutting
{
    Metal = Copper.HalfHardR240, Thickness = 2.4.Millimeters, GreatestLength = 2.5.Meters, GreatestWidth = 1.8.Meters,
    GreatestMass = 60.Kilograms, Flush = [new FlushRegion(Point3.FromMeters(0.5, 0, 26), 1.5.Meters)],
});
Console.WriteLine($"SHEETS OF THE TRUNK\n{sheets}");

/// <summary>Models the heron as the surface on which a function vanishes, meshed cell by cell (marching tetrahedra).</summary>
static class Maquette
{
    /// <summary>Signed distance, roughly: negative inside. Rounded cones and an ellipsoid, blended, cut level at the foot.</summary>
    static double Inside(Vector3D p)
    {
        double f = Cone(p, new(0, 0, 0), 0.150, new(0, 0, 0.50), 0.120);
        f = Blend(f, Ellipsoid(p, new(0.012, 0, 0.62), new(0.175, 0.150, 0.30)));
        f = Blend(f, Cone(p, new(0, 0, 0.80), 0.075, new(0.005, 0, 1.24), 0.037));
        f = Blend(f, Cone(p, new(0.005, 0, 1.29), 0.045, new(0.075, 0, 1.25), 0.018));
        f = Blend(f, Wing(p));
        return Math.Max(f, -p.Z);
    }

    static double Wing(Vector3D p)
    {
        Vector3D along = new Vector3D(0, 0.34, 0.24).Normalized(), d = p - new Vector3D(0, 0.27, 0.81);
        double s = d.Dot(along);
        Vector3D across = d - s * along;
        double up = across.Dot(new Vector3D(0, -along.Z, along.Y));
        return Ellipsoid(new(s, across.X, up), default, new(0.25, 0.085, 0.045));
    }

    static double Blend(double a, double b)
    {
        double h = Math.Max(0.03 - Math.Abs(a - b), 0) / 0.03;
        return Math.Min(a, b) - 0.25 * 0.03 * h * h;
    }

    static double Cone(Vector3D p, Vector3D a, double ra, Vector3D b, double rb)
    {
        Vector3D d = b - a;
        double t = Math.Clamp((p - a).Dot(d) / d.Dot(d), 0, 1);
        return (p - a - t * d).Length - (ra + t * (rb - ra));
    }

    static double Ellipsoid(Vector3D p, Vector3D center, Vector3D half)
    {
        Vector3D d = p - center;
        double k = new Vector3D(d.X / half.X, d.Y / half.Y, d.Z / half.Z).Length;
        return (k - 1) * Math.Min(half.X, Math.Min(half.Y, half.Z));
    }

    public static Mesh Make(double cell)
    {
        (double X, double Y, double Z) low = (-0.25, -0.25, -1.4 * cell), high = (0.25, 0.60, 1.42);
        (int nx, int ny, int nz) = ((int)((high.X - low.X) / cell), (int)((high.Y - low.Y) / cell), (int)((high.Z - low.Z) / cell));
        var values = new double[(nx + 1) * (ny + 1) * (nz + 1)];
        int Index(int i, int j, int k) => (k * (ny + 1) + j) * (nx + 1) + i;
        Vector3D At(int n) => new(low.X + cell * (n % (nx + 1)), low.Y + cell * (n / (nx + 1) % (ny + 1)), low.Z + cell * (n / ((nx + 1) * (ny + 1))));
        for (int n = 0; n < values.Length; n++)
            values[n] = Inside(At(n));
        var coordinates = new List<double>();
        var corners = new List<int>();
        var made = new Dictionary<(int, int), int>();
        int Between(int a, int b)
        {
            (a, b) = (Math.Min(a, b), Math.Max(a, b));
            if (made.TryGetValue((a, b), out int known))
                return known;
            Vector3D v = At(a) + values[a] / (values[a] - values[b]) * (At(b) - At(a));
            coordinates.AddRange([v.X, v.Y, v.Z]);
            return made[(a, b)] = coordinates.Count / 3 - 1;
        }
        void Face(int a, int b, int c, Vector3D outward)
        {
            Vector3D V(int i) => new(coordinates[3 * i], coordinates[3 * i + 1], coordinates[3 * i + 2]);
            bool faces = (V(b) - V(a)).Cross(V(c) - V(a)).Dot(outward) >= 0;
            corners.AddRange(faces ? [a, b, c] : [a, c, b]);
        }
        // Six tetrahedra round the diagonal of each cell.
        (int, int, int)[] steps = [(1, 0, 0), (0, 1, 0), (0, 0, 1)];
        int[][] orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
        for (int k = 0; k < nz; k++)
        for (int j = 0; j < ny; j++)
        for (int i = 0; i < nx; i++)
        foreach (int[] order in orders)
        {
            var tetra = new int[4];
            (int x, int y, int z) = (i, j, k);
            tetra[0] = Index(x, y, z);
            for (int s = 0; s < 3; s++)
            {
                (x, y, z) = (x + steps[order[s]].Item1, y + steps[order[s]].Item2, z + steps[order[s]].Item3);
                tetra[s + 1] = Index(x, y, z);
            }
            int[] inner = [.. tetra.Where(n => values[n] < 0)], outer = [.. tetra.Where(n => values[n] >= 0)];
            if (inner.Length is 0 or 4)
                continue;
            Vector3D outward = outer.Select(At).Aggregate((a, b) => a + b) / outer.Length - inner.Select(At).Aggregate((a, b) => a + b) / inner.Length;
            if (inner.Length == 2)
            {
                (int a, int b, int c, int d) = (Between(inner[0], outer[0]), Between(inner[0], outer[1]), Between(inner[1], outer[1]), Between(inner[1], outer[0]));
                Face(a, b, c, outward);
                Face(a, c, d, outward);
            }
            else
            {
                (int lone, int[] three) = inner.Length == 1 ? (inner[0], outer) : (outer[0], inner);
                Face(Between(lone, three[0]), Between(lone, three[1]), Between(lone, three[2]), outward);
            }
        }
        return Mesh.Of([.. coordinates], [.. corners]);
    }
}
