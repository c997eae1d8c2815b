using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Analysis;

/// <summary>
/// What shocks do to bars alone under limp skin: the strip of a bar is one mass on one spring, the bar as a cantilever. A
/// pressure acts on the strip's own area, a blow or a strike on the band hits the nearest bar alone.
/// </summary>
/// <remarks>
/// Undamped, so on the safe side; tower and level stand still. Several shocks of one situation add up without sign. For one
/// thread.
/// </remarks>
internal sealed class ShockStrips(StatueModel model, Situation situation)
{
    private readonly Dictionary<(PressureShape Shape, double Ratio), double> factors = [];

    /// <summary>
    /// The greatest end forces of a bar from rest under a bound, with one sign, and by how much its skin end moves square to the skin, m; false
    /// when the bound is not for it, it cannot stand so, or nothing meets it.
    /// </summary>
    public bool PeakOf(RingElement ring, BarModel bar, int band, SkinAssumption bound, out BarEnds peak, out double moved)
    {
        (peak, moved) = (default, 0);
        if (SkinBounds.FactorOf(bound, bar) is not { } factor)
            return false;
        Span<double> forces = stackalloc double[FrameElement.Size], tip = stackalloc double[Frame.NodeSize];
        bool any = false;
        foreach (FactoredAction action in situation.Actions.AsSpan())
        {
            if (action.Action is not ShockAction shock || ForceOf(shock, ring, bar, band) is not { } force || force == Vector3D.Zero)
                continue;
            if (!bar.Bar.Cantilever(force, forces, tip))
                return false;
            any = true;
            double times = Math.Abs(action.Factor) * factor * Dynamic(shock, bar, force, tip);
            peak += times * BarEnds.Of(forces);
            moved += times * Math.Abs(bar.Bar.Place.Axes.ToLocal(bar.Bar.Place.Outward).Dot(new Vector3D(tip[0], tip[1], tip[2])));
        }
        return any;
    }

    /// <summary>The force at the peak of a pulse, or along which a blow of 1 N·s hits, N; null when it does not meet the bar.</summary>
    private Vector3D? ForceOf(ShockAction shock, RingElement ring, BarModel bar, int band)
    {
        switch (shock)
        {
            case PressurePulse pulse when pulse.Bands.Count == 0 || pulse.Bands.Contains(ring.BandName):
                (BodyModel body, int index) = model.BandAt(band);
                double width = body.Bands[index].ProjectedWidth(bar.Strip, body.Axes.Axes.ToLocal(pulse.Direction));
                return pulse.Peak.Pascals * pulse.Coefficient * width * bar.Share.Height * pulse.Direction;
            case PlacedShock placed:
                var met = new Dictionary<BarModel, Vector3D>(ReferenceEqualityComparer.Instance);
                model.Hang(placed.On, placed.Direction, placed.At, met);
                return met.TryGetValue(bar, out Vector3D hit) ? hit : null;
            default:
                return null;
        }
    }

    /// <summary>By what the end forces of a force as if it were steady are multiplied.</summary>
    private double Dynamic(ShockAction shock, BarModel bar, Vector3D force, ReadOnlySpan<double> tip)
    {
        double moved = new Vector3D(tip[0], tip[1], tip[2]).Length / force.Length, mass = model.StripMass(bar), period = 2 * Math.PI * Math.Sqrt(mass * moved);
        switch (shock)
        {
            case PressurePulse pulse:
                return FactorOf(pulse.Shape, pulse.Duration.Seconds / period);
            case Blow { ContactTime: { } time } blow:
                var shape = new HalfSinePulse();
                return blow.Impulse.NewtonSeconds / (shape.Area * time.Seconds) * FactorOf(shape, time.Seconds / period);
            case Blow blow:
                return 2 * Math.PI / period * blow.Impulse.NewtonSeconds;
            case Strike strike:
                return 2 * Math.PI / period * Strike.ImpulseOf(strike.Mass.Kilograms, strike.Speed.MetersPerSecond, strike.Restitution, mass);
            case SuddenRelease release:
                return release.Pull.Newtons;
            default:
                return 0;
        }
    }

    private double FactorOf(PressureShape shape, double ratio)
    {
        // Few digits, so that like bars share one; a part in a thousand of the ratio changes the factor by less.
        double rounded = double.Parse(ratio.ToString("e3", System.Globalization.CultureInfo.InvariantCulture), System.Globalization.CultureInfo.InvariantCulture);
        if (!factors.TryGetValue((shape, rounded), out double factor))
            factors[(shape, rounded)] = factor = rounded switch { < 1e-4 => 2 * Math.PI * shape.Area * rounded, > 1000 => 2, _ => PulseResponse.Of(shape, rounded).Factor };
        return factor;
    }
}
