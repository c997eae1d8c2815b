using CsCheck;
using UnitsNet;

namespace StatueFrame.Tests.Actions.BareTower;

public class LatticeFaceTests
{
    private static LatticeFace Face(double solidity, double roundShare = 0, int legs = 4) => new()
    {
        Legs = legs,
        FlatArea = Area.FromSquareMeters(10 * solidity * (1 - roundShare)),
        RoundArea = Area.FromSquareMeters(10 * solidity * roundShare),
        EnclosedArea = Area.FromSquareMeters(10),
    };

    private static double En(double phi, double round = 0, int legs = 4, double degrees = 0) =>
        Face(phi, round, legs).ForceCoefficient(LatticeRule.En1993_3_1, Angle.FromDegrees(degrees));

    private static double Asce(double phi, double round = 0, int legs = 4, double degrees = 0) =>
        Face(phi, round, legs).ForceCoefficient(LatticeRule.Asce7, Angle.FromDegrees(degrees));

    public static IEnumerable<PublishedValue> Rows =>
    [
        new("square lattice of angles, φ = 0.2: EN against ASCE", "ASCE/SEI 7-22, Figure 29.4-3: 4.0ε² − 5.9ε + 4.0", 2.98, "-", 0.05, () => En(0.2), ValueKind.IndependentComputation),
        new("square lattice of angles, φ = 0.3: EN against ASCE", "ASCE/SEI 7-22, Figure 29.4-3: 4.0ε² − 5.9ε + 4.0", 2.59, "-", 0.05, () => En(0.3), ValueKind.IndependentComputation),
        new("triangular lattice of angles, φ = 0.2: EN against ASCE", "ASCE/SEI 7-22, Figure 29.4-3: 3.4ε² − 4.7ε + 3.4", 2.596, "-", 0.06, () => En(0.2, legs: 3), ValueKind.IndependentComputation),
        new("square lattice of tubes, φ = 0.3: EN against ASCE", "ASCE/SEI 7-22, Figure 29.4-3: 2.59 (0.51ε² + 0.57)", 1.595, "-", 0.06, () => En(0.3, 1), ValueKind.IndependentComputation),
        new("square lattice of angles, ε = 0.2", "ASCE/SEI 7-22, Figure 29.4-3", 2.98, "-", 1e-9, () => Asce(0.2), ValueKind.FromMemory),
        new("triangular lattice of angles, ε = 0.2", "ASCE/SEI 7-22, Figure 29.4-3", 2.596, "-", 1e-9, () => Asce(0.2, legs: 3), ValueKind.FromMemory),
        new("square lattice, wind on the diagonal, ε = 0.2", "ASCE/SEI 7-22, Figure 29.4-3, note", 1.15 * 2.98, "-", 1e-9, () => Asce(0.2, degrees: 45), ValueKind.FromMemory),
        new("c_f,S,0 of a square lattice of tubes, φ = 0.3", "EN 1993-3-1:2006, B.2.2.2, formula as printed in a public program", 1.51875, "-", 1e-9, () => En(0.3, 1)),
        new("c_f,S,0 of a square lattice of angles, φ = 0.3", "EN 1993-3-1:2006, B.2.2.2", 2.5344, "-", 1e-9, () => En(0.3), ValueKind.FromMemory),
    ];

    [Fact]
    public void A_square_panel_has_four_equal_faces_with_the_areas_counted_by_hand()
    {
        ValueList<LatticeFace> faces = LatticeFace.Of(Stages.Panel, Stages.Tower.Levels[0], Stages.Tower.Levels[1]);
        double solid = 2 * 0.12 * 2 + 2 * 0.075 * Math.Sqrt(8);
        Assert.Equal(4, faces.Count);
        Assert.All(faces, f => Assert.Equal(solid, f.SolidArea.SquareMeters, 1e-9));
        Assert.All(faces, f => Assert.Equal(4, f.EnclosedArea.SquareMeters, 1e-9));
        Assert.All(faces, f => Assert.Equal(0, f.RoundArea.SquareMeters, 1e-9));
        Assert.Equal(solid / 4, faces[0].Solidity, 1e-9);
        Assert.Equal([0, 90, 180, 270], faces.Select(f => Math.Round((f.Normal.Degrees + 360) % 360)).Order());
    }

    [Fact]
    public void Horizontals_and_k_braces_count_in_their_face()
    {
        LatticeSegment k = Stages.Panel with { Bracing = Bracing.KBrace, Bays = 2, Braces = new Tube(60.Millimeters, 4.Millimeters) };
        LatticeFace face = LatticeFace.Of(k, Stages.Tower.Levels[0], Stages.Tower.Levels[1])[0];
        // Two bays of 1 m: four braces from the corners to mid-face, one horizontal of 2 m.
        Assert.Equal(0.06 * (4 * Math.Sqrt(2) + 2), face.RoundArea.SquareMeters, 1e-9);
        Assert.Equal(2 * 0.12 * 2, face.FlatArea.SquareMeters, 1e-9);
    }

    [Fact]
    public void A_closed_lattice_is_no_lattice_but_still_has_a_coefficient() =>
        Gen.Select(Gen.Double[0.02, 1], Gen.Double[0, 1], Gen.Int[3, 6], Gen.Double[0, 90]).Sample((phi, round, legs, degrees) =>
            En(phi, round, legs, degrees) is > 0.5 and < 5 && Asce(phi, round, legs, degrees) is > 0.5 and < 5);

    [Fact]
    public void Round_members_catch_less_than_angles_while_the_lattice_is_open() =>
        Gen.Select(Gen.Double[0.02, 0.5], Gen.Int[3, 4]).Sample((phi, legs) =>
            En(phi, 1, legs) < En(phi, 0, legs) && Asce(phi, 1, legs) < Asce(phi, 0, legs));

    [Fact]
    public void A_square_is_symmetric_about_its_diagonal_and_worst_there() =>
        Gen.Select(Gen.Double[0.05, 0.9], Gen.Double[0, 45]).Sample((phi, degrees) =>
            Math.Abs(En(phi, degrees: degrees) - En(phi, degrees: 90 - degrees)) < 1e-9
            && En(phi, degrees: degrees) <= En(phi, degrees: 45) + 1e-12
            && Asce(phi, degrees: degrees) <= Asce(phi, degrees: 45) + 1e-12);

    [Fact]
    public void A_more_solid_lattice_catches_more_in_all() =>
        Gen.Select(Gen.Double[0.02, 0.55], Gen.Double[0.01, 0.05]).Sample((phi, more) =>
            phi * En(phi) <= (phi + more) * En(phi + more) && phi * Asce(phi) <= (phi + more) * Asce(phi + more));

    [Fact]
    public void Bad_input_is_refused()
    {
        Assert.Throws<ArgumentException>(() => En(0));
        Assert.Throws<ArgumentException>(() => En(0.2, legs: 2));
        Assert.Throws<ArgumentException>(() => (Face(0.2) with { EnclosedArea = Area.Zero }).ForceCoefficient(LatticeRule.Asce7, Angle.Zero));
        Assert.Throws<ArgumentOutOfRangeException>(() => Face(0.2).ForceCoefficient((LatticeRule)9, Angle.Zero));
        Assert.Equal(1, (Face(0) with { EnclosedArea = Area.Zero }).Solidity);
        Assert.Throws<InvalidStatueException>(() => LatticeFace.Of(Stages.Panel, new TowerLevel("a", 0.Meters), new TowerLevel("b", 1.Meters)));
    }
}
