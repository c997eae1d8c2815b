using UnitsNet;

namespace StatueFrame;

/// <summary>
/// Force coefficients that vary with the wind's heading, as a wind-tunnel test gives them: straight lines between the
/// rows, and from the last row on round to the first.
/// </summary>
/// <remarks>
/// The coefficients are on the area of a band projected on the plane across that wind, or on <see cref="ReferenceArea"/>. Moments that
/// overturn are those of the forces at the pressure center of each band. Immutable and safe to share between threads.
/// </remarks>
public sealed record ForceCoefficientTable
{
    private const double Turn = 2 * Math.PI;

    /// <summary>What the wind must push a body with at some heading.</summary>
    private const double LeastDrag = 0.05;

    /// <summary>The rows, at least two, headings ascending within one turn; the first heading is not repeated at its end.</summary>
    public required ValueList<ForceCoefficientRow> Rows { get; init; }

    /// <summary>Where the values come from, as in <c>new Source("wind-tunnel test, report 12", "Table 3")</c>.</summary>
    public required Source Source { get; init; }

    /// <summary>The area of each band that the coefficients are on, whatever the heading; null for the projected area.</summary>
    public Area? ReferenceArea { get; init; }

    /// <summary>The width that coefficients of twist are on, whatever the heading; null for the projected width.</summary>
    public Length? ReferenceWidth { get; init; }

    /// <summary>True when the table has a force across the wind.</summary>
    public bool HasAcross => Rows.Count > 0 && Rows[0].Across is not null;

    /// <summary>The coefficients along and across the wind at a heading.</summary>
    /// <param name="heading">Any heading.</param>
    /// <returns>Force coefficients along the wind, and across it to the left; the latter is 0 in a table without.</returns>
    /// <exception cref="InvalidStatueException">The table has problems; all of them are listed.</exception>
    public (double Along, double Across) At(Angle heading)
    {
        var v = new Validator();
        Validate(v);
        v.ThrowIfAny();
        return At(heading.Radians);
    }

    /// <summary>The coefficients of a valid table at a heading in radians.</summary>
    internal (double Along, double Across) At(double heading)
    {
        (double along, double? across, _, _) = RowAt(heading);
        return (along, across ?? 0);
    }

    /// <summary>What the wind of a heading in radians makes of a band.</summary>
    /// <param name="heading">The heading.</param>
    /// <param name="area">Its projected area, m².</param>
    /// <param name="width">Its projected width, m.</param>
    internal WindAreas At(double heading, double area, double width)
    {
        (double along, double? across, double? up, double? twist) = RowAt(heading);
        double A = ReferenceArea?.SquareMeters ?? area;
        return new WindAreas(along * A, (across ?? 0) * A, (up ?? 0) * A, (twist ?? 0) * A * (ReferenceWidth?.Meters ?? width), up is not null);
    }

    private (double Along, double? Across, double? Up, double? Twist) RowAt(double heading)
    {
        double first = Rows[0].Heading.Radians;
        double x = (heading - first) % Turn;
        if (x < 0)
            x += Turn;
        int next = 1;
        while (next < Rows.Count && Rows[next].Heading.Radians - first <= x)
            next++;
        double begin = Rows[next - 1].Heading.Radians - first;
        double end = next < Rows.Count ? Rows[next].Heading.Radians - first : Turn;
        (ForceCoefficientRow a, ForceCoefficientRow b) = (Rows[next - 1], Rows[next % Rows.Count]);
        double t = (x - begin) / (end - begin);
        return (double.Lerp(a.Along, b.Along, t), Between(a.Across, b.Across), Between(a.Up, b.Up), Between(a.Twist, b.Twist));

        double? Between(double? from, double? to) => from is { } x1 && to is { } x2 ? double.Lerp(x1, x2, t) : null;
    }

    internal void Validate(Validator v)
    {
        v.Named(Source?.Document, nameof(Source));
        if (v.Required(Rows) is null)
            return;
        if (Rows.Count < 2)
        {
            v.Add(nameof(Rows), $"must be at least 2, are {Rows.Count}", "For one value at all headings use ForceCoefficient.");
            return;
        }
        for (int i = 0; i < Rows.Count; i++)
        {
            Validator at = v.At(nameof(Rows), i);
            ForceCoefficientRow row = Rows[i];
            Angle heading = row.Heading;
            at.Within(heading, heading.Degrees, -360, 720, nameof(ForceCoefficientRow.Heading));
            at.InRange(row.Along, -5, 5, "Force coefficients of bluff bodies lie near 0.5 to 2.", nameof(ForceCoefficientRow.Along));
            Other(at, row.Across, Rows[0].Across, nameof(ForceCoefficientRow.Across), "It is the force to the left of the wind.", "Write 0 where there is no force across the wind.");
            Other(at, row.Up, Rows[0].Up, nameof(ForceCoefficientRow.Up), "It is the force up.", "Write 0 where there is no force up.");
            Other(at, row.Twist, Rows[0].Twist, nameof(ForceCoefficientRow.Twist), "It is the moment anticlockwise, on area and width.", "Write 0 where there is no twist.");
            if (i > 0 && !(heading.Radians - Rows[i - 1].Heading.Radians >= 1e-6))
                at.Add(nameof(ForceCoefficientRow.Heading), "must be above the heading of the row before", "Sort the rows by heading.");
        }
        if (!(Rows[^1].Heading.Radians - Rows[0].Heading.Radians <= Turn - 1e-6))
            v.At(nameof(Rows), Rows.Count - 1).Add(nameof(ForceCoefficientRow.Heading), "must be less than a full turn above the first", "The table closes on itself: leave out the row that repeats the first.");
        if (Rows.All(row => row.Along < LeastDrag))
            v.Add(nameof(Rows), FormattableString.Invariant($"push along the wind by less than {LeastDrag} at every heading"), "A part may be drawn against the wind at some headings, not at all of them.");
        if (ReferenceArea is { } area)
            v.Positive(area, area.SquareMeters, 1e-3, 1e4, nameof(ReferenceArea));
        if (ReferenceWidth is { } width)
            v.Positive(width, width.Meters, 1e-3, 1e3, nameof(ReferenceWidth));

        static void Other(Validator at, double? value, double? first, string member, string hint, string none)
        {
            if (value is { } given)
                at.InRange(given, -5, 5, hint, member);
            if (value is null != first is null)
                at.Add(member, "must be given in all rows or in none", none);
        }
    }
}
