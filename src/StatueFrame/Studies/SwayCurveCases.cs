using StatueFrame.Analysis;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>
/// The load cases of a sway curve at any ratio of the design speed. A linear model is solved once: the calm, and for each
/// heading the design gust and the design mean wind, which grow with the square of the ratio. With tension-only bracing
/// every case is solved anew.
/// </summary>
/// <remarks>Immutable and safe to share between threads, if the dynamics are.</remarks>
internal sealed class SwayCurveCases
{
    private readonly StatueModel model;
    private readonly WindAction design;
    private readonly SwayCurveOptions options;
    private readonly Angle[] headings;
    private readonly LoadCase calm;
    private readonly IReadOnlyList<LoadCase> gust, mean;
    private readonly double leastRatio;

    public SwayCurveCases(StatueModel model, WindAction design, SwayCurveOptions options)
    {
        (this.model, this.options) = (model, options);
        // The curve asks what a measured speed does, whichever way it blows; with dynamics, one factor found anew at every speed takes the place of those by band.
        this.design = design = design with { Sectors = [], GustByBand = options.Dynamics is null ? design.GustByBand : [] };
        headings = options.Heading is { } one ? [one] : [.. design.Headings];
        calm = Respond(options.Calm).Cases[0];
        // The drag of round members follows the Reynolds number, and slack braces follow the load: then every speed is solved anew.
        bool scales = !model.HasTensionOnly && !model.BareSlices.Any(slice => slice.HasShape);
        gust = scales ? Respond([design with { Headings = headings.ToValueList() }]).Cases : [];
        mean = scales ? Respond([MeanOf(design) with { Headings = headings.ToValueList() }]).Cases : [];
        leastRatio = LeastRatio(design.Profile);
    }

    public int HeadingCount => headings.Length;

    public Angle Heading(int i) => headings[i];

    /// <summary>Weight and gust at a ratio of the design speed.</summary>
    public CombinedCase Gust(int heading, double ratio, SwayDynamics? dynamics)
    {
        if (ratio == 0)
            return new CombinedCase(model, calm, null, 0);
        double factor = (dynamics?.GustFactor ?? design.GustFactorInUse) / design.GustFactorInUse;
        return gust.Count > 0
            ? new CombinedCase(model, calm, gust[heading], ratio * ratio * factor)
            : Solved(design, heading, ratio, factor);
    }

    /// <summary>Weight and mean wind at a ratio of the design speed.</summary>
    public CombinedCase Mean(int heading, double ratio)
    {
        if (ratio == 0)
            return new CombinedCase(model, calm, null, 0);
        return mean.Count > 0
            ? new CombinedCase(model, calm, mean[heading], ratio * ratio)
            : Solved(MeanOf(design), heading, ratio, 1);
    }

    /// <summary>
    /// The dynamics at a ratio of the design speed; null when there are none. Below the lowest speed that the profile
    /// takes, the gust factor is held and accelerations fall with the square of the speed, which is safe: they fall faster.
    /// </summary>
    public SwayDynamics? Dynamics(int heading, double ratio)
    {
        if (options.Dynamics is null)
            return null;
        double asked = Math.Max(ratio, leastRatio);
        WindAction wind = design with { Profile = design.Profile.AtSpeed(asked), Headings = [headings[heading]] };
        SwayDynamics found = options.Dynamics.At(wind, headings[heading]);
        Require(found);
        double scale = ratio * ratio / (asked * asked);
        return scale == 1 ? found : found with
        {
            Points = found.Points.Select(p => p with { Rms = scale * p.Rms, Peak = scale * p.Peak }).ToValueList(),
        };
    }

    private CombinedCase Solved(WindAction wind, int heading, double ratio, double factor)
    {
        WindAction part = wind with { Profile = wind.Profile.AtSpeed(ratio), Headings = [headings[heading]] };
        var situation = new Situation { Name = "wind", Actions = [.. options.Calm, factor * part] };
        return new CombinedCase(model, new Response(model, situation).Cases[0], null, 0);
    }

    private Response Respond(ValueList<FactoredAction> actions) => model.Respond(new Situation { Name = "wind", Actions = actions });

    private static WindAction MeanOf(WindAction wind) => wind with
    {
        Profile = new MeanPressureWind(wind.Profile),
        GustEffectFactor = 1,
        GustByBand = [],
        LatticeRule = wind.LatticeRuleInUse,
    };

    /// <summary>The least ratio of the design speed at which a profile is still valid.</summary>
    private static double LeastRatio(WindProfile profile)
    {
        (double bad, double good) = (0, 1);
        for (int i = 0; i < 30; i++)
        {
            double middle = 0.5 * (bad + good);
            var v = new Validator();
            profile.AtSpeed(middle).Validate(v);
            if (v.Problems.Count == 0)
                good = middle;
            else
                bad = middle;
        }
        return good;
    }

    private void Require(SwayDynamics found)
    {
        bool good = found is not null && found.GustFactor is null or (> 0 and <= 10)
            && found.Points.All(p => IsGood(p.Rms) && IsGood(p.Peak));
        if (!good)
            throw new InvalidOperationException($"The dynamics \"{options.Dynamics!.Title}\" gave a gust factor or an acceleration that is negative, not finite or too great.");

        static bool IsGood(Acceleration a) => double.IsFinite(a.MetersPerSecondSquared) && a.MetersPerSecondSquared >= 0;
    }
}
