using StatueFrame.Analysis;
using StatueFrame.Mechanics;

namespace StatueFrame.Checks;

/// <summary>What stands on the face of a hollow section, a bracket or the end of a standoff, with what it puts there. SI units.</summary>
/// <param name="Where">The standoff, as in "band 3, bar 2", or the root.</param>
/// <param name="Words">Where the forces come from, unless from a standoff.</param>
/// <param name="Design">The rules.</param>
/// <param name="Chord">What it stands on.</param>
/// <param name="Axes">x away from the face; y and z the principal axes of what stands there, its greater width along z.</param>
/// <param name="Foot">Its section.</param>
/// <param name="N">Axial force, without sign.</param>
/// <param name="M_y">Moment about y, without sign.</param>
/// <param name="M_z">Moment about z, without sign.</param>
/// <param name="From">The end of a standoff that they come from.</param>
internal readonly record struct FaceLoad(
    string Where, string Words, BarDesign Design, BracketChord Chord, Axes3D Axes, Section Foot, double N, double M_y, double M_z, BarEnd From = default) : ITraced
{
    /// <summary>Where the forces come from, in words.</summary>
    public string When => From.Bar is null ? Words : From.When;

    /// <summary>How the forces of the standoff's tower end come about.</summary>
    public DemandOrigin? Origin => From.Origin();

    public static FaceLoad Of(in BracketLoad load, BracketChord chord) =>
        new(load.Where, load.Words, load.Design, chord, load.Bracket.Axes, load.Bracket.Bracket.Section, Math.Abs(load.N), load.Foot.Strong, load.Foot.Weak, load.From);

    /// <summary>The tower end of a standoff that has no bracket; what is loose of its forces counts with whatever signs are worse.</summary>
    public static FaceLoad Of(BarModel bar, in BarLoad load, BarDesign design, BracketChord chord)
    {
        FlatForces together = load.Ends.Tower + -1 * load.Ends.Loose, loose = load.Ends.Loose;
        return new(
            bar.Where, "", design, chord, bar.Bar.Place.Axes, bar.Standoff.Section, Math.Abs(together.N) + Math.Abs(loose.N),
            Math.Abs(together.Strong) + Math.Abs(loose.Strong), Math.Abs(together.Weak) + Math.Abs(loose.Weak), load.End(atSkin: false));
    }

    /// <summary>Its widths along the axis of the section under it and across the face, m; and its moments in the plane of that axis and out of it.</summary>
    public (double Along, double Across, double InPlane, double OutOfPlane) OnChord()
    {
        Vector3D axis = Chord.Along(Axes.X), across = axis.Cross(Axes.X);
        (double width, double depth) = Foot.Envelope;
        return (
            Math.Abs(axis.Dot(Axes.Z)) * width + Math.Abs(axis.Dot(Axes.Y)) * depth, Math.Abs(across.Dot(Axes.Z)) * width + Math.Abs(across.Dot(Axes.Y)) * depth,
            Math.Abs(across.Dot(Axes.Y)) * M_y + Math.Abs(across.Dot(Axes.Z)) * M_z, Math.Abs(axis.Dot(Axes.Y)) * M_y + Math.Abs(axis.Dot(Axes.Z)) * M_z);
    }
}

/// <summary>
/// The face of a hollow section under a bracket or the end of a standoff, yielding in lines round it, the weaker the more the section is
/// pressed by what else it carries.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class FaceChecks
{
    private static readonly Source flatFace = new("EN 1993-1-8:2005", "Tables 7.11 and 7.14, T joints, face yielding; AISC 360, K3, alike; from memory");
    private static readonly Source platesOnFlat = new("EN 1993-1-8:2005", "Table 7.13, longitudinal plates; Table 7.8 holds from b₁/b₀ = 0.25; from memory");
    private static readonly Source roundFace = new("EN 1993-1-8:2005", "Tables 7.2, 7.3 and 7.5, T joints, face yielding and punching; from memory");

    private static readonly Source planeStress = new("von Mises", "plane stress across a fold that is pressed along it");
    private static readonly Source flange = new("EN 1993-1-8:2005", "Table 6.4, read for an angle; from memory");

    /// <summary>The factor on faces by EN 1993, which nobody gives.</summary>
    public static Assumption Factor { get; } = new("partial factor of faces of hollow sections", "γ_M5 1.0", new Source("EN 1993-1-8:2005", "Table 2.1, recommended value, from memory"));

    internal static readonly FormulaEntry<FaceLoad>
        UnderBrackets = Under("brackets.faces", "face of a hollow section under a bracket", "every bracket, every state"),
        UnderRoots = Under("limbs.roots", "wall of a tube under the root of a limb", "every limb that stands on a tube, every state"),
        UnderHorizontals = Under("levels.faces", "wall of a leg under a horizontal or an arm that is welded to it", "every horizontal and every arm of a hub, at its leg"),
        UnderBars = Under("bars.faces", "face of a hollow section under the end of a standoff", "every standoff without a bracket, every state");

    private static FormulaEntry<FaceLoad> Under(string id, string title, string parts) => new(
        id, title, Nature.Strength, parts, "axial force and both moments at the foot", "yield lines of the face", "no strength situation was given")
    {
        Where = (in FaceLoad load) => load.Where,
        Rule = (in FaceLoad load) => load.Chord.Section switch { Tube => roundFace, AngleBar => flange, _ => flatFace },
        Lacks = (in FaceLoad load) => load.Chord.Lacks ?? load.Design.Uncovered,
        Run = Face,
    };

    private static (double Demand, double Capacity) Face(Working? w, in FaceLoad load)
    {
        if (w is not null && load.When.Length > 0)
            w.Note($"Worst of all states: {load.When}.");
        BracketChord chord = load.Chord;
        double wall = ConnectionChecks.Thickness(chord.Section!);
        (double along, double across, double inPlane, double outOfPlane) = load.OnChord();
        double N = w.Given("N", load.N, Dimension.Force, "axial force"), M_ip = w.Given("M_ip", inPlane, Dimension.Moment, "moment in the plane of the section's axis"), M_op = w.Given("M_op", outOfPlane, Dimension.Moment, "moment out of it");
        double t_0 = w.Given("t_0", wall, Dimension.SmallLength, "wall of the section"), f_y = w.Given("f_y", chord.Material!.For(wall).YieldStrength.Pascals, Dimension.Stress, "its yield strength");
        double c = w.Given("c", load.Design.IsAisc ? load.Design.Aisc(1, 1.5) : load.Design.Code == DesignCode.AllowableStress ? load.Design.AllowableFraction : 1, Dimension.Number, load.Design.IsAisc ? "φ or 1/Ω" : load.Design.Code == DesignCode.AllowableStress ? "allowable over yield stress" : "1/γ_M5");
        double n = w.Given("n", chord.Pressed, Dimension.Number, "pressed by what else it carries, over its yield");
        if (chord.Section is Tube tube)
            return (RoundFace(w, tube.OuterDiameter.Meters, (along, across, load.Foot.OutlineDiameter is not null), (N, M_ip, M_op), (f_y, t_0, c, n)), 1);
        if (chord.Section is AngleBar angle)
            return (Flange(w, angle.LongLeg.Meters, (along, across), (N, M_ip, M_op), (f_y, t_0, c, n)), 1);
        double part = load.Foot.OutlineDiameter is not null ? Math.PI / 4 : 1;
        (double large, double small) = chord.Section!.Envelope;
        return (FlatFace(w, (chord.IsUpright ? Math.Max(large, small) : large, along, across), (N, M_ip, M_op), c * part * f_y * t_0 * t_0, n), 1);
    }

    private static double RoundFace(Working? w, double tube, (double Along, double Across, bool IsRound) foot, (double N, double M_ip, double M_op) forces, (double f_y, double t_0, double c, double n) wall)
    {
        ((double N, double M_ip, double M_op), (double f_y, double t_0, double c, double n)) = (forces, wall);
        double d_0 = w.Given("d_0", tube, Dimension.SmallLength, "tube"), h_1 = w.Given("h_1", foot.Along, Dimension.SmallLength, "foot along it"), b_1 = w.Given("b_1", Math.Min(d_0, foot.Across), Dimension.SmallLength, "foot across it");
        double beta = w.Let("beta", b_1 / d_0, Dimension.Number, roundFace), k_p = w.Let("k_p", 1 - 0.3 * n * (1 + n), Dimension.Number, roundFace);
        double f_v = w.Let("f_v", f_y / Math.Sqrt(3) * t_0 * c, Dimension.LineLoad, roundFace, "punching of the wall");
        double u_p, u_y;
        if (foot.IsRound)
        {
            double gamma = w.Let("gamma", d_0 / (2 * t_0), Dimension.Number, roundFace);
            double N_R = w.Let("N_R", c * Math.Pow(gamma, 0.2) * k_p * f_y * t_0 * t_0 * (2.8 + 14.2 * beta * beta), Dimension.Force, roundFace);
            double M_ipR = w.Let("M_ipR", c * 4.85 * f_y * t_0 * t_0 * b_1 * Math.Sqrt(gamma) * beta * k_p, Dimension.Moment, roundFace), M_opR = w.Let("M_opR", c * f_y * t_0 * t_0 * b_1 * 2.7 / (1 - 0.81 * beta) * k_p, Dimension.Moment, roundFace);
            u_y = w.Let("u_y", N / N_R + (M_ip / M_ipR) * (M_ip / M_ipR) + M_op / M_opR, Dimension.Number, roundFace, "round foot");
            u_p = w.Let("u_p", (N / (Math.PI * b_1) + (M_ip + M_op) / (b_1 * b_1)) / f_v, Dimension.Number, roundFace);
        }
        else
        {
            double eta = w.Let("eta", h_1 / d_0, Dimension.Number, roundFace);
            double N_R = w.Let("N_R", c * k_p * f_y * t_0 * t_0 * (4 + 20 * beta * beta) * (1 + 0.25 * eta), Dimension.Force, roundFace, "Table 7.3");
            u_y = w.Let("u_y", (N + M_ip / h_1 + 2 * M_op / b_1) / N_R, Dimension.Number, roundFace, "rectangular foot: M_ip,R = h₁ N_R, M_op,R = b₁ N_R/2");
            u_p = w.Let("u_p", (N / (2 * (h_1 + b_1)) + M_ip / (h_1 * b_1 + h_1 * h_1 / 3) + M_op / (h_1 * b_1 + b_1 * b_1 / 3)) / f_v, Dimension.Number, roundFace, "round the foot as a line");
        }
        return w.Let("u", Math.Max(u_p, u_y), Dimension.Number);
    }

    /// <summary>The flange of an angle that the foot stands on, amid its width: it folds along the heel, which the other flange holds.</summary>
    private static double Flange(Working? w, double width, (double Along, double Across) foot, (double N, double M_ip, double M_op) forces, (double f_y, double t_0, double c, double n) wall)
    {
        ((double N, double M_ip, double M_op), (double f_y, double t_0, double c, double n)) = (forces, wall);
        double b_0 = w.Given("b_0", width, Dimension.SmallLength, "width of the flange"), h_1 = w.Given("h_1", foot.Along, Dimension.SmallLength, "foot along it"), b_1 = w.Given("b_1", Math.Min(b_0, foot.Across), Dimension.SmallLength, "foot across it");
        double k_n = w.Let("k_n", Math.Max(0.001, 2 * (1 - n * n) / Math.Sqrt(4 - 3 * n * n)), Dimension.Number, planeStress, "what the pressure along the fold leaves of its plastic moment");
        double m_pl = w.Let("m_pl", k_n * c * f_y * t_0 * t_0 / 4, Dimension.Force, flange, "plastic moment of a unit of length");
        double m = w.Let("m", Math.Max(b_0 / 2 - t_0, b_0 / 10), Dimension.SmallLength, flange, "lever of the middle of the foot"), e = w.Let("e", b_0 / 2, Dimension.SmallLength, flange, "from there to the edge");
        double N_R = w.Let("N_R", m_pl * (h_1 + 4 * m + 1.25 * e) / m, Dimension.Force, flange);
        double M_ipR = w.Let("M_ipR", h_1 * m_pl * (4 * m + 1.25 * e) / m, Dimension.Moment, flange, "top and bottom of the foot against one another");
        double m_1 = w.Let("m_1", m + b_1 / 2, Dimension.SmallLength, flange, "lever of the foot's outer side");
        double M_opR = w.Let("M_opR", b_1 * m_pl * (h_1 + 4 * m_1) / m_1, Dimension.Moment, flange, "its outer side against the heel");
        return w.Let("u", N / N_R + M_ip / M_ipR + M_op / M_opR, Dimension.Number, flange);
    }

    private static double FlatFace(Working? w, (double Face, double Along, double Across) sizes, (double N, double M_ip, double M_op) forces, double yield, double n)
    {
        (double N, double M_ip, double M_op) = forces;
        double m_0 = w.Given("m_0", yield, Dimension.Force, "f_y t₀² with c, and π/4 for a round foot"), b_0 = w.Given("b_0", sizes.Face, Dimension.SmallLength, "width of the face");
        double h_1 = w.Given("h_1", sizes.Along, Dimension.SmallLength, "foot along it"), b_1 = w.Given("b_1", Math.Min(sizes.Across, 0.85 * b_0), Dimension.SmallLength, "foot across it, at most 0.85 of the face");
        double beta = w.Let("beta", b_1 / b_0, Dimension.Number, flatFace), eta = w.Let("eta", h_1 / b_0, Dimension.Number, flatFace);
        // A chord pressed to where nothing is left keeps a thousandth, so that what fails has a number.
        double k_n = beta < 0.25
            ? w.Let("k_n", Math.Min(1, Math.Max(0.001, 1.3 * (1 - n))), Dimension.Number, platesOnFlat, "narrow foot, as a plate along the section")
            : w.Let("k_n", Math.Min(1, Math.Max(0.001, 1.3 - 0.4 * n / beta)), Dimension.Number, flatFace);
        double N_R = w.Let("N_R", k_n * m_0 * (2 * eta + 4 * Math.Sqrt(1 - beta)) / (1 - beta), Dimension.Force, flatFace);
        double M_ipR = w.Let("M_ipR", k_n * m_0 * h_1 * (1 / (2 * eta) + 2 / Math.Sqrt(1 - beta) + eta / (1 - beta)), Dimension.Moment, flatFace);
        double M_opR = w.Let("M_opR", k_n * m_0 * (h_1 * (1 + beta) / (2 * (1 - beta)) + Math.Sqrt(2 * b_0 * b_1 * (1 + beta) / (1 - beta))), Dimension.Moment, flatFace);
        return w.Let("u", N / N_R + M_ip / M_ipR + M_op / M_opR, Dimension.Number, flatFace);
    }
}
