using StatueFrame.Analysis;

namespace StatueFrame.Checks;

/// <summary>Check sheets from a model that is already built.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class StatueModelChecks
{
    /// <summary>The check sheet of a statue in a number of situations.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check.</param>
    /// <exception cref="InvalidStatueException">A situation or the criteria have problems; all of them are listed.</exception>
    public static CheckSheet Check(this StatueModel model, Criteria criteria, params ReadOnlySpan<Situation> situations)
    {
        ArgumentNullException.ThrowIfNull(criteria);
        var v = new Validator();
        StatueSheet.Validate(v, model.Statue, criteria, situations);
        v.ThrowIfAny();
        return StatueSheet.Of(model, criteria, situations);
    }
}
