namespace StatueFrame.Checks;

/// <summary>
/// The cone that a group of headed bars in tension pulls out of a concrete block: EN 1992-4, 7.2.1.4, and ACI 318-19,
/// 17.6.2, which share their geometry. SI units.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class ConcreteBreakout
{
    private static readonly Source en = new("EN 1992-4:2018", "7.2.1.4 (7.1) to (7.6)");
    private static readonly Source aci = new("ACI 318-19", "17.6.2");

    private readonly (double X, double Y, double Force)[] bars;
    private readonly BlockSection block;
    private readonly double embedment;

    /// <param name="block">Plan of the block, centered.</param>
    /// <param name="bars">Places and forces of the bars in tension; those without are left out.</param>
    /// <param name="embedment">h_ef, m.</param>
    public ConcreteBreakout(BlockSection block, (double X, double Y, double Force)[] bars, double embedment)
    {
        this.block = block;
        this.bars = [.. bars.Where(bar => bar.Force > 0)];
        this.embedment = embedment;
    }

    public double Tension => bars.Sum(bar => bar.Force);

    /// <summary>h_ef; less where three or more edges are nearer than 1.5 h_ef, as the cone then grows no further.</summary>
    public double EffectiveEmbedment
    {
        get
        {
            double[] edges = EdgeDistances();
            double[] near = [.. edges.Where(c => c < 1.5 * embedment)];
            if (near.Length < 3)
                return embedment;
            double spacing = Math.Min(3 * embedment, Math.Max(GreatestGap(bar => bar.X), GreatestGap(bar => bar.Y)));
            return Math.Min(embedment, Math.Max(near.Max() / 1.5, spacing / 3));
        }
    }

    /// <summary>Greatest distance between neighboring rows of bars, m.</summary>
    private double GreatestGap(Func<(double X, double Y, double Force), double> place)
    {
        double[] rows = [.. bars.Select(place).Order()];
        double gap = 0;
        for (int i = 1; i < rows.Length; i++)
            gap = Math.Max(gap, rows[i] - rows[i - 1]);
        return gap;
    }

    /// <summary>Least distance of a bar in tension from an edge, m.</summary>
    public double LeastEdge => EdgeDistances().Min();

    /// <summary>Distances of the outermost bars in tension from the four edges; of a round block, four times the least.</summary>
    private double[] EdgeDistances()
    {
        (double wx, double wy) = block.Widths;
        if (block.IsRound)
        {
            double least = wx / 2 - bars.Max(bar => Math.Sqrt(bar.X * bar.X + bar.Y * bar.Y));
            return [least, least, least, least];
        }
        return [wx / 2 - bars.Max(b => b.X), wx / 2 + bars.Min(b => b.X), wy / 2 - bars.Max(b => b.Y), wy / 2 + bars.Min(b => b.Y)];
    }

    /// <summary>Area A_c,N of the union of the squares 3h × 3h about the bars, inside the block.</summary>
    public double ProjectedArea(double h)
    {
        double reach = 1.5 * h;
        (double wx, double wy) = block.Widths;
        var cuts = new SortedSet<double>();
        foreach ((double x, _, _) in bars)
        {
            cuts.Add(Math.Clamp(x - reach, -wx / 2, wx / 2));
            cuts.Add(Math.Clamp(x + reach, -wx / 2, wx / 2));
        }
        double[] at = [.. cuts];
        int parts = block.IsRound ? 64 : 1;
        double area = 0;
        for (int i = 0; i + 1 < at.Length; i++)
        {
            double width = (at[i + 1] - at[i]) / parts;
            for (int part = 0; part < parts; part++)
            {
                double x = at[i] + (part + 0.5) * width;
                double half = block.IsRound ? Math.Sqrt(Math.Max(0, wx * wx / 4 - x * x)) : wy / 2;
                area += width * Covered(x, reach, half);
            }
        }
        return area;
    }

    /// <summary>Length of the line at x that the squares cover, within ±half.</summary>
    private double Covered(double x, double reach, double half)
    {
        double covered = 0, to = -half;
        foreach ((_, double y, _) in bars.Where(bar => Math.Abs(bar.X - x) <= reach).OrderBy(bar => bar.Y))
        {
            double low = Math.Max(to, y - reach), high = Math.Min(half, y + reach);
            if (high > low)
                (covered, to) = (covered + high - low, high);
        }
        return covered;
    }

    /// <summary>Distance of the resultant of the forces from the centroid of the bars in tension, along x and y.</summary>
    private (double X, double Y) Eccentricity
    {
        get
        {
            double sum = Tension;
            return (Math.Abs(bars.Sum(b => b.Force * b.X) / sum - bars.Average(b => b.X)), Math.Abs(bars.Sum(b => b.Force * b.Y) / sum - bars.Average(b => b.Y)));
        }
    }

    /// <summary>Design resistance by EN 1992-4 of headed bars cast in, N.</summary>
    public double Eurocode(Working? w, double f_ck, bool cracked, double gammaMc)
    {
        double h = Geometry(w, out double A_cN, out double c, out double e_x, out double e_y);
        double psi_s = w.Let("psi_s", Math.Min(1, 0.7 + 0.3 * c / (1.5 * h)), Dimension.Number, en, "edges");
        double dense = w.Given("dense", 0.2, Dimension.Length, "embedment from which dense bars do no harm", en);
        double psi_re = w.Let("psi_re", Math.Min(1, 0.5 + h / dense), Dimension.Number, en, "shell spalling, dense reinforcement taken");
        double psi_ec = w.Let("psi_ec", 1 / (1 + 2 * e_x / (3 * h)) / (1 + 2 * e_y / (3 * h)), Dimension.Number, en, "eccentric pull");
        w.Given(f_ck, Dimension.Stress, "cylinder strength");
        // k₁ is for N and mm: √(f/10⁶) (10³ h)^1.5 = 10^1.5 √f h^1.5.
        double k_1 = w.Given("k_1", (cracked ? 8.9 : 12.7) * Math.Pow(10, 1.5), Dimension.Number, cracked ? "8.9 in N and mm, cracked" : "12.7 in N and mm, uncracked", en);
        double N_0 = w.Let("N_0", k_1 * Math.Sqrt(f_ck) * Math.Pow(h, 1.5), Dimension.Force, en, "one bar far from edges");
        w.Given(gammaMc, Dimension.Number);
        return w.Let("N_Rd", N_0 * (A_cN / (9 * h * h)) * psi_s * psi_re * psi_ec / gammaMc, Dimension.Force, en, "cone of the group");
    }

    /// <summary>Nominal strength N_cbg by ACI 318-19, N; ϕ not in it.</summary>
    /// <param name="w">Listener.</param>
    /// <param name="f_c">f′_c, Pa.</param>
    /// <param name="cracked">Whether the concrete is cracked.</param>
    /// <param name="k_c">k_c in psi and inches; null for bars cast in: 24, or 16 h_ef^(5/3) from 11 to 25 in.</param>
    public double American(Working? w, double f_c, bool cracked, double? k_c = null)
    {
        const double inch = 0.0254, pound = 4.4482216152605, psi = pound / (inch * inch);
        double h = Geometry(w, out double A_cN, out double c, out double e_x, out double e_y);
        double psi_ed = w.Let("psi_ed", Math.Min(1, 0.7 + 0.3 * c / (1.5 * h)), Dimension.Number, aci, "edges");
        double psi_ec = w.Let("psi_ec", 1 / (1 + e_x / (1.5 * h)) / (1 + e_y / (1.5 * h)), Dimension.Number, aci, "eccentric pull");
        double psi_c = w.Given("psi_c", cracked || k_c is not null ? 1 : 1.25, Dimension.Number, "cracking", aci);
        w.Given(f_c, Dimension.Stress, "specified strength");
        double depth = h / inch;
        double pounds = (k_c ?? 24) * Math.Sqrt(f_c / psi) * Math.Pow(depth, 1.5);
        if (k_c is null && depth is >= 11 and <= 25)
            pounds = 16 * Math.Sqrt(f_c / psi) * Math.Pow(depth, 5.0 / 3);
        double N_b = w.Given("N_b", pounds * pound, Dimension.Force, "one bar far from edges: k_c √f′c h_ef^1.5, or 16 √f′c h_ef^(5/3) from 11 to 25 in (psi, in, lb)", aci);
        return w.Let("N_cbg", N_b * (A_cN / (9 * h * h)) * psi_ec * psi_ed * psi_c, Dimension.Force, aci, "cone of the group");
    }

    private double Geometry(Working? w, out double A_cN, out double c, out double e_x, out double e_y)
    {
        double h = w.Given("h", EffectiveEmbedment, Dimension.SmallLength, "embedment h_ef that counts");
        A_cN = w.Given("A_cN", ProjectedArea(h), Dimension.Area, "cones' base, within the block");
        c = w.Given("c", Math.Max(0, LeastEdge), Dimension.Length, "least edge distance");
        (e_x, e_y) = Eccentricity;
        w.Given("e_x", e_x, Dimension.SmallLength, "eccentricity of the pull along x");
        w.Given("e_y", e_y, Dimension.SmallLength, "eccentricity of the pull along y");
        return h;
    }
}
