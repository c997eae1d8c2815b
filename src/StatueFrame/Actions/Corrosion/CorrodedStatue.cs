using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>A statue after years of weather.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class CorrodedStatue
{
    /// <summary>
    /// The statue some years later: skin, standoffs and the sections of tower and limbs are thinner by what its
    /// <see cref="Corrosion"/> takes from their open faces, and lighter with it. Metals of which no loss is known stay as they
    /// are. The later age is kept, so that going on from there takes no more than going there at once.
    /// </summary>
    /// <param name="statue">The statue, with <see cref="Statue.Corrosion"/> described.</param>
    /// <param name="time">Time from the age described, in years of 365 days; zero to 1000 years. Zero gives the statue itself.</param>
    /// <exception cref="InvalidStatueException">
    /// The description has problems, the time is out of range, or a part is worn through: thinner than the library accepts, as
    /// a skin below 0.2 mm or a standoff below 1 mm.
    /// </exception>
    public static Statue Corroded(this Statue statue, Duration time)
    {
        ArgumentNullException.ThrowIfNull(statue);
        var v = new Validator();
        statue.Validate(v);
        v.NotNegative(time, time.Seconds, Atmosphere.LongestExposure, "Time");
        if (statue.Corrosion is null)
            v.Add(nameof(Statue.Corrosion), "is not described", "Say what air the statue stands in, as in new Corrosion { Air = Atmosphere.Of(Corrosivity.C5) }.");
        v.ThrowIfAny();
        if (time.Seconds == 0)
            return statue;
        Statue later = After(statue, statue.Corrosion!, time);
        if (later.FindProblems() is [{ } first, ..])
        {
            throw new InvalidStatueException([new Problem(
                first.Path, string.Create(CultureInfo.InvariantCulture, $"is worn through after {time.Years365:0.#} years: {first.Message}"), "Look at fewer years, or protect or replace the part.")]);
        }
        return later;
    }

    private static Statue After(Statue statue, Corrosion corrosion, Duration time)
    {
        Duration age = corrosion.Age + time;
        double years = age.Years365;
        return statue with
        {
            Name = string.Create(CultureInfo.InvariantCulture, $"{BaseName(statue)}, {years:0.##} years old"),
            Tower = TowerAfter(statue.Tower, Cover(statue.Skin)),
            Skin = SkinAfter(statue.Skin),
            Standoffs = RingsAfter(statue.Standoffs),
            Limbs = statue.Limbs.Select(limb => limb with
            {
                Tower = TowerAfter(limb.Tower, Cover(limb.Skin)),
                Skin = SkinAfter(limb.Skin),
                Standoffs = RingsAfter(limb.Standoffs),
            }).ToValueList(),
            Corrosion = corrosion with { Age = age },
        };

        double Loss(Material material, CorrosionFace face, double since = 0) => corrosion.Loss(material, face, years, since) ?? 0;

        Skin? SkinAfter(Skin? skin)
        {
            if (skin is null)
                return null;
            Length lost = Length.FromMeters(Loss(skin.Material, CorrosionFace.SkinOutside) + Loss(skin.Material, CorrosionFace.SkinInside));
            return skin with
            {
                Thickness = skin.Thickness - lost,
                Armature = skin.Armature is { } armature ? armature with { Bar = CorrodedSection.Of(armature.Bar, Loss(armature.Material, CorrosionFace.SkinInside)), Straps = armature.Straps is { } own ? own with { Thickness = own.Thickness - Length.FromMeters(2 * Loss(own.Material, CorrosionFace.SkinInside)) } : null } : null,
                SheetSeam = skin.SheetSeam is { StrapThickness: { } strap } seam ? seam with { StrapThickness = strap - Length.FromMeters(2 * Loss(skin.Material, CorrosionFace.SkinInside)) } : skin.SheetSeam,
                Stations = skin.Stations.Select(station => station with { Thickness = station.Thickness - lost }).ToValueList(),
            };
        }

        LevelFrame? FrameAfter(LevelFrame? frame, CorrosionFace face) => frame is null ? null : frame with
        {
            Horizontals = CorrodedSection.Of(frame.Horizontals, Loss(frame.Material, face)),
            PlanBracing = frame.PlanBracing is { } across ? CorrodedSection.Of(across, Loss(frame.Material, face)) : null,
            PlanBracingJoint = JointAfter(frame.PlanBracingJoint, face),
        };

        // Plates on both sides lose twice as many faces; what is left of one that is gone is too thin for anything.
        MemberConnection? JointAfter(MemberConnection? joint, CorrosionFace face) => joint?.Plate is not { } plate ? joint : joint with
        {
            Plate = plate with { Thickness = Length.FromMeters(Math.Max(1e-3, plate.Thickness.Meters - 2 * joint.ShearPlanes * Loss(plate.Material, face))) },
        };

        Hub? HubAfter(Hub? hub, CorrosionFace face) => hub is null ? null : hub with { Arms = CorrodedSection.Of(hub.Arms, Loss(hub.Material, face)) };

        Tower TowerAfter(Tower tower, CorrosionFace face) => tower with { Levels = tower.Levels.Select(level => level with { Frame = FrameAfter(level.Frame, face), Hub = HubAfter(level.Hub, face) }).ToValueList(), Segments = tower.Segments.Select(segment => SegmentAfter(segment, face)).ToValueList() };

        TowerSegment SegmentAfter(TowerSegment segment, CorrosionFace face)
        {
            switch (segment)
            {
                case LatticeSegment lattice:
                    double loss = Loss(lattice.Material, face);
                    return lattice with
                    {
                        Legs = CorrodedSection.Of(lattice.Legs, loss),
                        Braces = CorrodedSection.Of(lattice.Braces, loss),
                        Horizontals = lattice.Horizontals is { } horizontals ? CorrodedSection.Of(horizontals, loss) : null,
                        BraceJoint = JointAfter(lattice.BraceJoint, face),
                        LegSplice = JointAfter(lattice.LegSplice, face),
                    };
                case MemberSegment member:
                    loss = Loss(member.Material, face);
                    return member with
                    {
                        Section = CorrodedSection.Of(member.Section, loss),
                        TopSection = member.TopSection is { } top ? CorrodedSection.Of(top, loss) : null,
                    };
                default:
                    return segment;
            }
        }

        ValueList<StandoffRing> RingsAfter(ValueList<StandoffRing> rings) => rings.Select(RingAfter).ToValueList();

        StandoffRing RingAfter(StandoffRing ring) => ring switch
        {
            EvenRing even => even with { Standoff = BarAfter(even.Standoff), Bracket = BracketAfter(even.Bracket) },
            ExplicitRing by => by with { Bars = by.Bars.Select(bar => bar with { Standoff = BarAfter(bar.Standoff) }).ToValueList(), Bracket = BracketAfter(by.Bracket) },
            _ => ring,
        };

        Bracket? BracketAfter(Bracket? bracket) => bracket is null ? null
            : bracket with { Section = CorrodedSection.Of(bracket.Section, Loss(bracket.Material, CorrosionFace.CoveredTower)) };

        Standoff BarAfter(Standoff bar) => bar with { Section = CorrodedSection.Flat(bar.Section, Loss(bar.Material, CorrosionFace.Standoff, bar.PutIn.Years365)) };
    }

    /// <summary>The name without the age that an earlier step gave it.</summary>
    private static string BaseName(Statue statue)
    {
        string aged = string.Create(CultureInfo.InvariantCulture, $", {statue.Corrosion!.Age.Years365:0.##} years old");
        return statue.Name.EndsWith(aged, StringComparison.Ordinal) ? statue.Name[..^aged.Length] : statue.Name;
    }

    internal static CorrosionFace Cover(Skin? skin) => skin is null ? CorrosionFace.BareTower : CorrosionFace.CoveredTower;
}
