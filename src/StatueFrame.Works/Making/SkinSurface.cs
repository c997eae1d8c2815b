using StatueFrame.Mechanics;
using StatueFrame.Shape;
using UnitsNet;

namespace StatueFrame.Works;

/// <summary>The smooth surface of a described skin as a mesh, so that it can be cut into sheets without a scan. Folds and relief are not on it.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class SkinSurface
{
    /// <summary>The surface in the body's own axes: from outline to outline straight, as the model has it, with its top when that is closed.</summary>
    /// <param name="skin">The skin.</param>
    /// <param name="size">Sides of triangles along and across, 0.02 to 2 m; 0.15 m by default.</param>
    /// <exception cref="InvalidStatueException">The skin has problems, or the size is out of range.</exception>
    public static Mesh Of(Skin skin, Length? size = null)
    {
        ArgumentNullException.ThrowIfNull(skin);
        double h = size?.Meters ?? 0.15;
        var v = new Validator();
        skin.Validate(v);
        v.InRange(h, 0.02, 2, "It is the side of a triangle in m.", nameof(size));
        v.ThrowIfAny();
        SkinBand[] bands = BandBuilder.Bands(skin);
        int round = Math.Clamp((int)Math.Ceiling(bands.Max(b => b.MidOutline.Perimeter) / h), 12, 2000);
        double[] fractions = [.. Enumerable.Range(0, round).Select(i => (double)i / round)];
        var coordinates = new List<double>();
        var corners = new List<int>();
        AddOutline(bands[0].BottomOutline, bands[0].Bottom);
        int rows = 1;
        foreach (SkinSlab slab in bands.SelectMany(b => b.Slabs))
        {
            int steps = Math.Max(1, (int)Math.Ceiling(slab.Height / h));
            PlanCurve lower = slab.Lower.Curve.AtFractions(fractions), upper = slab.Upper.Curve.AtFractions(fractions);
            for (int s = 1; s <= steps; s++, rows++)
            {
                AddOutline(PlanCurve.Between(lower, upper, (double)s / steps), slab.Lower.Z + slab.Height * s / steps);
                for (int i = 0; i < round; i++)
                {
                    int a = (rows - 1) * round + i, b = (rows - 1) * round + (i + 1) % round, c = a + round, d = b + round;
                    // The shorter diagonal bends the surface less.
                    corners.AddRange((At(a) - At(d)).Length <= (At(b) - At(c)).Length ? [a, b, d, a, d, c] : [a, b, c, b, d, c]);
                }
            }
        }
        if (bands[^1].CapArea > 0)
        {
            int top = (rows - 1) * round, middle = coordinates.Count / 3;
            coordinates.AddRange([bands[^1].TopOutline.CentroidX, bands[^1].TopOutline.CentroidY, bands[^1].Top]);
            for (int i = 0; i < round; i++)
                corners.AddRange([top + i, top + (i + 1) % round, middle]);
        }
        return Mesh.Of([.. coordinates], [.. corners]);

        void AddOutline(PlanCurve curve, double z)
        {
            PlanCurve even = curve.Count == round ? curve : curve.AtFractions(fractions);
            for (int i = 0; i < round; i++)
                coordinates.AddRange([even.X[i], even.Y[i], z]);
        }

        Vector3D At(int i) => new(coordinates[3 * i], coordinates[3 * i + 1], coordinates[3 * i + 2]);
    }
}
