using UnitsNet;

namespace StatueFrame.Checks;

/// <summary>What is left of the bars' pre-tension after embedding, heat, creep and relaxation.</summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class BarPreTension
{
    /// <summary>Pre-tension of each bar after losses, N. Each bar clamps its even share of the plates' bed.</summary>
    public static double[] Left(HoldDown holdDown, BlockMaterial block)
    {
        var left = new double[holdDown.Bars.Count];
        double share = block.E / holdDown.BedDepthInUse * holdDown.Plan.Whole.A / Math.Max(1, left.Length);
        for (int i = 0; i < left.Length; i++)
            left[i] = Left(holdDown.Bars[i], share, holdDown.Losses, block);
        return left;
    }

    /// <summary>Pre-tension of one bar after losses, N.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="clamp">Stiffness of what it clamps, N/m.</param>
    /// <param name="losses">The losses; null for none.</param>
    /// <param name="block">The block, for its creep.</param>
    public static double Left(AnchorBar bar, double clamp, PreTensionLosses? losses, BlockMaterial block)
    {
        if (bar.PreTension.Newtons == 0)
            return 0;
        var joint = new AnchorJoint
        {
            BarStiffness = ForcePerLength.FromNewtonsPerMeter(bar.Stiffness),
            ClampStiffness = ForcePerLength.FromNewtonsPerMeter(clamp),
            PreTension = bar.PreTension,
        };
        if (losses is not null)
        {
            double mu = Math.Min(1, bar.PreTension.Newtons / (bar.A_s * bar.Material.UltimateStrength.Pascals));
            double slack = losses.Embedding.Meters + bar.Material.ThermalExpansion.PerKelvin * losses.BarWarmer.Kelvins * bar.FreeLength.Meters;
            joint = joint.AfterSetting(Length.FromMeters(slack));
            joint = joint with { PreTension = joint.PreTension * (1 - Relaxation.Class3(losses.Relaxation1000Hours, mu)) };
        }
        return joint.AfterCreep(block.CreepCoefficient ?? 0).PreTension.Newtons;
    }
}
