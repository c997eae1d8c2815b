using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The standoff of a ring that the shaking ground stresses most, as a part of its yield strength; weight is not in it.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
/// <param name="Level">The level it stands on.</param>
/// <param name="Band">The band it carries.</param>
/// <param name="Number">Its number in its ring, from 1.</param>
/// <param name="Assumption">The assumption on the skin that is worse.</param>
/// <param name="Stress">Greatest normal stress at a corner over time, without sign.</param>
/// <param name="At">When.</param>
public sealed record BaseMotionBar(string Level, string Band, int Number, SkinAssumption Assumption, Pressure Stress, Duration At)
{
    /// <summary>The bar and its stress on one line.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Band}, bar {Number}: {Stress.Megapascals:0.0} MPa at {At.Seconds:0.00} s");
}
