using StatueFrame.Analysis;
using static System.FormattableString;

namespace StatueFrame.Checks;

/// <summary>Checks of the statue as a whole against second-order effects.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class StabilityChecks
{
    private static readonly Source Limit = Source.En1993_1_1("5.2.1 (3)");

    /// <summary>The loads against those at which the statue buckles.</summary>
    /// <param name="stability">Second-order effects of the governing load case.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check Buckling(Stability stability, string situation)
    {
        CheckSubject subject = Catalogue.Find("stability.buckling")!.Subject(situation: situation);
        if (stability.IsLost)
            return Check.NotChecked(subject, Stability.Lost, Limit);
        double alpha_cr = stability.BucklingFactor ?? (stability.Amplification is null ? 1e-9 : Stability.GreatestFactor);
        return Check.Of(subject, Dimension.Number, Limit, w => (w.Given("load", 1, Dimension.Number, "the loads"), w.Given(alpha_cr, Dimension.Number, "times the loads it buckles")));
    }

    /// <summary>The buckling factor against the least at which forces without second-order effects are good enough.</summary>
    /// <param name="stability">Second-order effects of the governing load case.</param>
    /// <param name="least">The least factor; 10 in EN 1993-1-1 for elastic analysis.</param>
    /// <param name="situation">Name of the situation.</param>
    public static Check SecondOrder(Stability stability, double least, string situation)
    {
        var subject = new CheckSubject("stability.second-order", "buckling factor of the whole statue", Situation: situation);
        if (stability.IsLost)
            return Check.NotChecked(subject, Stability.Lost, Limit);
        double alpha_cr = stability.BucklingFactor ?? (stability.Amplification is null ? 1 : Stability.GreatestFactor);
        return Check.Of(subject, Dimension.Number, Limit, w =>
        {
            w?.Note(stability.BucklingFactor is null ? Invariant($"The statue does not buckle below {Stability.GreatestFactor:0} times the loads.") : "The loads times the factor make the statue buckle.");
            w.Given(alpha_cr, Dimension.Number, "buckling factor");
            w.Given(least, Dimension.Number, "least factor");
            return (least, alpha_cr);
        });
    }
}
