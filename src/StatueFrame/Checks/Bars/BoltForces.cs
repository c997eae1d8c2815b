using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Forces in the worst bolt of a fixing by the elastic vector method. SI units.</summary>
/// <remarks>
/// Immutable and safe to share between threads. In the plane of the flat: each bolt takes an equal share of the axial
/// force and of the shear along the width, and the strong moment turns the group about its centroid, each bolt's force
/// in proportion to its distance. Out of that plane: an equal share of the shear along the thickness; the weak moment
/// and the torsion turn the flat about a heel line at the edge, bolts pulling in proportion to their distance from it.
/// </remarks>
/// <param name="Shear">Greatest resultant in the plane of the flat, N.</param>
/// <param name="Tension">Greatest pull along a bolt, N.</param>
internal readonly record struct BoltForces(double Shear, double Tension)
{
    private static readonly Source vector = new("AISC Steel Construction Manual, 14th ed.", "Part 7, elastic method for eccentrically loaded bolt groups");
    private static readonly Source heel = Source.Assumed("bars: bolts pulled in proportion to their distance from the heel; prying not counted");

    public static BoltForces Of(Working? w, BoltedFixing fixing, in FlatForces f, double width)
    {
        (double N, double M, double V) = (f.N, f.Strong, f.AlongWidth);
        double n = w.Given("n", fixing.Count, Dimension.Number, "bolts");
        w.Given(N, Dimension.Force, "axial force");
        w.Given(V, Dimension.Force, "shear along the width");
        w.Given(M, Dimension.Moment, "moment in the plane of the flat");
        double I_p = 0;
        for (int i = 0; i < fixing.Rows; i++)
        {
            for (int j = 0; j < fixing.Columns; j++)
                I_p += fixing.X(i) * fixing.X(i) + fixing.Y(j) * fixing.Y(j);
        }
        double x = fixing.X(fixing.Rows - 1), y = fixing.Y(fixing.Columns - 1);
        w.Given(x, Dimension.SmallLength, "worst bolt from the centroid, along the bar");
        w.Given(y, Dimension.SmallLength, "worst bolt from the centroid, across the bar");
        w.Given(I_p, Dimension.SmallArea, "sum of squared distances");
        double turn = I_p > 0 ? w.Let("turn", Math.Abs(M) / I_p, Dimension.LineLoad, vector, "force per distance") : 0;
        double F_x = w.Let("F_x", Math.Abs(N) / n + turn * y, Dimension.Force, vector);
        double F_y = w.Let("F_y", Math.Abs(V) / n + turn * x, Dimension.Force, vector);
        double F_v = w.Let("F_v", Math.Sqrt(F_x * F_x + F_y * F_y), Dimension.Force, vector, "greatest bolt force");
        return new BoltForces(F_v, Pull(w, fixing, f, width));
    }

    /// <summary>True when a moment in the plane of the flat meets a single bolt, which cannot take it.</summary>
    public static bool Turns(BoltedFixing fixing, in FlatForces f) => fixing.Count == 1 && Math.Abs(f.Strong) > 1e-9;

    private static double Pull(Working? w, BoltedFixing fixing, in FlatForces f, double width)
    {
        (double V_t, double M_weak, double T) = (f.AlongThickness, f.Weak, f.T);
        double n = fixing.Count, h_x = fixing.Heel?.Meters ?? Math.Min(fixing.e_1, width / 2), h_y = fixing.e_2(width);
        double sum_x = 0, sum_y = 0;
        for (int i = 0; i < fixing.Rows; i++)
            sum_x += fixing.Columns * Math.Pow(h_x + i * fixing.p_1, 2);
        for (int j = 0; j < fixing.Columns; j++)
            sum_y += fixing.Rows * Math.Pow(h_y + j * fixing.p_2, 2);
        double x_far = h_x + (fixing.Rows - 1) * fixing.p_1, y_far = h_y + (fixing.Columns - 1) * fixing.p_2;
        w.Given(V_t, Dimension.Force, "shear along the thickness");
        w.Given(M_weak, Dimension.Moment, "weak moment");
        w.Given(T, Dimension.Moment, "torsion");
        w.Given(x_far, Dimension.SmallLength, "farthest row from the heel");
        w.Given(y_far, Dimension.SmallLength, "farthest column from the heel");
        w.Given(sum_x, Dimension.SmallArea, "squared distances of bolts from the heel");
        w.Given(sum_y, Dimension.SmallArea, "squared distances of bolts from the edge");
        return w.Let("F_t", Math.Abs(V_t) / n + Math.Abs(M_weak) * x_far / sum_x + Math.Abs(T) * y_far / sum_y, Dimension.Force, heel, "greatest pull");
    }
}
