namespace StatueFrame.Mechanics.Sparse;

/// <summary>That a finished panel has rows among the columns of a later one, whose elimination it therefore changes.</summary>
/// <param name="Source">The finished supernode.</param>
/// <param name="Row">The first of those rows, counted within its panel.</param>
/// <param name="Columns">The number of those rows, which is the number of columns it changes.</param>
internal readonly record struct PanelUpdate(int Source, int Row, int Columns);
