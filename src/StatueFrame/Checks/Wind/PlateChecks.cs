using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Statics;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Trunk and limbs that are flat like plates, edge on to the wind: a small twist makes a moment that twists them further.
/// Above the speed of divergence no stiffness holds it; where the lowest frequencies of twist and of bending lie near each other
/// the two feed one another, and the body flutters.
/// </summary>
/// <remarks>
/// For one thread. Source: EN 1991-1-4:2005, E.4. The standard's (E.24) is of a single band, ½ρ v² d² (dc_M/dΘ) = k_Θ; here every
/// band has its own chord and wind, and the twist of all of them under unit moments, standoffs, seams and tower included, is the
/// flexibility: with D = diag(½ρ v² d² (dc_M/dΘ) h) the body diverges when v² grows by the inverse of the greatest eigenvalue of C D.
/// </remarks>
internal sealed class PlateChecks
{
    /// <summary>A body is a plate when some band is thinner than so much of its chord: E.4.2 (1).</summary>
    private const double PlateRatio = 0.25;

    /// <summary>What divergence must be away from, in times the mean wind speed: E.4.3 (2).</summary>
    private const double Margin = 2;

    /// <summary>Twist and bending that are nearer than this, as frequency over frequency, can flutter: E.4.2 (1).</summary>
    private const double FrequencyRatio = 2;

    /// <summary>A mode in which the body has less than this part of the kinetic energy is none of the body's.</summary>
    private const double LeastShare = 0.02;

    /// <summary>A chord that has less than this part of any horizontal wind along it is never met edge on.</summary>
    private const double LeastAlong = 0.5;

    /// <summary>Steps by powers, and the relative change at which they end: the next lowest speed is about three times as high.</summary>
    private const int MostSteps = 200;

    private const double Settled = 1e-10;

    /// <summary>Directions among which the thinnest side of a band is looked for.</summary>
    private const int Directions = 36;

    private static readonly Source source = Source.En1991_1_4("E.4.2, E.4.3 (E.24) and Figure E.6, from memory");

    /// <summary>What its checks take for granted of the air and of the mass.</summary>
    public static Assumption[] Assumptions { get; } =
    [
        new("moment of the wind on a flat body edge on", "that of a rectangle as thick and as wide as each band, about the middle of its chord", source),
        new("modes of a flat body", "it twists where its sheet and armature have more energy turning about the axis than moving across the chord", Source.Assumed("across-wind")),
    ];

    private readonly StatueModel model;
    private readonly BodyModel body;
    private readonly WindProfile wind;
    private readonly Plate[] plates;

    private PlateChecks(StatueModel model, BodyModel body, WindProfile wind)
    {
        (this.model, this.body, this.wind) = (model, body, wind);
        plates = [.. Enumerable.Range(0, body.Bands.Length).Select(PlateOf)];
    }

    /// <summary>A band seen along its thickness.</summary>
    /// <param name="Thickness">Least width, b of the figure, m.</param>
    /// <param name="Chord">Width across it, d, m.</param>
    /// <param name="Normal">Direction of the thickness, in global axes.</param>
    /// <param name="Speed">Part of the mean wind along the chord, of the heading that has most of it, m/s; zero where no wind meets it edge on.</param>
    private readonly record struct Plate(double Thickness, double Chord, Vector3D Normal, double Speed)
    {
        public double Ratio => Thickness / Chord;

        /// <summary>dc_M/dΘ about the middle of the chord; 0 where the figure ends.</summary>
        public double MomentSlope => Math.Max(0, -6.3 * Ratio * Ratio - 0.38 * Ratio + 1.6);
    }

    /// <summary>What is found of all bodies that are plates in a wind.</summary>
    public static IEnumerable<Check> Of(StatueModel model, ModalResponse modes, WindAction wind, string situation)
    {
        PlateChecks[] flat = [.. model.Bodies.Where(body => body.Bands.Length > 0).Select(body => new PlateChecks(model, body, wind.Profile)).Where(found => found.plates.Any(p => p.Ratio < PlateRatio && p.Speed > 0))];
        if (flat.Length == 0)
            yield break;
        ModalResponse many = modes.Modes.Count < GustFactors.GustModes ? model.Modes(GustFactors.GustModes) : modes;
        foreach (PlateChecks found in flat)
        {
            yield return found.Divergence(situation);
            yield return found.Flutter(many, situation);
        }
    }

    private Plate PlateOf(int index)
    {
        SkinBand band = body.Bands[index];
        double least = double.PositiveInfinity, chord = 0;
        Vector3D normal = default;
        for (int i = 0; i < Directions; i++)
        {
            (double sin, double cos) = Math.SinCos(Math.PI * i / Directions);
            // The width that a wind along the chord meets is the thickness.
            double width = band.ProjectedWidth(new Vector3D(cos, sin, 0));
            if (width < least)
                (least, chord, normal) = (width, band.ProjectedWidth(new Vector3D(-sin, cos, 0)), new Vector3D(-sin, cos, 0));
        }
        Vector3D along = body.Axes.Axes.ToGlobal(new Vector3D(normal.Y, -normal.X, 0));
        double height = Math.Max(0, model.Statue.BaseAboveGround.Meters + body.BandPlaces[index].Center.Z);
        double part = double.Hypot(along.X, along.Y);
        return new Plate(least, chord, body.Axes.Axes.ToGlobal(normal), part < LeastAlong ? 0 : part * wind.MeanSpeedSi(height));
    }

    private Check Divergence(string situation)
    {
        double lambda = Math.Max(1e-12, GreatestTwist()), v_m = plates.Max(p => p.Speed);
        Plate flattest = plates.MinBy(p => p.Ratio);
        return Check.Of(Catalogue.Find("wind.divergence")!.Subject(body.Name, situation), Dimension.Speed, source, w =>
        {
            w?.Note(Invariant($"The wind blows along the chord. The flattest band is {flattest.Thickness:0.00} m thick and {flattest.Chord:0.00} m wide, dc_M/dΘ {flattest.MomentSlope:0.00}."));
            w.Given("v_m", v_m, Dimension.Speed, "mean wind along the chord, the most of any band");
            w.Given("lambda", lambda, Dimension.Number, "twist that the moment of a unit twist makes, stiffness of the whole statue: greatest eigenvalue");
            double v_div = w.Let("v_div", v_m / Math.Sqrt(lambda), Dimension.Speed, source, "speed of divergence");
            double margin = w.Given("margin", Margin, Dimension.Number, "of the mean wind speed");
            return (w.Let("v_range", margin * v_m, Dimension.Speed, source), v_div);
        });
    }

    /// <summary>
    /// The greatest eigenvalue of √D C √D, with the twist C of every band under a unit moment about the axis on every other: by powers, a solution
    /// for every step, from a twist the same way all over, as that of the lowest speed is.
    /// </summary>
    private double GreatestTwist()
    {
        int n = plates.Length;
        Vector3D axis = body.Axes.Axes.Z;
        double[] root = [.. plates.Select((p, i) => Math.Sqrt(MomentPerTwist(p, body.Bands[i])))], x = [.. root];
        double lambda = 0;
        for (int step = 0; step < MostSteps; step++)
        {
            double length = Math.Sqrt(DenseVector.Dot(x, x));
            var loads = new double[model.Frame.FreedomCount];
            for (int i = 0; i < n; i++)
            {
                x[i] /= length;
                int node = body.BandPlaces[i].Node * Frame.NodeSize;
                Vector3D moment = root[i] * x[i] * axis;
                (loads[node + 3], loads[node + 4], loads[node + 5]) = moment;
            }
            double[] u = model.Statics.Solve(loads), turned = [.. root.Select((r, i) => r * TwistOf(u, i, axis))];
            double before = lambda;
            lambda = DenseVector.Dot(x, turned);
            if (Math.Abs(lambda - before) <= Settled * lambda)
                break;
            x = turned;
        }
        return lambda;
    }

    private double MomentPerTwist(Plate p, SkinBand band) => 0.5 * wind.Rho * p.Speed * p.Speed * p.Chord * p.Chord * p.MomentSlope * (band.Top - band.Bottom);

    private double TwistOf(ReadOnlySpan<double> u, int band, Vector3D axis) => model.Motion(u, body.BandPlaces[band], body.BandPlaces[band].Center).Rotation.Dot(axis);

    /// <summary>The lowest frequency of the body's twist against that of its bending across the plate.</summary>
    private Check Flutter(ModalResponse modes, string situation)
    {
        CheckSubject subject = Catalogue.Find("wind.flutter")!.Subject(body.Name, situation);
        (double twist, bool isTwistKnown, double bend) = Frequencies(modes);
        if (twist < FrequencyRatio * bend)
        {
            return Check.NotChecked(subject, isTwistKnown
                ? Invariant($"it twists at {twist:0.00} Hz and bends at {bend:0.00} Hz, less than {FrequencyRatio} apart: it can flutter, and specialist advice or a wind tunnel is needed")
                : Invariant($"it bends at {bend:0.00} Hz, and does not twist below {twist:0.00} Hz, the last mode looked at"), source);
        }
        return Check.Of(subject, Dimension.Frequency, source, w =>
        {
            double n_bend = w.Given("n_bend", bend, Dimension.Frequency, "lowest mode that bends it across the plate, with the most energy there");
            double n_twist = w.Given("n_twist", twist, Dimension.Frequency, isTwistKnown ? "lowest mode that twists it" : "the last mode looked at: it twists above");
            double apart = w.Given("apart", FrequencyRatio, Dimension.Number, "least ratio of the two");
            return (w.Let("n_least", apart * n_bend, Dimension.Frequency, source), n_twist);
        });
    }

    private (double Twist, bool IsTwistKnown, double Bend) Frequencies(ModalResponse modes)
    {
        double twist = modes.Modes[^1].Frequency.Hertz, bend = modes.First.Frequency.Hertz, most = LeastShare;
        bool isKnown = false;
        for (int k = 0; k < modes.Modes.Count; k++)
        {
            double frequency = modes.Modes[k].Frequency.Hertz, twisting = 0, bending = 0;
            for (int i = 0; i < plates.Length; i++)
            {
                SkinBand band = body.Bands[i];
                (Vector3D displacement, Vector3D rotation) = model.Motion(modes.Set.Shape(k), body.BandPlaces[i], body.BandPlaces[i].Center);
                double across = displacement.Dot(plates[i].Normal), about = rotation.Dot(body.Axes.Axes.Z);
                (twisting, bending) = (twisting + band.Inertia.ZZ * about * about, bending + band.Mass * across * across);
            }
            if (!isKnown && twisting > Math.Max(bending, LeastShare))
                (twist, isKnown) = (frequency, true);
            if (bending > Math.Max(twisting, most))
                (bend, most) = (frequency, bending);
        }
        return (twist, isKnown, bend);
    }
}
