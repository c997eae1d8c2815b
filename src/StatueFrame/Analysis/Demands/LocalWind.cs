using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>The greatest local pressure and suction on every band of skin in the wind of a situation: found once, and felt by sheet, seams, armature and bars alike.</summary>
/// <remarks>Immutable and safe to share between threads. SI units, factor included.</remarks>
internal sealed class LocalWind
{
    private static readonly Assumption acrossLimb = new("wind on the skin of limbs", "in full across the limb's axis, from all round", Source.CommonPractice);

    private static readonly ValueList<Angle> aroundLimb = Headings.Evenly(72);

    private readonly StatueModel model;
    private readonly CladdingPressure[] found;
    private readonly double factor;

    private LocalWind(StatueModel model, WindAction wind, double factor)
    {
        (this.model, this.factor) = (model, factor);
        var local = new CladdingWind { Profile = wind.Profile };
        found = new CladdingPressure[model.BandCount];
        for (int i = 0; i < found.Length; i++)
        {
            (BodyModel body, int index) = model.BandAt(i);
            double height = Math.Max(0, model.Statue.BaseAboveGround.Meters + body.Highest(index));
            found[i] = local.OnStrip(body.Bands[index], 0, 1, height, body.Bands[^1].Top - body.Bands[0].Bottom, IsTrunk(body) ? wind.Headings : aroundLimb);
        }
    }

    /// <summary>The local wind of a situation; null without wind or skin.</summary>
    public static LocalWind? Of(StatueModel model, Situation situation) =>
        situation.Wind is { Action: WindAction wind } factored && model.BandCount > 0 ? new LocalWind(model, wind, Math.Abs(factored.Factor)) : null;

    /// <summary>Greatest pressure on a band, zero or more, Pa.</summary>
    public double Inward(int band) => factor * Math.Max(0, found[band].Inward.Pascals);

    /// <summary>Greatest suction on a band, zero or more, Pa.</summary>
    public double Suction(int band) => factor * Math.Max(0, found[band].Suction.Pascals);

    public Angle InwardHeading(int band) => found[band].InwardHeading;

    public Angle SuctionHeading(int band) => found[band].SuctionHeading;

    public IEnumerable<Assumption> Assumptions(int band) =>
        IsTrunk(model.BandAt(band).Body) ? found[band].Assumptions : found[band].Assumptions.Append(acrossLimb);

    public IEnumerable<string> Warnings(int band) => found[band].Warnings;

    public bool IsTrunk(BodyModel body) => body == model.Bodies[0];
}
