namespace StatueFrame.Checks;

/// <summary>Bending strength of whole sections: plastic moduli, and moments that local buckling leaves. SI units.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class MemberSection
{
    private static readonly Source aiscRound = new("AISC 360-16 and 360-22", "F8");
    private static readonly Source aiscBox = new("AISC 360-16 and 360-22", "F7");
    private static readonly Source aiscAngle = new("AISC 360-16 and 360-22", "F10, from memory");
    private static readonly Source aiscSolid = new("AISC 360-16 and 360-22", "F11");
    private static readonly Source en = Source.En1993_1_1("6.2.5");

    /// <summary>Plastic moduli about the strong and the weak axis, m³; those of yield for an angle.</summary>
    public static (double Strong, double Weak) Plastic(Section section)
    {
        switch (section)
        {
            case Tube tube:
                double D = tube.OuterDiameter.Meters, d = D - 2 * tube.Wall.Meters, W = (D * D * D - d * d * d) / 6;
                return (W, W);
            case RoundBar round:
                double w = Math.Pow(round.Diameter.Meters, 3) / 6;
                return (w, w);
            case RectangularTube box:
                double h = Math.Max(box.SideA.Meters, box.SideB.Meters), b = Math.Min(box.SideA.Meters, box.SideB.Meters), t = box.Wall.Meters;
                return ((b * h * h - (b - 2 * t) * (h - 2 * t) * (h - 2 * t)) / 4, (h * b * b - (h - 2 * t) * (b - 2 * t) * (b - 2 * t)) / 4);
            case AngleBar:
                return (section.Properties.Wy, section.Properties.Wz);
            default:
                return (1.5 * section.Properties.Wy, 1.5 * section.Properties.Wz);
        }
    }

    /// <summary>Moment resistance about both axes by EN 1993-1-1 without partial factor, N·m.</summary>
    public static (double Strong, double Weak) MomentsEn(Working? w, LoadedMember m)
    {
        int c = MemberSlenderness.Class(m.Section, m.f_y);
        (double strong, double weak) = c <= 2 ? Plastic(m.Section) : (m.p.Wy, m.p.Wz);
        string kind = c <= 2 ? "plastic modulus" : "elastic modulus, class 3";
        double f_y = w.Given("f_y", m.f_y, Dimension.Stress, "yield strength");
        double W_y = w.Given("W_y", strong, Dimension.SectionModulus, kind), W_z = w.Given("W_z", weak, Dimension.SectionModulus, kind);
        return (w.Let("M_y", W_y * f_y, Dimension.Moment, en, "strong axis"), w.Let("M_z", W_z * f_y, Dimension.Moment, en, "weak axis"));
    }

    /// <summary>Nominal moments about both axes by AISC 360, N·m; null beyond its range.</summary>
    public static (double Strong, double Weak)? MomentsAisc(Working? w, LoadedMember m)
    {
        (double Z_y, double Z_z) = Plastic(m.Section);
        (double E, double F_y, double S_y, double S_z) = (m.E, m.f_y, m.p.Wy, m.p.Wz);
        w.Given(E, Dimension.Stress, "Young's modulus");
        w.Given(F_y, Dimension.Stress, "yield strength");
        w.Given(Z_y, Dimension.SectionModulus, "plastic modulus, strong axis");
        w.Given(Z_z, Dimension.SectionModulus, "plastic modulus, weak axis");
        w.Given(S_y, Dimension.SectionModulus, "elastic modulus, strong axis");
        w.Given(S_z, Dimension.SectionModulus, "elastic modulus, weak axis");
        switch (m.Section)
        {
            case Tube tube:
                double s = w.Given("s", tube.OuterDiameter / tube.Wall, Dimension.Number, "D/t");
                if (s >= 0.45 * E / F_y)
                    return null;
                double M_n = s <= 0.07 * E / F_y ? w.Let("M_n", F_y * Z_y, Dimension.Moment, aiscRound)
                    : s <= 0.31 * E / F_y ? w.Let("M_n", Math.Min(F_y * Z_y, (0.021 * E / s + F_y) * S_y), Dimension.Moment, aiscRound)
                    : w.Let("M_n", 0.33 * E / s * S_y, Dimension.Moment, aiscRound);
                w.Given("M_ny", M_n, Dimension.Moment, "both axes");
                w.Given("M_nz", M_n, Dimension.Moment, "both axes");
                return (M_n, M_n);
            case RectangularTube box:
                double b = w.Given("b", MemberSlenderness.Flat(box), Dimension.Number, "flat width over wall");
                if (b > 1.40 * Math.Sqrt(E / F_y))
                    return null;
                double drop = w.Let("drop", Math.Max(0, 3.57 * b * Math.Sqrt(F_y / E) - 4.0), Dimension.Number, aiscBox, "(F7-2)");
                return (w.Let("M_ny", Math.Min(F_y * Z_y, F_y * Z_y - (F_y * Z_y - F_y * S_y) * drop), Dimension.Moment, aiscBox),
                    w.Let("M_nz", Math.Min(F_y * Z_z, F_y * Z_z - (F_y * Z_z - F_y * S_z) * drop), Dimension.Moment, aiscBox));
            case AngleBar angle:
                return AngleAisc(w, angle, m, (E, F_y, S_y, S_z));
            default:
                return (w.Let("M_ny", Math.Min(F_y * Z_y, 1.5 * F_y * S_y), Dimension.Moment, aiscSolid),
                    w.Let("M_nz", Math.Min(F_y * Z_z, 1.5 * F_y * S_z), Dimension.Moment, aiscSolid));
        }
    }

    /// <summary>
    /// A single angle about its principal axes by F10: yield at 1.5 times the moment of the first fiber, buckling sideways about the strong axis
    /// with C_b = 1, the sign of β_w taken as it is worse, and buckling of the legs.
    /// </summary>
    private static (double Strong, double Weak) AngleAisc(Working? w, AngleBar angle, LoadedMember m, (double E, double F_y, double S_y, double S_z) own)
    {
        (double E, double F_y, double S_y, double S_z) = own;
        double t = w.Given("t", angle.Thickness.Meters, Dimension.SmallLength, "thickness"), A = w.Given("A", m.p.A, Dimension.SmallArea), L_b = w.Given("L_b", Math.Max(m.WeakFactor, m.StrongFactor) * m.L, Dimension.Length, "length that may buckle sideways");
        double r_z = w.Given("r_z", Math.Sqrt(m.p.Iz / m.p.A), Dimension.SmallLength, "radius of gyration, weak axis"), beta_w = w.Given("beta_w", angle.SidewaysProperty, Dimension.SmallLength, "β_w, zero for equal legs; taken as negative", aiscAngle);
        double k = w.Let("k", 4.4 * beta_w * r_z / (L_b * t), Dimension.Number, aiscAngle);
        double M_cr = w.Let("M_cr", 9 * E * A * r_z * t / (8 * L_b) * (Math.Sqrt(1 + k * k) - k), Dimension.Moment, aiscAngle, "(F10-4)");
        double M_y = w.Let("M_y", F_y * S_y, Dimension.Moment, aiscAngle, "first yield, strong axis");
        double M_b = M_y <= M_cr ? w.Let("M_b", Math.Min(1.5 * M_y, (1.92 - 1.17 * Math.Sqrt(M_y / M_cr)) * M_y), Dimension.Moment, aiscAngle, "(F10-2)") : w.Let("M_b", (0.92 - 0.17 * M_cr / M_y) * M_cr, Dimension.Moment, aiscAngle, "(F10-3)");
        double s = w.Given("s", Math.Max(angle.LongLeg.Meters, angle.ShortLeg.Meters) / t, Dimension.Number, "longer leg over thickness");
        double limit = Math.Sqrt(E / F_y);
        double F_l = s <= 0.54 * limit ? w.Let("F_l", 1.5 * F_y, Dimension.Stress, aiscAngle, "compact legs")
            : s <= 0.91 * limit ? w.Let("F_l", F_y * (2.43 - 1.72 * s * Math.Sqrt(F_y / E)), Dimension.Stress, aiscAngle, "legs that buckle, (F10-6)")
            : w.Let("F_l", 0.71 * E / (s * s), Dimension.Stress, aiscAngle, "slender legs, (F10-7)");
        return (w.Let("M_ny", Math.Min(M_b, Math.Min(1.5 * F_y, F_l) * S_y), Dimension.Moment, aiscAngle), w.Let("M_nz", Math.Min(1.5 * F_y, F_l) * S_z, Dimension.Moment, aiscAngle));
    }

    /// <summary>The area that carries shear at the shear yield stress, m², and the modulus of torsion, m³.</summary>
    public static (double ShearArea, double TorsionModulus) ShearAndTorsion(Section section)
    {
        SectionProperties p = section.Properties;
        switch (section)
        {
            case Tube tube:
                // EN 1993-1-1, 6.2.6 (3) g): 2A/π.
                return (2 * p.A / Math.PI, p.J / (tube.OuterDiameter.Meters / 2));
            case RoundBar round:
                return (0.75 * p.A, p.J / (round.Diameter.Meters / 2));
            case RectangularTube box:
                double a = box.SideA.Meters, b = box.SideB.Meters, t = box.Wall.Meters;
                return (p.A * Math.Min(a, b) / (a + b), 2 * (a - t) * (b - t) * t);
            case AngleBar angle:
                return (Math.Min(p.Asy, p.Asz), p.J / angle.Thickness.Meters);
            default:
                return (Math.Min(p.Asy, p.Asz), p.J / section.Envelope.Depth);
        }
    }
}
