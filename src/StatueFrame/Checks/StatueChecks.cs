using StatueFrame.Analysis;
using StatueFrame.Checks;

namespace StatueFrame;

/// <summary>The check sheet of a statue: the main job.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class StatueChecks
{
    /// <summary>
    /// Builds the model, finds masses, modes and the response to each situation, and checks them. To work on with the same
    /// numbers, build a <see cref="StatueModel"/> instead.
    /// </summary>
    /// <param name="statue">The statue.</param>
    /// <param name="criteria">What is enough.</param>
    /// <param name="situations">The situations to check; at least one.</param>
    /// <exception cref="InvalidStatueException">
    /// The statue, the criteria or the situations have problems, all of which are listed; or a part is loose, and the
    /// message names the level or band and its direction. An unexpected error before any check is told in the same way, with
    /// the error as inner exception; one in a check leaves the sheet whole but for that check (<see cref="Check.Error"/>).
    /// </exception>
    public static CheckSheet Check(this Statue statue, Criteria criteria, params ReadOnlySpan<Situation> situations)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        var v = new Validator();
        statue.Validate(v);
        StatueSheet.Validate(v, statue, criteria, situations);
        v.ThrowIfAny();
        try
        {
            return StatueSheet.Of(ModelBuilder.BuildValid(statue), criteria, situations);
        }
        catch (Exception e) when (InternalError.Is(e))
        {
            throw InternalError.AsProblem(e);
        }
    }

    /// <summary>
    /// The same from what acts by itself: the basis of design makes every situation that its code asks for, and the sheet names
    /// them. This is the usual way; situations written by hand leave out what nobody thought of.
    /// </summary>
    /// <param name="statue">The statue.</param>
    /// <param name="criteria">What is enough, and the basis of design.</param>
    /// <param name="actions">What acts, at its characteristic values.</param>
    /// <exception cref="InvalidStatueException">As of the other; or the actions have problems or do not belong to the basis.</exception>
    public static CheckSheet Check(this Statue statue, Criteria criteria, CharacteristicActions actions)
    {
        ArgumentNullException.ThrowIfNull(statue);
        ArgumentNullException.ThrowIfNull(criteria);
        ArgumentNullException.ThrowIfNull(actions);
        var v = new Validator();
        statue.Validate(v);
        if (v.Required(criteria.Basis) is { } basis)
            basis.Validate(v, actions);
        v.ThrowIfAny();
        return statue.Check(criteria, criteria.Basis.Combine(actions).AsSpan());
    }

    /// <summary>The check sheet from a model that is already built.</summary>
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
        try
        {
            return StatueSheet.Of(model, criteria, situations);
        }
        catch (Exception e) when (InternalError.Is(e))
        {
            throw InternalError.AsProblem(e);
        }
    }
}
