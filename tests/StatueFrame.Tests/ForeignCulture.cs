using System.Globalization;
using System.Runtime.CompilerServices;

namespace StatueFrame.Tests;

/// <summary>All tests run under a culture that writes numbers unlike the invariant one, so that text which follows it fails.</summary>
internal static class ForeignCulture
{
    [ModuleInitializer]
    public static void Set()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        culture.NumberFormat.NegativeSign = "−";
        CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = culture;
    }
}
