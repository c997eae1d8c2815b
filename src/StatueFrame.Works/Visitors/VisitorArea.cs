using UnitsNet;

namespace StatueFrame.Works;

/// <summary>A gallery or a stair on which visitors stand.</summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record VisitorArea
{
    private VisitorArea()
    {
    }

    /// <summary>Name, as in "gallery at the shoulder".</summary>
    public required string Name { get; init; }

    /// <summary>The levels that carry it, in equal parts.</summary>
    public required ValueList<string> On { get; init; }

    /// <summary>Area to stand on.</summary>
    public required Area Area { get; init; }

    /// <summary>Imposed load: 5 kN/m² by default, for crowds (EN 1991-1-1:2002, Table 6.2, C5, from memory).</summary>
    public Pressure Load { get; init; } = Pressure.FromKilopascals(5);

    /// <summary>Area a person takes when the place is full, 0.2 to 10 m²; 0.5 m² by default (common practice, no source).</summary>
    public Area PerPerson { get; init; } = Area.FromSquareMeters(0.5);

    /// <summary>People when it is full.</summary>
    public int Occupancy => (int)Math.Floor(Area / PerPerson + 1e-9);

    /// <summary>A gallery round a level.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="level">The level that carries it.</param>
    /// <param name="area">Area to stand on, 0.1 to 1000 m².</param>
    /// <exception cref="InvalidStatueException">The area or a name is not valid.</exception>
    public static VisitorArea Gallery(string name, string level, Area area) => Checked(new VisitorArea { Name = name, On = [level], Area = area });

    /// <summary>A helical stair: its treads seen from above, once for every turn.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="levels">The levels that carry it, in equal parts.</param>
    /// <param name="inner">Inner diameter of the treads, zero or more.</param>
    /// <param name="outer">Outer diameter, more than the inner and at most 20 m.</param>
    /// <param name="turns">Full turns from foot to head, 0.25 to 200.</param>
    /// <exception cref="InvalidStatueException">A size or a name is not valid.</exception>
    public static VisitorArea HelicalStair(string name, ValueList<string> levels, Length inner, Length outer, double turns)
    {
        var v = new Validator();
        v.NotNegative(inner, inner.Meters, 20);
        v.Within(outer, outer.Meters, Math.Max(inner.Meters, 0.1), 20);
        v.InRange(turns, 0.25, 200, "It is the number of full turns from foot to head.");
        v.ThrowIfAny();
        return Checked(new VisitorArea { Name = name, On = levels, Area = Area.FromSquareMeters(turns * Math.PI / 4 * (outer.Meters * outer.Meters - inner.Meters * inner.Meters)) });
    }

    /// <summary>The imposed loads when it is full, for <see cref="CharacteristicActions.Variable"/> or a situation.</summary>
    public ValueList<ImposedLoad> ToLoads() => [.. On.Select(level => new ImposedLoad { Name = Name, On = level, Down = Force.FromNewtons(Load.Pascals * Area.SquareMeters / On.Count) })];

    /// <summary>The people on it as a crowd that moves in rhythm.</summary>
    /// <param name="load">How they move.</param>
    /// <param name="point">The named point where they are.</param>
    /// <param name="inStep">Whether they move in step, as at a concert.</param>
    public RhythmicCrowd ToCrowd(RhythmicLoad load, string point, bool inStep = false) => new() { Load = load, Point = point, People = Math.Max(1, Occupancy), InStep = inStep };

    private static VisitorArea Checked(VisitorArea area)
    {
        var v = new Validator();
        v.Named(area.Name);
        v.Positive(area.Area, area.Area.SquareMeters, 0.1, 1000, nameof(Area));
        for (int i = 0; i < area.On.Count; i++)
            v.At(nameof(On), i).Named(area.On[i], "");
        if (area.On.Count == 0)
            v.Add(nameof(On), "names no level", "Say which levels carry it.");
        v.ThrowIfAny();
        return area;
    }
}
