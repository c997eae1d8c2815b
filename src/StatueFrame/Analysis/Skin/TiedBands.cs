using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The second model of a statue whose description does not say whether its skin has joints: neighboring bands tied by the sheet
/// itself, E t/h across and G t/h along the line between them, h the distance of their middles. A continuous skin stiffens the
/// statue, and carries the shear of its sway to the bars near its ends.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class TiedBands
{
    /// <summary>Whether the description of a body leaves it open if its bands are tied.</summary>
    public static bool IsOpen(BodyModel body) => body.Bands.Length > 1 && !body.HasSeams && body.Skin!.Joints is null;

    /// <summary>The model as it is, and with bands tied where the description leaves it open.</summary>
    public static StatueModel[] Of(StatueModel model)
    {
        if (!model.Bodies.Any(IsOpen))
            return [model];
        Statue statue = model.Statue with
        {
            Seams = IsOpen(model.Bodies[0]) ? Tie(model.Bodies[0]) : model.Statue.Seams,
            Limbs = [.. model.Statue.Limbs.Select((limb, i) => IsOpen(model.Bodies[i + 1]) ? limb with { Seams = Tie(model.Bodies[i + 1]) } : limb)],
        };
        return [model, ModelBuilder.BuildValid(statue, "bands tied")];
    }

    private static SeamStiffness Tie(BodyModel body)
    {
        double t = body.Bands.Max(band => band.MidThickness), h = (body.Bands[^1].Top - body.Bands[0].Bottom) / body.Bands.Length;
        return new SeamStiffness(body.Skin!.Material.YoungsModulus * (t / h), body.Skin.Material.ShearModulus * (t / h));
    }
}
