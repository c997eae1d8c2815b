using System.Globalization;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Vibration;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>Tells from a mode's shape what moves in it.</summary>
internal static class ModeReader
{
    /// <summary>A part with less of the kinetic energy than this is not named.</summary>
    private const double Notable = 0.05;

    /// <summary>A direction is named when it has at least this share of the motion.</summary>
    private const double Clear = 0.6;

    public static ModeResult Read(StatueModel model, ModeSet set, int mode, Span<double> momentum)
    {
        ReadOnlySpan<double> shape = set.Shape(mode);
        model.Frame.InertiaForces(shape, momentum);
        var shares = new Dictionary<string, double>();
        var counted = new HashSet<int>();
        foreach (BodyModel body in model.Bodies)
        {
            bool isTrunk = body.Prefix.Length == 0;
            foreach (Place place in body.Levels)
            {
                // The node that a limb shares with the level it starts from counts with that level, which comes first.
                if (counted.Add(place.Node))
                    Add(isTrunk ? "tower" : body.Name, Energy(shape, momentum, place.Node));
            }
            foreach (Place place in body.BandPlaces)
                Add(isTrunk ? "skin" : body.Name, Energy(shape, momentum, place.Node));
        }
        return new ModeResult
        {
            Number = mode + 1,
            Frequency = Frequency.FromHertz(set.Frequency(mode)),
            MassFractionX = Fraction(0),
            MassFractionY = Fraction(1),
            MassFractionZ = Fraction(2),
            TwistFraction = Fraction(5),
            EnergyShares = shares,
            Description = $"{Motion(shape, momentum)}: {Parts(shares)}",
        };

        double Fraction(int direction) =>
            set.MovingMass(direction) > 0 ? set.EffectiveMass(mode, direction) / set.MovingMass(direction) : 0;

        void Add(string part, double energy) => shares[part] = shares.GetValueOrDefault(part) + energy;
    }

    private static double Energy(ReadOnlySpan<double> shape, ReadOnlySpan<double> momentum, int node)
    {
        double sum = 0;
        for (int i = node * Frame.NodeSize; i < (node + 1) * Frame.NodeSize; i++)
            sum += shape[i] * momentum[i];
        return sum;
    }

    private static string Parts(Dictionary<string, double> shares) =>
        string.Join(", ", shares.Where(s => s.Value >= Notable).OrderByDescending(s => s.Value).ThenBy(s => s.Key, StringComparer.Ordinal)
            .Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Key} {100 * s.Value:0} %")));

    /// <summary>The kind of motion: sway with its direction in plan, heave, twist or rocking.</summary>
    private static string Motion(ReadOnlySpan<double> shape, ReadOnlySpan<double> momentum)
    {
        Span<double> by = stackalloc double[Frame.NodeSize];
        double cross = 0;
        for (int i = 0; i < shape.Length; i++)
        {
            by[i % Frame.NodeSize] += shape[i] * momentum[i];
            if (i % Frame.NodeSize == 0)
                cross += 0.5 * (shape[i] * momentum[i + 1] + shape[i + 1] * momentum[i]);
        }
        double sway = by[0] + by[1], total = sway + by[2] + by[3] + by[4] + by[5];
        if (sway >= Clear * total)
            return SwayDirection(by[0], by[1], cross);
        if (by[2] >= Clear * total)
            return "heave";
        if (by[5] >= Clear * total)
            return "twist";
        return by[3] + by[4] >= Clear * total ? "rocking" : "mixed motion";
    }

    /// <summary>The main direction of [xx xy; xy yy]; none when twist makes parts of the statue go different ways.</summary>
    private static string SwayDirection(double xx, double yy, double xy)
    {
        double angle = 0.5 * Math.Atan2(2 * xy, xx - yy) * 180 / Math.PI;
        double spread = Math.Sqrt((xx - yy) * (xx - yy) + 4 * xy * xy) / (xx + yy);
        if (spread < 0.5)
            return "twisting sway";
        if (Math.Abs(angle) < 3)
            return "sway along x";
        return Math.Abs(angle) > 87 ? "sway along y" : string.Create(CultureInfo.InvariantCulture, $"sway towards {(angle < 0 ? angle + 180 : angle):0}°");
    }
}
