namespace StatueFrame.Works;

/// <summary>How a load travels: the accelerations that its lashing must hold, as parts of g.</summary>
/// <remarks>
/// Immutable and safe to share between threads. Source: IMO/ILO/UNECE Code of Practice for Packing of Cargo Transport Units, 2014,
/// chapter 5; for the road EN 12195-1:2010, Table 2 (both from memory).
/// </remarks>
public sealed record Journey
{
    /// <summary>By road: 0.8 g braking, 0.5 g to the rear and to the sides.</summary>
    public static Journey Road { get; } = new("road", [new("forward", 0.8, 1, 1.25), new("to the rear", 0.5, 1, 1.1), new("to the side", 0.5, 1, 1.1)]);

    /// <summary>By rail in combined transport: 0.5 g along with all of the weight, 0.5 g to the sides.</summary>
    public static Journey Rail { get; } = new("rail, combined transport", [new("along", 0.5, 1, 1.1), new("to the side", 0.5, 1, 1.1)]);

    /// <summary>By sea in waves of up to 8 m: 0.3 g along with half the weight, 0.5 g to the sides.</summary>
    public static Journey SeaA { get; } = new("sea, waves to 8 m", [new("along", 0.3, 0.5, 1.1), new("to the side", 0.5, 1, 1.1)]);

    /// <summary>By sea in waves of 8 m to 12 m.</summary>
    public static Journey SeaB { get; } = new("sea, waves to 12 m", [new("along", 0.3, 0.3, 1.1), new("to the side", 0.7, 1, 1.1)]);

    /// <summary>By sea in waves above 12 m.</summary>
    public static Journey SeaC { get; } = new("sea, waves above 12 m", [new("along", 0.4, 0.2, 1.1), new("to the side", 0.8, 1, 1.1)]);

    private Journey(string name, ValueList<Jolt> jolts) => (Name, Jolts) = (name, jolts);

    /// <summary>Name, as in "road".</summary>
    public string Name { get; }

    /// <summary>The jolts in each direction.</summary>
    public ValueList<Jolt> Jolts { get; }

    internal static Source Source { get; } = new("IMO/ILO/UNECE Code of Practice for Packing of Cargo Transport Units, 2014; EN 12195-1:2010", "chapter 5; 6.2 (from memory)");
}
