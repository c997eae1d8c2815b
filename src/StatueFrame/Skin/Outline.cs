namespace StatueFrame;

/// <summary>
/// The closed line in which a plane across the body's axis cuts the skin, in the body's local x and y. The fine relief
/// of folds, feathers or drapery is left out of it; a <see cref="SkinStation.FoldFactor"/> stands for its sheet area.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public abstract record Outline
{
    private protected Outline() { }

    /// <summary>The outline as a polygon, anticlockwise.</summary>
    internal abstract PlanCurve Curve();

    internal abstract void Validate(Validator v);

    private protected const double LeastWidth = 0.05, GreatestWidth = 100, GreatestOffset = 200;
}
