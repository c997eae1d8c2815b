namespace StatueFrame.Analysis;

/// <summary>A run of bands that grow with heat as one piece of skin along their body's axis.</summary>
/// <param name="Body">The body.</param>
/// <param name="First">Its lowest band.</param>
/// <param name="Last">Its highest band.</param>
internal sealed record SkinField(BodyModel Body, int First, int Last)
{
    public double Bottom => Body.Bands[First].Bottom;

    public double Top => Body.Bands[Last].Top;

    /// <summary>The fields of a body: between joints; without a word on joints, what seams tie.</summary>
    public static List<SkinField> Of(BodyModel body)
    {
        var fields = new List<SkinField>();
        int first = 0;
        for (int band = 1; band <= body.Bands.Length; band++)
        {
            if (band < body.Bands.Length && IsTied(body, band))
                continue;
            fields.Add(new SkinField(body, first, band - 1));
            first = band;
        }
        return fields;
    }

    /// <summary>Whether a band grows as one piece with the band below it.</summary>
    private static bool IsTied(BodyModel body, int band) =>
        body.Skin!.Joints is null ? body.HasSeams : !body.Skin.HasJointAt(body.Bands[band].Bottom);
}
