using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Vortex shedding and galloping of a statue: every body, trunk and limbs, in every mode, for horizontal winds from all
/// headings of the wind action and from the one straight across axis and motion.
/// </summary>
/// <remarks>Stateless; safe to use from many threads. Source: EN 1991-1-4:2005, Annex E, on the modes of the whole statue.</remarks>
public static class AcrossWind
{
    private static readonly Assumption greater = new("amplitude of vortex resonance", "the greater of approaches 1 and 2", Source.En1991_1_4("E.1.5.1"));
    private static readonly Assumption approach1 = new("amplitude of vortex resonance", "approach 1 alone, as 2 has no constants for the section or the mode", Source.En1991_1_4("E.1.5.3"));
    private static readonly Assumption smooth = new("negative damping of the air in vortex resonance", "K_a,max, as in smooth wind", Source.En1991_1_4("E.1.5.3, Table E.6"));

    /// <summary>Checks, results, assumptions and warnings of a statue across the wind.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes; those that wind can excite should be among them.</param>
    /// <param name="wind">The wind, whose mean speeds and headings are taken.</param>
    /// <param name="input">Damping, cross-sections, limits; null for none, then nothing is checked.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="InvalidStatueException">The wind or the input has problems; all of them are listed.</exception>
    public static AcrossWindReport Of(StatueModel model, ModalResponse modes, WindAction wind, AcrossWindInput? input, string situation)
    {
        var v = new Validator();
        wind.Validate(v.At(nameof(WindAction)));
        BodyModel[] skinned = [.. model.Bodies.Where(b => b.Bands.Length > 0)];
        input?.Validate(v.At(nameof(AcrossWindInput)), [.. skinned.Select(b => b.Name)]);
        v.ThrowIfAny();
        var checks = new List<Check>();
        BodyModel[] met = [.. model.Bodies.Where(body => AcrossWindStrip.Of(model, body).Length > 0)];
        if (input?.Damping is null || met.Length == 0)
        {
            Skip(checks, "", met.Length == 0 ? "nothing but lattices meets the wind" : "the structural damping is not given", situation);
            return new AcrossWindReport { Checks = checks.ToValueList() };
        }
        var bodies = new List<AcrossWindBody>();
        foreach (BodyModel body in met)
        {
            BodySection? section = input.Sections.FirstOrDefault(s => s.Body == body.Name);
            if (section is not null || body.Bands.Length == 0)
                bodies.Add(new AcrossWindBody(model, body, section, wind.Profile, input, modes.First.Frequency.Hertz));
            else
                Skip(checks, body.Name, "its cross-section is not given", situation);
        }
        AcrossWindCase[] cases = [.. bodies.SelectMany(body => CasesOf(body, modes, wind, input))];
        foreach (AcrossWindCase found in cases)
        {
            checks.Add(Resting(AcrossWindChecks.Vortex(found, input.AmplitudeLimit, situation), [.. input.Damping.Assumptions, .. OfAmplitude(found, input)]));
            checks.Add(Resting(AcrossWindChecks.Galloping(found, situation), [.. input.Damping.Assumptions]));
        }
        foreach (AcrossWindBody body in bodies)
        {
            if (body.RatioOutside is { } ratio)
                Skip(checks, body.Body.Name, Invariant($"depth to width {ratio:0.000} is outside 0.5 to 10 of Figure E.1 in some headings, which are left out"), situation);
            double last = Math.Min(input.CutOff?.Hertz ?? VortexInput.GreatestFrequency, modes.Modes[^1].Frequency.Hertz);
            if (body.LeastSpeedRatio(last) <= 1)
                checks.Add(Check.NotChecked(AcrossWindChecks.VortexSubject($"{body.Body.Name}, higher modes", situation), Invariant($"modes above {last:0.0} Hz are not looked at, and speeds that occur can still excite them"), AcrossWindChecks.VortexRange));
        }
        return new AcrossWindReport
        {
            Cases = cases.ToValueList(),
            Checks = checks.ToValueList(),
            Results = cases.GroupBy(c => c.Body).Select(group => Line(group.MaxBy(c => c.Vortex.Amplitude)!, situation)).ToValueList(),
            Assumptions = Assumptions(input, cases).ToValueList(),
            Warnings = AcrossWindWarnings.Of(model, bodies, input.Sections).ToValueList(),
        };
    }

    private static IEnumerable<AcrossWindCase> CasesOf(AcrossWindBody body, ModalResponse modes, WindAction wind, AcrossWindInput input)
    {
        for (int i = 0; i < modes.Modes.Count; i++)
        {
            ModeResult mode = modes.Modes[i];
            if (!(mode.Frequency.Hertz > input.CutOff?.Hertz) && body.In(mode, modes.Set.Shape(i), wind.Headings.AsSpan()) is { } found)
                yield return found;
        }
    }

    private static void Skip(List<Check> checks, string where, string reason, string situation)
    {
        checks.Add(Check.NotChecked(AcrossWindChecks.VortexSubject(where, situation), reason, AcrossWindChecks.VortexRange));
        checks.Add(Check.NotChecked(AcrossWindChecks.GallopingSubject(where, situation), reason, AcrossWindChecks.GallopingOnset));
    }

    private static Check Resting(Check check, Assumption[] on) => check.Verdict == Verdict.NotChecked ? check : check.Assuming(Array.ConvertAll(on, assumed => assumed.Short));

    /// <summary>What the amplitude of a case rests on, by the approaches that hold for it.</summary>
    private static IEnumerable<Assumption> OfAmplitude(AcrossWindCase found, AcrossWindInput given)
    {
        if (found.Vortex.IsBeyondRange || found.Input.Approach == VortexApproach.VortexResonance)
            yield break;
        if (found.Vortex.Spectral is null)
        {
            yield return approach1;
            yield break;
        }
        if (found.Input.Approach == VortexApproach.Both)
            yield return greater;
        if (given.TurbulenceReduction is null)
            yield return smooth;
    }

    private static ResultLine Line(AcrossWindCase worst, string situation) => new(
        situation, $"vortex amplitude of {worst.Body}", worst.Vortex.Amplitude.Meters, Dimension.SmallLength,
        Invariant($"mode {worst.Mode.Number}, critical at {worst.Vortex.CriticalSpeed.MetersPerSecond:0.0} m/s, Sc {worst.Vortex.ScrutonNumber:0}, {worst.Vortex.Cycles:0.0e0} cycles"));

    private static IEnumerable<Assumption> Assumptions(AcrossWindInput input, AcrossWindCase[] cases)
    {
        foreach (Assumption assumption in input.Damping!.Assumptions.Concat(cases.SelectMany(found => OfAmplitude(found, input))).Distinct())
            yield return assumption;
        if (input.LifeYears is null)
            yield return new Assumption("life for cycles of vortex vibration", "50 years", Source.En1990("Table 2.1, category 4"));
        if (input.BandwidthFactor is null)
            yield return new Assumption("bandwidth factor of vortex vibration", "0.3", Source.En1991_1_4("E.1.5.2.6"));
        yield return new Assumption("speed v₀ of the wind's distribution", "a fifth of the mean speed", Source.En1991_1_4("E.1.5.2.6"));
        yield return new Assumption("wind aslant to a limb", "its part across the axis acts", Source.Assumed("across-wind"));
        yield return new Assumption("width where vortices are shed", "each band in turn, the worst counts", Source.Assumed("across-wind"));
    }
}
