namespace StatueFrame.Tests.Checks.Sheets;

/// <summary>
/// Von Kármán's equations of a square plate by finite differences and dynamic relaxation, edges held: slow and simple,
/// and nothing in common with the library's own method. Unit side and thickness, E = 1.
/// </summary>
internal static class FiniteDifferencePlate
{
    /// <summary>Deflection at the center and stress there, bending and membrane, from two meshes by Richardson's extrapolation.</summary>
    public static (double Deflection, double Stress) Solve(double pressure, double nu, bool clamped, double force = 0)
    {
        (double w8, double s8) = Solve(pressure, nu, clamped, force, 8);
        (double w16, double s16) = Solve(pressure, nu, clamped, force, 16);
        return (w16 + (w16 - w8) / 3, s16 + (s16 - s8) / 3);
    }

    private static (double, double) Solve(double pressure, double nu, bool clamped, double center, int n)
    {
        double h = 1.0 / n, A = 1 / (1 - nu * nu), D = A / 12;
        int size = n + 3;
        double[,] w = new double[size, size], u = new double[size, size], v = new double[size, size];
        double[,] dw = new double[size, size], du = new double[size, size], dv = new double[size, size];
        double[,] nx = new double[size, size], ny = new double[size, size], nxy = new double[size, size];
        double stepW = 0.9 * h * h * h * h / (16 * D), stepU = 0.9 * h * h / (4 * A);
        for (int turn = 0; turn < 60_000; turn++)
        {
            double ghost = clamped ? 1 : -1, change = 0, greatest = 0;
            for (int k = 0; k < size; k++)
            {
                w[0, k] = ghost * w[2, k];
                w[size - 1, k] = ghost * w[size - 3, k];
                w[k, 0] = ghost * w[k, 2];
                w[k, size - 1] = ghost * w[k, size - 3];
            }
            for (int i = 2; i <= n; i++)
            {
                for (int j = 2; j <= n; j++)
                {
                    double wx = (w[i + 1, j] - w[i - 1, j]) / (2 * h), wy = (w[i, j + 1] - w[i, j - 1]) / (2 * h);
                    double ex = (u[i + 1, j] - u[i - 1, j]) / (2 * h) + wx * wx / 2, ey = (v[i, j + 1] - v[i, j - 1]) / (2 * h) + wy * wy / 2;
                    double exy = (u[i, j + 1] - u[i, j - 1] + v[i + 1, j] - v[i - 1, j]) / (2 * h) + wx * wy;
                    (nx[i, j], ny[i, j], nxy[i, j]) = (A * (ex + nu * ey), A * (ey + nu * ex), A * (1 - nu) / 2 * exy);
                    double wxx = (w[i + 1, j] - 2 * w[i, j] + w[i - 1, j]) / (h * h), wyy = (w[i, j + 1] - 2 * w[i, j] + w[i, j - 1]) / (h * h);
                    double wxy = (w[i + 1, j + 1] - w[i + 1, j - 1] - w[i - 1, j + 1] + w[i - 1, j - 1]) / (4 * h * h);
                    double biharmonic = (20 * w[i, j] - 8 * (w[i + 1, j] + w[i - 1, j] + w[i, j + 1] + w[i, j - 1])
                        + 2 * (w[i + 1, j + 1] + w[i + 1, j - 1] + w[i - 1, j + 1] + w[i - 1, j - 1])
                        + w[i + 2 > n + 2 ? i : i + 2, j] + w[i - 2, j] + w[i, j + 2 > n + 2 ? j : j + 2] + w[i, j - 2]) / (h * h * h * h);
                    double force = pressure + (i == n / 2 + 1 && j == i ? center / (h * h) : 0) - D * biharmonic + nx[i, j] * wxx + ny[i, j] * wyy + 2 * nxy[i, j] * wxy;
                    double uxx = (u[i + 1, j] - 2 * u[i, j] + u[i - 1, j]) / (h * h), uyy = (u[i, j + 1] - 2 * u[i, j] + u[i, j - 1]) / (h * h);
                    double vxx = (v[i + 1, j] - 2 * v[i, j] + v[i - 1, j]) / (h * h), vyy = (v[i, j + 1] - 2 * v[i, j] + v[i, j - 1]) / (h * h);
                    double uxy = (u[i + 1, j + 1] - u[i + 1, j - 1] - u[i - 1, j + 1] + u[i - 1, j - 1]) / (4 * h * h);
                    double vxy = (v[i + 1, j + 1] - v[i + 1, j - 1] - v[i - 1, j + 1] + v[i - 1, j - 1]) / (4 * h * h);
                    double fu = A * (uxx + (1 - nu) / 2 * uyy + (1 + nu) / 2 * vxy + wx * wxx + (1 + nu) / 2 * wy * wxy + (1 - nu) / 2 * wx * wyy);
                    double fv = A * (vyy + (1 - nu) / 2 * vxx + (1 + nu) / 2 * uxy + wy * wyy + (1 + nu) / 2 * wx * wxy + (1 - nu) / 2 * wy * wxx);
                    dw[i, j] = Damped * dw[i, j] + Rate * stepW / (1 + stepW * 8 * (Math.Abs(nx[i, j]) + Math.Abs(ny[i, j])) / (h * h)) * force;
                    du[i, j] = Damped * du[i, j] + Rate * stepU * fu;
                    dv[i, j] = Damped * dv[i, j] + Rate * stepU * fv;
                }
            }
            for (int i = 2; i <= n; i++)
            {
                for (int j = 2; j <= n; j++)
                {
                    w[i, j] += dw[i, j];
                    u[i, j] += du[i, j];
                    v[i, j] += dv[i, j];
                    change = Math.Max(change, Math.Abs(dw[i, j]));
                    greatest = Math.Max(greatest, Math.Abs(w[i, j]));
                }
            }
            if (change < 1e-7 * greatest)
                break;
        }
        int c = n / 2 + 1;
        double kx = -(w[c + 1, c] - 2 * w[c, c] + w[c - 1, c]) / (h * h), ky = -(w[c, c + 1] - 2 * w[c, c] + w[c, c - 1]) / (h * h);
        return (w[c, c], nx[c, c] + 6 * D * (kx + nu * ky));
    }

    private const double Damped = 0.95;
    private const double Rate = 0.4;
}
