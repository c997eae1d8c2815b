using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// How headed bars cast into a concrete block break it beside the cone: its edge by shear, its back by prying, its side by the
/// pressure of a head. SI units inside; the standards' constants are in N and mm, or in pounds and inches.
/// </summary>
/// <remarks>Stateless; safe to use from many threads. Steel in the block that would hold the pieces is not counted.</remarks>
internal static class ConcreteEdges
{
    private const double Inch = 0.0254, Pound = 4.4482216152605, Psi = Pound / (Inch * Inch);
    private static readonly Source edgeEn = new("EN 1992-4:2018", "7.2.2.5 (7.40) to (7.47), from memory; the bars nearest to the edge take all");
    private static readonly Source edgeAci = new("ACI 318-19", "17.7.2, from memory; the bars nearest to the edge take all");
    private static readonly Source pryEn = new("EN 1992-4:2018", "7.2.2.4 (7.39), from memory");
    private static readonly Source pryAci = new("ACI 318-19", "17.7.3, from memory");
    private static readonly Source blowEn = new("EN 1992-4:2018", "7.2.1.8 (7.25) to (7.29), from memory, bar by bar");
    private static readonly Source blowAci = new("ACI 318-19", "17.6.4, from memory, bar by bar");

    private static readonly Source distances = new("ACI 318-19", "17.9.2, cast-in bars, from memory; taken for EN 1992-4 too, which leaves these distances to the product");
    private static readonly Source splitting = new("EN 1992-1-1:2004", "6.5.3 (3) (6.58): T = ¼ (b − a)/b F; concrete alone, from memory");
    private static readonly Source plain = new("EN 1992-1-1:2004", "12.3.1 (12.1): α_ct 0.8, f_ctk,0.05 = 0.7 f_ctm");

    /// <summary>An edge as a group of bars sees it: how far, how long, how far its corners are.</summary>
    /// <param name="Name">The way it lies, as in "+x".</param>
    /// <param name="C1">Distance of the nearest bars, m.</param>
    /// <param name="C2">Least distance of these from a corner, m; infinite for a round block.</param>
    /// <param name="Width">Length of edge that their wedges cover, 1.5 c₁ to each side, m.</param>
    /// <param name="Front">How many are as near.</param>
    internal readonly record struct Edge(string Name, double C1, double C2, double Width, int Front);

    /// <summary>The wedge that shear towards an edge breaks off, for the worst edge.</summary>
    /// <param name="bars">All bars that take shear.</param>
    /// <param name="shears">The shear of each.</param>
    /// <param name="block">Plan of the block.</param>
    /// <param name="concrete">Its concrete.</param>
    /// <param name="height">Height of the block.</param>
    /// <param name="design">The rules.</param>
    /// <param name="where">The state.</param>
    /// <param name="situation">The situation.</param>
    public static Check EdgeShear(IReadOnlyList<AnchorBar> bars, IReadOnlyList<double> shears, BlockSection block, Concrete concrete, Length height, BaseDesign design, string where = "", string situation = "")
    {
        var subject = new CheckSubject("base.edge-shear", "edge of the concrete in shear", where, situation);
        Edge[] edges = Edges(bars, block);
        double total = shears.Sum(), most = shears.DefaultIfEmpty().Max(), h = height.Meters;
        // Of bars that differ the least of either: the strength grows with both.
        double thinnest = bars.Min(bar => bar.Diameter.Meters), shortest = bars.Min(bar => bar.Embedment.Meters);
        Edge worst = edges.MinBy(edge => edge.C1 > 0 ? Resistance(null, edge) / Math.Max(total, edge.Front * most) : double.NegativeInfinity);
        return Check.Of(subject, Dimension.Force, design.IsAmerican ? edgeAci : edgeEn, w =>
        {
            w?.Note($"The edge towards {worst.Name}.");
            double V = w.Given("V", Math.Max(total, worst.Front * most), Dimension.Force, "shear of all bars, or of as many as stand nearest to the edge at the greatest of one");
            return (V, worst.C1 > 0 ? Resistance(w, worst) : 0);
        });

        double Resistance(Working? w, in Edge edge)
        {
            double c_1 = w.Given("c_1", edge.C1, Dimension.Length, "distance of the nearest bars from the edge"), b = w.Given("b", edge.Width, Dimension.Length, "length of edge that breaks off");
            double c_2 = w.Given("c_2", Math.Min(edge.C2, 1.5 * edge.C1), Dimension.Length, "distance from a corner, at most 1.5 c₁");
            w.Given(h, Dimension.Length, "height of the block");
            double d = w.Given("d", thinnest, Dimension.SmallLength, "diameter of a bar"), h_ef = w.Given("h_ef", shortest, Dimension.Length, "embedment");
            double part = w.Let("part", b * Math.Min(1.5 * c_1, h) / (4.5 * c_1 * c_1), Dimension.Number, edgeEn, "A_cV/A_cV,0");
            double psi_s = w.Let("psi_s", 0.7 + 0.3 * c_2 / (1.5 * c_1), Dimension.Number, edgeEn, "corner");
            double psi_h = w.Let("psi_h", Math.Max(1, Math.Sqrt(1.5 * c_1 / h)), Dimension.Number, edgeEn, "shallow block");
            double f = w.Given("f", concrete.f_k, Dimension.Stress, "cylinder strength");
            if (design.IsAmerican)
            {
                double l_e = Math.Min(h_ef, 8 * d), root = Math.Sqrt(f / Psi) * Math.Pow(c_1 / Inch, 1.5);
                double V_b = w.Given("V_b", Math.Min(7 * Math.Pow(l_e / d, 0.2) * Math.Sqrt(d / Inch), 9) * root * Pound, Dimension.Force, "one bar: the lesser of 7 (l_e/d)^0.2 √d √f′c c₁^1.5 and 9 √f′c c₁^1.5 (psi, in, lb)", edgeAci);
                double psi_c = w.Given("psi_c", concrete.Cracked ? 1 : 1.4, Dimension.Number, "cracking", edgeAci), phi = w.Given("phi", design.PhiConcrete, Dimension.Number, "", edgeAci);
                return w.Let("V_R", phi * V_b * part * psi_s * psi_h * psi_c, Dimension.Force, edgeAci);
            }
            double thick = w.Given("thick", 0.024, Dimension.SmallLength, "up to this diameter l_f is 12 d", edgeEn), least = w.Given("least", 0.3, Dimension.Length, "beyond it 8 d or this", edgeEn);
            double l_f = w.Let("l_f", d <= thick ? Math.Min(h_ef, 12 * d) : Math.Min(h_ef, Math.Max(8 * d, least)), Dimension.SmallLength, edgeEn, "length that bears");
            double alpha = w.Let("alpha", 0.1 * Math.Sqrt(l_f / c_1), Dimension.Number, edgeEn), beta = w.Let("beta", 0.1 * Math.Pow(d / c_1, 0.2), Dimension.Number, edgeEn);
            double k_9 = w.Given("k_9", concrete.Cracked ? 1.7 : 2.4, Dimension.Number, "in N and mm", edgeEn);
            double V_0 = w.Given("V_0", k_9 * Math.Pow(1e3 * d, alpha) * Math.Pow(1e3 * l_f, beta) * Math.Sqrt(1e-6 * f) * Math.Pow(1e3 * c_1, 1.5), Dimension.Force, "one bar: k₉ d^α l_f^β √f_ck c₁^1.5 (N, mm)", edgeEn);
            double gammaMc = w.Given("gammaMc", design.GammaMc, Dimension.Number);
            return w.Let("V_Rd", V_0 * part * psi_s * psi_h / gammaMc, Dimension.Force, edgeEn);
        }
    }

    /// <summary>The cone behind bars that shear pries out.</summary>
    /// <inheritdoc cref="EdgeShear"/>
    public static Check PryOut(IReadOnlyList<AnchorBar> bars, IReadOnlyList<double> shears, BlockSection block, Concrete concrete, BaseDesign design, string where = "", string situation = "")
    {
        var subject = new CheckSubject("base.pry-out", "concrete pried out behind bars in shear", where, situation);
        Source source = design.IsAmerican ? pryAci : pryEn;
        double embedment = bars.Min(bar => bar.Embedment.Meters);
        var cone = new ConcreteBreakout(block, [.. bars.Select((bar, i) => (bar.X.Meters, bar.Y.Meters, Math.Max(shears[i], 1e-9)))], embedment);
        return Check.Of(subject, Dimension.Force, source, w =>
        {
            double V = w.Given("V", shears.Sum(), Dimension.Force, "shear of all bars");
            if (cone.LeastEdge <= 0)
                return (V, 0);
            double k_8 = w.Given("k_8", embedment < (design.IsAmerican ? 2.5 * Inch : 0.06) ? 1 : 2, Dimension.Number, "bars set deep", source);
            if (!design.IsAmerican)
            {
                double N_Rd = cone.Eurocode(w, concrete.f_k, concrete.Cracked, design.GammaMc);
                return (V, w.Let("V_Rd", k_8 * N_Rd, Dimension.Force, source));
            }
            double phi = w.Given("phi", design.PhiConcrete, Dimension.Number, "", source), N_cbg = cone.American(w, concrete.f_k, concrete.Cracked);
            return (V, w.Let("V_R", phi * k_8 * N_cbg, Dimension.Force, source));
        });
    }

    /// <summary>
    /// Splitting of the block as bars are tightened and pull: distances to edges and of bars of six diameters where bars are tightened, else
    /// four between bars; and the transverse tension of the force that spreads from a head into the concrete round it, which plain concrete
    /// takes over a square as wide as the concrete round the bar.
    /// </summary>
    /// <param name="bars">All bars.</param>
    /// <param name="forces">The force of each, pre-tension included, N.</param>
    /// <param name="block">Plan of the block.</param>
    /// <param name="concrete">Its concrete.</param>
    /// <param name="where">The state.</param>
    /// <param name="situation">The situation.</param>
    public static Check Splitting(IReadOnlyList<AnchorBar> bars, IReadOnlyList<double> forces, BlockSection block, Concrete concrete, string where = "", string situation = "")
    {
        (double use, int worst) = Enumerable.Range(0, bars.Count).Select(i => (Of(null, i), i)).Max();
        return Check.Of(new CheckSubject("base.splitting", "splitting of the concrete round an anchor bar", where.Length > 0 ? $"bar {worst + 1}, {where}" : $"bar {worst + 1}", situation), Dimension.Number, splitting, w => (Of(w, worst), 1));

        double Of(Working? w, int i)
        {
            AnchorBar bar = bars[i];
            double spacing = Enumerable.Range(0, bars.Count).Where(j => j != i)
                .Select(j => double.Hypot(bars[j].X.Meters - bar.X.Meters, bars[j].Y.Meters - bar.Y.Meters)).DefaultIfEmpty(double.PositiveInfinity).Min();
            double d = w.Given("d", bar.Diameter.Meters, Dimension.SmallLength, "diameter of the bar"), c = w.Given("c", Math.Max(1e-3, Edges([bar], block).Min(e => e.C1)), Dimension.Length, "distance from the nearest edge");
            double T = w.Given("T", Math.Max(Math.Max(0, forces[i]), bar.PreTension.Newtons), Dimension.Force, "greatest force, or its pre-tension");
            double most = bar.PreTension.Newtons > 0 ? 6 : 4, u = 0;
            if (bar.PreTension.Newtons > 0)
                u = w.Let("u", 6 * d / c, Dimension.Number, distances, "edge, as it is tightened");
            double b = w.Given("b", Math.Min(2 * c, spacing), Dimension.Length, "width of concrete round the bar: twice the edge, or the distance of the next bar");
            if (double.IsFinite(spacing))
            {
                double s = w.Given("s", spacing, Dimension.Length, "distance of the next bar"), k = w.Given("k", most, Dimension.Number, "diameters between bars", distances);
                u = w.Let("u", Math.Max(u, k * d / s), Dimension.Number, distances, "with the distance of bars");
            }
            double a = w.Given("a", Math.Min(b, bar.HeadWidth?.Meters ?? d), Dimension.SmallLength, "width of the head, or the bar");
            double f_ctm = w.Given("f_ctm", concrete.f_ctm, Dimension.Stress, "mean tensile strength"), gamma_C = w.Given("gamma_C", concrete.PartialFactor, Dimension.Number);
            double f_ctd = w.Let("f_ctd", 0.8 * 0.7 * f_ctm / gamma_C, Dimension.Stress, plain, "plain concrete");
            double T_s = w.Let("T_s", 0.25 * (1 - a / b) * T, Dimension.Force, splitting, "transverse tension");
            return w.Let("u", Math.Max(u, T_s / (f_ctd * b * b)), Dimension.Number, splitting, "with the tension over b by b");
        }
    }

    /// <summary>
    /// The side of the block that the head of one bar blows out: asked for where the edge is nearer than half the embedment,
    /// under ACI than 0.4 of it.
    /// </summary>
    /// <param name="bar">Number of the bar.</param>
    /// <param name="bars">All bars; neighbors at the same edge leave it less of the side.</param>
    /// <param name="tension">Its force, pre-tension included.</param>
    /// <param name="block">Plan of the block that its head is in.</param>
    /// <param name="concrete">The concrete there.</param>
    /// <param name="design">The rules.</param>
    /// <param name="where">Which bar.</param>
    /// <param name="situation">The situation.</param>
    /// <returns>Null where the edge is far, or the bar has no head.</returns>
    public static Check? BlowOut(int bar, IReadOnlyList<AnchorBar> bars, Force tension, BlockSection block, Concrete concrete, BaseDesign design, string where = "", string situation = "")
    {
        AnchorBar own = bars[bar];
        if (own.HeadArea is not { } head)
            return null;
        Edge edge = Edges([own], block).MinBy(e => e.C1);
        double h_ef = own.Embedment.Meters, near = design.IsAmerican ? 0.4 : 0.5;
        if (edge.C1 > near * h_ef)
            return null;
        double spacing = double.PositiveInfinity;
        for (int i = 0; i < bars.Count; i++)
        {
            if (i != bar && Edges([bars[i]], block).Any(e => e.Name == edge.Name && e.C1 < near * h_ef))
                spacing = Math.Min(spacing, Math.Sqrt(Math.Pow(bars[i].X.Meters - own.X.Meters, 2) + Math.Pow(bars[i].Y.Meters - own.Y.Meters, 2)));
        }
        return Check.Of(new CheckSubject("base.blow-out", "side of the block blown out by a bar's head", where, situation), Dimension.Force, design.IsAmerican ? blowAci : blowEn, w =>
        {
            double T = w.Given("T", Math.Max(0, tension.Newtons), Dimension.Force, "force in the bar");
            double c_1 = w.Given("c_1", Math.Max(0, edge.C1), Dimension.Length, "distance from the edge"), A_h = w.Given("A_h", head, Dimension.SmallArea, "bearing area of the head");
            double f = w.Given("f", concrete.f_k, Dimension.Stress, "cylinder strength");
            if (design.IsAmerican)
            {
                double N_sb = w.Given("N_sb", 160 * (c_1 / Inch) * Math.Sqrt(A_h / (Inch * Inch)) * Math.Sqrt(f / Psi) * Pound, Dimension.Force, "160 c₁ √A_brg √f′c (psi, in, lb)", blowAci);
                double corner = w.Given("corner", edge.C2 < 3 * c_1 ? (1 + Math.Max(1, edge.C2 / c_1)) / 4 : 1, Dimension.Number, "(1 + c₂/c₁)/4 near a corner", blowAci);
                double share = w.Given("share", spacing < 6 * c_1 ? (1 + spacing / (6 * c_1)) / 2 : 1, Dimension.Number, "(1 + s/6c₁)/2 beside another bar", blowAci), phi = w.Given("phi", design.PhiConcrete, Dimension.Number, "", blowAci);
                return (T, w.Let("N_R", phi * N_sb * corner * share, Dimension.Force, blowAci));
            }
            double k_5 = w.Given("k_5", 1e3 * (concrete.Cracked ? 8.7 : 12.2), Dimension.Number, concrete.Cracked ? "8.7 in N and mm, cracked" : "12.2 in N and mm, uncracked", blowEn);
            double per = w.Given("per", 1e-3, Dimension.Number, "from Pa to MPa under the root", blowEn);
            double N_0 = w.Let("N_0", k_5 * 1000 * c_1 * Math.Sqrt(A_h) * Math.Sqrt(f) * per, Dimension.Force, blowEn, "one head far from corners");
            double left = w.Given("left", Math.Min(2 * c_1, edge.C2), Dimension.Length, "side that is left towards a corner"), right = w.Given("right", Math.Min(2 * c_1, 0.5 * spacing), Dimension.Length, "and towards the next bar, at most 2 c₁");
            double deep = w.Given("deep", 4 * c_1, Dimension.Length, "height of the side that breaks");
            double part = w.Let("part", (left + right) * deep / Math.Pow(4 * c_1, 2), Dimension.Number, blowEn, "A_cNb/A_cNb,0");
            double psi_s = w.Let("psi_s", Math.Min(1, 0.7 + 0.3 * left / (2 * c_1)), Dimension.Number, blowEn, "corner"), gammaMc = w.Given("gammaMc", design.GammaMc, Dimension.Number);
            return (T, c_1 > 0 ? w.Let("N_Rd", N_0 * part * psi_s / gammaMc, Dimension.Force, blowEn) : 0);
        });
    }

    /// <summary>The edges of a block as a group of bars sees them: four of a rectangle, the nearest of a round block.</summary>
    internal static Edge[] Edges(IReadOnlyList<AnchorBar> bars, BlockSection block)
    {
        (double wx, double wy) = block.Widths;
        if (block.IsRound)
        {
            double[] gaps = [.. bars.Select(bar => 0.5 * wx - Math.Sqrt(bar.X.Meters * bar.X.Meters + bar.Y.Meters * bar.Y.Meters))];
            double c = gaps.Min();
            return [new Edge("the rim", c, double.PositiveInfinity, 3 * Math.Max(0, c), gaps.Count(gap => gap < c + 1e-3))];
        }
        return
        [
            Of("+x", bar => 0.5 * wx - bar.X.Meters, bar => bar.Y.Meters, wy), Of("-x", bar => 0.5 * wx + bar.X.Meters, bar => bar.Y.Meters, wy),
            Of("+y", bar => 0.5 * wy - bar.Y.Meters, bar => bar.X.Meters, wx), Of("-y", bar => 0.5 * wy + bar.Y.Meters, bar => bar.X.Meters, wx),
        ];

        Edge Of(string name, Func<AnchorBar, double> distance, Func<AnchorBar, double> along, double length)
        {
            double c = bars.Min(distance);
            double[] front = [.. bars.Where(bar => distance(bar) < c + 1e-3).Select(along).Order()];
            double reach = 1.5 * Math.Max(0, c), width = 0, covered = -0.5 * length;
            foreach (double at in front)
            {
                double from = Math.Max(covered, at - reach), to = Math.Min(0.5 * length, at + reach);
                if (to > from)
                    (width, covered) = (width + to - from, to);
            }
            return new Edge(name, c, Math.Min(0.5 * length - front[^1], 0.5 * length + front[0]), width, front.Length);
        }
    }
}
