namespace StatueFrame.Checks;

/// <summary>The wind of a load case on the pedestal, which comes down below the statue: on every course the part above the ground.</summary>
/// <remarks>Stateless; safe to use from many threads. Source: EN 1991-1-4:2005, 5.3, Table 7.1: +0.8 in front, −0.5 behind a block as high as deep.</remarks>
internal static class PedestalWind
{
    private const double Coefficient = 1.3;

    /// <summary>What is taken of it.</summary>
    public static Assumption Basis { get; } = new("force coefficient of the pedestal", "1.3", Source.En1991_1_4("7.2.2, Table 7.1: 0.8 + 0.5, from memory"));

    /// <summary>What acts in a plane under some courses, with the wind on them.</summary>
    /// <param name="load">What acts there without it.</param>
    /// <param name="statue">The statue.</param>
    /// <param name="state">The state, with its heading and its wind.</param>
    /// <param name="courses">How many courses lie above the plane.</param>
    /// <param name="depth">How far the plane is below the tower's base, m.</param>
    public static BaseLoad On(BaseLoad load, Statue statue, in BaseState state, int courses, double depth)
    {
        if (state.Case is not { Heading: { } heading, Wind: { Action: WindAction wind, Factor: var factor } } || statue.Pedestal is not { } pedestal)
            return load;
        (double sin, double cos) = Math.SinCos(heading.Radians);
        double ground = statue.BaseAboveGround.Meters, G = wind.GustByBand.Count > 0 ? wind.GustByBand[0] : wind.GustFactorInUse, top = 0;
        for (int i = 0; i < courses; i++)
        {
            PedestalCourse course = pedestal.Courses[i];
            // Heights below the tower's base; what is in the ground is out of the wind.
            double bottom = Math.Min(top + course.Height.Meters, ground), height = bottom - top;
            if (height <= 0)
                break;
            (double X, double Y) widths = course.Section.Widths;
            double width = course.Section.IsRound ? widths.X : widths.X * Math.Abs(sin) + widths.Y * Math.Abs(cos), middle = 0.5 * (top + bottom);
            double force = factor * G * Coefficient * wind.Profile.PeakPressureSi(ground - (wind.Profile.IsReadAtTop ? top : middle)) * width * height, lever = depth - middle;
            load = load with { Vx = load.Vx + force * cos, Vy = load.Vy + force * sin, mx = load.mx + lever * force * cos, my = load.my + lever * force * sin };
            top += course.Height.Meters;
        }
        return load;
    }
}
