using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using StatueFrame.Mechanics;

namespace StatueFrame.Studies;

/// <summary>One flat bar over all load cases at once, four of them in a vector. SI units; see <see cref="BarStiffness"/> for the formulas.</summary>
/// <remarks>Stateless; safe to use from many threads. Spans over load cases have a whole number of vectors.</remarks>
internal static class BarSweep
{
    /// <summary>Values that <see cref="FindRows"/> fills in.</summary>
    public const int RowsLength = Rows * Node;

    private const int Node = Frame.NodeSize, Rows = 8, Lanes = 4;
    private const double NegligibleForce = 1e-9;

    /// <summary>
    /// The rows that take the motion of the band's node to: axial force; weak and strong moment at the tower end, and at the
    /// skin end; the three displacements of the skin end without slip.
    /// </summary>
    /// <param name="stiffness">The bar.</param>
    /// <param name="k">Its 6×6.</param>
    /// <param name="motion">The 6×6 of <see cref="RingPart.Motions"/>.</param>
    /// <param name="forces">Receives the 6×6 that gives the forces at the skin end.</param>
    /// <param name="rows">Receives the rows.</param>
    public static void FindRows(BarStiffness stiffness, ReadOnlySpan<double> k, ReadOnlySpan<double> motion, Span<double> forces, Span<double> rows)
    {
        Multiply(k, motion, forces);
        Span<double> slid = stackalloc double[Node];
        for (int j = 0; j < Node; j++)
        {
            rows[j] = forces[j];
            rows[Node + j] = -forces[5 * Node + j] - stiffness.Length * forces[Node + j];
            rows[2 * Node + j] = -forces[4 * Node + j] + stiffness.Length * forces[2 * Node + j];
            rows[3 * Node + j] = forces[5 * Node + j];
            rows[4 * Node + j] = forces[4 * Node + j];
            for (int i = 0; i < Node; i++)
                slid[i] = motion[i * Node + j];
            stiffness.RemoveSlip(slid);
            (rows[5 * Node + j], rows[6 * Node + j], rows[7 * Node + j]) = (slid[0], slid[1], slid[2]);
        }
    }

    /// <summary>Adds Tᵀ F for two 6×6 matrices to a third.</summary>
    public static void AddTransposedProduct(ReadOnlySpan<double> t, ReadOnlySpan<double> f, Span<double> sum)
    {
        for (int k = 0; k < Node; k++)
        {
            ReadOnlySpan<double> row = f.Slice(k * Node, Node);
            for (int i = 0; i < Node; i++)
            {
                double factor = t[k * Node + i];
                if (factor != 0)
                    AddRow(factor, row, sum.Slice(i * Node, Node));
            }
        }
    }

    /// <summary>Stress and deflection of a bar on its rigid ring.</summary>
    /// <param name="rows">From <see cref="FindRows"/>.</param>
    /// <param name="b">Width, m.</param>
    /// <param name="t">Thickness, m.</param>
    /// <param name="motion">Per direction and load case, the motion of the band's node relative to where the level would carry it.</param>
    /// <param name="stress">Receives the greater normal stress of the two ends, Pa.</param>
    /// <param name="deflection">Receives the deflection, m.</param>
    public static void OnRing(ReadOnlySpan<double> rows, double b, double t, ReadOnlySpan<double> motion, Span<double> stress, Span<double> deflection)
    {
        int stride = stress.Length;
        (double perWidth, double perThickness) = (1 / b, 1 / t);
        ref double u = ref MemoryMarshal.GetReference(motion);
        ref double row = ref MemoryMarshal.GetReference(rows);
        for (int c = 0; c < stride; c += Lanes)
        {
            var u0 = Vector256.LoadUnsafe(ref u, (nuint)c);
            var u1 = Vector256.LoadUnsafe(ref u, (nuint)(stride + c));
            var u2 = Vector256.LoadUnsafe(ref u, (nuint)(2 * stride + c));
            var u3 = Vector256.LoadUnsafe(ref u, (nuint)(3 * stride + c));
            var u4 = Vector256.LoadUnsafe(ref u, (nuint)(4 * stride + c));
            var u5 = Vector256.LoadUnsafe(ref u, (nuint)(5 * stride + c));
            Vector256<double> axial = Row(ref row, 0), weakTower = Row(ref row, 1), strongTower = Row(ref row, 2);
            Vector256<double> weakSkin = Row(ref row, 3), strongSkin = Row(ref row, 4);
            Vector256<double> atTower = Vector256.Abs(weakTower) * perThickness + Vector256.Abs(strongTower) * perWidth;
            Vector256<double> atSkin = Vector256.Abs(weakSkin) * perThickness + Vector256.Abs(strongSkin) * perWidth;
            Vector256<double> normal = (Vector256.Abs(axial) + 6 * Vector256.Max(atTower, atSkin)) * perWidth * perThickness;
            normal.StoreUnsafe(ref MemoryMarshal.GetReference(stress), (nuint)c);
            Vector256<double> x = Row(ref row, 5), y = Row(ref row, 6), z = Row(ref row, 7);
            Vector256.Sqrt(x * x + y * y + z * z).StoreUnsafe(ref MemoryMarshal.GetReference(deflection), (nuint)c);

            [MethodImpl(MethodImplOptions.AggressiveInlining)]
            Vector256<double> Row(ref double rows, int at)
            {
                ref double r = ref Unsafe.Add(ref rows, at * Node);
                Vector256<double> even = u0 * r + u2 * Unsafe.Add(ref r, 2) + u4 * Unsafe.Add(ref r, 4);
                Vector256<double> odd = u1 * Unsafe.Add(ref r, 1) + u3 * Unsafe.Add(ref r, 3) + u5 * Unsafe.Add(ref r, 5);
                return even + odd;
            }
        }
    }

    /// <summary>Stress and deflection of a bar alone under its strip of limp skin; not a number where it cannot stand.</summary>
    /// <param name="bar">The bar.</param>
    /// <param name="b">Width, m.</param>
    /// <param name="t">Thickness, m.</param>
    /// <param name="strip">Per direction and load case, the force on the strip without its weight, N.</param>
    /// <param name="weight">Weight of the strip in bar axes, N.</param>
    /// <param name="stress">Receives the stress, Pa.</param>
    /// <param name="deflection">Receives the deflection, m.</param>
    public static void Alone(
        in Cantilever bar, double b, double t, ReadOnlySpan<double> strip, Vector3D weight, Span<double> stress, Span<double> deflection)
    {
        int stride = stress.Length;
        (double perWidth, double perThickness) = (1 / b, 1 / t);
        (double tipY, double tipZ) = (double.IsFinite(bar.Weak) ? bar.Weak : 0, double.IsFinite(bar.Strong) ? bar.Strong : 0);
        ref double force = ref MemoryMarshal.GetReference(strip);
        for (int c = 0; c < stride; c += Lanes)
        {
            Vector256<double> x = Vector256.LoadUnsafe(ref force, (nuint)c) + Vector256.Create(weight.X);
            Vector256<double> y = Vector256.LoadUnsafe(ref force, (nuint)(stride + c)) + Vector256.Create(weight.Y);
            Vector256<double> z = Vector256.LoadUnsafe(ref force, (nuint)(2 * stride + c)) + Vector256.Create(weight.Z);
            Vector256<double> least = NegligibleForce * Vector256.Sqrt(x * x + y * y + z * z);
            Vector256<double> bendsWeak = Vector256.GreaterThan(Vector256.Abs(y), least), bendsStrong = Vector256.GreaterThan(Vector256.Abs(z), least);
            y &= bendsWeak;
            z &= bendsStrong;
            Vector256<double> moment = bar.Length * (Vector256.Abs(y) * perThickness + Vector256.Abs(z) * perWidth);
            Vector256<double> normal = (Vector256.Abs(x) + 6 * moment) * perWidth * perThickness;
            Vector256<double> dx = x * bar.Axial, dy = y * tipY, dz = z * tipZ;
            Vector256<double> moved = Vector256.Sqrt(dx * dx + dy * dy + dz * dz);
            Vector256<double> falls = (double.IsInfinity(bar.Weak) ? bendsWeak : default) | (double.IsInfinity(bar.Strong) ? bendsStrong : default);
            var none = Vector256.Create(double.NaN);
            Vector256.ConditionalSelect(falls, none, normal).StoreUnsafe(ref MemoryMarshal.GetReference(stress), (nuint)c);
            Vector256.ConditionalSelect(falls, none, moved).StoreUnsafe(ref MemoryMarshal.GetReference(deflection), (nuint)c);
        }
    }

    private static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> product)
    {
        product.Clear();
        for (int i = 0; i < Node; i++)
        {
            for (int k = 0; k < Node; k++)
            {
                double factor = a[i * Node + k];
                if (factor != 0)
                    AddRow(factor, b.Slice(k * Node, Node), product.Slice(i * Node, Node));
            }
        }
    }

    private static void AddRow(double factor, ReadOnlySpan<double> row, Span<double> sum)
    {
        (Vector256.Create<double>(sum) + factor * Vector256.Create<double>(row)).CopyTo(sum);
        sum[4] += factor * row[4];
        sum[5] += factor * row[5];
    }
}

/// <summary>What a unit force at the tip of a bar alone moves it: along it, along its thickness, along its width; m/N. Infinite where a hinge lets it swing.</summary>
internal readonly record struct Cantilever(double Length, double Axial, double Weak, double Strong)
{
    public static Cantilever Of(BarStiffness bar)
    {
        Span<double> forces = stackalloc double[12], tip = stackalloc double[6];
        return new Cantilever(bar.Length, Tip(0, Vector3D.UnitX, forces, tip), Tip(1, Vector3D.UnitY, forces, tip), Tip(2, Vector3D.UnitZ, forces, tip));

        double Tip(int at, Vector3D force, Span<double> forces, Span<double> tip) =>
            bar.Cantilever(force, forces, tip) ? tip[at] : double.PositiveInfinity;
    }
}
