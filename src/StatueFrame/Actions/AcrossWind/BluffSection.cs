using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// A cross-section as the wind sees it: how often it sheds vortices (Strouhal number), how hard they push it sideways, and
/// how prone it is to galloping.
/// </summary>
/// <remarks>
/// Immutable and safe to share between threads. Widths b are across the wind, depths d along it. Source:
/// EN 1991-1-4:2005, Tables E.1, E.2, E.6 and E.7, Figures E.1 and E.2.
/// </remarks>
public sealed record BluffSection
{
    /// <summary>Factor of galloping instability to take where none is known, E.2.2 (1).</summary>
    public const double UnknownGallopingFactor = 10;

    private const double RectangleLateral = 1.1;
    private static readonly double[] strouhalRatios = [0.5, 1, 2, 3, 3.5, 5, 10], strouhalValues = [0.12, 0.12, 0.06, 0.06, 0.15, 0.11, 0.09];
    private static readonly double[] gallopingRatios = [1.0 / 3, 0.5, 2.0 / 3, 1, 1.5, 2], gallopingValues = [0.4, 0.7, 1, 1.2, 1.7, 2];
    private static readonly double[] roundLogs = [Math.Log(3e5), Math.Log(5e5), Math.Log(5e6), Math.Log(1e7)], roundLaterals = [0.7, 0.2, 0.2, 0.3];
    private static readonly double[] spectralLogs = [Math.Log(1e5), Math.Log(5e5), Math.Log(1e6)], spectralConstants = [0.02, 0.005, 0.01], spectralDampings = [2, 0.5, 1];

    private BluffSection() { }

    /// <summary>A circle: St = 0.18, c_lat,0 by the Reynolds number, no galloping.</summary>
    public static BluffSection Round { get; } = new()
    {
        Name = "round",
        IsRound = true,
        StrouhalNumber = 0.18,
        GallopingFactor = 0,
        Source = Source.En1991_1_4("Tables E.1 and E.2, Figure E.2"),
    };

    /// <summary>A circle with ice: as <see cref="Round"/>, but a_G = 1.0.</summary>
    public static BluffSection RoundWithIce { get; } = Round with { Name = "round with ice", GallopingFactor = 1.0 };

    /// <summary>The section in words.</summary>
    public string Name { get; private init; } = "";

    /// <summary>Whether it is a circle.</summary>
    public bool IsRound { get; private init; }

    /// <summary>Strouhal number St: frequency of the vortices times width over wind speed.</summary>
    public double StrouhalNumber { get; private init; }

    /// <summary>Factor of galloping instability a_G; zero when the section does not gallop, null when it is not known.</summary>
    public double? GallopingFactor { get; private init; }

    /// <summary>Where the values come from.</summary>
    public Source Source { get; private init; } = Source.User;

    /// <summary>The basic lateral force coefficient, where it does not depend on the Reynolds number.</summary>
    internal double? LateralCoefficient { get; private init; }

    /// <summary>The ratio of a sharp rectangle.</summary>
    internal double? DepthToWidth { get; private init; }

    /// <summary>A rectangle with sharp corners: St by Figure E.1, c_lat,0 = 1.1, a_G by Table E.7 for d/b from 1/3 to 2.</summary>
    /// <param name="depthToWidth">Depth along the wind over width across it d/b, 0.5 to 10; the standard allows no extrapolation.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is out of range.</exception>
    public static BluffSection Rectangle(double depthToWidth) => HasRectangle(depthToWidth)
        ? new()
        {
            Name = Invariant($"sharp rectangle, d/b {depthToWidth:0.00}"),
            DepthToWidth = depthToWidth,
            StrouhalNumber = Interpolate(strouhalRatios, strouhalValues, depthToWidth),
            LateralCoefficient = RectangleLateral,
            GallopingFactor = depthToWidth <= gallopingRatios[^1] ? Interpolate(gallopingRatios, gallopingValues, depthToWidth) : null,
            Source = Source.En1991_1_4("Figure E.1, Tables E.2 and E.7"),
        }
        : throw new ArgumentOutOfRangeException(nameof(depthToWidth), Invariant($"d/b must be from 0.5 to 10, is {depthToWidth}."));

    /// <summary>A section of the user's own, as measured in a wind tunnel.</summary>
    /// <param name="strouhalNumber">Strouhal number St, 0.03 to 0.5.</param>
    /// <param name="lateralCoefficient">Basic lateral force coefficient c_lat,0 at the Reynolds number of resonance, 0 to 5.</param>
    /// <param name="gallopingFactor">Factor of galloping instability a_G, 0 to 20; null when it is not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is out of range.</exception>
    public static BluffSection Given(double strouhalNumber, double lateralCoefficient, double? gallopingFactor = null) => new()
    {
        Name = "given",
        StrouhalNumber = Require(strouhalNumber, 0.03, 0.5, nameof(strouhalNumber)),
        LateralCoefficient = Require(lateralCoefficient, 0, 5, nameof(lateralCoefficient)),
        GallopingFactor = gallopingFactor is { } a ? Require(a, 0, 20, nameof(gallopingFactor)) : null,
    };

    /// <summary>
    /// Basic lateral force coefficient c_lat,0. For a circle 0.7 up to Re = 3·10⁵, 0.2 from 5·10⁵ to 5·10⁶, 0.3 from 10⁷ on,
    /// straight between over log Re.
    /// </summary>
    /// <param name="reynoldsNumber">Reynolds number at the critical wind speed, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The Reynolds number is not above 0.</exception>
    public double BasicLateralCoefficient(double reynoldsNumber) => reynoldsNumber is > 0 and < double.PositiveInfinity
        ? LateralCoefficient ?? Interpolate(roundLogs, roundLaterals, Math.Log(reynoldsNumber))
        : throw new ArgumentOutOfRangeException(nameof(reynoldsNumber), Invariant($"Must be above 0, is {reynoldsNumber}."));

    /// <summary>C_c and K_a,max of the spectral model, Table E.6: of a circle by the Reynolds number, straight between over log Re, and of a square within a tenth; null for others.</summary>
    internal (double C_c, double K_max)? SpectralConstants(double reynoldsNumber) =>
        IsRound ? (Interpolate(spectralLogs, spectralConstants, Math.Log(reynoldsNumber)), Interpolate(spectralLogs, spectralDampings, Math.Log(reynoldsNumber)))
        : DepthToWidth is > 0.9 and < 1.1 ? (0.04, 6)
        : null;

    /// <summary>The section in words.</summary>
    public override string ToString() => Name;

    internal static bool HasRectangle(double depthToWidth) => depthToWidth >= strouhalRatios[0] && depthToWidth <= strouhalRatios[^1];

    /// <summary>Straight between the points, and as at the ends beyond them.</summary>
    private static double Interpolate(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        if (at <= x[0])
            return y[0];
        int i = 1;
        while (i < x.Length && x[i] < at)
            i++;
        return i == x.Length ? y[^1] : double.Lerp(y[i - 1], y[i], (at - x[i - 1]) / (x[i] - x[i - 1]));
    }

    private static double Require(double value, double least, double most, string name) => value >= least && value <= most
        ? value
        : throw new ArgumentOutOfRangeException(name, Invariant($"Must be from {least} to {most}, is {value}."));
}
