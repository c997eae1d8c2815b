namespace StatueFrame.Checks;

/// <summary>How slender the walls and legs of a section are, and what local buckling leaves of it. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class MemberSlenderness
{
    private static readonly Source classesEn = Source.En1993_1_1("Table 5.2");
    private static readonly Source plates = new("EN 1993-1-5:2006", "4.4, Tables 4.1 and 4.2");
    private static readonly Source legs = new("EN 1993-3-1:2006", "6.3.1, from memory: b̄ = h − 2t");
    private static readonly Source aisc = new("AISC 360-16 and 360-22", "E7, Table B4.1a");

    /// <summary>The class of a section in compression, 1 to 4, by EN 1993-1-1.</summary>
    public static int Class(Section section, double f_y)
    {
        double epsilon = Math.Sqrt(235e6 / f_y);
        return section switch
        {
            Tube tube => tube.OuterDiameter / tube.Wall is var s && s <= 50 * epsilon * epsilon ? 1 : s <= 70 * epsilon * epsilon ? 2 : s <= 90 * epsilon * epsilon ? 3 : 4,
            RectangularTube box => Flat(box) is var s && s <= 33 * epsilon ? 1 : s <= 38 * epsilon ? 2 : s <= 42 * epsilon ? 3 : 4,
            AngleBar angle => angle.LongLeg / angle.Thickness <= 15 * epsilon && (angle.LongLeg + angle.ShortLeg) / (2 * angle.Thickness) <= 11.5 * epsilon ? 3 : 4,
            _ => 1,
        };
    }

    /// <summary>The effective area of a section in compression by EN 1993, m²; null for a round tube of class 4, which shell rules govern.</summary>
    public static double? EffectiveAreaEn(Working? w, Section section, double f_y)
    {
        double A = w.Given("A", section.Properties.A, Dimension.SmallArea, "gross area");
        int c = Class(section, f_y);
        w.Given("class", c, Dimension.Number, "class of the section in compression", classesEn);
        if (c < 4)
            return A;
        double epsilon = w.Given("epsilon", Math.Sqrt(235e6 / f_y), Dimension.Number, "√(235 MPa/f_y)");
        switch (section)
        {
            case AngleBar angle:
                double t = angle.Thickness.Meters;
                double h_1 = w.Given("h_1", angle.LongLeg.Meters - 2 * t, Dimension.SmallLength, "long leg in compression", legs);
                double h_2 = w.Given("h_2", angle.ShortLeg.Meters - 2 * t, Dimension.SmallLength, "short leg in compression", legs);
                w.Given(t, Dimension.SmallLength, "thickness");
                double lambda_1 = w.Let("lambda_1", h_1 / t / (28.4 * epsilon * Math.Sqrt(0.43)), Dimension.Number, plates);
                double lambda_2 = w.Let("lambda_2", h_2 / t / (28.4 * epsilon * Math.Sqrt(0.43)), Dimension.Number, plates);
                double rho_1 = w.Given("rho_1", Outstand(lambda_1), Dimension.Number, "(λ̄_p − 0.188)/λ̄_p²", plates);
                double rho_2 = w.Given("rho_2", Outstand(lambda_2), Dimension.Number, "(λ̄_p − 0.188)/λ̄_p²", plates);
                return w.Let("A_eff", A - (1 - rho_1) * h_1 * t - (1 - rho_2) * h_2 * t, Dimension.SmallArea, plates);
            case RectangularTube box:
                double wall = w.Given("t", box.Wall.Meters, Dimension.SmallLength, "wall");
                double b_1 = box.SideA.Meters - 3 * wall, b_2 = box.SideB.Meters - 3 * wall;
                double s_1 = Wall(b_1 / wall / (28.4 * epsilon * 2)), s_2 = Wall(b_2 / wall / (28.4 * epsilon * 2));
                w.Given(b_1, Dimension.SmallLength, "flat of the walls along side A");
                w.Given(b_2, Dimension.SmallLength, "flat of the walls along side B");
                w.Given(s_1, Dimension.Number, "(λ̄_p − 0.22)/λ̄_p² of these", plates);
                w.Given(s_2, Dimension.Number, "(λ̄_p − 0.22)/λ̄_p² of these", plates);
                return w.Let("A_eff", A - 2 * (1 - s_1) * b_1 * wall - 2 * (1 - s_2) * b_2 * wall, Dimension.SmallArea, plates);
            default:
                return null;
        }
    }

    /// <summary>The effective area by AISC E7 at the critical stress of the whole member, m²; null beyond its range.</summary>
    public static double? EffectiveAreaAisc(Working? w, Section section, double E, double F_y, double F_cr)
    {
        double A = w.Given("A", section.Properties.A, Dimension.SmallArea, "gross area");
        switch (section)
        {
            case Tube tube:
                double s = w.Given("s", tube.OuterDiameter / tube.Wall, Dimension.Number, "D/t");
                if (s <= 0.11 * E / F_y)
                    return A;
                return s < 0.45 * E / F_y ? w.Let("A_e", (0.038 * E / (F_y * s) + 2.0 / 3) * A, Dimension.SmallArea, aisc) : null;
            case AngleBar angle:
                double t = angle.Thickness.Meters, a = angle.LongLeg.Meters, b = angle.ShortLeg.Meters;
                double limit = 0.45 * Math.Sqrt(E / F_y);
                double lost = (a - Width(a, a / t, limit, 0.22, 1.49, F_y, F_cr) + b - Width(b, b / t, limit, 0.22, 1.49, F_y, F_cr)) * t;
                return lost == 0 ? A : w.Given("A_e", A - lost, Dimension.SmallArea, "after local buckling of the legs", aisc);
            case RectangularTube box:
                double wall = box.Wall.Meters, b_1 = box.SideA.Meters - 3 * wall, b_2 = box.SideB.Meters - 3 * wall;
                double most = 1.40 * Math.Sqrt(E / F_y);
                double gone = 2 * wall * (b_1 - Width(b_1, b_1 / wall, most, 0.20, 1.38, F_y, F_cr) + b_2 - Width(b_2, b_2 / wall, most, 0.20, 1.38, F_y, F_cr));
                return gone == 0 ? A : w.Given("A_e", A - gone, Dimension.SmallArea, "after local buckling of the walls", aisc);
            default:
                return A;
        }
    }

    /// <summary>The greater flat width of a rectangular tube's walls over its thickness, corners taken as 1.5 t.</summary>
    public static double Flat(RectangularTube box) => Math.Max(box.SideA.Meters, box.SideB.Meters) / box.Wall.Meters - 3;

    /// <summary>(λ̄_p − 0.188)/λ̄_p², at most 1: EN 1993-1-5, (4.3).</summary>
    internal static double Outstand(double lambda) => lambda <= 0.748 ? 1 : (lambda - 0.188) / (lambda * lambda);

    /// <summary>(λ̄_p − 0.22)/λ̄_p², at most 1: EN 1993-1-5, (4.2) with ψ = 1.</summary>
    internal static double Wall(double lambda) => lambda <= 0.673 ? 1 : (lambda - 0.22) / (lambda * lambda);

    /// <summary>AISC (E7-2), (E7-3).</summary>
    internal static double Width(double b, double lambda, double lambda_r, double c_1, double c_2, double F_y, double F_cr)
    {
        if (lambda <= lambda_r * Math.Sqrt(F_y / F_cr))
            return b;
        double F_el = c_2 * lambda_r / lambda * (c_2 * lambda_r / lambda) * F_y, root = Math.Sqrt(F_el / F_cr);
        return Math.Min(b, b * (1 - c_1 * root) * root);
    }
}
