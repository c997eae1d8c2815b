namespace StatueFrame.Tests.Sections;

/// <summary>
/// The torsion constant of a rectangle with or without a rectangular hole, from Prandtl's stress function on a grid of
/// squares: ∇²φ = −2 with φ = 0 outside and a constant on the hole that makes the energy stationary.
/// </summary>
internal static class TorsionByGrid
{
    /// <param name="width">Outer width in cells.</param>
    /// <param name="depth">Outer depth in cells.</param>
    /// <param name="wall">Wall in cells; 0 for no hole.</param>
    /// <returns>J in units of a cell to the fourth power.</returns>
    public static double Constant(int width, int depth, int wall)
    {
        bool Inside(int i, int j) => i > 0 && i < width && j > 0 && j < depth;
        bool Hole(int i, int j) => wall > 0 && i >= wall && i <= width - wall && j >= wall && j <= depth - wall;
        bool Free(int i, int j) => Inside(i, j) && !Hole(i, j);

        double[,] Solve(double source, double hole)
        {
            var phi = new double[width + 1, depth + 1];
            for (int i = 0; i <= width; i++)
                for (int j = 0; j <= depth; j++)
                    phi[i, j] = Hole(i, j) ? hole : 0;
            for (int sweep = 0; sweep < 3000; sweep++)
            {
                double change = 0;
                for (int i = 1; i < width; i++)
                {
                    for (int j = 1; j < depth; j++)
                    {
                        if (!Free(i, j))
                            continue;
                        double update = (phi[i - 1, j] + phi[i + 1, j] + phi[i, j - 1] + phi[i, j + 1] + source) / 4 - phi[i, j];
                        phi[i, j] += 1.8 * update;
                        change = Math.Max(change, Math.Abs(update));
                    }
                }
                if (change < 1e-11)
                    break;
            }
            return phi;
        }

        double Sum(double[,] phi)
        {
            double sum = 0;
            for (int i = 1; i < width; i++)
                for (int j = 1; j < depth; j++)
                    sum += Free(i, j) ? phi[i, j] : 0;
            return sum;
        }

        double[,] loaded = Solve(2, 0);
        if (wall == 0)
            return 2 * Sum(loaded);

        double[,] lifted = Solve(0, 1);
        double energy = 0;
        for (int i = 0; i <= width; i++)
        {
            for (int j = 0; j <= depth; j++)
            {
                if (i < width)
                    energy += Math.Pow(lifted[i + 1, j] - lifted[i, j], 2);
                if (j < depth)
                    energy += Math.Pow(lifted[i, j + 1] - lifted[i, j], 2);
            }
        }
        double nodesOfHole = (double)(width - 2 * wall + 1) * (depth - 2 * wall + 1);
        double volume = Sum(lifted) + nodesOfHole;
        double constant = 2 * volume / energy;
        return 2 * (Sum(loaded) + constant * volume);
    }
}
