namespace StatueFrame.Mechanics.Elements;

/// <summary>
/// A flat triangle in plane stress with a drilling rotation at each corner: nine freedoms, u, v and θ of each corner in turn.
/// A basic stiffness that holds every state of constant stress, and a higher one chosen so that rectangles of two triangles
/// bend in their plane as beams do, whatever their proportions.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Source: Felippa, "A study of optimal membrane triangles with drilling
/// freedoms", Comput. Methods Appl. Mech. Engrg. 192 (2003) 2125–2168: template with α_b = 3/2, β₀ = (1 − 4ν²)/2 and
/// β₁…β₉ = 1, 2, 1, 0, 1, −1, −1, −1, −2; from memory, held by its patch tests and by the bending it is made for.
/// </remarks>
internal readonly struct MembraneTriangle
{
    public const int Size = 9;

    private const double Alpha = 1.5;

    /// <summary>The least share of the higher stiffness, so that no Poisson's ratio makes the triangle a mechanism.</summary>
    private const double LeastHigher = 0.01;

    private readonly double x12, x23, x31, y12, y23, y31;

    public MembraneTriangle(double x1, double y1, double x2, double y2, double x3, double y3)
    {
        (x12, x23, x31) = (x1 - x2, x2 - x3, x3 - x1);
        (y12, y23, y31) = (y1 - y2, y2 - y3, y3 - y1);
        Area = 0.5 * (x31 * y12 - x12 * y31);
    }

    /// <summary>Its area, m²; positive when the corners run anticlockwise.</summary>
    public double Area { get; }

    /// <summary>Fills in the nine rows and three columns that turn membrane forces per length (N_x, N_y, N_xy) into forces at the corners, m.</summary>
    public void Lumping(Span<double> l27)
    {
        Corner(l27, y23, -x23, y31, x31, y12, x12);
        Corner(l27[9..], y31, -x31, y12, x12, y23, x23);
        Corner(l27[18..], y12, -x12, y23, x23, y31, x31);

        // The side across from the corner gives the forces; the two sides at it, next and last, the moment.
        static void Corner(Span<double> rows, double y, double x, double nextY, double nextX, double lastY, double lastX)
        {
            const double Third = Alpha / 3, Sixth = Alpha / 6;
            (rows[0], rows[1], rows[2]) = (0.5 * y, 0, 0.5 * x);
            (rows[3], rows[4], rows[5]) = (0, 0.5 * x, 0.5 * y);
            rows[6] = 0.5 * Sixth * y * (lastY - nextY);
            rows[7] = 0.5 * Sixth * x * (nextX - lastX);
            rows[8] = 0.5 * Third * (lastX * lastY - nextX * nextY);
        }
    }

    /// <summary>Adds the stiffness of a sheet of unit thickness.</summary>
    /// <param name="E">Modulus of plane stress E/(1 − ν²), Pa.</param>
    /// <param name="nu">Poisson's ratio.</param>
    /// <param name="k81">Receives the sum, N/m² of thickness.</param>
    public void AddStiffness(double E, double nu, Span<double> k81)
    {
        ReadOnlySpan<double> D = [E, nu * E, 0, nu * E, E, 0, 0, 0, 0.5 * (1 - nu) * E];
        Span<double> L = stackalloc double[3 * Size];
        Lumping(L);
        AddProduct(L, D, 1 / Area, k81);
        AddHigher(D, 0.75 * Math.Max(LeastHigher, 0.5 * (1 - 4 * nu * nu)), k81);
    }

    /// <summary>Adds s L D Lᵀ for nine rows of three.</summary>
    private static void AddProduct(ReadOnlySpan<double> L, ReadOnlySpan<double> D, double s, Span<double> k)
    {
        for (int i = 0; i < Size; i++)
        {
            double a = s * (L[3 * i] * D[0] + L[3 * i + 1] * D[3] + L[3 * i + 2] * D[6]);
            double b = s * (L[3 * i] * D[1] + L[3 * i + 1] * D[4] + L[3 * i + 2] * D[7]);
            double c = s * (L[3 * i] * D[2] + L[3 * i + 1] * D[5] + L[3 * i + 2] * D[8]);
            for (int j = 0; j < Size; j++)
                k[Size * i + j] += a * L[3 * j] + b * L[3 * j + 1] + c * L[3 * j + 2];
        }
    }

    /// <summary>Adds the stiffness against what the corners turn more than the sheet does.</summary>
    private void AddHigher(ReadOnlySpan<double> D, double factor, Span<double> k)
    {
        double A = Area, l21 = x12 * x12 + y12 * y12, l32 = x23 * x23 + y23 * y23, l13 = x31 * x31 + y31 * y31;
        double s = 1 / (4 * A * A);
        (double x13, double x21, double x32, double y13, double y21, double y32) = (-x31, -x12, -x23, -y31, -y12, -y23);
        // Strains along the three sides to strains in x and y.
        ReadOnlySpan<double> T =
        [
            s * y23 * y13 * l21, s * y31 * y21 * l32, s * y12 * y32 * l13,
            s * x23 * x13 * l21, s * x31 * x21 * l32, s * x12 * x32 * l13,
            s * (y23 * x31 + x32 * y13) * l21, s * (y31 * x12 + x13 * y21) * l32, s * (y12 * x23 + x21 * y32) * l13,
        ];
        Span<double> natural = stackalloc double[9], rotations = stackalloc double[9];
        natural.Clear();
        rotations.Clear();
        for (int i = 0; i < 3; i++)
            for (int j = 0; j < 3; j++)
                for (int p = 0; p < 3; p++)
                    for (int q = 0; q < 3; q++)
                        natural[3 * i + j] += T[3 * p + i] * D[3 * p + q] * T[3 * q + j];

        double c = 2 * A / 3, c1 = c / l21, c2 = c / l32, c3 = c / l13;
        // Strains along the sides at the corners by the rotations there: β = 1, 2, 1, 0, 1, −1, −1, −1, −2.
        ReadOnlySpan<double> Q1 = [c1, 2 * c1, c1, 0, c2, -c2, -c3, -c3, -2 * c3];
        ReadOnlySpan<double> Q2 = [-2 * c1, -c1, -c1, c2, c2, 2 * c2, -c3, 0, c3];
        ReadOnlySpan<double> Q3 = [c1, -c1, 0, -c2, -2 * c2, -c2, 2 * c3, c3, c3];
        AddMiddle(Q1, Q2, natural, A, rotations);
        AddMiddle(Q2, Q3, natural, A, rotations);
        AddMiddle(Q3, Q1, natural, A, rotations);

        double f = 1 / (4 * A);
        ReadOnlySpan<double> all = [f * x32, f * y32, 0, f * x13, f * y13, 0, f * x21, f * y21, 0];
        Span<double> turn = stackalloc double[3 * Size];
        for (int i = 0; i < 3; i++)
        {
            all.CopyTo(turn[(Size * i)..]);
            turn[Size * i + 3 * i + 2] = 1;
        }
        for (int i = 0; i < Size; i++)
            for (int j = 0; j < Size; j++)
                for (int p = 0; p < 3; p++)
                    for (int q = 0; q < 3; q++)
                        k[Size * i + j] += factor * turn[Size * p + i] * rotations[3 * p + q] * turn[Size * q + j];
    }

    /// <summary>Adds A Qᵀ E Q for the mean of two corners: the three middles of the sides make the integral.</summary>
    private static void AddMiddle(ReadOnlySpan<double> first, ReadOnlySpan<double> second, ReadOnlySpan<double> natural, double A, Span<double> k9)
    {
        Span<double> Q = stackalloc double[9];
        for (int i = 0; i < 9; i++)
            Q[i] = 0.5 * (first[i] + second[i]);
        for (int i = 0; i < 3; i++)
            for (int j = 0; j < 3; j++)
                for (int p = 0; p < 3; p++)
                    for (int q = 0; q < 3; q++)
                        k9[3 * i + j] += A * Q[3 * p + i] * natural[3 * p + q] * Q[3 * q + j];
    }
}
