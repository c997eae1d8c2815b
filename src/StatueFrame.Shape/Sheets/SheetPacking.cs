using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>Groups sheets for transport and for lifting.</summary>
/// <remarks>Safe to use from many threads at once.</remarks>
public static class SheetPacking
{
    /// <summary>
    /// Crates with the sheets stacked, the heaviest first into the first crate that takes it. A sheet lies on its middle
    /// plane and needs its depth and the padding in height.
    /// </summary>
    /// <param name="plan">The sheets.</param>
    /// <param name="length">Inner length of a crate.</param>
    /// <param name="width">Inner width.</param>
    /// <param name="height">Inner height.</param>
    /// <param name="greatestMass">Greatest mass of a crate's sheets.</param>
    /// <param name="padding">Height between sheets; 20 mm by default.</param>
    /// <exception cref="ArgumentException">A sheet does not fit into an empty crate; it is named.</exception>
    public static IReadOnlyList<Crate> Crates(SheetPlan plan, Length length, Length width, Length height, Mass greatestMass, Length? padding = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        double pad = (padding ?? Length.FromMillimeters(20)).Meters;
        if (!(pad >= 0))
            throw new ArgumentOutOfRangeException(nameof(padding), padding, "must not be negative");
        var crates = new List<(List<MetalSheet> Sheets, double Mass, double Height, double Moment)>();
        foreach (MetalSheet s in plan.Sheets.OrderByDescending(s => s.Mass).ThenBy(s => s.Number))
        {
            double mass = s.Mass.Kilograms, depth = s.Depth.Meters + pad;
            if (!(s.Length <= length && s.Width <= width && depth <= height.Meters && mass <= greatestMass.Kilograms))
                throw new ArgumentException($"Sheet {s.Number} ({s.Length} × {s.Width} × {s.Depth}, {s.Mass}) does not fit into an empty crate.");
            int k = crates.FindIndex(c => c.Mass + mass <= greatestMass.Kilograms && c.Height + depth <= height.Meters);
            if (k < 0)
            {
                k = crates.Count;
                crates.Add(([], 0, 0, 0));
            }
            (List<MetalSheet> sheets, double m, double h, double moment) = crates[k];
            sheets.Add(s);
            crates[k] = (sheets, m + mass, h + depth, moment + mass * (h + 0.5 * depth));
        }
        return [.. crates.Select((c, i) => new Crate(i + 1, [.. c.Sheets.Select(s => s.Number)], Mass.FromKilograms(c.Mass), Point3.FromMeters(0, 0, c.Moment / c.Mass)))];
    }

    /// <summary>Lifts of joined sheets, taken from the lowest up until mass or height would pass their limits.</summary>
    /// <param name="plan">The sheets.</param>
    /// <param name="greatestMass">Greatest mass of a lift's sheets.</param>
    /// <param name="greatestHeight">Greatest height of a lift.</param>
    /// <exception cref="ArgumentException">A sheet alone passes a limit; it is named.</exception>
    public static IReadOnlyList<Crate> Lifts(SheetPlan plan, Mass greatestMass, Length greatestHeight)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var lifts = new List<Crate>();
        var sheets = new List<int>();
        double mass = 0, low = 0, high = 0;
        Vector3D moment = Vector3D.Zero;
        foreach (MetalSheet s in plan.Sheets)
        {
            (Vector3D least, Vector3D greatest) = s.Surface.Box;
            if (!(s.Mass <= greatestMass && greatest.Z - least.Z <= greatestHeight.Meters))
                throw new ArgumentException($"Sheet {s.Number} alone is more than a lift may be.");
            if (sheets.Count > 0 && (mass + s.Mass.Kilograms > greatestMass.Kilograms || Math.Max(high, greatest.Z) - Math.Min(low, least.Z) > greatestHeight.Meters))
                Close();
            (low, high) = sheets.Count == 0 ? (least.Z, greatest.Z) : (Math.Min(low, least.Z), Math.Max(high, greatest.Z));
            sheets.Add(s.Number);
            mass += s.Mass.Kilograms;
            moment += s.Mass.Kilograms * ShapeAxis.At(s.Center);
        }
        if (sheets.Count > 0)
            Close();
        return lifts;

        void Close()
        {
            lifts.Add(new Crate(lifts.Count + 1, [.. sheets], Mass.FromKilograms(mass), Mesh.Point(moment / mass)));
            sheets.Clear();
            (mass, moment) = (0, Vector3D.Zero);
        }
    }
}
