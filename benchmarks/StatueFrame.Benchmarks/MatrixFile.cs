using System.Runtime.InteropServices;
using StatueFrame.Mechanics.Sparse;

namespace StatueFrame.Benchmarks;

/// <summary>
/// A symmetric sparse matrix as a file for other programs: order and number of entries (64-bit integers), column starts and
/// rows (32-bit), values (doubles); the lower triangle column by column, little endian.
/// </summary>
internal static class MatrixFile
{
    public static void Write(string path, SymmetricMatrix matrix)
    {
        using FileStream file = File.Create(path);
        long[] sizes = [matrix.Order, matrix.Pattern.Count];
        file.Write(MemoryMarshal.AsBytes<long>(sizes));
        file.Write(MemoryMarshal.AsBytes(matrix.Pattern.ColumnStarts));
        file.Write(MemoryMarshal.AsBytes(matrix.Pattern.Rows));
        file.Write(MemoryMarshal.AsBytes<double>(matrix.Values));
    }
}
