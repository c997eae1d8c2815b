using StatueFrame.Analysis;
using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Works;

/// <summary>Strength of one segment of a lifted piece, by the member checks of the sheet.</summary>
internal static class LiftChecks
{
    private const string Family = "lift";

    public static IEnumerable<Check> Of(TowerPiece piece, int index, string held, double moment, double shear, double axial)
    {
        SegmentModel segment = piece.Models[index];
        switch (segment.Segment)
        {
            case MemberSegment member:
                foreach (Section section in (Section[])[member.Section, member.TopSection ?? member.Section])
                {
                    yield return MemberChecks.Bending(new LoadedMember
                    {
                        Section = section,
                        Material = member.Material,
                        Length = piece.Length,
                        Axial = Force.FromNewtons(-axial),
                        // It may hang on any side: the moment is about the weak axis.
                        WeakMoment = Torque.FromNewtonMeters(moment),
                        Shear = Force.FromNewtons(shear),
                        Where = segment.Name,
                        Situation = held,
                        Family = Family,
                    }, BarDesign.For(member.Material));
                }
                break;
            case LatticeSegment lattice when piece.Arms[index] > 0:
                BarDesign design = BarDesign.For(lattice.Material);
                int legs = segment.Members.Where(m => m.Role == LatticeRole.Leg).Select(m => m.Place).Distinct().Count();
                double chord = moment / piece.Arms[index], push = axial / legs;
                LatticeMember leg = segment.Members.Where(m => m.Role == LatticeRole.Leg).MaxBy(m => (m.To - m.From).Length)!;
                foreach (double force in (double[])[-chord - push, chord])
                {
                    LoadedMember loaded = Line(leg, lattice, force, isLeg: true);
                    yield return force < 0 ? MemberChecks.Compression(loaded, design) : MemberChecks.Tension(loaded, design);
                }
                if (segment.Members.Where(m => m.Role == LatticeRole.Brace).MinBy(m => Across(m) / (m.To - m.From).Length) is not { } brace)
                {
                    yield return Check.NotChecked(new CheckSubject($"{Family}.compression", "braces of a lifted lattice", segment.Name, held), "no brace is left in it", Source.User);
                    break;
                }
                // Of n like faces the one along the shear takes 2/n of it; of crossing braces one is pushed and one pulled by half.
                double perFace = 2 * shear / legs / (lattice.Bracing is Bracing.Cross or Bracing.KBrace ? 2 : 1), brace_ = perFace * (brace.To - brace.From).Length / Across(brace);
                yield return MemberChecks.Compression(Line(brace, lattice, lattice.Bracing == Bracing.TensionOnlyCross ? 0 : -brace_, isLeg: false), design);
                yield return MemberChecks.Tension(Line(brace, lattice, brace_, isLeg: false), design);
                break;
            default:
                yield return Check.NotChecked(new CheckSubject($"{Family}.bending", "strength while lifted", segment.Name, held), "cores given by stiffness, of concrete or of masonry are not lifted level without a design of their own", Source.User);
                break;
        }

        LoadedMember Line(LatticeMember m, LatticeSegment lattice, double force, bool isLeg) => new()
        {
            Section = m.Section,
            Material = lattice.Material,
            Length = Length.FromMeters((m.To - m.From).Length),
            Axial = Force.FromNewtons(force),
            IsLeg = isLeg,
            Connection = isLeg ? lattice.LegSplice : lattice.BraceJoint,
            Where = $"{segment.Name}, {m.Label}",
            Situation = held,
            Family = Family,
        };

        static double Across(LatticeMember m)
        {
            Mechanics.Vector3D d = m.To - m.From;
            return Math.Sqrt(d.X * d.X + d.Y * d.Y);
        }
    }
}
