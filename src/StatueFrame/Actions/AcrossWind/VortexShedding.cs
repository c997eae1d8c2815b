using UnitsNet;
using static System.FormattableString;

namespace StatueFrame;

/// <summary>
/// Vortices that a body sheds to either side push it across the wind. Where their frequency meets a natural one they come
/// in step with the motion, over a length that grows with it: resonance, in quite ordinary winds.
/// </summary>
/// <remarks>
/// Stateless; safe to use from many threads. EN 1991-1-4:2005, Annex E, with recommended values: approach 1, E.1.5.2, and
/// approach 2, E.1.5.3 (<see cref="SpectralVortices"/>). The first follows from the steady resonance of one mode under ½ρ v_crit² b c_lat on the correlation lengths; vortices are
/// taken to be in step, at the width of the reference strip, where the strips' own critical speeds are within 30 % of it.
/// </remarks>
public static class VortexShedding
{
    /// <summary>A critical speed above this times the mean speed needs no check, (E.1).</summary>
    public const double RangeFactor = 1.25;

    /// <summary>Kinematic viscosity of air, m²/s, E.1.3.4.</summary>
    internal const double Viscosity = 15e-6;

    private const double GreatestCorrelationFactor = 0.6, LeastCycles = 1e4, SecondsPerYear = 3.2e7;
    private const int MostIterations = 500;
    private static readonly Source critical = Source.En1991_1_4("(E.2)"), scruton = Source.En1991_1_4("(E.4)"), amplitude = Source.En1991_1_4("(E.7)");

    /// <summary>The vibration of a body in a mode: with the given reference strip, or with the one that gives most.</summary>
    /// <param name="input">The body in its mode.</param>
    /// <exception cref="InvalidStatueException">The input has problems; all of them are listed.</exception>
    public static VortexResult Evaluate(VortexInput input)
    {
        var v = new Validator();
        input.Validate(v.At(nameof(VortexInput)));
        v.ThrowIfAny();
        var body = new VortexBody(input);
        VortexResult? worst = null;
        for (int i = 0; i < input.Strips.Count; i++)
        {
            if (input.ReferenceStrip is { } reference && reference != i + 1)
                continue;
            double start = body.Edges[i], end = body.Edges[i + 1];
            foreach (double place in (ReadOnlySpan<double>)[start, 0.5 * (start + end), end])
            {
                VortexResult found = At(input, body, i, place);
                if (worst is null || IsWorse(found, worst))
                    worst = found;
            }
        }
        return worst!;
    }

    /// <summary>Effective correlation length over width L_j/b: 6, growing to 12 with the amplitude there. Table E.4.</summary>
    /// <param name="amplitudeToWidth">Amplitude over width y_F/b, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is negative or not a number.</exception>
    public static double CorrelationLengthToWidth(double amplitudeToWidth) => amplitudeToWidth >= 0
        ? Math.Clamp(4.8 + 12 * amplitudeToWidth, 6, 12)
        : throw new ArgumentOutOfRangeException(nameof(amplitudeToWidth), Invariant($"Must be zero or more, is {amplitudeToWidth}."));

    /// <summary>c_lat over c_lat,0: 1 up to v_crit = 0.83 v_m, then falling to 0 at 1.25 v_m. Table E.3.</summary>
    /// <param name="speedRatio">Critical over mean speed v_crit/v_m,Lj, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is negative or not a number.</exception>
    public static double LateralReduction(double speedRatio) => speedRatio >= 0
        ? Math.Clamp(3 - 2.4 * speedRatio, 0, 1)
        : throw new ArgumentOutOfRangeException(nameof(speedRatio), Invariant($"Must be zero or more, is {speedRatio}."));

    /// <summary>
    /// Number of load cycles N = 2 T n ε₀ (v_crit/v₀)² exp(−(v_crit/v₀)²), (E.10), before the least number 10⁴ of the
    /// standard; greatest at v_crit = v₀.
    /// </summary>
    /// <param name="frequency">Natural frequency n.</param>
    /// <param name="criticalSpeed">Critical speed v_crit.</param>
    /// <param name="weibullSpeed">√2 times the mode of the Weibull distribution of wind speed v₀.</param>
    /// <param name="lifeYears">Life T in years of 3.2·10⁷ s.</param>
    /// <param name="bandwidthFactor">Bandwidth factor ε₀.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is not above zero or not plausible.</exception>
    public static double Cycles(Frequency frequency, Speed criticalSpeed, Speed weibullSpeed, double lifeYears, double bandwidthFactor = 0.3) =>
        CyclesSi(
            GustInput.Positive(frequency.Hertz, 1000, nameof(frequency)),
            GustInput.Positive(criticalSpeed.MetersPerSecond, 1e6, nameof(criticalSpeed))
                / GustInput.Positive(weibullSpeed.MetersPerSecond, 100, nameof(weibullSpeed)),
            GustInput.Positive(lifeYears, 1000, nameof(lifeYears)),
            GustInput.Positive(bandwidthFactor, 1, nameof(bandwidthFactor)));

    internal static double CriticalSpeed(Working? w, double b, double n, double St)
    {
        w.Given(b, Dimension.Length, "width across the wind where the vortices are shed");
        w.Given(n, Dimension.Frequency, "natural frequency");
        w.Given(St, Dimension.Number, "Strouhal number");
        return w.Let("v_crit", b * n / St, Dimension.Speed, critical, "critical wind speed");
    }

    internal static double Scruton(Working? w, double delta, double m_e, double rho, double b)
    {
        w.Given(delta, Dimension.Number, "logarithmic decrement of structure and dampers");
        w.Given(m_e, Dimension.LinearDensity, "equivalent mass per length");
        w.Given(rho, Dimension.Density, "density of air");
        return w.Let("Sc", 2 * delta * m_e / (rho * b * b), Dimension.Number, scruton, "Scruton number");
    }

    internal static double Amplitude(Working? w, double b, double St, double Sc, double K, double K_w, double c_lat)
    {
        w.Given(K, Dimension.Number, "mode shape factor");
        w.Given(K_w, Dimension.Number, "correlation length factor");
        w.Given(c_lat, Dimension.Number, "lateral force coefficient");
        return w.Let("y_1", b * K * K_w * c_lat / (St * St * Sc), Dimension.SmallLength, amplitude, "greatest amplitude on this body by approach 1");
    }

    /// <summary>Places that differ by rounding alone are the same; the first of them counts.</summary>
    private const double MoreThan = 1 + 1e-9;

    private static bool IsWorse(VortexResult a, VortexResult b) =>
        a.IsBeyondRange != b.IsBeyondRange ? b.IsBeyondRange
        : a.IsBeyondRange ? MoreThan * (a.CriticalSpeed / a.MeanSpeed) < b.CriticalSpeed / b.MeanSpeed
        : a.Amplitude > MoreThan * b.Amplitude;

    /// <summary>The vibration when the vortices of a strip are shed about a place in it.</summary>
    private static VortexResult At(VortexInput input, VortexBody body, int strip, double place)
    {
        ModeLine line = body.Line;
        VortexStrip reference = input.Strips[strip];
        BluffSection section = reference.Section;
        double b = reference.Width.Meters, n = input.Frequency.Hertz, St = section.StrouhalNumber;
        double m_e = input.EquivalentMass.KilogramsPerMeter, rho = input.AirDensity.KilogramsPerCubicMeter;
        double v_crit = CriticalSpeed(null, b, n, St), Sc = Scruton(null, input.LogDecrement, m_e, rho, b), Re = b * v_crit / Viscosity;
        double c_lat0 = section.BasicLateralCoefficient(Re), K = line.Absolute / (4 * Math.PI * line.Square);
        double y = 0, c_lat = 0, K_w = 0, greatest = 0, correlation = 0, speed = 0;
        bool converged = false;
        for (int i = 0; i < MostIterations && !converged; i++)
        {
            double sum = 0, center = place;
            foreach (ModeLobe lobe in line.Lobes)
            {
                bool isOwn = lobe.From <= place && place <= lobe.To;
                double most = 0;
                foreach (double middle in isOwn ? [place] : lobe.Peaks)
                {
                    (double from, double to) = body.InStep(isOwn ? strip : body.StripAt(middle), v_crit);
                    (from, to) = (Math.Max(from, lobe.From), Math.Min(to, lobe.To));
                    double wanted = b * CorrelationLengthToWidth(y / b * Math.Abs(line.At(middle)));
                    double length = Math.Clamp(to - from, 0, wanted), start = Math.Max(from, Math.Min(middle - 0.5 * length, to - length));
                    most = Math.Max(most, line.AbsoluteBetween(start, start + length));
                    if (isOwn)
                        (center, correlation) = (start + 0.5 * length, wanted);
                }
                sum += most;
            }
            K_w = Math.Min(GreatestCorrelationFactor, sum / line.Absolute);
            speed = body.SpeedAt(center);
            c_lat = c_lat0 * LateralReduction(v_crit / speed);
            double next = Amplitude(null, b, St, Sc, K, K_w, c_lat);
            converged = Math.Abs(next - y) <= 1e-12 * next;
            greatest = i == 0 ? next : Math.Max(greatest, next);
            y = next;
        }
        if (!converged)
            y = greatest;
        double vm = Math.Max(speed, body.SpeedAt(place)), omega = 2 * Math.PI * n;
        double resonance = y;
        SpectralVortices? spectral = v_crit <= RangeFactor * vm ? SpectralVortices.Of(input, body, strip, v_crit, Sc, Re) : null;
        if (spectral is not null)
            y = Math.Max(input.Approach == VortexApproach.Both ? y : 0, spectral.Amplitude.Meters);
        double ratio = v_crit / (input.WeibullSpeed?.MetersPerSecond ?? 0.2 * vm);
        return new VortexResult
        {
            ReferenceStrip = strip + 1,
            Width = reference.Width,
            Section = section,
            Frequency = input.Frequency,
            LogDecrement = input.LogDecrement,
            EquivalentMass = input.EquivalentMass,
            AirDensity = input.AirDensity,
            MeanSpeed = Speed.FromMetersPerSecond(vm),
            CriticalSpeed = Speed.FromMetersPerSecond(v_crit),
            ScrutonNumber = Sc,
            ReynoldsNumber = Re,
            BasicLateralCoefficient = c_lat0,
            LateralCoefficient = c_lat,
            ModeFactor = K,
            CorrelationLength = Length.FromMeters(correlation),
            CorrelationFactor = K_w,
            Amplitude = Length.FromMeters(y),
            ResonanceAmplitude = Length.FromMeters(resonance),
            Spectral = spectral,
            Cycles = Math.Max(LeastCycles, CyclesSi(n, ratio, input.LifeYears, input.BandwidthFactor)),
            InertiaForces = input.Strips.Select(s => ForcePerLength.FromNewtonsPerMeter(
                s.Mass.KilogramsPerMeter * omega * omega * s.Amplitude / line.Scale * y)).ToValueList(),
            Converged = converged,
        };
    }

    private static double CyclesSi(double n, double ratio, double years, double bandwidth) =>
        2 * SecondsPerYear * years * n * bandwidth * ratio * ratio * Math.Exp(-ratio * ratio);
}
