using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>Something that stands on the face of a section.</summary>
/// <param name="Body">The body that the section belongs to.</param>
/// <param name="Level">The level it stands at, as in "wing/W2".</param>
/// <param name="Part">Its name where nothing can be said of it.</param>
/// <param name="Entry">What is checked.</param>
/// <param name="Load">What it puts there.</param>
/// <param name="Assumed">What is taken of it beside the factors of all faces.</param>
internal readonly record struct OnFace(BodyModel Body, string Level, string Part, CheckEntry<FaceLoad> Entry, FaceLoad Load, params Assumption[] Assumed);

/// <summary>
/// The roots of limbs that stand on the wall of a tube, on the trunk's or on another limb's: what they put on it in every state, square to
/// the wall and as moments there.
/// </summary>
/// <remarks>Stateless but for what it is given; safe to use from many threads.</remarks>
internal sealed class RootFaces(StatueModel model, Criteria criteria, SituationDemands demands)
{
    /// <summary>A limb that leans less than so much from the tube's axis, as the sine, stands on its end.</summary>
    private const double LeastLean = 0.5;

    /// <summary>The level that a limb starts from.</summary>
    public static (BodyModel Body, int Level) LevelOf(StatueModel model, Limb limb) =>
        model.Bodies.SelectMany(body => body.Levels.Select((_, i) => (body, i))).First(at => at.body.Prefix + at.body.Tower.Levels[at.i].Name == limb.From);

    /// <summary>Whether what starts at a level stands on a tube, with no hub between.</summary>
    public static bool IsOnTube(BodyModel body, int level) =>
        body.Tower.Levels[level].Hub is null && body.Segments.Where((_, i) => i == level - 1 || i == level).All(segment => segment.Segment is MemberSegment);

    /// <summary>The name of a root in checks.</summary>
    public static string NameOf(Limb limb) => $"root of {limb.Name} on {limb.From}";

    public IEnumerable<OnFace> All()
    {
        int number = 0;
        foreach (BodyModel own in model.Bodies)
        {
            if (model.Statue.Limbs.FirstOrDefault(limb => limb.Name == own.Name) is { } limb && LevelOf(model, limb) is var (body, level) && IsOnTube(body, level))
            {
                var worst = new Worst<FaceLoad>(FaceChecks.UnderRoots);
                foreach (EndForces ends in demands.EndsOf(number))
                    worst.Look(LoadOf(limb, own, ends, body, level));
                if (worst.TryGet(out FaceLoad load))
                    yield return new OnFace(body, limb.From, NameOf(limb), FaceChecks.UnderRoots, load);
            }
            number += own.Segments.Length;
        }
    }

    private FaceLoad LoadOf(Limb limb, BodyModel own, EndForces ends, BodyModel body, int level)
    {
        Vector3D up = body.Axes.Axes.Z, axis = own.Axes.Axes.Z, aside = axis - axis.Dot(up) * up;
        BracketChord chord = BracketChord.OfTubes(body, level);
        Section? foot = (own.Segments[0].Segment as MemberSegment)?.SectionAt(0);
        if (foot is null || aside.Length < LeastLean)
            chord = chord with { Lacks = foot is null ? "a limb that is a lattice stands on it; a single member can be checked" : "it stands on the end of the tube rather than on its wall" };
        Vector3D square = aside.Length > 0 ? aside.Normalized() : body.Axes.Axes.X, across = up.Cross(square);
        Vector3D force = own.Axes.Axes.ToGlobal(ends.Bottom.Forces), moment = own.Axes.Axes.ToGlobal(ends.Bottom.Moments);
        // The root may be described at the tube's axis; what comes from there to the wall the tube itself takes.
        Vector3D center = body.Axes.ToGlobal(body.Tower.Levels[level].Center), root = own.Axes.ToGlobal(own.Tower.Levels[0].Center);
        Vector3D wall = root + (Reach(chord.Section) - (root - center).Dot(square)) * square;
        moment += (root - wall).Cross(force);
        double amplification = MemberSheet.Amplification(demands);
        return new FaceLoad(
            NameOf(limb), ends.State.When, MemberSheet.DesignFor(chord.Material ?? StructuralSteel.S355, criteria), chord, new Axes3D(square, across, up), foot ?? chord.Section ?? new Tube(UnitsNet.Length.FromMeters(0.1), UnitsNet.Length.FromMeters(0.01)),
            amplification * Math.Abs(force.Dot(square)), amplification * Math.Abs(moment.Dot(across)), amplification * Math.Abs(moment.Dot(up)));
    }

    private static double Reach(Section? section) => section is null ? 0 : 0.5 * (section.OutlineDiameter ?? Math.Min(section.Envelope.Width, section.Envelope.Depth));
}
