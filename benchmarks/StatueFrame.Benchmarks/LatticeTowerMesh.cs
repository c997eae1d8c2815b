using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Benchmarks;

/// <summary>
/// A lattice tower meshed member by member: legs of beams from panel point to panel point, braces, horizontals and plan
/// bracing all with elements of their own and stiff joints. Tall towers repeat the cross-section's grid of legs so that size
/// grows in all three directions, as the frame inside a large figure does.
/// </summary>
internal static class LatticeTowerMesh
{
    private const double Bay = 1.5;

    /// <summary>A tower whose number of freedoms is near a wanted one.</summary>
    /// <param name="freedoms">How many freedoms.</param>
    public static Frame OfFreedoms(int freedoms)
    {
        // Height is ten times the width; (w + 1)² legs and 10 w panels.
        int width = 1;
        while (6.0 * (width + 2) * (width + 2) * 10 * (width + 1) <= freedoms)
            width++;
        return Of(width, (int)Math.Round(freedoms / (6.0 * (width + 1) * (width + 1))));
    }

    /// <summary>A tower of some cells across and panels up; its foot is held.</summary>
    public static Frame Of(int width, int panels)
    {
        var builder = new FrameBuilder();
        for (int k = 0; k <= panels; k++)
            for (int j = 0; j <= width; j++)
                for (int i = 0; i <= width; i++)
                    builder.AddNode(At(i, j, k));
        for (int i = 0; i < (width + 1) * (width + 1); i++)
            builder.Restrain(i, Freedoms.All);
        BeamSection leg = Tube(0.14, 0.010), brace = Tube(0.08, 0.006);
        for (int k = 0; k <= panels; k++)
            for (int j = 0; j <= width; j++)
                for (int i = 0; i <= width; i++)
                {
                    Join(i, j, k, i, j, k + 1, leg);
                    if (k == 0)
                        continue;
                    Join(i, j, k, i + 1, j, k, brace);
                    Join(i, j, k, i, j + 1, k, brace);
                    Join(i, j, k, i + 1, j, k - 1, brace);
                    Join(i + 1, j, k, i, j, k - 1, brace);
                    Join(i, j, k, i, j + 1, k - 1, brace);
                    Join(i, j + 1, k, i, j, k - 1, brace);
                    if (k % 4 == 0)
                        Join(i, j, k, i + 1, j + 1, k, brace);
                }
        return builder.Build();

        int NodeOf(int i, int j, int k) => (k * (width + 1) + j) * (width + 1) + i;

        Vector3D At(int i, int j, int k)
        {
            double taper = 1 - 0.4 * k / panels;
            return new Vector3D(taper * Bay * (i - 0.5 * width), taper * Bay * (j - 0.5 * width), Bay * k);
        }

        void Join(int i, int j, int k, int i2, int j2, int k2, BeamSection section)
        {
            if (Math.Max(i, i2) > width || Math.Max(j, j2) > width || k2 > panels)
                return;
            (int a, int b) = (NodeOf(i, j, k), NodeOf(i2, j2, k2));
            builder.Add(new BeamElement(a, At(i, j, k), b, At(i2, j2, k2), new BeamDefinition(section)));
        }
    }

    private static BeamSection Tube(double diameter, double wall)
    {
        const double E = 210e9, G = 81e9, density = 7850;
        double inner = diameter - 2 * wall, A = Math.PI / 4 * (diameter * diameter - inner * inner);
        double I = Math.PI / 64 * (Math.Pow(diameter, 4) - Math.Pow(inner, 4));
        return new BeamSection
        {
            EA = E * A,
            EIy = E * I,
            EIz = E * I,
            GJ = 2 * G * I,
            GAy = 0.5 * G * A,
            GAz = 0.5 * G * A,
            Mass = density * A,
            RotaryY = density * I,
            RotaryZ = density * I,
        };
    }
}
