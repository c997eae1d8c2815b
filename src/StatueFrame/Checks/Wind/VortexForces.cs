using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>
/// Vortices as a force: where they come in step with a mode, all masses swing with its greatest amplitude while the mean wind of
/// the critical speed blows. Every part bears the inertia, whatever the limit on the amplitude.
/// </summary>
/// <remarks>Stateless; safe to use from many threads. Source: EN 1991-1-4:2005, E.1.4 (E.6), F_w = m(s)·(2π n)²·Φ(s)·y_F,max.</remarks>
internal static class VortexForces
{
    /// <summary>Modes that wind can excite are looked for among at least this many.</summary>
    private const int FewestModes = 20;

    /// <summary>Vortices that shake no part of the statue by more than this, m/s², are not felt beside the wind they come with.</summary>
    private const double LeastAcceleration = 0.02 * SelfWeight.Gravity;

    /// <summary>Load factor of a wind that is not one for strength: ASCE/SEI 7-05, 2.3.2, which 7-10 moved into the map's speeds.</summary>
    private const double NominalFactor = 1.6;

    /// <summary>What is taken of them in forces.</summary>
    public static Assumption Basis { get; } = new(
        "vortices in forces", "greatest amplitude of each mode, with the factor of the wind (1.6 times that of a wind for strength), beside the mean wind at the critical speed; modes that no vortices shake by 0.02 g left out", Source.En1991_1_4("E.1.4 (E.6); 1.6: ASCE/SEI 7-05, 2.3.2, from memory"));

    /// <summary>What vortices do in a wind, found once for all situations that have it.</summary>
    public static (ModalResponse Modes, AcrossWindReport Report) Find(StatueModel model, Criteria criteria, ModalResponse modes, WindAction wind, SheetWriter lists)
    {
        if (lists.Vortices.TryGetValue(wind, out (ModalResponse, AcrossWindReport) known))
            return known;
        AcrossWindInput input = criteria.AcrossWind ?? new AcrossWindInput();
        input = input with { Damping = input.Damping ?? criteria.Damping };
        bool canBeChecked = input.Damping is not null && (input.Sections.Count > 0 || model.Bodies.Any(body => body.Bands.Length == 0 && AcrossWindStrip.Of(model, body).Length > 0)) && modes.Modes.Count < FewestModes;
        ModalResponse many = canBeChecked ? model.Modes(FewestModes) : modes;
        return lists.Vortices[wind] = (many, AcrossWind.Of(model, many, wind, input, lists.WindOwners.GetValueOrDefault(wind, "")));
    }

    /// <summary>The modes that vortices shake in a situation of strength, each with the body that shakes it most.</summary>
    public static IEnumerable<ShakingWind> Of(StatueModel model, Situation situation, ModalResponse modes, AcrossWindReport report)
    {
        FactoredAction factored = situation.Wind!;
        var wind = (WindAction)factored.Action;
        // A wind for strength holds its load factor in its speed; the critical speed is that of a common wind.
        double factor = factored.Factor * (wind.Profile.IsForStrength ? NominalFactor : 1);
        foreach (IGrouping<int, AcrossWindCase> mode in report.Cases.Where(IsFelt).GroupBy(c => c.Mode.Number))
        {
            AcrossWindCase worst = mode.MaxBy(c => c.GreatestDisplacement.Meters)!;
            double amplitude = worst.ModalAmplitude(model, modes.Set);
            if (!(amplitude > 0))
                continue;
            WindProfile critical = new MeanPressureWind(wind.Profile.AtSpeed(worst.Vortex.CriticalSpeed / worst.Vortex.MeanSpeed));
            WindAction mean = wind with { Profile = critical, Sectors = [], Headings = [worst.VortexHeading], GustEffectFactor = 1, GustByBand = [], LatticeRule = wind.LatticeRuleInUse };
            Situation still = situation with { Actions = [.. situation.Actions.Select(a => a.Action is WindAction ? factor * mean : a)] };
            yield return new ShakingWind(
                still, new DynamicPeaks(model, new ModeShape(model, modes.Set, mode.Key - 1), CovariancePeaks.OfAmplitude(amplitude)), factor, Invariant($"vortices in mode {mode.Key}"));
        }
    }

    /// <summary>Whether vortices shake some part by more than is not felt beside the wind.</summary>
    internal static bool IsFelt(AcrossWindCase shaken) =>
        !shaken.Vortex.IsBeyondRange && Math.Pow(2 * Math.PI * shaken.Mode.Frequency.Hertz, 2) * shaken.GreatestDisplacement.Meters >= LeastAcceleration;
}
