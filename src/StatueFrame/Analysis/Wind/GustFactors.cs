using System.Globalization;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// The gust factors of the standards, fed with the statue's own frequency, mode shape, size, mass and damping. A result's
/// Factor goes into <see cref="WindAction.GustEffectFactor"/>.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
public static class GustFactors
{
    /// <summary>
    /// c_s c_d of EN 1991-1-4; null for an <see cref="AsceWind"/>, whose hourly mean the annexes are not made for. For
    /// winds that the user describes, the annexes are applied to their mean and turbulence, and the result says so.
    /// </summary>
    /// <param name="model">The statue's model.</param>
    /// <param name="modes">Its modes.</param>
    /// <param name="wind">The wind.</param>
    /// <param name="heading">The plan angle that the wind blows towards.</param>
    /// <param name="damping">Damping in still air; null takes that of welded lattice towers and says so. The air's is added.</param>
    /// <exception cref="ArgumentException">The modes are of another model, or the statue has no skin to catch the wind.</exception>
    /// <exception cref="InvalidStatueException">The wind or the damping has problems; all are listed.</exception>
    public static En1991StatueGust? En1991(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping = null)
    {
        GustGuard.RequireSkin(model);
        GustGuard.Require(model, modes, wind, heading, damping);
        WindProfile profile = wind.ProfileTowards(heading.Radians);
        if (profile is AsceWind)
            return null;
        var assumptions = new List<Assumption>();
        DampingModel inUse = GustGuard.DampingInUse(damping, assumptions);
        var bands = new StatueWind(model, wind, heading);
        var mode = new AlongWindMode(model, modes, bands);
        double delta = inUse.DecrementAt(mode.Frequency, modes.First.Frequency.Hertz);
        double zs = mode.BaseHeight + 0.6 * mode.Height, cf = bands.Coefficient;
        double air = cf * profile.Rho * mode.Width * profile.MeanSpeedSi(zs) / (2 * mode.Frequency * mode.EquivalentMass);
        if (profile.StructuralFactorAssumption is { } borrowed)
            assumptions.Add(borrowed);
        if (mode.BaseHeight > 0)
            assumptions.Add(new Assumption("reference height of the structural factor", "pedestal and 0.6 of the statue's height", Source.Assumed("gusts")));
        AddModeAssumption(assumptions, mode);
        return new En1991StatueGust
        {
            Heading = heading,
            Mode = mode.Index + 1,
            Frequency = Frequency.FromHertz(mode.Frequency),
            Height = Length.FromMeters(mode.Height),
            Width = Length.FromMeters(mode.Width),
            ReferenceHeight = Length.FromMeters(zs),
            ModeExponent = mode.Exponent,
            EquivalentMass = LinearDensity.FromKilogramsPerMeter(mode.EquivalentMass),
            ForceCoefficient = cf,
            StructuralDecrement = delta,
            AerodynamicDecrement = air,
            AnnexB = En1991StructuralFactor.AnnexB(profile, mode.Height, mode.Width, zs, mode.Frequency, delta + air, mode.Exponent),
            AnnexC = En1991StructuralFactor.AnnexC(profile, mode.Height, mode.Width, zs, mode.Frequency, delta + air, mode.Exponent),
            Assumptions = assumptions.ToValueList(),
        };
    }

    /// <summary>G or G_f of ASCE/SEI 7; null unless the wind is an <see cref="AsceWind"/>, whose exposure the formulas need.</summary>
    /// <inheritdoc cref="En1991"/>
    public static Asce7StatueGust? Asce7(
        StatueModel model, ModalResponse modes, WindAction wind, Angle heading, DampingModel? damping = null)
    {
        GustGuard.RequireSkin(model);
        GustGuard.Require(model, modes, wind, heading, damping);
        if (wind.ProfileTowards(heading.Radians) is not AsceWind asce)
            return null;
        var assumptions = new List<Assumption>();
        DampingModel inUse = GustGuard.DampingInUse(damping, assumptions);
        var bands = new StatueWind(model, wind, heading);
        var mode = new AlongWindMode(model, modes, bands);
        double xi = DampingModel.RatioOf(inUse.DecrementAt(mode.Frequency, modes.First.Frequency.Hertz));
        double h = mode.BaseHeight + mode.Height, depth = new StatueWind(model, wind, heading + Angle.FromDegrees(90)).Area / mode.Height;
        double air = bands.Coefficient * asce.Rho * mode.Width * asce.MeanSpeedSi(Math.Max(0.6 * h, asce.Constants.ZMin))
            / (4 * Math.PI * mode.Frequency * mode.EquivalentMass);
        double beta = Math.Min(xi + air, 0.5);
        assumptions.Add(new Assumption("damping ratio of the gust-effect factor", "structure and air; the standard leaves it to the engineer", Source.Assumed("gusts")));
        AddModeAssumption(assumptions, mode);
        return new Asce7StatueGust
        {
            Heading = heading,
            Mode = mode.Index + 1,
            Frequency = Frequency.FromHertz(mode.Frequency),
            Height = Length.FromMeters(h),
            Width = Length.FromMeters(mode.Width),
            Depth = Length.FromMeters(depth),
            DampingRatio = beta,
            Rigid = Asce7GustFactor.Rigid(asce, h, mode.Width),
            Flexible = Asce7GustFactor.Flexible(asce, h, mode.Width, depth, mode.Frequency, beta),
            Assumptions = assumptions.ToValueList(),
        };
    }

    private static void AddModeAssumption(List<Assumption> assumptions, AlongWindMode mode) =>
        assumptions.Add(new Assumption(
            "sway of the gust factor",
            string.Create(CultureInfo.InvariantCulture, $"mode {mode.Index + 1} alone, {mode.Frequency:0.00} Hz, its shape (z/h)^{mode.Exponent:0.00}"),
            Source.Assumed("gusts")));

    /// <summary>
    /// The wind with gust factors band by band that are enough for the peaks, by random vibration, of every cut of trunk and
    /// limbs in shear and bending, of every standoff and of the sway of all points, in all its headings: higher up and on
    /// limbs gusts need more than what overturning tells. Bare tower and fittings take <see cref="WindAction.GustEffectFactor"/> where they
    /// need more than any band. Steady analysis with this wind then holds these peaks.
    /// </summary>
    /// <remarks>
    /// The factors are built from the top down: a band takes what is missing to the peaks of the parts that it and the bands
    /// above it load; 2 % are put on top, so that small changes of the design do not ask for new ones. Wind off the middle (<see cref="WindAction.Eccentricity"/>) counts as steady.
    /// </remarks>
    /// <param name="model">The statue's model.</param>
    /// <param name="wind">The wind.</param>
    /// <param name="damping">Damping in still air; null takes that of welded lattice towers. The air's is added.</param>
    /// <exception cref="ArgumentException">The statue has nothing that catches the wind.</exception>
    /// <exception cref="InvalidStatueException">The wind or the damping has problems; all are listed.</exception>
    public static WindAction ByBand(StatueModel model, WindAction wind, DampingModel? damping = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(wind);
        ModalResponse modes = model.Modes(GustModes);
        GustGuard.Require(model, modes, wind, wind.Headings.Count > 0 ? wind.Headings[0] : Angle.Zero, damping);
        WindAction plain = wind with { GustByBand = [], GustEffectFactor = 1 };
        (GustDemand Demand, double InUse)[] all = [.. Pushing(plain)];
        double least = all.Where(found => found.Demand.Group != GustDemand.Standoffs).Min(found => found.Demand.Peak / found.InUse);
        // The last one is that of bare tower and fittings, which keep up with the bands.
        double[] factors = [.. Enumerable.Repeat(least, model.BandCount + 1)], ones = [.. Enumerable.Repeat(1.0, factors.Length)];
        // Parts that few bands load come first: those at the top. Where wind off the middle governs, it takes more than one turn.
        bool isRaised = true;
        for (int turn = 0; turn < 5 && isRaised; turn++)
        {
            isRaised = false;
            foreach ((GustDemand demand, double inUse) in all.OrderBy(found => Loading(found.Demand).Length))
            {
                // The peak is that of its own heading; what another heading gives already need not be given again.
                double scale = demand.With(ones) / inUse, missing = demand.Peak * scale - demand.With(factors);
                if (missing <= Unfelt * demand.Peak)
                    continue;
                int[] loading = Loading(demand);
                int[] low = [.. loading.Where(a => factors[a] <= least * (1 + 1e-12))];
                int[] raised = low.Length > 0 ? low : loading;
                double share = raised.Sum(a => demand.ByPart[a]);
                foreach (int a in raised)
                    factors[a] += missing / share;
                factors[^1] = factors.Max();
                isRaised = true;
            }
        }
        // What is still missing in some heading raises all.
        double missed = Pushing(With(1)).Max(found => found.Demand.Peak / found.InUse);
        return With(Spare * Math.Max(1, missed));

        WindAction With(double times)
        {
            double[] rounded = [.. factors.Select(f => Math.Ceiling(1000 * Math.Clamp(times * f, 0.3, 5)) / 1000)];
            WindAction byBand = wind with { GustByBand = [.. rounded[..^1]] };
            return rounded[^1] > byBand.GustFactorOfRest ? byBand with { GustEffectFactor = rounded[^1] } : byBand;
        }

        IEnumerable<(GustDemand Demand, double InUse)> Pushing(WindAction with) => GustDemand.Of(model, modes, with, damping, [])
            .Where(found => found.Demand.What != GustDemand.Twist).Select(found => (found.Demand.WithRestAsOne(model.BandCount), found.InUse));
    }

    /// <summary>The parts that give a tenth or more of what the one gives that loads an effect most.</summary>
    private static int[] Loading(GustDemand demand)
    {
        double most = demand.ByPart.Max();
        return [.. Enumerable.Range(0, demand.ByPart.Length).Where(a => demand.ByPart[a] >= 0.1 * most)];
    }

    /// <summary>What is missing of a peak below this part is left to what raises all.</summary>
    private const double Unfelt = 1e-3;

    /// <summary>So much is put on top, for small changes of a design not to need factors of their own.</summary>
    private const double Spare = 1.02;

    /// <summary>Modes that gusts are worked out with; those above take part as in statics.</summary>
    internal const int GustModes = 12;
}
