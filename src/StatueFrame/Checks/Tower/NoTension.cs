using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>
/// The stress in a section that takes no tension: linear across the part that is pressed, nothing where the section has
/// cracked. Solved for a force at any place in the plan, about both axes at once.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class NoTension
{
    /// <summary>
    /// The stress of a section under a compressive force and two moments. Within the kern it is N/A ± M/W; for a solid
    /// rectangle cracked about one axis it is 2N/(3 b (h/2 − e)).
    /// </summary>
    /// <param name="section">The section.</param>
    /// <param name="compression">The force, positive as compression.</param>
    /// <param name="momentX">Moment on the section about x, right-handed: positive presses the side of −y.</param>
    /// <param name="momentY">Moment on the section about y, right-handed: positive presses the side of +x.</param>
    /// <returns>Null when the force is not compressive, or when it acts outside the section: nothing balances it.</returns>
    /// <exception cref="ArgumentException">An input is not finite, or the section is not valid.</exception>
    public static NoTensionStress? Solve(BlockSection section, Force compression, Torque momentX, Torque momentY)
    {
        ArgumentNullException.ThrowIfNull(section);
        var v = new Validator();
        section.Validate(v);
        v.ThrowIfAny();
        double N = CheckInput.Finite(compression.Newtons, nameof(compression));
        double mx = CheckInput.Finite(momentY.NewtonMeters, nameof(momentY)), my = -CheckInput.Finite(momentX.NewtonMeters, nameof(momentX));
        PlanArea plan = section.Plan;
        return Solve(plan, N, mx, my) is { } plane ? new NoTensionStress(plane, plan.Whole.A) : null;
    }

    /// <summary>
    /// How far the thrust has moved through the kern: 1 where the far edge just loses its compression, above 1 when the
    /// section cracks. For a solid rectangle it is 6|e_x|/b + 6|e_y|/h, the middle third; for a solid circle 8e/d.
    /// </summary>
    /// <param name="section">The section.</param>
    /// <param name="eccentricityX">Place of the thrust along x.</param>
    /// <param name="eccentricityY">Place of the thrust along y.</param>
    public static double KernUse(BlockSection section, Length eccentricityX, Length eccentricityY)
    {
        ArgumentNullException.ThrowIfNull(section);
        return KernUse(section.Plan, CheckInput.Finite(eccentricityX.Meters, nameof(eccentricityX)), CheckInput.Finite(eccentricityY.Meters, nameof(eccentricityY)));
    }

    /// <summary>
    /// The greatest part of a section on which an even stress can balance a thrust: the part beyond the straight line for
    /// which its centroid lies at the thrust. For a solid rectangle about one axis it is b (h − 2e).
    /// </summary>
    /// <param name="section">The section.</param>
    /// <param name="eccentricityX">Place of the thrust along x.</param>
    /// <param name="eccentricityY">Place of the thrust along y.</param>
    /// <returns>Zero when the thrust acts outside the section.</returns>
    public static Area PlasticArea(BlockSection section, Length eccentricityX, Length eccentricityY)
    {
        ArgumentNullException.ThrowIfNull(section);
        return Area.FromSquareMeters(PlasticBlock.AreaOf(
            section.Plan, CheckInput.Finite(eccentricityX.Meters, nameof(eccentricityX)), CheckInput.Finite(eccentricityY.Meters, nameof(eccentricityY))));
    }

    internal static ContactPlane? Solve(PlanArea plan, double N, double mx, double my) =>
        N > 0 && plan.Gauge(mx / N, my / N) < 1 ? ContactPlane.Solve(plan, 1, [], N, mx, my) : null;

    /// <summary>A (|e_x, e_y| projected on the far side)/I about a centroid at the origin.</summary>
    internal static double KernUse(PlanArea plan, double ex, double ey)
    {
        PlanMoments m = plan.Whole;
        return m.A * plan.Reach(-ex / m.XX, -ey / m.YY);
    }
}
