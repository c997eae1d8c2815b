namespace StatueFrame.Studies;

/// <summary>
/// Uniform random numbers by index: a pure function of seed, sample and dimension, so that a study has the same bits on
/// any number of threads and in any split.
/// </summary>
/// <remarks>Stateless; safe to use from many threads. Source: the SplitMix64 finalizer (Steele, Lea and Flood, OOPSLA 2014).</remarks>
internal static class RandomStream
{
    private static readonly int[] primes = Primes(64);

    /// <summary>A number between 0 and 1, both excluded.</summary>
    public static double Uniform(ulong seed, long sample, int dimension)
    {
        ulong z = Mix(seed + 0x9E3779B97F4A7C15UL * (ulong)(sample + 1));
        z = Mix(z ^ 0xD1B54A32D192ED03UL * (ulong)(dimension + 1));
        return ((z >> 11) + 0.5) * (1.0 / (1UL << 53));
    }

    /// <summary>Whole numbers of a seed, as random as the uniform ones.</summary>
    public static ulong Hash(ulong seed, long number) => Mix(Mix(seed + 0x9E3779B97F4A7C15UL * (ulong)(number + 1)) ^ 0xD1B54A32D192ED03UL);

    /// <summary>
    /// A point of Halton's sequence with a random shift: radical inverse in the base of the dimension's prime, plus a shift by
    /// the seed, modulo 1. For up to 64 dimensions.
    /// </summary>
    public static double Halton(ulong seed, long sample, int dimension)
    {
        double shifted = RadicalInverse(sample + 1, primes[dimension]) + Uniform(seed, -2, dimension);
        shifted -= Math.Floor(shifted);
        return Math.Clamp(shifted, 1e-15, 1 - 1e-15);
    }

    /// <summary>The digits of a number in a base, mirrored at the point.</summary>
    internal static double RadicalInverse(long number, int radix)
    {
        double inverse = 0, place = 1.0 / radix;
        for (long n = number; n > 0; n /= radix, place /= radix)
            inverse += n % radix * place;
        return inverse;
    }

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    private static int[] Primes(int count)
    {
        var found = new List<int>();
        for (int n = 2; found.Count < count; n++)
        {
            if (found.TrueForAll(p => n % p != 0))
                found.Add(n);
        }
        return [.. found];
    }
}
