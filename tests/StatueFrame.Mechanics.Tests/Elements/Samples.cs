using CsCheck;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

/// <summary>Sections and randomly laid beams for the tests.</summary>
internal static class Samples
{
    /// <summary>A solid rectangle, b along local y and d along local z.</summary>
    public static BeamSection Rectangle(
        double b, double d, double E = 200e9, double nu = 0.3, double rho = 8000, double kappa = 5.0 / 6)
    {
        double A = b * d, Iy = b * d * d * d / 12, Iz = d * b * b * b / 12, G = E / (2 * (1 + nu));
        return new BeamSection
        {
            EA = E * A,
            EIy = E * Iy,
            EIz = E * Iz,
            GJ = G * (Iy + Iz),
            GAy = kappa * G * A,
            GAz = kappa * G * A,
            Mass = rho * A,
            RotaryY = rho * Iy,
            RotaryZ = rho * Iz,
        };
    }

    /// <summary>Unit bending rigidity about both axes, everything else out of the way.</summary>
    public static BeamSection Slender(double EI = 1, double mass = 1) =>
        new() { EA = 1e4 * EI, EIy = EI, EIz = EI, GJ = EI, Mass = mass };

    public static readonly Gen<Vector3D> Points =
        Gen.Select(Gen.Double[-3, 3], Gen.Double[-3, 3], Gen.Double[-3, 3], (x, y, z) => new Vector3D(x, y, z));

    public static readonly Gen<Axes3D> Rotations =
        Gen.Select(Points.Where(p => p.Length > 0.1), Gen.Double[-3, 3], (p, a) => Axes3D.Along(p, Vector3D.UnitZ).Rolled(a));

    private static readonly Gen<BeamSection> Sections = Gen.Select(
        Gen.Double[1e5, 1e6], Gen.Double[1e4, 1e5], Gen.Double[1e4, 1e5], Gen.Double[1e4, 1e5], Gen.Double[1e5, 1e6], Gen.Double[1, 10],
        (EA, EIy, EIz, GJ, GA, m) => new BeamSection
        {
            EA = EA,
            EIy = EIy,
            EIz = EIz,
            GJ = GJ,
            GAy = GA,
            GAz = 2 * GA,
            Mass = m,
            RotaryY = 0.02 * m,
            RotaryZ = 0.05 * m,
        });

    public static readonly Gen<double> Springs = Gen.Double[2, 7].Select(power => Math.Pow(10, power));

    /// <summary>Rigid, released or springy in bending; the start may also slide and the end may also spin.</summary>
    public static readonly Gen<(BeamJoint Start, BeamJoint End)> Joints = Gen.Select(Joint, Joint, Stiffness, Stiffness,
        (start, end, slide, spin) => (start with { X = slide }, end with { RotationX = spin }));

    private static Gen<double> Stiffness => Gen.OneOf(Gen.Const(0.0), Gen.Const(double.PositiveInfinity), Springs);

    private static Gen<BeamJoint> Joint =>
        Gen.Select(Stiffness, Stiffness, (y, z) => new BeamJoint { RotationY = y, RotationZ = z });

    /// <summary>A beam as laid: everything its constructor takes, so that tests can turn it round.</summary>
    public sealed record Laid(Vector3D Start, Vector3D End, BeamSection First, BeamSection Last, BeamDefinition Definition)
    {
        public Vector3D Chord => End + Definition.EndOffset - Start - Definition.StartOffset;

        public BeamElement Build() => new(0, Start, 1, End, Definition);
    }

    public static readonly Gen<Laid> Beams = Laying(Gen.Const((BeamJoint.Rigid, BeamJoint.Rigid)));

    public static readonly Gen<Laid> JointedBeams = Laying(Joints);

    private static Gen<Laid> Laying(Gen<(BeamJoint Start, BeamJoint End)> joints) =>
        Gen.Select(
            Gen.Select(Points, Points, Points, Points),
            Gen.Select(Sections, Sections), joints, Gen.Double[-3, 3], Points,
            (p, s, j, roll, up) => new Laid(p.Item1, p.Item2, s.Item1, s.Item2,
                new BeamDefinition(xi => Blend(s.Item1, s.Item2, xi))
                {
                    Up = up,
                    Roll = roll,
                    StartOffset = 0.2 * p.Item3,
                    EndOffset = 0.2 * p.Item4,
                    StartJoint = j.Start,
                    EndJoint = j.End,
                }))
        .Where(laid => laid.Chord.Length > 0.5 && laid.Chord.Cross(laid.Definition.Up).Length > 0.01);

    public static BeamSection Blend(BeamSection a, BeamSection b, double xi)
    {
        return new BeamSection
        {
            EA = Mix(a.EA, b.EA),
            EIy = Mix(a.EIy, b.EIy),
            EIz = Mix(a.EIz, b.EIz),
            GJ = Mix(a.GJ, b.GJ),
            GAy = Mix(a.GAy, b.GAy),
            GAz = Mix(a.GAz, b.GAz),
            Mass = Mix(a.Mass, b.Mass),
            RotaryY = Mix(a.RotaryY, b.RotaryY),
            RotaryZ = Mix(a.RotaryZ, b.RotaryZ),
        };

        double Mix(double first, double last) => (1 - xi) * first + xi * last;
    }
}
