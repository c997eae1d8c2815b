using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Tests.Analyses;

namespace StatueFrame.Tests.Towers;

/// <summary>
/// Shear stiffness of laced panels: the sway force of a panel whose two plans stay level, times height over sway. n = 2
/// faces resist it; h₀ is the width. The legs are thin rods (negligible bending) but 400 times the braces' area. The
/// horizontals of the level plans are rigid, so of the posts of N lacing only the limit A_v → ∞ can be shown.
/// </summary>
public class LacedPanelTests
{
    private const double E = 210e9, Width = 20, Bay = 16, Ad = 0.25e-6;

    private const string Figure = "EN 1993-1-1:2005, Figure 6.9 (formula from memory; it follows from statics)";

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("S_v of zigzag lacing, a = two bays: n E A_d a h₀²/(2 d³)", Figure, Zigzag / 2, "N", 5e-3, () => ShearStiffness(Bracing.SingleDiagonal, 2), ValueKind.FromMemory),
        new("S_v of zigzag lacing, four bays", Figure, Zigzag / 2, "N", 5e-3, () => ShearStiffness(Bracing.SingleDiagonal, 4), ValueKind.FromMemory),
        new("S_v of X lacing, a = two bays: n E A_d a h₀²/d³", Figure, Zigzag, "N", 5e-3, () => ShearStiffness(Bracing.Cross, 2), ValueKind.FromMemory),
        new("S_v of X lacing, one bay", Figure, Zigzag, "N", 5e-3, () => ShearStiffness(Bracing.Cross, 1), ValueKind.FromMemory),
        new("S_v of N lacing with rigid posts, a = one bay: n E A_d a h₀²/d³", Figure, 2 * E * Ad * Bay * Width * Width / Cube(Diagonal), "N", 5e-3, () => ShearStiffness(Bracing.SingleDiagonal, 1), ValueKind.FromMemory),
        new("S_v of K lacing, one bay: two diagonals of half the width", "statics of the panel", 2 * 2 * E * Ad * Bay * Width * Width / 4 / Cube(Math.Sqrt(Bay * Bay + Width * Width / 4)), "N", 5e-3, () => ShearStiffness(Bracing.KBrace, 1), ValueKind.IndependentComputation),
    ];

    private static double Diagonal => Math.Sqrt(Bay * Bay + Width * Width);

    /// <summary>n E A_d a h₀²/d³ with n = 2 and a of two bays.</summary>
    private static double Zigzag => 2 * E * Ad * 2 * Bay * Width * Width / Cube(Diagonal);

    private static double Cube(double x) => x * x * x;

    private static double ShearStiffness(Bracing bracing, int bays)
    {
        var segment = new LatticeSegment
        {
            Legs = new RoundBar((2000 * Math.Sqrt(400 * Ad / Math.PI)).Millimeters),
            Braces = new FlatBar(1.Millimeters, 0.25.Millimeters),
            Horizontals = new RoundBar(10.Millimeters),
            Material = StructuralSteel.S355 with { YoungsModulus = E.Pascals },
            Bracing = bracing,
            Bays = bays,
        };
        double height = bays * Bay;
        TowerLevel Level(string name, double z) => new(name, z.Meters) { Plan = TowerPlan.Square(Width.Meters) };
        var model = new SegmentModel(segment, "panel", new BodyAxes(Axes3D.Global, Vector3D.Zero), (Place.At(0, Vector3D.Zero), Level("a", 0)), (Place.At(1, new Vector3D(0, 0, height)), Level("b", height)));
        return Dense.Stiffness(model.Element)[6, 6] * height;
    }

    [Fact]
    public void Braces_far_from_the_wind_carry_no_shear()
    {
        // Along y the panel is as stiff as along x: the other two faces resist.
        foreach (Bracing bracing in new[] { Bracing.Cross, Bracing.KBrace })
        {
            var segment = new LatticeSegment { Legs = new RoundBar(60.Millimeters), Braces = new RoundBar(20.Millimeters), Material = StructuralSteel.S355, Bracing = bracing, Bays = 3 };
            TowerLevel Level(string name, double z) => new(name, z.Meters) { Plan = TowerPlan.Square(2.Meters) };
            var model = new SegmentModel(segment, "panel", new BodyAxes(Axes3D.Global, Vector3D.Zero), (Place.At(0, Vector3D.Zero), Level("a", 0)), (Place.At(1, new Vector3D(0, 0, 6)), Level("b", 6)));
            var k = Dense.Stiffness(model.Element);
            Assert.Equal(1, k[7, 7] / k[6, 6], 1e-9);
            Assert.Equal(0, k[6, 7] / k[6, 6], 1e-9);
        }
    }
}
