using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>
/// What a variant is made of, as far as it differs from the base: found by comparing the two descriptions part by part. All
/// that is not sure to leave the geometry alone is refused, and the variant then gets a basis of its own.
/// </summary>
/// <remarks>For one thread.</remarks>
internal sealed class VariantParts
{
    private const int MostKept = 16;

    private readonly ReanalysisBasis basis;
    private readonly RingState[] baseRings, ownRings;
    private readonly List<SegmentPart>[] kept;
    private readonly bool hasBareTower;
    private Standoff? lastValid;

    public VariantParts(ReanalysisBasis basis)
    {
        this.basis = basis;
        Segments = Array.ConvertAll(basis.Segments, slot => slot.Part);
        kept = Array.ConvertAll(basis.Segments, _ => new List<SegmentPart>());
        (baseRings, ownRings) = (Array.ConvertAll(basis.Rings, r => new RingState(r)), Array.ConvertAll(basis.Rings, r => new RingState(r)));
        foreach (RingState ring in baseRings)
        {
            for (int i = 0; i < ring.Standoffs.Length; i++)
                ring.Standoffs[i] = ring.Part.Ring.Bars[i].Bar.Place.Standoff;
            ring.Fill();
        }
        Rings = [.. baseRings];
        Skins = new BandPart.Weighing[basis.Model.Bodies.Length];
        hasBareTower = basis.Model.BareSlices.Length > 0 && basis.Loads.Any(l => l.Situation.Wind is not null || l.Situation.Ice is not null);
    }

    /// <summary>The segments, in the order of the basis.</summary>
    public SegmentPart[] Segments { get; }

    /// <summary>The rings, in the order of the basis.</summary>
    public RingState[] Rings { get; }

    /// <summary>How sheet and armature of each body's skin weigh.</summary>
    public BandPart.Weighing[] Skins { get; }

    /// <summary>Takes a variant's parts; false when it must have a basis of its own.</summary>
    public bool Take(Statue variant)
    {
        Statue own = basis.Statue;
        if (variant.BaseAboveGround.Meters != own.BaseAboveGround.Meters || !variant.Points.Equals(own.Points)
            || variant.Limbs.Count != own.Limbs.Count || !TakeFittings(variant.Fittings))
            return false;
        int segment = 0, ring = 0;
        if (!TakeBase(variant.Tower?.Base)
            || !TakeBody(0, variant.Tower, variant.Skin, variant.Standoffs, variant.Seams, own.Tower, own.Skin, own.Standoffs, own.Seams, ref segment, ref ring))
            return false;
        for (int i = 0; i < own.Limbs.Count; i++)
        {
            (Limb limb, Limb from) = (variant.Limbs[i], own.Limbs[i]);
            bool sameRoot = limb.Name == from.Name && limb.From == from.From && limb.Root == from.Root
                && limb.Heading.Radians == from.Heading.Radians && limb.Inclination.Radians == from.Inclination.Radians && Equals(limb.Tower?.Base, from.Tower.Base);
            if (!sameRoot || !TakeBody(i + 1, limb.Tower, limb.Skin, limb.Standoffs, limb.Seams, from.Tower, from.Skin, from.Standoffs, from.Seams, ref segment, ref ring))
                return false;
        }
        return true;
    }

    private bool TakeFittings(ValueList<Fitting>? fittings)
    {
        ValueList<Fitting> own = basis.Statue.Fittings;
        if (fittings is null || fittings.Count != own.Count)
            return false;
        for (int i = 0; i < own.Count; i++)
        {
            if (ReferenceEquals(fittings[i], own[i]))
                continue;
            if (fittings[i].On != own[i].On || fittings[i].At != own[i].At || fittings[i].WindArea?.SquareMeters != own[i].WindArea?.SquareMeters || !IsValid(fittings[i].Validate))
                return false;
        }
        return true;
    }

    /// <summary>Springs under the trunk may vary, but not which freedoms are held.</summary>
    private bool TakeBase(TowerBase? towerBase)
    {
        TowerBase own = basis.Statue.Tower.Base;
        if (ReferenceEquals(towerBase, own))
            return true;
        return towerBase is not null && towerBase.X.HasValue == own.X.HasValue && towerBase.Y.HasValue == own.Y.HasValue && towerBase.Z.HasValue == own.Z.HasValue
            && towerBase.RotationX.HasValue == own.RotationX.HasValue && towerBase.RotationY.HasValue == own.RotationY.HasValue
            && towerBase.RotationZ.HasValue == own.RotationZ.HasValue && IsValid(towerBase.Validate);
    }

    private bool TakeBody(
        int body, Tower? tower, Skin? skin, ValueList<StandoffRing>? standoffs, SeamStiffness? seams,
        Tower ownTower, Skin? ownSkin, ValueList<StandoffRing> ownStandoffs, SeamStiffness? ownSeams, ref int segment, ref int ring)
    {
        if (tower is null || standoffs is null || !Equals(seams, ownSeams) || !tower.Levels.Equals(ownTower.Levels)
            || tower.Segments.Count != ownTower.Segments.Count || standoffs.Count != ownStandoffs.Count || !TakeSkin(body, skin, ownSkin))
            return false;
        for (int i = 0; i < ownTower.Segments.Count; i++, segment++)
        {
            if (!TakeSegment(segment, tower.Segments[i]))
                return false;
        }
        for (int i = 0; i < ownStandoffs.Count; i++, ring++)
        {
            if (!TakeRing(ring, standoffs[i], ownStandoffs[i]))
                return false;
        }
        return true;
    }

    /// <summary>Metal, thickness and armature of a skin weigh its bands, and move nothing.</summary>
    private bool TakeSkin(int body, Skin? skin, Skin? own)
    {
        if (own is null)
            return skin is null;
        Skins[body] = new BandPart.Weighing(1, own.ArmatureMass.KilogramsPerSquareMeter);
        if (ReferenceEquals(skin, own))
            return true;
        if (skin?.Material is null)
            return false;
        bool sameShape = (skin with { Material = own.Material, Thickness = own.Thickness, ArmatureMass = own.ArmatureMass }).Equals(own);
        bool isThicker = skin.Thickness.Meters != own.Thickness.Meters;
        if (!sameShape || (isThicker && own.Stations.Any(s => s.Thickness is not null)) || !IsValid(skin.ValidateSheet))
            return false;
        double density = skin.Material.Density.KilogramsPerCubicMeter / own.Material.Density.KilogramsPerCubicMeter;
        Skins[body] = new BandPart.Weighing(density * (skin.Thickness.Meters / own.Thickness.Meters), skin.ArmatureMass.KilogramsPerSquareMeter);
        return !basis.MeetsCenters || !MovesCenters(body);
    }

    private bool MovesCenters(int body)
    {
        const double Rounding = 1e-12;
        foreach (BandPart band in basis.Bands)
        {
            if (band.Body == basis.Model.Bodies[body] && (band.Moment(Skins[body]) / band.Mass(Skins[body]) - band.At).Length > Rounding)
                return true;
        }
        return false;
    }

    private bool TakeSegment(int at, TowerSegment? segment)
    {
        ReanalysisBasis.SegmentSlot slot = basis.Segments[at];
        if (ReferenceEquals(segment, slot.Part.Segment))
        {
            Segments[at] = slot.Part;
            return true;
        }
        if (segment is null || segment.GetType() != slot.Part.Segment.GetType() || hasBareTower || !MayReplace(slot, segment))
            return false;
        foreach (SegmentPart part in kept[at])
        {
            if (!part.Segment.Equals(segment))
                continue;
            Segments[at] = part;
            return true;
        }
        if (!IsValid(segment.Validate))
            return false;
        BodyModel body = basis.Model.Bodies[slot.Body];
        var model = new SegmentModel(
            segment, slot.Model.Name, body.Axes, (body.Levels[slot.Index], body.Tower.Levels[slot.Index]), (body.Levels[slot.Index + 1], body.Tower.Levels[slot.Index + 1]));
        if (kept[at].Count == MostKept)
            kept[at].RemoveAt(0);
        kept[at].Add(Segments[at] = new SegmentPart(model));
        return true;
    }

    /// <summary>Whether another segment leaves alone where bars meet the tower, and which members there are.</summary>
    private bool MayReplace(in ReanalysisBasis.SegmentSlot slot, TowerSegment segment)
    {
        if (segment is LatticeSegment lattice)
        {
            var own = (LatticeSegment)slot.Part.Segment;
            return lattice.Bracing == own.Bracing && lattice.Bays == own.Bays && own.Missing.Equals(lattice.Missing);
        }
        foreach (RingState ring in baseRings)
        {
            if (ring.Part.Ring.Start == basis.Model.Bodies[slot.Body].Levels[slot.Index].Node || ring.Part.Ring.Start == basis.Model.Bodies[slot.Body].Levels[slot.Index + 1].Node)
                return false;
        }
        return true;
    }

    private bool TakeRing(int at, StandoffRing? ring, StandoffRing own)
    {
        Rings[at] = baseRings[at];
        if (ReferenceEquals(ring, own))
            return true;
        if (own.Loose.Count > 0 || !IsSameLayout(ring, own))
            return false;
        RingState state = ownRings[at];
        bool changed = state.Stiffness.Length > 0 && state.Stiffness[0] is null;
        for (int i = 0; i < state.Standoffs.Length; i++)
        {
            BarModel bar = state.Part.Ring.Bars[i];
            Standoff standoff = ring is EvenRing even ? even.Standoff : ((ExplicitRing)ring!).Bars[bar.Number - 1].Standoff;
            if (ReferenceEquals(state.Standoffs[i], standoff))
                continue;
            if (!IsUsable(standoff, bar))
            {
                state.Stiffness[0] = null!;
                return false;
            }
            state.Standoffs[i] = standoff;
            changed = true;
        }
        if (changed)
            state.Fill();
        Rings[at] = state;
        return true;
    }

    private static bool IsSameLayout(StandoffRing? ring, StandoffRing own)
    {
        if (ring is EvenRing even && own is EvenRing ownEven)
            return (even with { Standoff = ownEven.Standoff }).Equals(ownEven);
        if (ring is not ExplicitRing given || own is not ExplicitRing from || given.Bars.Count != from.Bars.Count || !(given with { Bars = from.Bars }).Equals(from))
            return false;
        for (int i = 0; i < from.Bars.Count; i++)
        {
            if (given.Bars[i].TowerEnd != from.Bars[i].TowerEnd || given.Bars[i].SkinEnd != from.Bars[i].SkinEnd)
                return false;
        }
        return true;
    }

    private bool IsUsable(Standoff? standoff, BarModel bar)
    {
        Standoff before = bar.Bar.Place.Standoff;
        if (standoff is null || standoff.Roll.Radians != before.Roll.Radians || !Equals(standoff.Slide, before.Slide))
            return false;
        if (!ReferenceEquals(standoff, lastValid))
        {
            if (!IsValid(standoff.Validate))
                return false;
            lastValid = standoff;
        }
        double slenderness = bar.Bar.Stiffness.Length / standoff.Section.Thickness.Meters;
        return slenderness is >= Standoff.LeastSlenderness and <= Standoff.GreatestSlenderness;
    }

    private static bool IsValid(Action<Validator> validate)
    {
        var v = new Validator();
        validate(v);
        return v.Problems.Count == 0;
    }
}
