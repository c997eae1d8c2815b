namespace StatueFrame.Shape;

/// <summary>Numbers vertices so that equal coordinates get one number: an open hash table over growing flat arrays.</summary>
/// <remarks>Not safe to share between threads.</remarks>
internal sealed class VertexTable
{
    private double[] coordinates = new double[3 * 1024];
    private int[] slots = new int[4096];
    private int count;

    public int Count => count;

    /// <summary>The number of the vertex at these coordinates, new or known.</summary>
    public int Add(double x, double y, double z)
    {
        // Minus zero equals zero.
        x += 0.0;
        y += 0.0;
        z += 0.0;
        int mask = slots.Length - 1, slot = Hash(x, y, z) & mask;
        for (; slots[slot] != 0; slot = (slot + 1) & mask)
        {
            int known = slots[slot] - 1;
            if (coordinates[3 * known] == x && coordinates[3 * known + 1] == y && coordinates[3 * known + 2] == z)
                return known;
        }
        if (3 * (count + 1) > coordinates.Length)
            Array.Resize(ref coordinates, 2 * coordinates.Length);
        (coordinates[3 * count], coordinates[3 * count + 1], coordinates[3 * count + 2]) = (x, y, z);
        slots[slot] = ++count;
        if (2 * count > slots.Length)
            Grow();
        return count - 1;
    }

    public double[] ToArray() => coordinates.AsSpan(0, 3 * count).ToArray();

    private void Grow()
    {
        slots = new int[2 * slots.Length];
        int mask = slots.Length - 1;
        for (int i = 0; i < count; i++)
        {
            int slot = Hash(coordinates[3 * i], coordinates[3 * i + 1], coordinates[3 * i + 2]) & mask;
            while (slots[slot] != 0)
                slot = (slot + 1) & mask;
            slots[slot] = i + 1;
        }
    }

    private static int Hash(double x, double y, double z)
    {
        ulong h = (BitConverter.DoubleToUInt64Bits(x) * 0x9E3779B97F4A7C15UL)
            ^ (BitConverter.DoubleToUInt64Bits(y) * 0xC2B2AE3D27D4EB4FUL)
            ^ (BitConverter.DoubleToUInt64Bits(z) * 0x165667B19E3779F9UL);
        h ^= h >> 29;
        h *= 0xBF58476D1CE4E5B9UL;
        return (int)((h ^ (h >> 32)) & 0x7FFFFFFF);
    }
}
