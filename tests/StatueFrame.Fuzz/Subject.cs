namespace StatueFrame.Fuzz;

/// <summary>Something that is spoiled, and what the library promises to do with it then.</summary>
/// <remarks>Immutable; every try is made from its own random numbers alone.</remarks>
internal abstract class Subject
{
    /// <summary>What it is, in the plural.</summary>
    public abstract string Name { get; }

    /// <summary>How often it is tried beside the others.</summary>
    public abstract int Weight { get; }

    /// <summary>A spoiled one.</summary>
    public abstract byte[] Spoiled(Random random);

    /// <summary>Those that must be taken as they are.</summary>
    public abstract IEnumerable<byte[]> SoundOnes();

    /// <summary>What went wrong; null when nothing did.</summary>
    /// <param name="spoiled">What <see cref="Spoiled"/> gave.</param>
    /// <param name="number">Number of the try.</param>
    /// <param name="taken">Whether it was taken rather than refused.</param>
    public abstract string? Judge(byte[] spoiled, int number, out bool taken);

    /// <summary>Changes some bytes, or cuts or doubles a piece.</summary>
    protected static byte[] Bytes(byte[] sound, Random random)
    {
        byte[] bytes = [.. sound];
        for (int i = 1 + random.Next(5); i > 0 && bytes.Length > 0; i--)
        {
            int at = random.Next(bytes.Length), length = random.Next(1, 64);
            switch (random.Next(10))
            {
                case 0:
                    bytes = bytes[..at];
                    break;
                case 1:
                    bytes = [.. bytes[..at], .. bytes[Math.Min(bytes.Length, at + length)..]];
                    break;
                case 2:
                    bytes = [.. bytes[..at], .. bytes[at..Math.Min(bytes.Length, at + length)], .. bytes[at..]];
                    break;
                case 3:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                default:
                    bytes[at] = (byte)random.Next(256);
                    break;
            }
        }
        return bytes;
    }
}
