using System.Globalization;
using System.Text;
using StatueFrame.Mechanics;

namespace StatueFrame.Reporting;

/// <summary>
/// Writes a drawing as DXF of release 12: a header, a table of layers, polylines and texts, each value on a line of its own
/// below its group code. No kept library that writes the format is in the package registry that this project builds from.
/// </summary>
internal static class DrawingDxf
{
    private const double TextHeight = 2.5;

    public static string Of(Drawing drawing)
    {
        var dxf = new StringBuilder();
        Vector3D least = drawing.Least, most = drawing.Most;
        Put(0, "SECTION");
        Put(2, "HEADER");
        Put(9, "$ACADVER");
        Put(1, "AC1009");
        Put(9, "$EXTMIN");
        At(10, least);
        Put(9, "$EXTMAX");
        At(10, most);
        Put(0, "ENDSEC");
        Put(0, "SECTION");
        Put(2, "TABLES");
        Put(0, "TABLE");
        Put(2, "LAYER");
        DrawnLayer[] layers = Enum.GetValues<DrawnLayer>();
        Put(70, layers.Length.ToString(CultureInfo.InvariantCulture));
        foreach (DrawnLayer layer in layers)
        {
            Put(0, "LAYER");
            Put(2, Name(layer));
            Put(70, "0");
            Put(62, "7");
            Put(6, "CONTINUOUS");
        }
        Put(0, "ENDTAB");
        Put(0, "ENDSEC");
        Put(0, "SECTION");
        Put(2, "ENTITIES");
        foreach (DrawnLine line in drawing.Lines)
        {
            Put(0, "POLYLINE");
            Put(8, Name(line.Layer));
            Put(66, "1");
            At(10, Vector3D.Zero);
            Put(70, line.Closed ? "1" : "0");
            foreach (Vector3D p in line.Points)
            {
                Put(0, "VERTEX");
                Put(8, Name(line.Layer));
                At(10, p);
            }
            Put(0, "SEQEND");
            Put(8, Name(line.Layer));
        }
        double height = TextHeight * drawing.Scale;
        foreach (DrawnText text in drawing.Texts)
        {
            Put(0, "TEXT");
            Put(8, Name(DrawnLayer.Text));
            At(10, text.At);
            Put(40, Number(height));
            Put(1, Ascii(text.Text));
            Put(50, text.Upright ? "90" : "0");
            // Middle of the word at its second point.
            Put(72, "4");
            At(11, text.At);
        }
        Put(0, "ENDSEC");
        Put(0, "EOF");
        return dxf.ToString();

        void Put(int code, string value) => dxf.Append(CultureInfo.InvariantCulture, $"{code,3}\r\n{value}\r\n");

        void At(int code, Vector3D p)
        {
            Put(code, Number(1000 * p.X));
            Put(code + 10, Number(1000 * p.Y));
            Put(code + 20, "0");
        }
    }

    private static string Name(DrawnLayer layer) => layer.ToString().ToUpperInvariant();

    private static string Number(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>The word on one line in ASCII, other characters as \U+ and their number.</summary>
    private static string Ascii(string text)
    {
        var ascii = new StringBuilder();
        foreach (char c in text)
        {
            if (c is >= ' ' and <= '~')
                ascii.Append(c);
            else
                ascii.Append(CultureInfo.InvariantCulture, $"\\U+{(int)c:X4}");
        }
        return ascii.ToString();
    }
}
