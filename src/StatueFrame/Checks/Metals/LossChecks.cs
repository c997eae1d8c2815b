namespace StatueFrame.Checks;

/// <summary>What corrosion takes from a thickness in the design life.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class LossChecks
{
    /// <summary>The loss from all faces against the part of the thickness that may go.</summary>
    /// <param name="where">The part, as in "skin of the trunk".</param>
    /// <param name="thickness">Its thickness as described, m; above zero.</param>
    /// <param name="loss">Loss of all its faces together to the end of the design life, m; zero or more.</param>
    /// <param name="fraction">Greatest loss over thickness, above 0 to 1.</param>
    /// <param name="years">The design life, years; for the working.</param>
    public static Check Thickness(string where, double thickness, double loss, double fraction, double years)
    {
        CheckInput.Positive(thickness, nameof(thickness));
        CheckInput.NotNegative(loss, nameof(loss));
        CheckInput.Within(fraction, 1e-9, 1, nameof(fraction));
        return Check.Of(Subject(where), Dimension.SmallLength, CorrosionLaw.Source, w =>
        {
            double t = w.Given("t", thickness, Dimension.SmallLength, "thickness as described");
            double k = w.Given("k", fraction, Dimension.Number, "part that may go");
            w?.Note(FormattableString.Invariant($"Losses of all faces to the age of {years:0.#} years, D = r t^b on each, at a steady rate after 20 years."));
            double D = w.Given("D", loss, Dimension.SmallLength, "loss of all faces together");
            w.Let("t_left", Math.Max(0, t - D), Dimension.SmallLength, meaning: "thickness left");
            return (D, w.Let("D_max", k * t, Dimension.SmallLength));
        });
    }

    internal static CheckSubject Subject(string where) => new("metals.loss", "loss of thickness in the design life", where);
}
