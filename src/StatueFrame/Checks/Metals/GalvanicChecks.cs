namespace StatueFrame.Checks;

/// <summary>Unlike metals in contact: whether they must be kept apart in the air they are in, and whether they are.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class GalvanicChecks
{
    /// <summary>A noble part this much smaller than the base part is let touch it one grade more freely.</summary>
    private const double SmallNobleArea = 0.1;

    private static readonly Source Rule = new("common practice of anodic indices", "0.15, 0.25, 0.50 V; no standard");

    /// <summary>
    /// The difference of the anodic indices of two metals against what the surroundings allow. What breaks the contact leaves no
    /// difference; lead makes it two contacts, each metal with lead; paint counts outside harsh surroundings only.
    /// </summary>
    /// <remarks>
    /// Where the nobler metal's wetted area is at most a tenth of the other's, the limit of the next milder surroundings
    /// holds. A difference above the limit is not checked, rather than passed or failed, when the isolation is not known.
    /// </remarks>
    /// <param name="where">The joint, as in "saddles of the trunk".</param>
    /// <param name="first">One metal.</param>
    /// <param name="second">The other.</param>
    /// <param name="environment">The surroundings.</param>
    /// <param name="isolation">What is between them; null when it is not known.</param>
    /// <param name="nobleOverBase">Wetted area of the nobler metal over that of the other, above zero; null when not known.</param>
    public static Check Contact(
        string where, MetalFamily first, MetalFamily second, GalvanicEnvironment environment, Isolation? isolation = null, double? nobleOverBase = null)
    {
        if (nobleOverBase is { } ratio)
            CheckInput.Positive(ratio, nameof(nobleOverBase));
        var subject = new CheckSubject("metals.galvanic", "unlike metals in contact", where);
        double allowed = Allowed(environment, nobleOverBase);
        if (isolation is null && Difference(first, second) > allowed)
        {
            return Check.NotChecked(
                subject, FormattableString.Invariant($"{first.Describe()} and {second.Describe()} differ by {Difference(first, second):0.00} V, more than {allowed:0.00} V: they need isolation, and whether there is any is not described"), Rule);
        }
        return Check.Of(subject, Dimension.Potential, Rule, w =>
        {
            if (first == second || Breaks(isolation, environment))
            {
                w?.Note(first == second ? "The metals are alike." : $"{isolation} breaks the contact.");
                return (0, allowed);
            }
            double difference = isolation == Isolation.Lead
                ? Math.Max(Told(w, first, MetalFamily.Lead), Told(w, second, MetalFamily.Lead))
                : Told(w, first, second);
            if (isolation == Isolation.Paint)
                w?.Note("Paint wears through in harsh surroundings and does not count.");
            if (nobleOverBase is { } r)
            {
                w.Given(r, Dimension.Number, "wetted area of the nobler metal over that of the other");
                w.Let("acceleration", 1 + r, Dimension.Number, meaning: "of the less noble metal's loss, catchment-area rule");
                if (r <= SmallNobleArea && isolation != Isolation.Lead)
                    w?.Note("The nobler part is small: the limit of the next milder surroundings holds.");
            }
            return (difference, isolation == Isolation.Lead ? GalvanicSeries.Allowed(environment) : allowed);
        });
    }

    /// <summary>Whether two metals need to be kept apart.</summary>
    /// <param name="first">One metal.</param>
    /// <param name="second">The other.</param>
    /// <param name="environment">The surroundings.</param>
    /// <param name="nobleOverBase">Wetted area of the nobler metal over that of the other; null when not known.</param>
    public static bool NeedsIsolation(MetalFamily first, MetalFamily second, GalvanicEnvironment environment, double? nobleOverBase = null) =>
        Difference(first, second) > Allowed(environment, nobleOverBase);

    /// <summary>Whether what is between two metals breaks the contact in some surroundings.</summary>
    /// <param name="isolation">What is between them; null for nothing known.</param>
    /// <param name="environment">The surroundings.</param>
    public static bool Breaks(Isolation? isolation, GalvanicEnvironment environment) =>
        isolation is Isolation.Ptfe or Isolation.Neoprene or Isolation.PolymerSleeve
        || (isolation == Isolation.Paint && environment != GalvanicEnvironment.Harsh);

    /// <summary>Difference of the indices of two metals, without the rounding of their decimals.</summary>
    private static double Difference(MetalFamily first, MetalFamily second) =>
        Math.Round(Math.Abs(GalvanicSeries.AnodicIndex(first) - GalvanicSeries.AnodicIndex(second)), 6);

    private static double Allowed(GalvanicEnvironment environment, double? nobleOverBase) =>
        GalvanicSeries.Allowed(nobleOverBase <= SmallNobleArea && environment != GalvanicEnvironment.Controlled ? environment - 1 : environment);

    private static double Told(Working? w, MetalFamily first, MetalFamily second)
    {
        double E_1 = w.Given("E_1", GalvanicSeries.AnodicIndex(first), Dimension.Potential, first.Describe(), GalvanicSeries.Source);
        double E_2 = w.Given("E_2", GalvanicSeries.AnodicIndex(second), Dimension.Potential, second.Describe(), GalvanicSeries.Source);
        w.Let("delta_E", Math.Abs(E_1 - E_2), Dimension.Potential);
        return Difference(first, second);
    }
}
