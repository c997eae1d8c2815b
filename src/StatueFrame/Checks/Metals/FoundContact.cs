namespace StatueFrame.Checks;

/// <summary>Two metals that touch somewhere in a statue, with what its description says of the joint.</summary>
/// <param name="Where">The joint with its metals, as in "saddles of trunk, copper, half hard (R240) on steel S355".</param>
/// <param name="First">The family of one metal; null when not known.</param>
/// <param name="Second">The family of the other.</param>
/// <param name="Given">What the description says; null when it says nothing.</param>
/// <param name="IsCovered">Whether it lies inside a skin.</param>
internal sealed record FoundContact(string Where, MetalFamily? First, MetalFamily? Second, MetalContact? Given, bool IsCovered)
{
    /// <summary>All contacts that a description shows, each pair of metals once for every kind of joint and body.</summary>
    public static IEnumerable<FoundContact> Of(Statue statue)
    {
        ValueList<MetalContact> given = statue.Corrosion?.Contacts ?? [];
        var found = new List<FoundContact>();
        AddBody(Corrosion.Trunk, statue.Tower, statue.Skin, statue.Standoffs);
        var towers = new Dictionary<string, Tower> { [""] = statue.Tower };
        foreach (Limb limb in statue.Limbs)
        {
            AddBody(limb.Name, limb.Tower, limb.Skin, limb.Standoffs);
            int slash = limb.From.IndexOf('/');
            (string body, string level) = slash < 0 ? ("", limb.From) : (limb.From[..slash], limb.From[(slash + 1)..]);
            foreach (Material root in MetalsAt(towers[body], level).Distinct())
            {
                foreach (Material own in MetalsAt(limb.Tower, limb.Tower.Levels[0].Name).Distinct())
                    Add(ContactJoint.LimbRoot, "root", limb.Name, own, root, limb.Skin is not null);
            }
            towers[limb.Name] = limb.Tower;
        }
        if (statue.HoldDown is { } holdDown)
        {
            foreach (AnchorBar bar in holdDown.Bars)
            {
                foreach (Material foot in MetalsAt(statue.Tower, statue.Tower.Levels[0].Name))
                    Add(ContactJoint.Anchorage, "anchors", Corrosion.Trunk, bar.Material, foot, false);
            }
        }
        foreach (MetalContact other in given.Where(contact => contact.Joint == ContactJoint.Other))
            found.Add(new FoundContact($"{other.Body}, {other.First!.Value.Describe()} on {other.Second!.Value.Describe()}", other.First, other.Second, other, false));
        return found.DistinctBy(contact => contact.Where);

        void AddBody(string name, Tower tower, Skin? skin, ValueList<StandoffRing> rings)
        {
            if (skin?.Armature is { } armature)
                Add(ContactJoint.Armature, "armature", name, skin.Material, armature.Material, true);
            if (skin?.SheetSeam?.Rivet is { } rivet)
                AddSeam(name, skin.Material, rivet.Family);
            foreach (StandoffRing ring in rings)
            {
                foreach (Standoff bar in Bars([ring]))
                {
                    if (skin is not null)
                        Add(ContactJoint.Saddle, "saddles", name, skin.Material, bar.Material, true);
                    if (skin?.Armature is { } carried)
                        Add(ContactJoint.Armature, "armature", name, carried.Material, bar.Material, true);
                    if (ring.Bracket is { } bracket)
                        Add(ContactJoint.Fixing, "fixings", name, bar.Material, bracket.Material, skin is not null);
                    foreach (Material metal in MetalsAt(tower, ring.Level))
                        Add(ContactJoint.Fixing, "fixings", name, ring.Bracket?.Material ?? bar.Material, metal, skin is not null);
                }
            }
            Material? below = null;
            foreach (Material? metal in tower.Segments.Select(MetalOf))
            {
                if (below is not null && metal is not null && !ReferenceEquals(below, metal) && below != metal)
                    Add(ContactJoint.Splice, "splices", name, below, metal, skin is not null);
                below = metal;
            }
        }

        void Add(ContactJoint joint, string joints, string body, Material first, Material second, bool isCovered)
        {
            found.Add(new FoundContact($"{joints} of {body}, {first.Name} on {second.Name}", first.Family, second.Family, Said(joint, body), isCovered));
        }

        void AddSeam(string body, Material sheet, MetalFamily? rivet) => found.Add(new FoundContact(
            $"seams of {body}, {rivet?.Describe() ?? "other"} rivets in {sheet.Name}", rivet, sheet.Family, Said(ContactJoint.Seam, body), IsCovered: false));

        MetalContact? Said(ContactJoint joint, string body) =>
            given.FirstOrDefault(contact => contact.Joint == joint && contact.Body == body)
            ?? given.FirstOrDefault(contact => contact.Joint == joint && contact.Body is null);
    }

    /// <summary>The bars of rings, an even ring's once.</summary>
    public static IEnumerable<Standoff> Bars(IEnumerable<StandoffRing> rings) => rings.SelectMany(ring => ring switch
    {
        EvenRing even => [even.Standoff],
        ExplicitRing by => by.Bars.Select(bar => bar.Standoff),
        _ => Enumerable.Empty<Standoff>(),
    });

    /// <summary>The metals of the segments that meet at a level.</summary>
    private static IEnumerable<Material> MetalsAt(Tower tower, string level)
    {
        int at = tower.IndexOfLevel(level);
        IEnumerable<Material?> both = [at > 0 ? MetalOf(tower.Segments[at - 1]) : null, at >= 0 && at < tower.Segments.Count ? MetalOf(tower.Segments[at]) : null];
        return both.OfType<Material>();
    }

    private static Material? MetalOf(TowerSegment segment) => segment switch
    {
        LatticeSegment lattice => lattice.Material,
        MemberSegment member => member.Material,
        _ => null,
    };
}
