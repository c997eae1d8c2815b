namespace StatueFrame.Checks;

/// <summary>
/// The greatest result of each dimension on some sheets: what a result must be compared with to tell whether it is zero.
/// A sway that symmetry makes zero is computed as some 1e-17 m, never twice the same.
/// </summary>
internal sealed class ResultScales
{
    private readonly Dictionary<Dimension, double> greatest = [];

    public ResultScales(params ReadOnlySpan<CheckSheet> sheets)
    {
        foreach (CheckSheet sheet in sheets)
        {
            foreach (ResultLine line in sheet.Results)
            {
                if (double.IsFinite(line.Value))
                    greatest[line.Dimension] = Math.Max(Of(line.Dimension), Math.Abs(line.Value));
            }
        }
    }

    public double Of(Dimension dimension) => greatest.GetValueOrDefault(dimension);
}
