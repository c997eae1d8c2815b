using System.Globalization;
using System.Text;
using UnitsNet;

namespace StatueFrame.Shape;

/// <summary>
/// A model in a wind tunnel, or on a desk before a fan, against the full-size statue: which similarity numbers match, which
/// cannot, what the model would have to be, and what its readings mean at full size.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ModelTest
{
    /// <summary>A model that was built.</summary>
    /// <param name="full">The statue.</param>
    /// <param name="model">The model.</param>
    /// <exception cref="ArgumentException">A value is not positive.</exception>
    public ModelTest(WindBody full, WindBody model)
    {
        ArgumentNullException.ThrowIfNull(full);
        ArgumentNullException.ThrowIfNull(model);
        full.Validate(nameof(full));
        model.Validate(nameof(model));
        (Full, Model) = (full, model);
    }

    /// <summary>The statue.</summary>
    public WindBody Full { get; }

    /// <summary>The model.</summary>
    public WindBody Model { get; }

    /// <summary>Length of the model over that of the statue, λ.</summary>
    public double LengthScale => Model.Width / Full.Width;

    /// <summary>Speed at the model over that at the statue.</summary>
    public double SpeedScale => Model.Speed / Full.Speed;

    /// <summary>Density of the model's fluid over that of the statue's.</summary>
    public double DensityScale => Model.FluidDensity / Full.FluidDensity;

    /// <summary>
    /// The model that a length and a speed scale ask for: all numbers match but Reynolds, and Froude unless the speed
    /// scale is √λ. Frequency f·V/λ, mass per height m·λ², damping ζ, modulus E·V², V the speed scale, in the same fluid.
    /// </summary>
    /// <param name="full">The statue.</param>
    /// <param name="lengthScale">Model over statue, above 0 and below 1.</param>
    /// <param name="speedScale">Model over statue, 0.001 to 10; √<paramref name="lengthScale"/> when null, for the Froude number.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static ModelTest Dimensioned(WindBody full, double lengthScale, double? speedScale = null)
    {
        ArgumentNullException.ThrowIfNull(full);
        if (!(lengthScale is > 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(lengthScale), lengthScale, "must be above 0 and below 1");
        double speed = speedScale ?? Math.Sqrt(lengthScale);
        if (!(speed is >= 1e-3 and <= 10))
            throw new ArgumentOutOfRangeException(nameof(speedScale), speed, "must be 0.001 to 10");
        return new ModelTest(full, full with
        {
            Width = lengthScale * full.Width,
            Speed = speed * full.Speed,
            Frequency = full.Frequency * (speed / lengthScale),
            MassPerHeight = lengthScale * lengthScale * full.MassPerHeight,
            Modulus = speed * speed * full.Modulus,
        });
    }

    /// <summary>The six numbers, full size against model.</summary>
    public IReadOnlyList<SimilarityNumber> Numbers =>
    [
        new("Froude", "V²/gD", Full.Froude, Model.Froude, "weight counts wrongly against wind: sag, pendulum stiffness, overturning"),
        new("Cauchy", "ρV²/E", Full.Cauchy, Model.Cauchy, "the model bends too little or too much under the wind"),
        new("reduced velocity", "V/fD", Full.ReducedVelocity, Model.ReducedVelocity, "vortices and gusts meet the wrong natural frequency"),
        new("mass ratio", "m/ρD²", Full.MassRatio, Model.MassRatio, "the air drives the mass too easily or too hard; aerodynamic damping is wrong"),
        new("Scruton", "2mδ/ρD²", Full.Scruton, Model.Scruton, "the size of vortex vibrations is wrong"),
        new("Reynolds", "VD/ν", Full.Reynolds, Model.Reynolds, "drag and vortices of rounded shapes differ; sharp edges or roughness on the model help"),
    ];

    /// <summary>A movement of the model, at full size: divided by the length scale.</summary>
    public Length FullSize(Length reading) => reading / LengthScale;

    /// <summary>A force on the model, at full size: ρV²D² of the statue over that of the model.</summary>
    public Force FullSize(Force reading) => reading / (Dynamic * LengthScale * LengthScale);

    /// <summary>A moment on the model, at full size: ρV²D³.</summary>
    public Torque FullSize(Torque reading) => reading / (Dynamic * LengthScale * LengthScale * LengthScale);

    /// <summary>A pressure on the model, at full size: ρV².</summary>
    public Pressure FullSize(Pressure reading) => reading / Dynamic;

    /// <summary>A frequency read at the model, at full size: V/D.</summary>
    public Frequency FullSize(Frequency reading) => reading * (LengthScale / SpeedScale);

    /// <summary>An acceleration of the model, at full size: V²/D.</summary>
    public Acceleration FullSize(Acceleration reading) => reading * (LengthScale / (SpeedScale * SpeedScale));

    /// <summary>A speed at the model, at full size.</summary>
    public Speed FullSize(Speed reading) => reading / SpeedScale;

    /// <summary>A time read at the model, at full size: D/V.</summary>
    public Duration FullSize(Duration reading) => reading * (SpeedScale / LengthScale);

    private double Dynamic => DensityScale * SpeedScale * SpeedScale;

    /// <summary>The comparison as a table of text.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"Model 1:{1 / LengthScale:g4}, speed 1:{1 / SpeedScale:g4}; model {Model.Frequency.Hertz:g4} Hz, {Model.MassPerHeight.KilogramsPerMeter:g4} kg/m, damping {100 * Model.DampingRatio:g3} %, modulus {Model.Modulus.Megapascals:g4} MPa\n");
        foreach (SimilarityNumber n in Numbers)
            text.Append(CultureInfo.InvariantCulture, $"  {n.Name,-17} {n.Formula,-8} full {n.Full,10:g4}  model {n.Model,10:g4}  {(n.Matches ? "matches" : $"× {n.Ratio:g3}: {n.Meaning}")}\n");
        return text.ToString();
    }
}
