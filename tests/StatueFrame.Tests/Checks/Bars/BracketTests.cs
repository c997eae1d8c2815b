using CsCheck;
using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Tests.Checks.Catalogue;
using StatueFrame.Tests.Validation;
using UnitsNet;
using Check = StatueFrame.Checks.Check;

namespace StatueFrame.Tests.Checks.Bars;

/// <summary>Brackets: what they carry, how they give, and when they fail.</summary>
public class BracketTests
{
    private static readonly Gen<PlacedBar> onBracket = Gen.Select(Standoffs.Bars.Placement.Where(place => place.Bracket is not null), Standoffs.Bars.Vector(1), Standoffs.Bars.Vector(3), (place, level, band) => new PlacedBar(place, level, band));

    private static readonly BarDesign design = BarDesign.For(StructuralSteel.S355);

    /// <summary>What the bracket's foot carries is what the level gets from the bar: equilibrium of bar and bracket together.</summary>
    [Fact]
    public void The_foot_carries_what_the_level_gets() => Gen.Select(onBracket, Gen.Double[-0.01, 0.01].Array[12]).Sample((bar, u) =>
    {
        double[] f = Standoffs.Bars.Times(Standoffs.Bars.Full(bar), u);
        var forces = new double[12];
        bar.Forces(u.AsSpan(0, 6), u.AsSpan(6, 6), forces);
        BracketLoad load = Load(bar, forces);
        PlacedBracket bracket = bar.Place.Bracket!;
        // The bar pulls on the level with what the level's stiffness would need to move so.
        Vector3D force = -new Vector3D(f[0], f[1], f[2]), moment = -new Vector3D(f[3], f[4], f[5]);
        Vector3D node = bar.Place.SkinEnd - LevelArm(bar), atFoot = bracket.Axes.ToLocal(moment + (node - bracket.Foot).Cross(force)), local = bracket.Axes.ToLocal(force);
        double scale = 1e-9 * Standoffs.Bars.Scale(bar);
        Assert.Equal(local.X, load.N, scale);
        Assert.Equal(double.Hypot(local.Y, local.Z), load.V, scale);
        Assert.Equal(Math.Abs(atFoot.X), load.T, scale);
        Assert.Equal(Math.Abs(atFoot.Y), load.Foot.Strong, scale);
        Assert.Equal(Math.Abs(atFoot.Z), load.Foot.Weak, scale);
    });

    /// <summary>Peaks that need not come at one time ask at least what the same forces do at one time.</summary>
    [Fact]
    public void Peaks_are_on_the_safe_side() => Gen.Select(onBracket, Gen.Double[-1000, 1000].Array[12]).Sample((bar, f) =>
    {
        BarModel model = Model(bar);
        BarEnds ends = BarEnds.Of(f);
        BracketLoad together = BracketLoad.Of(model, ends, design, null), peaks = BracketLoad.Of(model, ends.AsPeaks(), design, null);
        Assert.True(Math.Abs(together.N) <= -peaks.N * (1 + 1e-9) && together.Strong <= peaks.Strong * (1 + 1e-9) && together.Weak <= peaks.Weak * (1 + 1e-9)
            && together.V <= peaks.V * (1 + 1e-9) && together.T <= peaks.T * (1 + 1e-9));
    });

    /// <summary>A bracket never stiffens a bar, and one that hardly gives leaves it as it is.</summary>
    [Fact]
    public void A_bracket_makes_softer_by_what_it_gives() => onBracket.Sample(bar =>
    {
        double[] with = Standoffs.Bars.Matrix(BarStiffness.Of(bar.Place)), without = Standoffs.Bars.Matrix(BarStiffness.Of(bar.Place with { Bracket = null }));
        double[] softened = [.. without.Zip(with, (rigid, soft) => rigid - soft)];
        Assert.True(Standoffs.Bars.LeastEigenvalue(Standoffs.Bars.Square(softened)) > -1e-6 * without.Max());
        Bracket own = bar.Place.Bracket!.Bracket;
        Bracket stiff = own with { TowerFixity = EndFixity.Rigid, Section = new FlatBar(1.Meters, 0.45.Meters), Material = own.Material with { YoungsModulus = own.Material.YoungsModulus * 100, ShearModulus = own.Material.ShearModulus * 100 } };
        double[] hardly = Standoffs.Bars.Matrix(BarStiffness.Of(bar.Place with { Bracket = PlacedBracket.Between(bar.Place.Bracket.Foot, bar.Place.Bracket.Tip, stiff) }));
        Assert.All(without.Zip(hardly), pair => Assert.Equal(pair.First, pair.Second, 0.02 * without.Max()));
    });

    /// <summary>A radial bar, hinged to the skin, on a radial bracket: two cantilevers in series, F L³/3EI and what the tip's slope adds.</summary>
    [Fact]
    public void Deflection_of_a_bar_on_a_bracket_is_that_of_the_handbook()
    {
        const double L1 = 0.6, L2 = 0.9, F = 250;
        Standoff flat = Standoffs.Bars.Flat with { Section = new FlatBar(60.Millimeters, 8.Millimeters) };
        var bracket = new Bracket { Section = new Tube(60.Millimeters, 5.Millimeters), Material = Standoffs.Bars.Steel, TowerFixity = EndFixity.Rigid };
        BarPlacement place = BarPlacement.Between(new Vector3D(L1, 0, 0), new Vector3D(L1 + L2, 0, 0), Vector3D.UnitX, 0, flat) with
        {
            Bracket = PlacedBracket.Between(Vector3D.Zero, new Vector3D(L1, 0, 0), bracket),
        };
        double E = Standoffs.Bars.Steel.YoungsModulus.Pascals, EI1 = E * bracket.Section.StrongInertia.MetersToTheFourth, EI2 = E * 0.008 * Math.Pow(0.06, 3) / 12;
        Span<double> forces = stackalloc double[12], moved = stackalloc double[6];
        Assert.True(new PlacedBar(place, Vector3D.Zero, place.SkinEnd).Cantilever(new Vector3D(0, 0, -F), forces, moved));
        // Roark, 8th ed., Table 8.1, 1a: the bracket under force F and moment F L2 at its tip; shear adds less than 1 %.
        double tip = F * L1 * L1 * L1 / (3 * EI1) + F * L2 * L1 * L1 / (2 * EI1), slope = F * L1 * L1 / (2 * EI1) + F * L2 * L1 / EI1;
        double expected = tip + slope * L2 + F * L2 * L2 * L2 / (3 * EI2);
        Assert.Equal(-expected, moved[2], 0.01 * expected);
        Assert.Equal(F * L2, Math.Abs(forces[4]), 1e-9);
    }

    /// <summary>What saddles rub with is looked at both ways: it never helps what holds the bar, whichever way is worse for the bar.</summary>
    [Theory]
    [InlineData(30)]
    [InlineData(-50)]
    public void Rubbing_never_helps_a_bracket(double lay)
    {
        SmallStatue whole = SmallWhole.Of(wind: 32, slides: true);
        CheckSheet Sheet(double clamp) => (whole.Statue with
        {
            Limbs = [],
            Points = [.. whole.Statue.Points.Where(point => !point.On.Contains('/'))],
            Standoffs = [.. whole.Statue.Standoffs.Cast<EvenRing>().Select(ring => ring with
            {
                Lay = lay.Degrees,
                Rise = 0.3.Meters,
                Length = 0.6.Meters,
                Bracket = sections[1],
                Standoff = ring.Standoff with { Saddle = ring.Standoff.Saddle! with { Clamp = clamp.Kilonewtons } },
            })],
        }).Check(whole.Criteria, [.. whole.Situations]);
        CheckSheet smooth = Sheet(0), rubbing = Sheet(1), hard = Sheet(12);
        foreach (string id in (string[])["brackets.bending", "brackets.welds", "bars.welds"])
        {
            double[] uses = [.. new[] { smooth, rubbing, hard }.Select(sheet => sheet.Checks.Where(check => check.Id == id).Max(check => check.Utilization)!.Value)];
            Assert.True(uses[0] < uses[1] && uses[1] < uses[2], $"{id}: {uses[0]}, {uses[1]}, {uses[2]}");
        }
    }

    private static readonly Bracket[] sections =
    [
        .. new Section[] { new Tube(60.Millimeters, 4.Millimeters), new RectangularTube(100.Millimeters, 50.Millimeters, 4.Millimeters), new FlatBar(80.Millimeters, 12.Millimeters), new AngleBar(80.Millimeters, 8.Millimeters) }
            .Select(section => new Bracket { Section = section, Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid, Throat = 4.Millimeters }),
    ];

    private static readonly BarDesign[] designs =
    [
        design, BarDesign.For(StructuralSteel.S355, DesignCode.AiscLrfd), BarDesign.For(StructuralSteel.S355, DesignCode.AllowableStress),
    ];

    /// <summary>States gathered in boxes give the line that every state looked at by itself gives, whatever their order, used little or far too much.</summary>
    [Fact]
    public void A_ring_of_brackets_is_as_used_as_its_worst_state() => Gen.Select(Gen.Int[0, 3], Gen.Int[0, 2], Gen.Double[-1, 1.3], Gen.Double[-1, 1].Array[8].Array[1, 40], Gen.Double[0.3, 1.5].Array[3]).Sample((section, code, size, states, lengths) =>
    {
        double scale = Math.Pow(10, size);
        PlacedBracket[] placed = Array.ConvertAll(lengths, length => PlacedBracket.Between(Vector3D.Zero, length * Vector3D.UnitX, sections[section]));
        BracketChord chord = new(new Tube(300.Millimeters, 8.Millimeters), StructuralSteel.S355, Vector3D.UnitZ, true, null) { Pressed = 0.3 };
        var ring = new BracketChecks.OfRing(placed, chord);
        Worst<BracketLoad> bent = new(BracketChecks.BendingEntry), welded = new(BracketChecks.WeldEntry);
        var face = new Worst<FaceLoad>(FaceChecks.UnderBrackets);
        for (int i = 0; i < states.Length; i++)
        {
            double[] u = states[i];
            var load = new BracketLoad(
                placed[i % 3], $"bar {i}", "", designs[code], null, 2e4 * scale * u[0], Math.Abs(1e3 * scale * u[1]), Math.Abs(100 * scale * u[2]),
                (Math.Abs(300 * scale * u[3]), Math.Abs(100 * scale * u[4])), (Math.Abs(300 * scale * u[5]), Math.Abs(100 * scale * u[6])));
            ring.Look(i % 3, load);
            bent.Look(load);
            welded.Look(load);
            face.Look(FaceLoad.Of(load, chord));
        }
        var sheet = new SheetWriter();
        ring.Write(sheet);
        double? Of(string id) => sheet.Checks.Single(check => check.Id == id).Utilization;
        Assert.Equal(bent.Utilization, Of("brackets.bending"));
        Assert.Equal(welded.Utilization, Of("brackets.welds"));
        Assert.Equal(code == 2 || sections[section].Section is AngleBar, welded.AnyNotDone);
        Assert.Equal(face.Utilization, ring.Face.Utilization);
    }, iter: 3000);

    /// <summary>The moduli of a line round a section, by adding up many short pieces of it.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Weld_round_the_end_is_a_line_of_many_pieces(bool round)
    {
        Section section = round ? new Tube(90.Millimeters, 5.Millimeters) : new RectangularTube(100.Millimeters, 60.Millimeters, 5.Millimeters);
        var bracket = new Bracket { Section = section, Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid, Throat = 4.Millimeters };
        PlacedBracket placed = PlacedBracket.Between(Vector3D.Zero, Vector3D.UnitX, bracket);
        (double N, double V, double T, double Strong, double Weak) = (12e3, 5e3, 300, 2500, 900);
        var load = new BracketLoad(placed, "band 1, bar 1", "", design, null, N, V, T, default, (Strong, Weak));
        const int Pieces = 100_000;
        double l = 0, yy = 0, zz = 0;
        for (int i = 0; i < Pieces; i++)
        {
            (double y, double z, double piece) = round ? Circle(i) : Box(i);
            (l, yy, zz) = (l + piece, yy + z * z * piece, zz + y * y * piece);
        }
        (double top, double side) = round ? (0.045, 0.045) : (0.05, 0.03);
        double corner = round ? 0.045 : Math.Sqrt(top * top + side * side);
        double q_n = N / l + Strong * top / yy + Weak * side / zz, q_v = V / l + T * corner / (yy + zz);
        Check check = BracketChecks.WeldEntry.With(load, "storm");
        Assert.Equal(Math.Sqrt(q_n * q_n + q_v * q_v) / 0.004, check.Demand!.Value, 1e-4 * check.Demand.Value);
        // EN 1993-1-8, 4.5.3.3: f_vw.d = f_u/(√3 β_w γ_M2), with β_w at its greatest.
        Assert.Equal(StructuralSteel.S355.UltimateStrength.Pascals / (Math.Sqrt(3) * 1.25), check.Capacity!.Value, 1);

        static (double, double, double) Circle(int i)
        {
            (double sin, double cos) = Math.SinCos(2 * Math.PI * (i + 0.5) / Pieces);
            return (0.045 * cos, 0.045 * sin, 2 * Math.PI * 0.045 / Pieces);
        }

        static (double, double, double) Box(int i)
        {
            const int Side = Pieces / 4;
            double t = (i % Side + 0.5) / Side - 0.5;
            return (i / Side) switch
            {
                0 => (0.03, 0.1 * t, 0.1 / Side),
                1 => (-0.03, 0.1 * t, 0.1 / Side),
                2 => (0.06 * t, 0.05, 0.06 / Side),
                _ => (0.06 * t, -0.05, 0.06 / Side),
            };
        }
    }

    private static FaceLoad OnFace(Section chord, Section bracket, double N, double strong = 0, double weak = 0, bool upright = false, double pressed = 0) => new(
        "band 1, bar 1", "", design, new BracketChord(chord, StructuralSteel.S355, Vector3D.UnitZ, upright, null) { Pressed = pressed }, Axes3D.Along(Vector3D.UnitX, Vector3D.UnitZ), bracket, N, strong, weak);

    private static double OnFaceUse(FaceLoad load) => FaceChecks.UnderBrackets.Run(null, load).Demand;

    /// <summary>
    /// A push on a flat face by yield lines, the least over how far they reach: hinges along both walls and the bracket's sides turn by 1/c, those
    /// across by 1/x, the four slanting ones by both.
    /// </summary>
    [Fact]
    public void A_flat_face_yields_in_the_lines_that_take_least_work() => Gen.Select(Gen.Double[0.1, 0.4], Gen.Double[0.2, 0.84], Gen.Double[0.2, 0.84], Gen.Double[4, 16]).Sample((face, width, height, wall) =>
    {
        double t = wall * 1e-3, b = width * face, h = height * face, c = (face - b) / 2, m = 355e6 * t * t / 4, least = double.PositiveInfinity;
        for (double x = 0.05 * face; x < 2 * face; x *= 1.0005)
            least = Math.Min(least, m * (2 * (h + 2 * x) / c + 2 * h / c + 2 * face / x + 2 * b / x + 4 * (x / c + c / x)));
        // The bracket's longer side stands upright, across the face of a horizontal.
        (double across, double along) = (Math.Max(b, h), Math.Min(b, h));
        if (across > b)
            return;
        var chord = new RectangularTube(Length.FromMeters(face), Length.FromMeters(face), wall.Millimeters);
        double use = OnFaceUse(OnFace(chord, new RectangularTube(Length.FromMeters(across), Length.FromMeters(along), 3.Millimeters), 1000));
        Assert.Equal(1000 / least, use, 1e-5 * use);
    });

    /// <summary>EN 1993-1-8, Tables 7.2, 7.3 and 7.5 (from memory), for a foot of 100 on 400×10 mm, n = 0.5: γ = 20, β = η = 0.25, k_p = 0.775; and punching.</summary>
    [Fact]
    public void A_round_face_by_hand()
    {
        const double f = 355e6, t = 0.01, d = 0.1, k_p = 1 - 0.3 * 0.5 * 1.5;
        double Use(Section foot) => OnFaceUse(OnFace(new Tube(400.Millimeters, 10.Millimeters), foot, 10e3, strong: 2e3, weak: 1e3, upright: true, pressed: 0.5));
        double yields = 10e3 / (Math.Pow(20, 0.2) * k_p * f * t * t * (2.8 + 14.2 / 16)) + Math.Pow(2e3 / (4.85 * f * t * t * d * Math.Sqrt(20) * 0.25 * k_p), 2) + 1e3 / (f * t * t * d * 2.7 / (1 - 0.81 * 0.25) * k_p);
        double punches = (10e3 / (Math.PI * d) + 3e3 / (d * d)) / (f / Math.Sqrt(3) * t);
        Assert.Equal(Math.Max(yields, punches), Use(new Tube(100.Millimeters, 6.Millimeters)), 1e-9);
        double N_R = k_p * f * t * t * (4 + 20.0 / 16) * (1 + 0.25 / 4);
        double boxPunches = (10e3 / (4 * d) + 3e3 / (d * d * 4 / 3)) / (f / Math.Sqrt(3) * t);
        Assert.Equal(Math.Max((10e3 + 2e3 / d + 2 * 1e3 / d) / N_R, boxPunches), Use(new RectangularTube(100.Millimeters, 100.Millimeters, 6.Millimeters)), 1e-9);
    }

    /// <summary>A narrow foot is a plate along the section, 1.3 (1 − n) by EN 1993-1-8, Table 7.13 (from memory); on a section pressed to its yield it holds nothing.</summary>
    [Fact]
    public void A_narrow_foot_is_a_plate()
    {
        var chord = new RectangularTube(200.Millimeters, 200.Millimeters, 10.Millimeters);
        var flat = new RectangularTube(40.Millimeters, 40.Millimeters, 4.Millimeters);
        double free = OnFaceUse(OnFace(chord, flat, 10e3));
        Assert.Equal(free, OnFaceUse(OnFace(chord, flat, 10e3, pressed: 0.2)), 1e-12);
        Assert.Equal(free / (1.3 * 0.4), OnFaceUse(OnFace(chord, flat, 10e3, pressed: 0.6)), 1e-9);
        Assert.True(OnFaceUse(OnFace(chord, flat, 10e3, pressed: 1)) > 100 * free);
    }

    [Fact]
    public void Thinner_walls_and_more_in_the_section_never_help() => Gen.Select(Gen.Double[3, 16], Gen.Double[0, 1], Gen.Double[0.3, 1], Gen.Bool).Sample((wall, pressed, less, round) =>
    {
        var bracket = new RectangularTube(100.Millimeters, 80.Millimeters, 5.Millimeters);
        Section Chord(double t) => round ? new Tube(300.Millimeters, t.Millimeters) : new RectangularTube(200.Millimeters, 200.Millimeters, t.Millimeters);
        double use = OnFaceUse(OnFace(Chord(wall), bracket, 5e3, 2e3, 1e3, round, less * pressed));
        Assert.True(OnFaceUse(OnFace(Chord(less * wall), bracket, 5e3, 2e3, 1e3, round, less * pressed)) >= use);
        Assert.True(OnFaceUse(OnFace(Chord(wall), bracket, 5e3, 2e3, 1e3, round, pressed)) >= use);
    });

    [Fact]
    public void A_thin_bracket_fails_and_one_left_out_is_open()
    {
        SmallStatue whole = Catalogue.SmallWhole.Of();
        CheckSheet without = Sheet(null);
        Assert.Contains(without.OpenLinks, link => link.Link == "brackets" && link.What.Contains("not described", StringComparison.Ordinal));
        Bracket good = new() { Section = new RectangularTube(120.Millimeters, 120.Millimeters, 8.Millimeters), Material = StructuralSteel.S355, TowerFixity = EndFixity.Rigid, Throat = 6.Millimeters };
        CheckSheet sound = Sheet(good);
        Assert.DoesNotContain(sound.OpenLinks, link => link.Link == "brackets" && link.What.Contains("not described", StringComparison.Ordinal));
        Assert.True(sound.Checks.Where(check => check.Family == "brackets" && check.Id != "brackets.faces").All(check => check.Verdict == Verdict.Pass));
        // Nothing hollow is described for them to stand on.
        Assert.Contains(sound.OpenLinks, link => link.Link == "brackets" && link.What == "what they stand on");
        Assert.True(sound.Checks.Count(check => check.Id == "brackets.bending") >= 2);
        CheckSheet thin = Sheet(good with { Section = new RectangularTube(40.Millimeters, 40.Millimeters, 3.Millimeters) });
        Assert.Contains(thin.Failed, check => check.Id == "brackets.bending");
        Assert.Contains(Sheet(good with { Throat = 1.Millimeters }).Failed, check => check.Id == "brackets.welds");
        Assert.Contains(Sheet(good with { Throat = null }).NotChecked, check => check.Id == "brackets.welds");
        // Softer and heavier than brackets that are not there.
        Assert.True(Frequency(thin) < Frequency(without));
        Assert.Contains(sound.Results, line => line.Group == "masses" && line.Name == "brackets" && line.Value > 0);

        CheckSheet Sheet(Bracket? bracket) => (whole.Statue with
        {
            Standoffs = [.. whole.Statue.Standoffs.Select(ring => ring with { Bracket = bracket })],
            Limbs = [.. whole.Statue.Limbs.Select(limb => limb with { Standoffs = [.. limb.Standoffs.Select(ring => ring with { Bracket = bracket })] })],
        }).Check(whole.Criteria, whole.Situations);

        static double Frequency(CheckSheet sheet) => sheet.Results.First(line => line.Group == "frequencies").Value;
    }

    /// <summary>Standoffs without brackets stand on the same faces: on a tube or a horizontal they are looked at, on what is not hollow they stay open.</summary>
    [Fact]
    public void Standoffs_without_brackets_stand_on_faces_too()
    {
        SmallStatue whole = Catalogue.SmallWhole.Of();
        CheckSheet Sheet(Section horizontals) => (whole.Statue with
        {
            Limbs = [],
            Points = [],
            Seams = null,
            Tower = whole.Statue.Tower with { Levels = [.. whole.Statue.Tower.Levels.Select(level => level.Plan is null ? level : level with { Frame = new LevelFrame { Horizontals = horizontals, PlanBracing = new AngleBar(60.Millimeters, 6.Millimeters), Material = StructuralSteel.S355 } })] },
        }).Check(whole.Criteria with { Sway = [] }, whole.Situations);
        Check[] thick = [.. Sheet(new RectangularTube(150.Millimeters, 150.Millimeters, 10.Millimeters)).Checks.Where(check => check.Id == "bars.faces")];
        Check[] thin = [.. Sheet(new RectangularTube(150.Millimeters, 150.Millimeters, 4.Millimeters)).Checks.Where(check => check.Id == "bars.faces")];
        Assert.All(thick, check => Assert.NotEqual(Verdict.NotChecked, check.Verdict));
        Assert.True(thin.Max(check => check.Utilization) > 5 * thick.Max(check => check.Utilization));
        Assert.Contains(Sheet(new AngleBar(100.Millimeters, 10.Millimeters)).OpenLinks, link => link.What == "what they stand on without a bracket");
    }

    [Fact]
    public void A_bracket_that_swings_is_refused()
    {
        Bracket hinged = new() { Section = new Tube(60.Millimeters, 5.Millimeters), Material = StructuralSteel.S355, TowerFixity = EndFixity.Pinned };
        Statue statue = SmallStatue.Good.Statue;
        Problem problem = Assert.Single((statue with { Standoffs = [statue.Standoffs[0] with { Bracket = hinged }, .. statue.Standoffs.Skip(1)] }).FindProblems());
        Assert.Equal("Standoffs[0].Bracket.TowerFixity", problem.Path);
    }

    private static Vector3D LevelArm(PlacedBar bar)
    {
        // A turn of the level alone moves the skin end by turn × arm: found from three turns.
        Span<double> none = stackalloc double[6], turn = stackalloc double[6], d = stackalloc double[6];
        turn[5] = 1;
        bar.Motion(turn, none, d);
        Vector3D moved = -bar.Place.Axes.ToGlobal(new Vector3D(d[0], d[1], d[2]));
        turn.Clear();
        turn[3] = 1;
        bar.Motion(turn, none, d);
        Vector3D again = -bar.Place.Axes.ToGlobal(new Vector3D(d[0], d[1], d[2]));
        return new Vector3D(moved.Y, -moved.X, again.Y == 0 ? 0 : -again.Y);
    }

    private static BarModel Model(PlacedBar bar) => new(bar, new BandShare(0, 1, 1, 1), default, 1, 1, 0, "band 1, bar 1");

    private static BracketLoad Load(PlacedBar bar, double[] forces) =>
        BracketLoad.Of(Model(bar), BarEnds.Of(forces), design, null);
}
