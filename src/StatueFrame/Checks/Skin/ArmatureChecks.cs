using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>The bars that carry the sheet between standoffs, under pressure on their strip and the weight of their sheet.</summary>
/// <remarks>
/// Stateless; safe to use from many threads. A continuous bar is taken as three equal spans, all loaded: 0.100 q L² at a
/// support and 0.0069 q L⁴/EI between (AISC Steel Construction Manual, Table 3-23); one that ends at each standoff as a
/// simple span. Pressure bends it about its weak axis, the weight of the sheet about its strong one.
/// </remarks>
public static class ArmatureChecks
{
    private static readonly Source spans = new("AISC Steel Construction Manual, 14th ed.", "Table 3-23: simple beam; three equal spans, all loaded");

    /// <summary>The span that the other checks of the armature rest on, against where the standoffs are.</summary>
    internal static readonly FormulaEntry<HeldSpan> SpanEntry = new(
        "armature.span", "span of armature bars against the distance of standoffs", Nature.Range, "every ring behind an armature", "distance of neighboring standoffs of the ring, or of the next ring where that is less", "span given for the armature",
        "the skin's armature is not described")
    {
        Dimension = Dimension.SmallLength,
        Where = (in HeldSpan held) => held.Where,
        Rule = (in HeldSpan _) => Source.Assumed("skin: a bar of the armature spans from standoff to standoff, one way or the other"),
        Run = (Working? w, in HeldSpan held) =>
        {
            double s = w.Given("s", held.InRing, Dimension.SmallLength, "greatest distance of neighboring standoffs of the ring"), least = s;
            if (double.IsFinite(held.ToNext))
            {
                double h = w.Given("h", held.ToNext, Dimension.SmallLength, "distance of the next ring");
                least = w.Let("L_min", Math.Min(s, h), Dimension.SmallLength);
            }
            return (least, w.Given("L", held.Span, Dimension.SmallLength, "span given for the armature (Armature.Span)"));
        },
    };

    /// <summary>Where an armature is held at a ring. SI units.</summary>
    /// <param name="Where">The band.</param>
    /// <param name="InRing">Greatest distance of neighboring standoffs of the ring, m.</param>
    /// <param name="ToNext">Distance of the farther of the next rings, m; infinite without any.</param>
    /// <param name="Span">The span given, m.</param>
    internal readonly record struct HeldSpan(string Where, double InRing, double ToNext, double Span);

    /// <summary>The rings of a body with the distances of their standoffs.</summary>
    internal static IEnumerable<HeldSpan> Spans(BodyModel body, Armature armature)
    {
        (string Band, Vector3D[] Ends, double Z)[] rings = [.. body.Rings.Select(ring => (ring.BandName, Array.ConvertAll(ring.Bars, bar => body.Axes.ToLocal(bar.Bar.Place.SkinEnd))))
            .Select(ring => (ring.BandName, ring.Item2, ring.Item2.Average(end => end.Z))).OrderBy(ring => ring.Item3)];
        for (int i = 0; i < rings.Length; i++)
        {
            (string band, Vector3D[] ends, double z) = rings[i];
            double below = i > 0 ? z - rings[i - 1].Z : 0, above = i + 1 < rings.Length ? rings[i + 1].Z - z : 0, next = Math.Max(below, above);
            yield return new(band, Apart(ends), next > 0 ? next : double.PositiveInfinity, armature.Span.Meters);
        }
    }

    /// <summary>Greatest distance of points that are neighbors round their middle, m.</summary>
    private static double Apart(Vector3D[] ends)
    {
        double x = ends.Average(end => end.X), y = ends.Average(end => end.Y);
        Vector3D[] round = [.. ends.OrderBy(end => Math.Atan2(end.Y - y, end.X - x))];
        return round.Select((end, i) => (round[(i + 1) % round.Length] - end).Length).Max();
    }

    /// <summary>Stress in a bar against a fraction of its yield strength.</summary>
    /// <param name="armature">The armature.</param>
    /// <param name="pressure">Greatest pressure or suction, without sign.</param>
    /// <param name="sheet">Weight of sheet per area that hangs on the bar.</param>
    /// <param name="stressFraction">Allowable stress over yield strength, above 0 to 1.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidStatueException">The armature has problems.</exception>
    public static Check Bending(Armature armature, Pressure pressure, Pressure sheet, double stressFraction, string where = "", string situation = "")
    {
        Validate(armature, pressure, sheet);
        CheckInput.Within(stressFraction, 0.05, 1, nameof(stressFraction));
        return Check.Of(new CheckSubject("armature.bending", "stress in an armature bar", where, situation), Dimension.Stress, spans, w =>
        {
            (double q, double g, double L) = Loads(w, armature, pressure, sheet);
            double k = MomentFactor(w, armature);
            double W_z = w.Given("W_z", armature.Bar.Properties.Wz, Dimension.SectionModulus, "weak axis"), W_y = w.Given("W_y", armature.Bar.Properties.Wy, Dimension.SectionModulus, "strong axis");
            double M_z = w.Let("M_z", k * q * L * L, Dimension.Moment, spans, "pressure"), M_y = w.Let("M_y", k * g * L * L, Dimension.Moment, spans, "weight");
            double f_y = w.Given("f_y", armature.Material.YieldStrength.Pascals, Dimension.Stress, "yield strength"), fraction = w.Given("fraction", stressFraction, Dimension.Number);
            return (w.Let("sigma", M_z / W_z + M_y / W_y, Dimension.Stress, spans), w.Let("allowed", fraction * f_y, Dimension.Stress));
        });
    }

    /// <summary>Deflection of a bar between standoffs.</summary>
    /// <param name="armature">The armature.</param>
    /// <param name="pressure">Greatest pressure or suction, without sign.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    /// <exception cref="InvalidStatueException">The armature has problems.</exception>
    public static Check Deflection(Armature armature, Pressure pressure, string where = "", string situation = "")
    {
        Validate(armature, pressure, Pressure.Zero);
        return Check.Of(new CheckSubject("armature.deflection", "deflection of an armature bar", where, situation), Dimension.SmallLength, spans, w =>
        {
            (double q, _, double L) = Loads(w, armature, pressure, Pressure.Zero);
            double k = w.Given("k", armature.IsContinuous ? 0.0069 : 5.0 / 384, Dimension.Number, armature.IsContinuous ? "three spans" : "simple span", spans);
            double E = w.Given("E", armature.Material.YoungsModulus.Pascals, Dimension.Stress, "Young's modulus"), I = w.Given("I", armature.Bar.Properties.Iz, Dimension.AreaMomentOfInertia, "weak axis");
            double limit = w.Given("limit", armature.DeflectionLimit, Dimension.Number, "deflection over span");
            return (w.Let("w", k * q * L * L * L * L / (E * I), Dimension.SmallLength, spans), w.Let("allowed", limit * L, Dimension.SmallLength));
        });
    }

    /// <summary>Stress in a bar under pressure or suction alone, Pa.</summary>
    internal static double Stress(Working? w, Armature armature, double pressure)
    {
        double p = w.Given("p", pressure, Dimension.Pressure, "pressure or suction"), s = w.Given("s", armature.Spacing.Meters, Dimension.SmallLength, "spacing of bars"), L = w.Given("L", armature.Span.Meters, Dimension.SmallLength, "span between standoffs");
        double k = MomentFactor(w, armature), W_z = w.Given("W_z", armature.Bar.Properties.Wz, Dimension.SectionModulus, "weak axis");
        return w.Let("sigma_1", k * p * s * L * L / W_z, Dimension.Stress, spans);
    }

    private static double MomentFactor(Working? w, Armature armature) =>
        w.Given("k", armature.IsContinuous ? 0.100 : 0.125, Dimension.Number, armature.IsContinuous ? "three spans" : "simple span", spans);

    private static (double Q, double G, double L) Loads(Working? w, Armature armature, Pressure pressure, Pressure sheet)
    {
        double p = w.Given("p", pressure.Pascals, Dimension.Pressure, "pressure or suction"), m = w.Given("m", sheet.Pascals, Dimension.Pressure, "weight of the sheet");
        double s = w.Given("s", armature.Spacing.Meters, Dimension.SmallLength, "spacing of bars"), L = w.Given("L", armature.Span.Meters, Dimension.SmallLength, "span between standoffs");
        double own = w.Given("own", armature.Material.Density.KilogramsPerCubicMeter * SelfWeight.Gravity * armature.Bar.Properties.A, Dimension.LineLoad, "weight of the bar");
        return (w.Let("q", p * s, Dimension.LineLoad), w.Let("g", m * s + own, Dimension.LineLoad), L);
    }

    private static void Validate(Armature armature, Pressure pressure, Pressure sheet)
    {
        var v = new Validator();
        armature.Validate(v.At(nameof(Armature)));
        v.ThrowIfAny();
        CheckInput.NotNegative(pressure.Pascals, nameof(pressure));
        CheckInput.NotNegative(sheet.Pascals, nameof(sheet));
    }
}
