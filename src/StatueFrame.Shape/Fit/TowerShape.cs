namespace StatueFrame.Shape;

/// <summary>The plan of a tower that is fitted into a skin.</summary>
public enum TowerShape
{
    /// <summary>A square with its sides along x and y.</summary>
    Square,

    /// <summary>A circle.</summary>
    Round,
}
