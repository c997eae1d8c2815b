using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>What a tower inside a skin, and the bars between them, must keep to.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record TowerFitting
{
    /// <summary>Heights of the levels along the body's axis, ascending; 1 to 5000.</summary>
    public required ValueList<Length> Levels { get; init; }

    /// <summary>Plan of the tower.</summary>
    public TowerShape Shape { get; init; } = TowerShape.Square;

    /// <summary>The tower's straight axis in plan, in the body's axes; the origin by default.</summary>
    public PlanPoint Center { get; init; }

    /// <summary>Least distance between tower and skin, zero to 10 m: room for the bars and for people.</summary>
    public required Length Clearance { get; init; }

    /// <summary>Bars round each level, at even angles from +x: 0 to 400.</summary>
    public int BarsPerLevel { get; init; }

    /// <summary>Thickness t of the flat bars.</summary>
    public Length BarThickness { get; init; } = Length.FromMillimeters(15);

    /// <summary>Modulus of elasticity E of the bars.</summary>
    public Pressure BarModulus { get; init; } = Pressure.FromGigapascals(200);

    /// <summary>Stress that the movement may cause in a bar.</summary>
    public Pressure BarStress { get; init; } = Pressure.FromMegapascals(150);

    /// <summary>Movement of the skin against the tower across the bars that they must allow, as by heat; zero by default.</summary>
    public Length Movement { get; init; }

    /// <summary>Greatest movement of the skin toward the tower in the worst sway; zero by default.</summary>
    public Length WorstSway { get; init; }

    /// <summary>
    /// The shortest bar that bends by the movement δ within the stress σ, both ends held against rotation: √(3 E t δ/σ),
    /// from M = 6EIδ/L² and σ = M t/2I.
    /// </summary>
    public Length LeastBar => Length.FromMeters(Math.Sqrt(3 * BarModulus.Pascals * BarThickness.Meters * Movement.Meters / BarStress.Pascals));

    internal void Validate()
    {
        if (Levels.Count is < 1 or > 5000)
            throw new ArgumentException("Levels must be 1 to 5000.");
        for (int i = 0; i < Levels.Count; i++)
        {
            if (!double.IsFinite(Levels[i].Meters) || (i > 0 && !(Levels[i] > Levels[i - 1])))
                throw new ArgumentException("Levels must ascend.");
        }
        Within(Clearance.Meters, 0, 10, nameof(Clearance));
        Within(BarsPerLevel, 0, 400, nameof(BarsPerLevel));
        Within(BarThickness.Millimeters, 0.1, 100, nameof(BarThickness));
        Within(BarModulus.Gigapascals, 1, 1000, nameof(BarModulus));
        Within(BarStress.Megapascals, 1, 5000, nameof(BarStress));
        Within(Movement.Meters, 0, 1, nameof(Movement));
        Within(WorstSway.Meters, 0, 10, nameof(WorstSway));
        Within(Center.X.Meters, -1000, 1000, nameof(Center));
        Within(Center.Y.Meters, -1000, 1000, nameof(Center));
        if (!Enum.IsDefined(Shape))
            throw new ArgumentOutOfRangeException(nameof(Shape));

        static void Within(double value, double least, double most, string member)
        {
            if (!(value >= least && value <= most))
                throw new ArgumentOutOfRangeException(member, value, "is out of range");
        }
    }
}
