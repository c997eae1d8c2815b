using StatueFrame.Analysis;

namespace StatueFrame.Studies;

/// <summary>Fits a statue's model to what was measured on site.</summary>
/// <remarks>Stateless; safe to use from many threads. The method is that of <see cref="ModelFit"/>.</remarks>
public static class StatueFit
{
    /// <summary>Finds the best fit.</summary>
    /// <param name="statue">The statue as described.</param>
    /// <param name="adjustments">What may be adjusted; at least one.</param>
    /// <param name="measurements">What was measured; at least one.</param>
    /// <param name="options">For cancellation; null for none.</param>
    /// <exception cref="ArgumentException">A list is empty, or a range is wrong.</exception>
    /// <exception cref="ArithmeticException">The model cannot be built at the start or beside the fit.</exception>
    public static CalibrationResult Of(Statue statue, IReadOnlyList<StatueAdjustment> adjustments, IReadOnlyList<SiteMeasurement> measurements, StudyOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(statue);
        Measured[] measured = [.. measurements.SelectMany(m => m.Values)];
        return ModelFit.Of([.. adjustments.Select(a => a.Number)], measured, Values, options);

        double[] Values(IReadOnlyList<double> p)
        {
            StatueModel model;
            try
            {
                model = StatueModel.Build(Adjusted(statue, adjustments, p));
            }
            catch (InvalidStatueException)
            {
                return [.. Enumerable.Repeat(double.NaN, measured.Length)];
            }
            return [.. measurements.SelectMany(m => m.In(model))];
        }
    }

    /// <summary>The statue with adjusted numbers, as with those of a fit.</summary>
    /// <param name="statue">The statue as described.</param>
    /// <param name="adjustments">What is adjusted.</param>
    /// <param name="values">The numbers, in their order.</param>
    public static Statue Adjusted(Statue statue, IReadOnlyList<StatueAdjustment> adjustments, IReadOnlyList<double> values)
    {
        for (int i = 0; i < adjustments.Count; i++)
            statue = adjustments[i].Change(statue, values[i]);
        return statue;
    }
}
