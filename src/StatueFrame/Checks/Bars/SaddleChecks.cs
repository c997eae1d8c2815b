using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>Saddles: whether they hold by friction, and whether moving parts keep clear of the tower.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class SaddleChecks
{
    private static readonly Source slip = new("EN 1993-1-8:2005", "3.9.1, (3.6); friction by test for other surfaces");
    private static readonly Source gapRule = Source.Assumed("bars: clearance is the gap less the movement");

    /// <summary>The force along a clamped saddle against its friction: μ × clamping force × faces/γ_M3.</summary>
    /// <param name="force">Force along the saddle.</param>
    /// <param name="clamp">Clamping force, all bolts together, after losses.</param>
    /// <param name="friction">Coefficient of friction μ, above 0 to 1; by test.</param>
    /// <param name="faces">Faces that rub, 1 or 2.</param>
    /// <param name="gammaM3">Safety factor, 1 to 3.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is out of range.</exception>
    public static Check Slip(Force force, Force clamp, double friction, int faces = 1, double gammaM3 = 1.25, string where = "", string situation = "")
    {
        double F = Math.Abs(CheckInput.Finite(force.Newtons, nameof(force))), C = CheckInput.NotNegative(clamp.Newtons, nameof(clamp));
        CheckInput.Within(friction, 1e-3, 1, nameof(friction));
        CheckInput.Within(faces, 1, 2, nameof(faces));
        CheckInput.Within(gammaM3, 1, 3, nameof(gammaM3));
        return Check.Of(new CheckSubject("bars.saddle-slip", "slip of a clamped saddle", where, situation), Dimension.Force, slip, w =>
            (w.Given(F, Dimension.Force, "force along the saddle"), SlipResistance(w, C, friction, faces, gammaM3)));
    }

    /// <summary>
    /// The gap between a moving bar or skin and the tower against its movement, with a distance that must be left.
    /// </summary>
    /// <param name="gap">Free distance in the unloaded statue, as built.</param>
    /// <param name="movement">Movement towards the tower, zero or more.</param>
    /// <param name="reserve">What must be left, for tolerances, ice and dirt.</param>
    /// <param name="where">Where it is.</param>
    /// <param name="situation">Name of the situation.</param>
    /// <exception cref="ArgumentOutOfRangeException">An input is negative or not finite.</exception>
    public static Check Clearance(Length gap, Length movement, Length reserve, string where = "", string situation = "")
    {
        double g = CheckInput.NotNegative(gap.Meters, nameof(gap)), delta = CheckInput.NotNegative(movement.Meters, nameof(movement));
        double r = CheckInput.NotNegative(reserve.Meters, nameof(reserve));
        return Check.Of(new CheckSubject("bars.clearance", "clearance to the tower", where, situation), Dimension.SmallLength, gapRule, w =>
        {
            w.Given(delta, Dimension.SmallLength, "movement towards the tower");
            w.Given(r, Dimension.SmallLength, "reserve");
            double needed = w.Let("needed", delta + r, Dimension.SmallLength, gapRule);
            return (needed, w.Given(g, Dimension.SmallLength, "gap"));
        });
    }

    /// <summary>Friction that holds a saddle, N.</summary>
    internal static double SlipResistance(Working? w, double clamp, double mu, double faces, double gammaM3)
    {
        w.Given(clamp, Dimension.Force, "clamping force");
        w.Given(mu, Dimension.Number, "coefficient of friction");
        w.Given(faces, Dimension.Number, "faces that rub");
        w.Given(gammaM3, Dimension.Number);
        return w.Let("F_s", faces * mu * clamp / gammaM3, Dimension.Force, slip);
    }
}
