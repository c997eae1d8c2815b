using System.Text;
using StatueFrame.Mechanics;
using StatueFrame.Reporting;
using StatueFrame.Shape;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Works;

/// <summary>
/// Sheets in crates. Sheets of like curvature nest: each lies in the one below, as near as their shapes let it. The most
/// curved come first, each onto the stack that it makes least higher, or beside the stacks of a crate, or into a new one.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. A heuristic: <see cref="LeastCrates"/> is how few crates there could be at best by
/// mass; heights of sheets are compared at the nodes of a grid of 60 × 60 over the crate, and the padding takes what lies between.
/// </remarks>
public sealed record CratePlan
{
    private CratePlan()
    {
    }

    /// <summary>The crates.</summary>
    public required ValueList<Crate> Crates { get; init; }

    /// <summary>No packing can do with fewer: the mass of all sheets over that of a crate.</summary>
    public required int LeastCrates { get; init; }

    /// <summary>Packs the sheets of a plan.</summary>
    /// <param name="plan">The sheets.</param>
    /// <param name="limits">The crate.</param>
    /// <exception cref="InvalidStatueException">A limit is out of range, or sheets do not fit into an empty crate; all are named.</exception>
    public static CratePlan Of(SheetPlan plan, CrateLimits limits)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(limits);
        var v = new Validator();
        limits.Validate(v.At(nameof(limits)));
        v.ThrowIfAny();
        double length = limits.Length.Meters, width = limits.Width.Meters, height = limits.Height.Meters, pad = limits.Padding.Meters, most = limits.GreatestMass.Kilograms;
        NestedSheet[] sheets = [.. plan.Sheets.Select(s => new NestedSheet(s, length, width))];
        foreach (NestedSheet s in sheets)
        {
            if (s.Along + 2 * pad > length || s.Across + 2 * pad > width || s.Depth + 2 * pad > height || s.Sheet.Mass.Kilograms > most)
                v.Add(Invariant($"Sheets[{s.Sheet.Number - 1}]"), Invariant($"sheet {s.Sheet.Number}, {s.Along:0.00} × {s.Across:0.00} × {s.Depth:0.00} m and {s.Sheet.Mass.Kilograms:0.0} kg, does not fit into an empty crate"), "Take larger crates, or cut smaller sheets.");
        }
        v.ThrowIfAny();
        var open = new List<OpenCrate>();
        foreach (NestedSheet sheet in sheets.OrderByDescending(s => Math.Round(8 * s.Depth / height)).ThenByDescending(s => s.Along * s.Across).ThenBy(s => s.Sheet.Number))
            Place(sheet);
        return new CratePlan
        {
            Crates = [.. open.OrderBy(c => c.Stacks.Min(s => s.Sheets.Min(i => i.Sheet.Number))).Select((c, i) => c.Close(i + 1, limits))],
            LeastCrates = Math.Max(1, (int)Math.Ceiling(plan.Mass.Kilograms / most - 1e-9)),
        };

        void Place(NestedSheet sheet)
        {
            (OpenCrate? Crate, Stack? Stack, double Cost) best = (null, null, double.PositiveInfinity);
            foreach (OpenCrate crate in open.Where(c => c.Mass + sheet.Sheet.Mass.Kilograms <= most))
            {
                foreach (Stack stack in crate.Stacks)
                {
                    double bottom = stack.Bottom + sheet.Above(stack.Top) + pad, rise = bottom + sheet.Depth + pad - stack.Height;
                    if (Math.Max(stack.Height, bottom + sheet.Depth + pad) <= height && crate.Width + Math.Max(0, sheet.Across + pad - stack.Width) + pad <= width && rise < best.Cost)
                        best = (crate, stack, rise);
                }
                // A new stack costs its depth, so that a good nest wins over it.
                if (crate.Width + sheet.Across + 2 * pad <= width && sheet.Depth + 2 * pad < best.Cost)
                    best = (crate, null, sheet.Depth + 2 * pad);
            }
            if (best.Crate is null)
                open.Add(best.Crate = new OpenCrate());
            if (best.Stack is null)
                best.Crate.Stacks.Add(new Stack(sheet, pad));
            else
                best.Stack.Add(sheet, pad);
        }
    }

    /// <summary>The packing list as comma-separated values (RFC 4180), with a heading: a line a sheet, from the floor of each stack up.</summary>
    public string ToCsv()
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, ["crate", "stack", "layer", "sheet", "mass of the crate [kg]", "height used [mm]", "center along [mm]", "center across [mm]", "center above the floor [mm]"]);
        foreach (Crate crate in Crates)
        {
            for (int s = 0; s < crate.Stacks.Count; s++)
            {
                for (int layer = 0; layer < crate.Stacks[s].Count; layer++)
                {
                    CsvText.AppendLine(text,
                    [
                        Invariant($"{crate.Number}"), Invariant($"{s + 1}"), Invariant($"{layer + 1}"), Invariant($"{crate.Stacks[s][layer]}"), Invariant($"{crate.Mass.Kilograms:0.0}"), Invariant($"{crate.Height.Millimeters:0}"),
                        Invariant($"{crate.Center.X.Millimeters:0}"), Invariant($"{crate.Center.Y.Millimeters:0}"), Invariant($"{crate.Center.Z.Millimeters:0}"),
                    ]);
                }
            }
        }
        return text.ToString();
    }

    /// <summary>How many crates, how full, and the caution, as plain text.</summary>
    public override string ToString() => Invariant(
        $"{Crates.Count} crates ({LeastCrates} at best by mass), {Crates.Average(c => c.Mass.Kilograms):0} kg each on average, the heaviest {Crates.Max(c => c.Mass.Kilograms):0} kg; {Crates.Sum(c => c.Stacks.Count)} stacks of up to {Crates.Max(c => c.Stacks.Max(s => s.Count))} sheets. {Drawing.Caution}");

    private sealed class Stack(NestedSheet first, double pad)
    {
        public List<NestedSheet> Sheets { get; } = [first];

        public List<double> Bottoms { get; } = [pad];

        public NestedSheet Top => Sheets[^1];

        /// <summary>Height of the lowest point of the top sheet, m.</summary>
        public double Bottom => Bottoms[^1];

        public double Height { get; private set; } = first.Depth + 2 * pad;

        public double Width { get; private set; } = first.Across + pad;

        public void Add(NestedSheet sheet, double padding)
        {
            Bottoms.Add(Bottom + sheet.Above(Top) + padding);
            Sheets.Add(sheet);
            Height = Math.Max(Height, Bottom + sheet.Depth + padding);
            Width = Math.Max(Width, sheet.Across + padding);
        }
    }

    private sealed class OpenCrate
    {
        public List<Stack> Stacks { get; } = [];

        public double Mass => Stacks.Sum(s => s.Sheets.Sum(i => i.Sheet.Mass.Kilograms));

        public double Width => Stacks.Sum(s => s.Width);

        public Crate Close(int number, CrateLimits limits)
        {
            Vector3D moment = Vector3D.Zero;
            double y = -0.5 * (Width + limits.Padding.Meters) + limits.Padding.Meters;
            foreach (Stack stack in Stacks)
            {
                for (int i = 0; i < stack.Sheets.Count; i++)
                    moment += stack.Sheets[i].Sheet.Mass.Kilograms * new Vector3D(0, y + 0.5 * (stack.Width - limits.Padding.Meters), stack.Bottoms[i] + stack.Sheets[i].CenterHeight);
                y += stack.Width;
            }
            return new Crate(number, [.. Stacks.Select(s => s.Sheets.Select(i => i.Sheet.Number).ToValueList())], UnitsNet.Mass.FromKilograms(Mass), Length.FromMeters(Stacks.Max(s => s.Height)), Point3.FromMeters(moment / Mass));
        }
    }
}
