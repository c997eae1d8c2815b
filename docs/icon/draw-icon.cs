// Draws the packages' icon, an invented heron, to heron.png beside this script: dotnet run docs/icon/draw-icon.cs

using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.CompilerServices;

const int Size = 128, Samples = 4;

(double X, double Y)[] body = [(34, 66), (46, 56), (62, 54), (76, 60), (88, 76), (104, 92), (86, 88), (70, 88), (52, 82), (40, 74)];
(double X, double Y)[] neck = [(34, 68), (30, 54), (34, 42), (40, 32), (38, 24), (44, 18), (52, 20), (54, 26), (46, 40), (41, 52), (46, 60)];
(double X, double Y)[] bill = [(41, 19), (40, 27), (10, 32)];
(double X, double Y)[] crest = [(48, 18), (54, 24), (74, 30)];
(double X, double Y)[][] legs = [[(58, 84), (61, 84), (59, 114), (55, 114)], [(68, 86), (71, 86), (75, 114), (71, 114)]];
(double X, double Y)[] mole = [(26, 113), (104, 113), (110, 122), (20, 122)];
(byte R, byte G, byte B) copper = (166, 80, 30), graphite = (38, 41, 44), paper = (246, 243, 238);

byte[] rows = new byte[Size * (1 + 3 * Size)];
for (int y = 0; y < Size; y++)
{
    for (int x = 0; x < Size; x++)
    {
        double r = 0, g = 0, b = 0;
        for (int s = 0; s < Samples * Samples; s++)
        {
            (byte R, byte G, byte B) color = ColorAt(x + (s % Samples + 0.5) / Samples, y + (s / Samples + 0.5) / Samples);
            (r, g, b) = (r + color.R, g + color.G, b + color.B);
        }
        int at = y * (1 + 3 * Size) + 1 + 3 * x;
        (rows[at], rows[at + 1], rows[at + 2]) = (Mean(r), Mean(g), Mean(b));
    }
}

using var png = File.Create(Path.Combine(Here(), "heron.png"));
png.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
byte[] header = new byte[13];
BinaryPrimitives.WriteInt32BigEndian(header, Size);
BinaryPrimitives.WriteInt32BigEndian(header.AsSpan(4), Size);
(header[8], header[9]) = (8, 2);
Chunk("IHDR"u8, header);
using (var packed = new MemoryStream())
{
    using (var zlib = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        zlib.Write(rows);
    Chunk("IDAT"u8, packed.ToArray());
}
Chunk("IEND"u8, []);

(byte R, byte G, byte B) ColorAt(double x, double y) =>
    Inside(mole, x, y) || legs.Any(leg => Inside(leg, x, y)) || Inside(crest, x, y) || Inside(bill, x, y) ? graphite
    : Inside(body, x, y) || Inside(neck, x, y) ? copper
    : paper;

static byte Mean(double sum) => (byte)Math.Round(sum / (Samples * Samples));

static bool Inside((double X, double Y)[] polygon, double x, double y)
{
    bool inside = false;
    for (int i = 0, j = polygon.Length - 1; i < polygon.Length; j = i++)
    {
        ((double xi, double yi), (double xj, double yj)) = (polygon[i], polygon[j]);
        if (yi > y != yj > y && x < (xj - xi) * (y - yi) / (yj - yi) + xi)
            inside = !inside;
    }
    return inside;
}

void Chunk(ReadOnlySpan<byte> type, ReadOnlySpan<byte> data)
{
    byte[] body = [.. type, .. data];
    byte[] number = new byte[4];
    BinaryPrimitives.WriteInt32BigEndian(number, data.Length);
    png.Write(number);
    png.Write(body);
    BinaryPrimitives.WriteUInt32BigEndian(number, Crc(body));
    png.Write(number);
}

static uint Crc(ReadOnlySpan<byte> bytes)
{
    uint crc = 0xFFFFFFFF;
    foreach (byte b in bytes)
    {
        crc ^= b;
        for (int k = 0; k < 8; k++)
            crc = (crc & 1) != 0 ? 0xEDB88320 ^ (crc >> 1) : crc >> 1;
    }
    return ~crc;
}

static string Here([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
