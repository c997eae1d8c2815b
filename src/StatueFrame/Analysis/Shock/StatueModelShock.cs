namespace StatueFrame.Analysis;

/// <summary>Responses in time from a model that is already built.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class StatueModelShock
{
    /// <summary>What a shock does to the statue as it stands under its own weight.</summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="shock">The shock, with the factor 1.</param>
    /// <param name="damping">Damping of all modes.</param>
    /// <param name="options">Defaults when null.</param>
    /// <exception cref="InvalidStatueException">As in <see cref="ShockResponse"/>.</exception>
    public static ShockResponse Respond(this StatueModel model, ShockAction shock, DampingModel damping, ShockOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(shock);
        ArgumentNullException.ThrowIfNull(damping);
        return ShockResponse.Of(model, new Situation { Name = shock.Name ?? "", Actions = [new SelfWeight(), shock] }, damping, options);
    }
}
