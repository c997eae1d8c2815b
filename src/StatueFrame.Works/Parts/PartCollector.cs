using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Shape;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>Walks through a model and writes down its pieces, and what is not in it.</summary>
/// <remarks>For one thread; used once.</remarks>
internal sealed class PartCollector(StatueModel model, ValueList<BodySheets> sheets)
{
    private readonly List<Part> parts = [];
    private readonly List<string> notes = [];

    public static (Part[] Parts, string[] Notes) Of(StatueModel model, ValueList<BodySheets> sheets)
    {
        var all = new PartCollector(model, sheets);
        foreach (BodyModel body in model.Bodies)
            all.AddBody(body);
        foreach (Fitting f in model.Statue.Fittings)
            all.Add(PartKind.Fitting, $"{f.Name} on {f.On}", f.Name, "", null, null, f.Mass.Kilograms, f.At?.Meters ?? model.PlaceOf(f.On).Center, "elevation");
        all.AddBase();
        return (Marked(all.parts), [.. all.notes]);
    }

    private void AddBody(BodyModel body)
    {
        foreach (SegmentModel segment in body.Segments)
            AddSegment(body, segment);
        for (int i = 0; i < body.Levels.Length; i++)
        {
            TowerLevel level = body.Tower.Levels[i];
            int n = 0;
            foreach (LevelMember member in level.Members)
            {
                (string where, string drawing) = (Invariant($"{body.Prefix}{level.Name}, member {++n}"), $"ring on {body.Prefix}{level.Name}");
                AddLine(PartKind.Horizontal, where, member.Section, member.Material, body.Axes.ToGlobal(member.From), body.Axes.ToGlobal(member.To), drawing);
                if (level.Frame is { PlanBracingJoint: { } joint } frame && ReferenceEquals(member.Section, frame.PlanBracing))
                    AddFasteners($"{where}, both ends", joint, 2 * joint.Count, body.Axes.ToGlobal(0.5 * (member.From + member.To)), drawing);
            }
        }
        foreach (RingElement ring in body.Rings)
            AddRing(body, ring);
        if (body.Bands.Length > 0)
            AddSkin(body);
    }

    private void AddSegment(BodyModel body, SegmentModel segment)
    {
        string drawing = $"elevation, {segment.Name}";
        Vector3D low = segment.Lower.Center;
        switch (segment.Segment)
        {
            case LatticeSegment lattice:
                double own = 0;
                foreach (LatticeMember m in segment.Members)
                {
                    PartKind kind = m.Role switch { LatticeRole.Leg => PartKind.Leg, LatticeRole.Brace => PartKind.Brace, _ => PartKind.Horizontal };
                    own += AddLine(kind, $"{segment.Name}, {m.Label}", m.Section, lattice.Material, body.Axes.ToGlobal(m.From), body.Axes.ToGlobal(m.To), drawing);
                    if (m.Role != LatticeRole.Leg && lattice.BraceJoint is { } joint)
                        AddFasteners($"{segment.Name}, {m.Label}, both ends", joint, 2 * joint.Count, body.Axes.ToGlobal(0.5 * (m.From + m.To)), drawing);
                    else if (m.Role == LatticeRole.Leg && m.Bay == 1 && lattice.LegSplice is { } splice)
                        AddFasteners($"{segment.Name}, {m.Label}, splice", splice, 2 * splice.Count, body.Axes.ToGlobal(m.From), drawing, plates: 1);
                }
                if (lattice.ConnectionMassFraction > 0)
                    Add(PartKind.Allowance, $"{segment.Name}, gussets, splices and bolts", Invariant($"{100 * lattice.ConnectionMassFraction:0.#} % of the members"), lattice.Material.Name, lattice.Material.Family, null, own * lattice.ConnectionMassFraction, segment.CenterOfMass, drawing);
                break;
            case MemberSegment member:
                string size = member.TopSection is { } top ? $"{member.Section} to {top}" : member.Section.Designation;
                Add(PartKind.Member, segment.Name, size, member.Material.Name, member.Material.Family, segment.Span, segment.Mass, segment.CenterOfMass, drawing);
                if (member.LowerJoint is FlangeJoint flange)
                {
                    double bolts = flange.Count * flange.Bolt.SetMass;
                    Material metal = flange.Material ?? member.Material;
                    foreach (string side in (string[])["lower", "upper"])
                        Add(PartKind.Flange, $"{segment.Name}, {side} flange", Invariant($"ring {flange.OuterDiameter.Millimeters:0}×{flange.Thickness.Millimeters:0} mm, {flange.Count} holes on {flange.BoltCircle.Millimeters:0} mm"), metal.Name, metal.Family, null, 0.5 * (segment.JointMass - bolts), low, drawing);
                    AddBolts($"{segment.Name}, flange", flange.Bolt, flange.Count, low, drawing, inModel: true);
                }
                break;
            case BlockSegment block:
                Add(PartKind.Core, segment.Name, block.Section.ToString()!, block.Stuff.Name, null, segment.Span, segment.Mass, segment.CenterOfMass, drawing);
                break;
            default:
                Add(PartKind.Core, segment.Name, "given by its stiffnesses", "", null, segment.Span, segment.Mass, segment.CenterOfMass, drawing);
                break;
        }
    }

    private void AddRing(BodyModel body, RingElement ring)
    {
        string drawing = $"ring of {ring.BandName}";
        foreach (BarModel bar in ring.Bars)
        {
            BarPlacement place = bar.Bar.Place;
            Standoff standoff = place.Standoff;
            Vector3D middle = 0.5 * (place.TowerEnd + place.SkinEnd);
            Add(PartKind.Standoff, bar.Where, standoff.Section.Designation, standoff.Material.Name, standoff.Material.Family, place.Length, bar.Mass, middle, drawing);
            if (place.Bracket is { } b)
                Add(PartKind.Bracket, $"{bar.Where}, bracket", b.Bracket.Section.Designation, b.Bracket.Material.Name, b.Bracket.Material.Family, b.Length, b.Mass, b.Middle, drawing);
            if (standoff.TowerFixing is BoltedFixing tower)
                AddBolts($"{bar.Where}, tower end", tower.Bolt, tower.Count, place.TowerEnd, drawing);
            if (standoff.SkinFixing is BoltedFixing skin)
                AddBolts($"{bar.Where}, skin end", skin.Bolt, skin.Count, place.SkinEnd, drawing);
            foreach ((ContactJoint joint, string end, Vector3D at) in ((ContactJoint, string, Vector3D)[])[(ContactJoint.Saddle, "skin end", place.SkinEnd), (ContactJoint.Fixing, "tower end", place.TowerEnd)])
            {
                if (Kept(joint, body) is { } isolation)
                    Add(PartKind.Insert, $"{bar.Where}, {end}", isolation.ToString(), "", null, null, null, at, drawing, inModel: false);
            }
        }
        foreach (BarPlacement loose in ring.Loose)
        {
            Vector3D middle = 0.5 * (loose.TowerEnd + loose.SkinEnd);
            Add(PartKind.Standoff, $"{ring.BandName}, loose bar", loose.Standoff.Section.Designation, loose.Standoff.Material.Name, loose.Standoff.Material.Family, loose.Length, loose.Mass, middle, drawing);
            if (loose.Bracket is { } b)
                Add(PartKind.Bracket, $"{ring.BandName}, loose bar, bracket", b.Bracket.Section.Designation, b.Bracket.Material.Name, b.Bracket.Material.Family, b.Length, b.Mass, b.Middle, drawing);
        }
    }

    /// <summary>What keeps two metals apart at a joint; null when nothing is described, or nothing is there.</summary>
    private Isolation? Kept(ContactJoint joint, BodyModel body) =>
        model.Statue.Corrosion?.Contacts.FirstOrDefault(c => c.Joint == joint && (c.Body is null || c.Body == body.Name)) is { Isolation: not (Isolation.None or Isolation.Paint) } contact ? contact.Isolation : null;

    private void AddSkin(BodyModel body)
    {
        Skin skin = body.Skin!;
        SheetPlan? plan = sheets.FirstOrDefault(s => s.Body == body.Name)?.Plan;
        double perArea = skin.ArmatureMass.KilogramsPerSquareMeter, described = 0, itemized = 0, inSheets = 0;
        for (int i = 0; i < body.Bands.Length; i++)
        {
            SkinBand band = body.Bands[i];
            string name = body.BandName(i), drawing = $"ring of {name}";
            Vector3D at = body.BandPlaces[i].Center;
            double area = band.OutlineArea + band.CapArea, allowance = perArea * area, mass = band.Mass - allowance;
            (described, inSheets) = (described + allowance, inSheets + mass);
            if (plan is null)
                Add(PartKind.Sheet, name, Invariant($"{1000 * band.MidThickness:0.##} mm, {band.SheetArea:0.##} m²"), skin.Material.Name, skin.Material.Family, null, mass, at, drawing);
            if (allowance > 0)
                Add(PartKind.Allowance, $"{name}, armature, saddles and rivets", Invariant($"{perArea:0.##} kg/m²"), skin.Armature?.Material.Name ?? "", skin.Armature?.Material.Family, null, allowance, at, drawing);
            if (skin.Armature is { } armature)
            {
                double length = area / armature.Spacing.Meters, own = length * armature.Bar.Properties.A * armature.Material.Density.KilogramsPerCubicMeter;
                itemized += own;
                Add(PartKind.Armature, name, armature.Bar.Designation, armature.Material.Name, armature.Material.Family, length, own, at, drawing, inModel: false);
                if (armature.Straps is { } strap)
                    itemized += AddStraps(name, strap, armature, skin, length / strap.Distance.Meters, at, drawing);
            }
            if (plan is null && skin.SheetSeam is { } seam && i > 0)
                itemized += AddRivets($"{name}, seam below", seam.Rivet, 2 * skin.Thickness.Meters, skin.Material.Density, band.BottomOutline.Perimeter / seam.Pitch.Meters * seam.Rows * (seam.Kind == SeamKind.Lapped ? 1 : 2), at, drawing);
        }
        foreach (MetalSheet sheet in plan?.Sheets ?? [])
            Add(PartKind.Sheet, Invariant($"{body.Name}, sheet {sheet.Number}"), Invariant($"{sheet.Length.Meters:0.##}×{sheet.Width.Meters:0.##} m blank"), skin.Material.Name, skin.Material.Family, null, sheet.Mass.Kilograms, body.Axes.ToGlobal(sheet.Center.Meters), "template", inModel: false);
        if (plan is not null)
        {
            Add(PartKind.Allowance, $"{body.Name}, sheet in the model beyond the sheets listed", "folds, laps and rounding of the outline", skin.Material.Name, skin.Material.Family, null, inSheets, body.Axes.ToGlobal(new Vector3D(0, 0, 0.5 * (body.Bands[0].Bottom + body.Bands[^1].Top))), "elevation");
            notes.Add(Invariant($"Skin of {body.Name}: {plan.Sheets.Count} sheets weigh {plan.Mass.Kilograms:0} kg, laps not included; the model has {inSheets:0} kg of sheet. The line \"sheet in the model\" stands for it in the model's mass."));
            if (skin.SheetSeam is { } seam)
                itemized += AddRivets($"{body.Name}, all seams", seam.Rivet, 2 * skin.Thickness.Meters, skin.Material.Density, plan.Rivets * seam.Rows, body.Axes.ToGlobal(body.Bands[0].Centroid), "template");
        }
        else if (skin.SheetSeam is not null)
        {
            notes.Add($"Rivets of {body.Name}: of the seams between bands only; upright seams are known with a sheet plan.");
        }
        if (itemized > described)
            notes.Add(Invariant($"Skin of {body.Name}: armature bars and rivets weigh {itemized:0} kg, more than the {described:0} kg of the description's ArmatureMass: the model is too light."));
        else if (described > 0)
            notes.Add(Invariant($"Skin of {body.Name}: armature bars and rivets weigh {itemized:0} kg of the {described:0} kg of the description's ArmatureMass; the rest stands for saddles, cross-bars and laps."));
    }

    /// <summary>A strap runs over the bar and down to the sheet on both sides.</summary>
    private double AddStraps(string where, SaddleStrap strap, Armature armature, Skin skin, double count, Vector3D at, string drawing)
    {
        (double across, double up) = armature.Bar.Envelope;
        int n = (int)Math.Ceiling(count - 1e-9);
        double end = strap.EndDistance?.Meters ?? 1.5 * strap.Rivet.d_0, length = across + 2 * (up + strap.Reach.Meters + end), t = strap.Thickness.Meters;
        double own = n * strap.Width.Meters * t * length * strap.Material.Density.KilogramsPerCubicMeter;
        Add(PartKind.Strap, $"{where}, straps", Invariant($"{strap.Width.Millimeters:0.##}×{strap.Thickness.Millimeters:0.##} mm"), strap.Material.Name, strap.Material.Family, length, own, at, drawing, n, inModel: false);
        return own + AddRivets($"{where}, straps", strap.Rivet, t + skin.Thickness.Meters, strap.Material.Density, n * strap.Rivets, at, drawing);
    }

    /// <param name="where">Where they are.</param>
    /// <param name="rivet">The rivet.</param>
    /// <param name="grip">What it goes through, m.</param>
    /// <param name="density">Of what it joins.</param>
    /// <param name="count">How many, rounded up.</param>
    /// <param name="at">Their middle.</param>
    /// <param name="drawing">The drawing.</param>
    private double AddRivets(string where, Rivet rivet, double grip, Density density, double count, Vector3D at, string drawing)
    {
        // Two and a half diameters for head and tail (common practice, no source).
        double d = rivet.d_0;
        int n = (int)Math.Ceiling(count - 1e-9);
        double mass = n * rivet.Area * (grip + 2.5 * d) * density.KilogramsPerCubicMeter;
        Add(PartKind.Rivet, where, Invariant($"rivet, hole {1000 * d:0.##} mm{(rivet.IsCountersunk ? ", countersunk" : "")}"), Words(rivet.Family), rivet.Family, null, mass, at, drawing, n, inModel: false);
        return mass;
    }

    /// <summary>A rivet tells the family of its metal alone.</summary>
    private static string Words(MetalFamily? family) => family is { } f ? $"rivet {Reporting.DescriptionText.Words(f.ToString())}" : "";

    private void AddFasteners(string where, MemberConnection joint, int count, Vector3D at, string drawing, int plates = 2)
    {
        AddPlates(where, joint, plates, at, drawing);
        if (joint.Bolt is { } bolt)
            AddBolts(where, bolt, count, at, drawing);
        else if (joint.Rivet is { } rivet)
            Add(PartKind.Rivet, where, Invariant($"rivet, hole {1000 * rivet.d_0:0.##} mm"), Words(rivet.Family), rivet.Family, null, null, at, drawing, count, inModel: false);
    }

    /// <summary>Gussets and splice plates: how long they are nobody describes.</summary>
    private void AddPlates(string where, MemberConnection joint, int count, Vector3D at, string drawing)
    {
        if (joint.Plate is { IsLegItself: false } plate)
            Add(PartKind.JointPlate, where, Invariant($"{plate.Width.Millimeters:0}×{plate.Thickness.Millimeters:0.##} mm"), plate.Material.Name, plate.Material.Family, null, null, at, drawing, count, inModel: false);
    }

    private void AddBolts(string where, Bolt bolt, int count, Vector3D at, string drawing, bool inModel = false) =>
        Add(PartKind.Bolt, where, Invariant($"M{1000 * bolt.d:0.##} {bolt.Grade.Name}"), $"bolt steel {bolt.Grade.Name}", MetalFamily.CarbonSteel, null, count * bolt.SetMass, at, drawing, count, inModel);

    private void AddBase()
    {
        if (model.Statue.HoldDown is not { } holdDown)
            return;
        Vector3D center = model.BaseCenter;
        for (int i = 0; i < holdDown.Plates.Count; i++)
        {
            BasePlate p = holdDown.Plates[i];
            double mass = p.WidthX.Meters * p.WidthY.Meters * p.Thickness.Meters * p.Material.Density.KilogramsPerCubicMeter;
            Add(PartKind.Plate, Invariant($"plate {i + 1}"), Invariant($"{p.WidthX.Millimeters:0}×{p.WidthY.Millimeters:0}×{p.Thickness.Millimeters:0} mm"), p.Material.Name, p.Material.Family, null, mass, center + new Vector3D(p.X.Meters, p.Y.Meters, -0.5 * p.Thickness.Meters), "base", inModel: false);
        }
        for (int i = 0; i < holdDown.Bars.Count; i++)
        {
            AnchorBar a = holdDown.Bars[i];
            double length = Math.Max(a.Embedment.Meters, a.FreeLength.Meters), area = Math.PI / 4 * a.Diameter.Meters * a.Diameter.Meters;
            Add(PartKind.Anchor, Invariant($"anchor bar {i + 1}"), Invariant($"⌀{a.Diameter.Millimeters:0.##} mm"), a.Material.Name, a.Material.Family, length, length * area * a.Material.Density.KilogramsPerCubicMeter, center + new Vector3D(a.X.Meters, a.Y.Meters, -0.5 * length), "base", inModel: false);
        }
        notes.Add("Plates and anchor bars stand on the ground and are not in the model's mass; anchor bars are listed with the greater of embedment and free length, ends to be added.");
    }

    private double AddLine(PartKind kind, string where, Section section, Material material, Vector3D from, Vector3D to, string drawing)
    {
        double length = (to - from).Length, mass = length * section.Properties.A * material.Density.KilogramsPerCubicMeter;
        Add(kind, where, section.Designation, material.Name, material.Family, length, mass, 0.5 * (from + to), drawing);
        return mass;
    }

    private void Add(PartKind kind, string where, string size, string material, MetalFamily? family, double? length, double? mass, Vector3D at, string drawing, int count = 1, bool inModel = true) =>
        parts.Add(new Part
        {
            Mark = "",
            Kind = kind,
            Where = where,
            Size = size,
            Material = material,
            Family = family,
            Length = length is { } l ? Length.FromMeters(l) : null,
            Count = count,
            Mass = mass is { } m ? Mass.FromKilograms(m) : null,
            Center = Point3.FromMeters(at),
            Drawing = drawing,
            InModel = inModel,
        });

    /// <summary>Marks by likeness: a letter for the kind and a number in the order of the list.</summary>
    private static Part[] Marked(List<Part> parts)
    {
        var marks = new Dictionary<(PartKind, string, string, long), string>();
        var counts = new Dictionary<PartKind, int>();
        return
        [
            .. parts.Select(part =>
            {
                // Sheets and blocks of the core are each a piece of their own.
                string own = part.Kind is PartKind.Sheet or PartKind.Core or PartKind.Fitting or PartKind.Allowance ? part.Where : part.Size;
                var key = (part.Kind, own, part.Material, part.Length is { } l && part.Kind != PartKind.Armature ? (long)Math.Round(l.Millimeters) : -1);
                if (!marks.TryGetValue(key, out string? mark))
                {
                    counts[part.Kind] = counts.GetValueOrDefault(part.Kind) + 1;
                    marks[key] = mark = Invariant($"{Letters(part.Kind)}{counts[part.Kind]}");
                }
                return part with { Mark = mark };
            }),
        ];

        static string Letters(PartKind kind) => kind switch
        {
            PartKind.Leg => "L",
            PartKind.Brace => "D",
            PartKind.Horizontal => "H",
            PartKind.Member => "T",
            PartKind.Core => "C",
            PartKind.Bracket => "K",
            PartKind.Standoff => "B",
            PartKind.Sheet => "S",
            PartKind.Armature => "R",
            PartKind.Rivet => "N",
            PartKind.Strap => "U",
            PartKind.JointPlate => "J",
            PartKind.Bolt => "M",
            PartKind.Flange => "F",
            PartKind.Plate => "P",
            PartKind.Anchor => "A",
            PartKind.Insert => "I",
            PartKind.Fitting => "G",
            _ => "X",
        };
    }
}
