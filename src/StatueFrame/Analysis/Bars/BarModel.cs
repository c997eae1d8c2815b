namespace StatueFrame.Analysis;

/// <summary>One standoff of the model: the placed bar and the part of the band it serves.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Bar">The bar in the statue's axes, between its two nodes.</param>
/// <param name="Share">The part of the band's skin it serves.</param>
/// <param name="Strip">The same part on the band's mid outline.</param>
/// <param name="Mass">Mass of the bar itself, kg; half of it rides on each end.</param>
/// <param name="Number">Its number in its ring, from 1; missing bars are counted.</param>
/// <param name="Index">Its place among the bars that are there, from 0.</param>
/// <param name="Where">Its name, as in "band 3, bar 2" or "wing/band 1, bar 4".</param>
internal sealed record BarModel(PlacedBar Bar, BandShare Share, PlanStretch Strip, double Mass, int Number, int Index, string Where)
{
    public Standoff Standoff => Bar.Place.Standoff;
}
