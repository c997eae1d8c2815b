namespace StatueFrame.Tests.Analyses.Earthquake;

/// <summary>Towers of rigid stories on shear springs, with their mass at the levels.</summary>
internal static class ShearBuildings
{
    private const double Rigid = 1e16;

    /// <summary>A uniform one.</summary>
    /// <param name="stories">Number of stories.</param>
    /// <param name="stiffness">Story stiffness along x, N/m.</param>
    /// <param name="mass">Mass of each level, kg.</param>
    /// <param name="height">Story height, m.</param>
    /// <param name="across">Stiffness along y over that along x.</param>
    public static Statue Uniform(int stories, double stiffness, double mass, double height = 3.6576, double across = 1.7) => new()
    {
        Name = "shear tower",
        Tower = new Tower
        {
            Levels = [.. Enumerable.Range(0, stories + 1).Select(i => new TowerLevel($"F{i}", (i * height).Meters))],
            Segments =
            [
                .. Enumerable.Repeat<TowerSegment>(new CoreSegment
                {
                    BendingX = Rigidity.FromNewtonSquareMeters(Rigid), BendingY = Rigidity.FromNewtonSquareMeters(Rigid),
                    Torsion = Rigidity.FromNewtonSquareMeters(Rigid), Axial = 1e13.Newtons,
                    ShearX = (stiffness * height).Newtons, ShearY = (across * stiffness * height).Newtons,
                }, stories),
            ],
        },
        Fittings = [.. Enumerable.Range(1, stories).Select(i => new Fitting { Name = $"floor {i}", On = $"F{i}", Mass = mass.Kilograms })],
        Points = [new NamedPoint("top", $"F{stories}")],
    };
}
