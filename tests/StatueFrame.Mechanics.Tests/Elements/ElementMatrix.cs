using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Mechanics.Tests.Elements;

/// <summary>The matrices of an element as arrays, and the numbers that tests ask of them.</summary>
internal static class ElementMatrix
{
    public static double[] Stiffness(FrameElement element)
    {
        var k = new double[144];
        element.AddStiffness(k);
        return k;
    }

    public static double[] Mass(FrameElement element)
    {
        var m = new double[144];
        element.AddMass(m);
        return m;
    }

    public static double[] Geometric(FrameElement element, double[] u)
    {
        var kg = new double[144];
        element.AddGeometricStiffness(u, kg);
        return kg;
    }

    public static Func<FrameElement, double[]> Geometric(Func<FrameElement, double[]> displacements) =>
        element => Geometric(element, displacements(element));

    /// <summary>xᵀ M y.</summary>
    public static double Form(double[] m, double[] x, double[] y)
    {
        int n = x.Length;
        double sum = 0;
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++)
                sum += x[i] * m[n * i + j] * y[j];
        return sum;
    }

    /// <summary>The displacements of two nodes that move as one rigid body.</summary>
    public static double[] RigidMotion(Vector3D move, Vector3D turn, Vector3D start, Vector3D end)
    {
        return [.. At(start), .. At(end)];

        double[] At(Vector3D position)
        {
            Vector3D u = move + turn.Cross(position);
            return [u.X, u.Y, u.Z, turn.X, turn.Y, turn.Z];
        }
    }

    public static double Largest(double[] values) => values.Max(Math.Abs);

    /// <summary>All values agree within the tolerance times the largest of them plus a floor.</summary>
    public static void AssertClose(double[] expected, double[] actual, double tolerance, double floor = 0)
    {
        double scale = Largest(expected) + floor;
        for (int i = 0; i < expected.Length; i++)
            Assert.True(Math.Abs(expected[i] - actual[i]) <= tolerance * scale,
                $"value {i}: expected {expected[i]}, is {actual[i]}, largest {scale}");
    }
}
