namespace StatueFrame.Checks;

/// <summary>Writes contacts of unlike metals, and what corrosion takes in the design life, into a sheet.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class MetalSheet(Statue statue, Corrosion corrosion, Criteria criteria, SheetWriter lists)
{
    public void Add()
    {
        AddContacts();
        if (criteria.Durability is { } durability)
            AddLoss(durability);
        foreach (Atmosphere air in new[] { corrosion.Air, corrosion.AirInside }.OfType<Atmosphere>())
            lists.Warnings.AddRange(air.Air?.RangeWarnings() ?? []);
    }

    private void AddContacts()
    {
        foreach (FoundContact contact in FoundContact.Of(statue))
        {
            (GalvanicEnvironment environment, bool isAssumed) = corrosion.AirAt(contact.IsCovered ? CorrosionFace.SkinInside : CorrosionFace.SkinOutside).ForContacts();
            if (contact.First is not { } first || contact.Second is not { } second)
            {
                lists.Checks.Add(Check.NotChecked(
                    new CheckSubject("metals.galvanic", "unlike metals in contact", contact.Where), "the family of a metal is not known (Material.Family, Rivet.Family)", GalvanicSeries.Source));
                continue;
            }
            int firstCheck = lists.Checks.Count;
            lists.Checks.Add(GalvanicChecks.Contact(contact.Where, first, second, environment, contact.Given?.Isolation, contact.Given?.NobleOverBase));
            lists.Assume(Assumed(contact, environment, isAssumed), firstCheck);
        }
    }

    private IEnumerable<Assumption> Assumed(FoundContact contact, GalvanicEnvironment environment, bool isAssumed)
    {
        if (contact.First == contact.Second)
            yield break;
        if (isAssumed)
            yield return new Assumption(contact.IsCovered ? "surroundings of contacts inside" : "surroundings of contacts outside", $"{environment}, from the category of the air", Source.Assumed("metals"));
        if (contact.IsCovered && corrosion.AirInside is null)
            yield return InsideAsOutside;
    }

    /// <summary>How every loss of thickness is taken.</summary>
    public static readonly Assumption EvenLoss = new("corrosion", "even over each face", Source.Assumed("metals"));

    private static readonly Assumption InsideAsOutside = new("air inside the skin", "as outside", Source.Assumed("metals"));

    private void AddLoss(DurabilityLimit durability)
    {
        int firstCheck = lists.Checks.Count;
        double life = durability.DesignLife.Years365, years = Math.Max(life, corrosion.Age.Years365);
        bool usesInside = false;
        AddBody(Corrosion.Trunk, statue.Tower, statue.Skin, statue.Standoffs);
        foreach (Limb limb in statue.Limbs)
            AddBody(limb.Name, limb.Tower, limb.Skin, limb.Standoffs);
        var assumed = new List<Assumption> { EvenLoss };
        if (durability.GreatestLossFraction is null)
            assumed.Add(new Assumption("part of the thickness that may corrode", FormattableString.Invariant($"{DurabilityLimit.DefaultLossFraction}"), Source.CommonPractice));
        if (usesInside && corrosion.AirInside is null)
            assumed.Add(InsideAsOutside);
        lists.Assume(assumed, firstCheck);

        void AddBody(string name, Tower tower, Skin? skin, ValueList<StandoffRing> rings)
        {
            if (skin is not null)
            {
                double t = skin.Stations.Min(station => (station.Thickness ?? skin.Thickness).Meters);
                double? loss = Sum(corrosion.Loss(skin.Material, CorrosionFace.SkinOutside, years), corrosion.Loss(skin.Material, CorrosionFace.SkinInside, years));
                Add($"skin of {name}", skin.Material, t, loss);
                usesInside = true;
            }
            foreach ((string kind, Material material, Section section, CorrosionFace face, double since) in Sections(tower, skin, rings).GroupBy(s => (s.Kind, s.Material)).Select(g => g.MinBy(s => (s.Since, s.Per))).Select(s => (s.Kind, s.Material, s.Section, s.Face, s.Since)))
            {
                (double t, int faces) = CorrodedSection.Thinnest(section);
                Add($"{kind} of {name}, {section.Designation}", material, t, faces * corrosion.Loss(material, face, years, since));
                usesInside |= face != CorrosionFace.BareTower;
            }
        }

        void Add(string where, Material material, double t, double? loss)
        {
            lists.Checks.Add(loss is { } known
                ? LossChecks.Thickness(where, t, known, durability.LossFractionInUse, years)
                : Check.NotChecked(LossChecks.Subject(where), $"how {material.Name} corrodes in this air is not known (Atmosphere.Known); look at pits and crevices", CorrosionLaw.Source));
        }
    }

    /// <summary>The sections that corrode, each with the thickness it has for every open face and the age at which it was put in.</summary>
    private static IEnumerable<(string Kind, Material Material, Section Section, CorrosionFace Face, double Per, double Since)> Sections(Tower tower, Skin? skin, ValueList<StandoffRing> rings)
    {
        CorrosionFace face = CorrodedStatue.Cover(skin);
        foreach (TowerSegment segment in tower.Segments)
        {
            if (segment is LatticeSegment lattice)
            {
                yield return ("legs", lattice.Material, lattice.Legs, face, Per(lattice.Legs), 0);
                yield return ("braces", lattice.Material, lattice.Braces, face, Per(lattice.Braces), 0);
                if (lattice.Horizontals is { } horizontals)
                    yield return ("horizontals", lattice.Material, horizontals, face, Per(horizontals), 0);
            }
            else if (segment is MemberSegment member)
            {
                yield return ("tower members", member.Material, member.Section, face, Per(member.Section), 0);
                if (member.TopSection is { } top)
                    yield return ("tower members", member.Material, top, face, Per(top), 0);
            }
        }
        if (skin?.Armature is { } armature)
            yield return ("armature", armature.Material, armature.Bar, CorrosionFace.SkinInside, Per(armature.Bar), 0);
        foreach (Standoff bar in FoundContact.Bars(rings))
            yield return ("standoffs", bar.Material, bar.Section, CorrosionFace.Standoff, Per(bar.Section), bar.PutIn.Years365);

        static double Per(Section section)
        {
            (double t, int faces) = CorrodedSection.Thinnest(section);
            return t / faces;
        }
    }

    private static double? Sum(double? a, double? b) => a + b;
}
