using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Strength of a flat against its bolts tearing out. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class TearOutStrength
{
    public static readonly Source En = new("EN 1993-1-8:2005", "3.10.2 (3.9), (3.10); one bolt as a block without a face in tension; stainless by EN 1993-1-4 with its own factors");
    public static readonly Source Aisc = new("AISC 360-16 J3.10, J4.3; 360-22 J3.11, J4.3", "tear-out, block shear");

    /// <summary>What AISC adds to a hole where a net area is found, m (B4.3b: 1/16 in).</summary>
    private const double Damage = 0.0254 / 16;

    /// <summary>One bolt to the nearest end, edge or neighboring hole, N; the force may point any way.</summary>
    public static double OneBolt(Working? w, BoltedFixing fixing, double width, double t, double f_y, double f_u, BarDesign design)
    {
        double d_0 = fixing.Bolt.d_0, least = Math.Min(fixing.e_1, fixing.e_2(width)) - d_0 / 2;
        if (fixing.Rows > 1)
            least = Math.Min(least, fixing.p_1 - d_0);
        if (fixing.Columns > 1)
            least = Math.Min(least, fixing.p_2 - d_0);
        double l_c = w.Given("l_c", least, Dimension.SmallLength, "least clear distance of a hole");
        w.Given(t, Dimension.SmallLength, "thickness");
        if (design.IsAisc)
        {
            w.Given(f_u, Dimension.Stress, "ultimate strength of the flat");
            double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
            return w.Let("R_1", c * 1.2 * l_c * t * f_u, Dimension.Force, Aisc, "tear-out of a bolt");
        }
        w.Given(f_y, Dimension.Stress, "yield or proof strength of the flat");
        double gammaM0 = w.Given("gammaM0", design.GammaM0, Dimension.Number);
        return w.Let("R_1", 2 * l_c * t * f_y / (Math.Sqrt(3) * gammaM0), Dimension.Force, En, "tear-out of a bolt");
    }

    /// <summary>
    /// The weakest block that the axial pull tears out, N: all between the outer columns, all up to one edge of the flat, or
    /// each column by itself.
    /// </summary>
    public static double Block(Working? w, BoltedFixing fixing, double width, double t, double f_y, double f_u, bool isEccentric, BarDesign design)
    {
        double d_h = fixing.Bolt.d_0 + (design.IsAisc ? Damage : 0), gaps = Math.Max(0, (fixing.Columns - 1) * (fixing.p_2 - d_h));
        double run = fixing.e_1 + (fixing.Rows - 1) * fixing.p_1, clear = Math.Max(0, run - (fixing.Rows - 0.5) * d_h), edge = Math.Max(0, fixing.e_2(width) - d_h / 2);
        double U = isEccentric ? 0.5 : 1;
        (string Name, double Planes, double Pulled)[] blocks =
        [
            ("between the outer columns", 2, gaps), ("up to an edge", 1, gaps + edge), ("each column by itself", 2 * fixing.Columns, 0),
        ];
        (string name, double n, double b_t) = blocks.MinBy(block => Strength(null, block.Planes, block.Pulled));
        using IDisposable? part = w?.Part($"Block {name}");
        return Strength(w, n, b_t);

        double Strength(Working? w, double n, double b_t)
        {
            w.Given(n, Dimension.Number, "planes in shear");
            w.Given(run, Dimension.SmallLength, "length of a plane");
            w.Given(clear, Dimension.SmallLength, "length of a plane without holes");
            w.Given(b_t, Dimension.SmallLength, "width in tension without holes");
            w.Given(t, Dimension.SmallLength, "thickness");
            w.Given(f_u, Dimension.Stress, "ultimate strength of the flat");
            w.Given(f_y, Dimension.Stress, "yield or proof strength of the flat");
            w.Given(U, Dimension.Number, "0.5 where the pull is eccentric");
            if (design.IsAisc)
            {
                double c = w.Given("c", design.Aisc(0.75, 2), Dimension.Number, "φ or 1/Ω");
                return w.Let("R_n", c * (n * t * Math.Min(0.6 * f_u * clear, 0.6 * f_y * run) + U * f_u * b_t * t), Dimension.Force, Aisc, "block shear");
            }
            double gammaM0 = w.Given("gammaM0", design.GammaM0, Dimension.Number), gammaM2 = w.Given("gammaM2", design.GammaM2, Dimension.Number);
            return w.Let("V_eff", U * f_u * b_t * t / gammaM2 + n * clear * t * f_y / (Math.Sqrt(3) * gammaM0), Dimension.Force, En, "block tearing");
        }
    }

    /// <summary>Whether a moment or a shear in the plane of the flat makes the pull eccentric.</summary>
    public static bool IsEccentric(in FlatForces f) => Math.Abs(f.Strong) > 1e-6 || Math.Abs(f.AlongWidth) > 1e-6;
}
