using System.Globalization;
using UnitsNet;

namespace StatueFrame;

/// <summary>
/// An outline of any shape, as a polygon. The vertices run either way round; the last joins the first, which is not
/// repeated. Between two stations with equally many vertices the skin joins them vertex by vertex; otherwise by the
/// fraction of the perimeter run anticlockwise from the first vertex.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record PolygonOutline : Outline
{
    /// <summary>The vertices in order, at least three. The polygon must not cross or touch itself.</summary>
    public required ValueList<PlanPoint> Vertices { get; init; }

    internal override PlanCurve Curve()
    {
        var x = new double[Vertices.Count];
        var y = new double[Vertices.Count];
        for (int i = 0; i < x.Length; i++)
            (x[i], y[i]) = (Vertices[i].X.Meters, Vertices[i].Y.Meters);
        return new PlanCurve(x, y).Anticlockwise();
    }

    internal override void Validate(Validator v)
    {
        if (v.Required(Vertices) is null || !v.AtMost(Vertices.Count, StatueSize.Vertices, nameof(Vertices)))
            return;
        if (Vertices.Count < 3)
        {
            v.Add(nameof(Vertices), $"must be at least 3, are {Vertices.Count}", "List the corners of the outline in order; the last joins the first.");
            return;
        }
        bool finite = true;
        for (int i = 0; i < Vertices.Count; i++)
        {
            Validator at = v.At(nameof(Vertices), i);
            (Length X, Length Y) = Vertices[i];
            finite &= at.Within(X, X.Meters, -GreatestOffset, GreatestOffset);
            finite &= at.Within(Y, Y.Meters, -GreatestOffset, GreatestOffset);
        }
        if (!finite)
            return;
        PlanCurve curve = Curve();
        CheckWidth(v, "along x", curve.Extent(1, 0));
        CheckWidth(v, "along y", curve.Extent(0, 1));
        if (RepeatedVertex() is int repeated)
            v.Add(nameof(Vertices), $"vertex {repeated} lies at its predecessor's place", "The last vertex joins the first by itself; do not repeat the first.");
        else if (!curve.IsSimple())
            v.Add(nameof(Vertices), "the polygon crosses or touches itself", "List the vertices in order round the outline.");
        else if (curve.Area < 1e-6 * curve.Perimeter * curve.Perimeter)
            v.Add(nameof(Vertices), "the polygon encloses no area", "Its vertices must not lie on one line.");
    }

    private int? RepeatedVertex()
    {
        for (int i = 0; i < Vertices.Count; i++)
        {
            (PlanPoint a, PlanPoint b) = (Vertices[i == 0 ? Vertices.Count - 1 : i - 1], Vertices[i]);
            if (a.X.Meters == b.X.Meters && a.Y.Meters == b.Y.Meters)
                return i;
        }
        return null;
    }

    private static void CheckWidth(Validator v, string along, (double Least, double Greatest) extent)
    {
        double width = extent.Greatest - extent.Least;
        if (width is < LeastWidth or > GreatestWidth)
        {
            v.Add(nameof(Vertices), string.Create(CultureInfo.InvariantCulture, $"the width {along} is not plausible: {width:g4} m"),
                string.Create(CultureInfo.InvariantCulture, $"Accepted are {LeastWidth:g4} to {GreatestWidth:g4} m; is the unit right?"));
        }
    }
}
