using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Vibration;

namespace StatueFrame.Analysis;

/// <summary>The mode by which a statue sways along a heading, reduced to what the standards' gust factors ask for. SI units.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
internal sealed class AlongWindMode
{
    /// <summary>The lowest mode with at least this share of the moving mass along the wind is taken.</summary>
    private const double LeastMassShare = 0.1;

    public AlongWindMode(StatueModel model, ModalResponse modes, StatueWind wind)
    {
        var windModes = new WindModes(model, modes.Set, wind);
        Index = Choose(model, windModes, modes.Set, wind.Direction);
        Frequency = windModes.Omega[Index] / (2 * Math.PI);
        ReadOnlySpan<double> ordinates = windModes.MotionAlong(Index);
        BaseHeight = model.Statue.BaseAboveGround.Meters;
        Height = model.GreatestHeightAboveGround - BaseHeight;
        Width = wind.Area / Height;
        double squares = 0;
        for (int i = 0; i < wind.BandCount; i++)
            squares += ordinates[i] * ordinates[i] * wind.Parts[i].Area;
        EquivalentMass = Width / squares;
        Exponent = FitExponent(model, wind, ordinates.ToArray());
    }

    public int Index { get; }

    /// <summary>Natural frequency, Hz.</summary>
    public double Frequency { get; }

    /// <summary>Height of the pedestal, m.</summary>
    public double BaseHeight { get; }

    /// <summary>Height of the statue without its pedestal, m.</summary>
    public double Height { get; }

    /// <summary>Mean width, the projected area of all bands over the height, m.</summary>
    public double Width { get; }

    /// <summary>Equivalent mass ∫mΦ²dz/∫Φ²dz (F.14): modal mass over the mean square of the skin's motion, kg/m.</summary>
    public double EquivalentMass { get; }

    /// <summary>ζ of (z/h)^ζ that fits the trunk's bands best.</summary>
    public double Exponent { get; }

    private static int Choose(StatueModel model, WindModes modes, ModeSet set, Vector3D direction)
    {
        double moving = direction.X * direction.X * set.MovingMass(0) + direction.Y * direction.Y * set.MovingMass(1);
        (int index, double share) most = (0, 0);
        for (int i = 0; i < modes.Count; i++)
        {
            double participation = direction.X * model.Participation(modes.Shape(i), 0) + direction.Y * model.Participation(modes.Shape(i), 1);
            double share = participation * participation / moving;
            if (share >= LeastMassShare)
                return i;
            if (share > most.share)
                most = (i, share);
        }
        return most.index;
    }

    /// <summary>Least squares, weighted by area, with the size of the shape free; by golden section over 0 to 5.</summary>
    private static double FitExponent(StatueModel model, StatueWind wind, double[] ordinates)
    {
        int count = model.Bodies[0].Bands.Length > 0 ? model.Bodies[0].Bands.Length : wind.BandCount;
        double top = 0;
        for (int i = 0; i < count; i++)
            top = Math.Max(top, wind.Parts[i].At.Z);
        double low = 0, high = 5, golden = 0.5 * (Math.Sqrt(5) - 1);
        double left = high - golden * (high - low), right = low + golden * (high - low);
        double atLeft = Misfit(left), atRight = Misfit(right);
        while (high - low > 1e-4)
        {
            if (atLeft <= atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - golden * (high - low);
                atLeft = Misfit(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + golden * (high - low);
                atRight = Misfit(right);
            }
        }
        return 0.5 * (low + high);

        // With the best size c = Σ A φ p / Σ A p², the misfit is Σ A φ² − (Σ A φ p)² / Σ A p²; the first term is fixed.
        double Misfit(double zeta)
        {
            double mixed = 0, squares = 0;
            for (int i = 0; i < count; i++)
            {
                double p = Math.Pow(Math.Max(0, wind.Parts[i].At.Z) / top, zeta);
                mixed += wind.Parts[i].Area * ordinates[i] * p;
                squares += wind.Parts[i].Area * p * p;
            }
            return -mixed * mixed / squares;
        }
    }
}
