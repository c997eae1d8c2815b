namespace StatueFrame.Reporting;

/// <summary>The paper that a calculation package is laid out for.</summary>
public enum PaperSize
{
    /// <summary>210 mm by 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8.5 in by 11 in (ANSI/ASME Y14.1, size A).</summary>
    Letter,
}
