using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Checks of a body in a mode against vortex resonance and galloping.</summary>
/// <remarks>Stateless; safe to use from many threads. Source: EN 1991-1-4:2005, Annex E.</remarks>
internal static class AcrossWindChecks
{
    internal static readonly Source VortexRange = Source.En1991_1_4("E.1.2 (2), (E.1)");
    internal static readonly Source VortexAmplitude = Source.En1991_1_4("E.1.5.2 and E.1.5.3, against the limit given");
    internal static readonly Source GallopingOnset = Source.En1991_1_4("E.2.2, (E.18) and (E.19)");

    /// <summary>
    /// Vortex resonance: passes when the critical speed is beyond 1.25 times the mean speed; otherwise the greatest
    /// amplitude anywhere on the statue against the user's limit, and not checked without one.
    /// </summary>
    /// <param name="body">The body in its mode.</param>
    /// <param name="limit">The greatest amplitude allowed; null for none given.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Vortex(AcrossWindCase body, Length? limit, string situation)
    {
        VortexResult r = body.Vortex;
        CheckSubject subject = VortexSubject(body.Where, situation);
        if (r.IsBeyondRange)
        {
            return Check.Of(subject, Dimension.Speed, VortexRange, w =>
            {
                w?.Note(Invariant($"Wind towards {body.VortexHeading.Degrees:0.#}°, strip {r.ReferenceStrip}: the critical speed is beyond the range that needs a check."));
                double v_crit = VortexShedding.CriticalSpeed(w, r.Width.Meters, r.Frequency.Hertz, r.Section.StrouhalNumber);
                double v_m = w.Given("v_m", r.MeanSpeed.MetersPerSecond, Dimension.Speed, "mean wind speed where the vortices are shed");
                double limit = w.Given("limit", VortexShedding.RangeFactor, Dimension.Number, "of the mean wind speed");
                return (w.Let("v_range", limit * v_m, Dimension.Speed, VortexRange), v_crit);
            });
        }
        if (!r.Converged)
            return Check.NotChecked(subject, "the correlation length did not settle; ask for specialist advice", VortexAmplitude);
        if (limit is not { } allowed)
        {
            return Check.NotChecked(subject, Invariant($"at {r.CriticalSpeed.MetersPerSecond:0.0} m/s vortices shake the statue by up to {body.GreatestDisplacement.Millimeters:0.0} mm; no limit on the amplitude was given"), VortexAmplitude);
        }
        double ratio = r.Amplitude.Meters > 0 ? body.GreatestDisplacement.Meters / r.Amplitude.Meters : 1;
        return Check.Of(subject, Dimension.SmallLength, VortexAmplitude, w =>
        {
            w?.Note(Invariant($"Wind towards {body.VortexHeading.Degrees:0.#}°, {r.Section.Name}, strip {r.ReferenceStrip}; Re = {r.ReynoldsNumber:0.0e0}, c_lat,0 = {r.BasicLateralCoefficient:0.00}, correlation length {r.CorrelationLength.Meters:0.0} m, {r.Cycles:0.0e0} cycles."));
            double b = r.Width.Meters, St = r.Section.StrouhalNumber;
            VortexShedding.CriticalSpeed(w, b, r.Frequency.Hertz, St);
            double Sc = VortexShedding.Scruton(w, r.LogDecrement, r.EquivalentMass.KilogramsPerMeter, r.AirDensity.KilogramsPerCubicMeter, b);
            double y_1 = VortexShedding.Amplitude(w, b, St, Sc, r.ModeFactor, r.CorrelationFactor, r.LateralCoefficient), y_max = y_1;
            if (r.Spectral is { } spectral)
            {
                double y_2 = SpectralVortices.Peak(w, b, St, Sc, spectral.AerodynamicConstant, spectral.AerodynamicDamping, spectral.HeightToWidth, r.AirDensity.KilogramsPerCubicMeter, r.EquivalentMass.KilogramsPerMeter).Amplitude;
                y_max = body.Input.Approach == VortexApproach.Both ? w.Let("y_max", Math.Max(y_1, y_2), Dimension.SmallLength, VortexAmplitude) : w.Let("y_max", y_2, Dimension.SmallLength, VortexAmplitude);
            }
            else
            {
                w.Let("y_max", y_1, Dimension.SmallLength, VortexAmplitude);
            }
            w.Given(ratio, Dimension.Number, "greatest displacement of the statue over that of this body");
            return (w.Let("y_statue", ratio * y_max, Dimension.SmallLength, meaning: "greatest amplitude anywhere"), allowed.Meters);
        });
    }

    /// <summary>
    /// Galloping: 1.25 times the mean speed against the onset speed. Not checked where galloping and vortices act on one
    /// another in speeds that occur.
    /// </summary>
    /// <param name="body">The body in its mode.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Galloping(AcrossWindCase body, string situation)
    {
        GallopingResult r = body.Galloping;
        CheckSubject subject = GallopingSubject(body.Where, situation);
        if (r.OnsetSpeed is null)
        {
            Check still = Check.Of(subject, Dimension.Number, GallopingOnset, w =>
            {
                w?.Note("A section whose factor of galloping instability is 0, as a round one without ice, does not gallop.");
                return (0, 1);
            });
            return body.Input.Strips.Any(strip => strip.Section.IsRound) ? still.Assuming("no ice on the round section") : still;
        }
        double vortexRange = VortexShedding.RangeFactor * r.MeanSpeed.MetersPerSecond;
        if (r.Interacts && r.VortexSpeed.MetersPerSecond <= vortexRange && r.OnsetSpeed.Value.MetersPerSecond > vortexRange)
            return Check.NotChecked(subject, Invariant($"galloping from {r.OnsetSpeed.Value.MetersPerSecond:0.0} m/s and vortices at {r.VortexSpeed.MetersPerSecond:0.0} m/s act on one another: specialist advice is needed"), Source.En1991_1_4("E.2.2 (3), (E.20)"));
        Check check = Check.Of(subject, Dimension.Speed, GallopingOnset, w =>
        {
            w?.Note(Invariant($"Wind towards {body.GallopingHeading.Degrees:0.#}°."));
            double b = r.Width.Meters, n = r.Frequency.Hertz;
            w.Given(b, Dimension.Length, "mean width, weighted with the square of the modal amplitude");
            w.Given(n, Dimension.Frequency, "natural frequency");
            double Sc = VortexShedding.Scruton(w, r.LogDecrement, r.EquivalentMass.KilogramsPerMeter, r.AirDensity.KilogramsPerCubicMeter, b);
            double v_CG = StatueFrame.Galloping.OnsetSpeed(w, Sc, r.GallopingFactor, n, b);
            double v_m = w.Given("v_m", r.MeanSpeed.MetersPerSecond, Dimension.Speed, "mean wind speed where the amplitude is greatest");
            double limit = w.Given("limit", VortexShedding.RangeFactor, Dimension.Number, "of the mean wind speed");
            return (w.Let("v_range", limit * v_m, Dimension.Speed, GallopingOnset), v_CG);
        });
        return r.AssumesFactor ? check.Assuming("factor of galloping instability 10 where it is not known") : check;
    }

    internal static CheckSubject VortexSubject(string where, string situation) => new("wind.vortex", "vortex resonance across the wind", where, situation);

    internal static CheckSubject GallopingSubject(string where, string situation) => new("wind.galloping", "galloping across the wind", where, situation);
}
