namespace StatueFrame.Mechanics.Statics;

/// <summary>
/// Vectors without any symmetry to start an iteration from, the same in every run: a linear congruential generator with
/// the constants of Knuth's MMIX (The Art of Computer Programming, vol. 2, 3.3.4).
/// </summary>
internal struct StartVectors()
{
    private ulong state = 0x5DEECE66D;

    /// <summary>Fills the vector with numbers between −1 and 1.</summary>
    public void Fill(Span<double> x)
    {
        for (int i = 0; i < x.Length; i++)
        {
            state = unchecked(state * 6364136223846793005UL + 1442695040888963407UL);
            x[i] = (state >> 11) * (1.0 / (1UL << 52)) - 1;
        }
    }
}
