using System.Text;

namespace StatueFrame.Analysis;

/// <summary>Writes the numbers of a <see cref="Response"/> as comma-separated values, one part or load case a line, with units in the heads.</summary>
internal static class ResponseCsv
{
    public static string Bars(Response response, DisplayUnits units) => Table(
        units,
        [
            ("level", null), ("band", null), ("bar", null), ("length", Dimension.SmallLength), ("greatest stress", Dimension.Stress), ("skin", null), ("heading [°]", null),
            ("axial force", Dimension.Force), ("greatest deflection", Dimension.SmallLength), ("its heading [°]", null),
        ],
        response.Bars.Select(bar => new object?[]
        {
            bar.Level, bar.Band, bar.Number, bar.Length.Meters, bar.Stress.Pascals, bar.StressAssumption.InWords(), bar.StressHeading?.Degrees,
            bar.Forces.Axial.Newtons, bar.Deflection.Meters, bar.DeflectionHeading?.Degrees,
        }));

    public static string Members(Response response, DisplayUnits units) => Table(
        units,
        [("heading [°]", null), ("segment", null), ("member", null), ("axial force", Dimension.Force), ("stress", Dimension.Stress)],
        response.Cases.SelectMany(c => c.LatticeMembers()).Select(m => new object?[] { m.Heading?.Degrees, m.Segment, m.Member, m.Axial.Newtons, m.Stress.Pascals }));

    public static string Reactions(Response response, DisplayUnits units) => Table(
        units,
        [
            ("heading [°]", null), ("force x", Dimension.Force), ("force y", Dimension.Force), ("force z", Dimension.Force),
            ("moment x", Dimension.Moment), ("moment y", Dimension.Moment), ("moment z", Dimension.Moment), ("wind force", Dimension.Force),
        ],
        response.Cases.Select(c => new object?[]
        {
            c.Heading?.Degrees, c.Base.ForceX.Newtons, c.Base.ForceY.Newtons, c.Base.ForceZ.Newtons,
            c.Base.MomentX.NewtonMeters, c.Base.MomentY.NewtonMeters, c.Base.MomentZ.NewtonMeters, c.WindForce.Newtons,
        }));

    public static string Wind(Response response, DisplayUnits units) => Table(
        units,
        [
            ("case", null), ("band", null), ("elevation", Dimension.Length), ("load factor", null), ("gust factor", null), ("reference height", Dimension.Length), ("peak pressure", Dimension.Pressure), ("force coefficient", null),
            ("area", Dimension.Area), ("force along", Dimension.Force), ("force across", Dimension.Force),
        ],
        response.Cases.SelectMany(c => c.BandWindForces().Select(b => new object?[]
        {
            c.When, b.Band, b.Elevation.Meters, b.LoadFactor, b.GustFactor, b.ReferenceHeight.Meters, b.PeakPressure.Pascals, b.Coefficient, b.Area.SquareMeters, b.Along.Newtons, b.Across.Newtons,
        })));

    private static string Table(DisplayUnits units, (string Name, Dimension? Dimension)[] columns, IEnumerable<object?[]> rows)
    {
        var text = new StringBuilder();
        CsvText.AppendLine(text, columns.Select(column => column.Dimension is { } dimension ? CsvText.Head(column.Name, dimension, units) : column.Name));
        foreach (object?[] row in rows)
        {
            CsvText.AppendLine(text, row.Zip(columns, (cell, column) => cell switch
            {
                double number => CsvText.Number(number, column.Dimension ?? Dimension.Number, units),
                int number => number.ToString(System.Globalization.CultureInfo.InvariantCulture),
                _ => (string?)cell ?? "",
            }));
        }
        return text.ToString();
    }
}
