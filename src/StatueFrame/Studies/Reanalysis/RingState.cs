using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;

namespace StatueFrame.Studies;

/// <summary>A ring of standoffs of a variant: its bars' stiffness and mass, and what they sum up to. SI units.</summary>
/// <remarks>For one thread; filled anew for every variant.</remarks>
internal sealed class RingState
{
    private const int Node = Frame.NodeSize, Entries = Node * Node;
    private const double Alike = 1e-13;

    private readonly double[] sum = new double[Entries], k = new double[Entries];

    public RingState(RingPart part)
    {
        int count = part.Ring.Bars.Length;
        Part = part;
        (Standoffs, Stiffness) = (new Standoff[count], new BarStiffness[count]);
    }

    public RingPart Part { get; }

    public Standoff[] Standoffs { get; }

    public BarStiffness[] Stiffness { get; }

    /// <summary>The ring as a 12×12 between its two nodes.</summary>
    public double[] Matrix { get; } = new double[FrameElement.Size * FrameElement.Size];

    /// <summary>Mass of the bars on the level's node.</summary>
    public double[] LevelMass { get; } = new double[Entries];

    /// <summary>Mass of the bars on the band's node.</summary>
    public double[] BandMass { get; } = new double[Entries];

    public double Kilograms { get; private set; }

    /// <summary>Mass times position.</summary>
    public Vector3D Moment { get; private set; }

    /// <summary>Works all out for the standoffs that stand in <see cref="Standoffs"/>, bars that do not hold the skin left out.</summary>
    public void Fill()
    {
        (Kilograms, Moment) = (0, Vector3D.Zero);
        foreach (double[] array in (ReadOnlySpan<double[]>)[sum, Matrix, LevelMass, BandMass])
            array.AsSpan().Clear();
        double perLength = 0;
        for (int i = 0; i < Standoffs.Length; i++)
        {
            BarPlacement place = Part.Ring.Bars[i].Bar.Place;
            Standoff standoff = Standoffs[i];
            if (i == 0 || !ReferenceEquals(standoff, Standoffs[i - 1]))
                perLength = standoff.Material.Density.KilogramsPerCubicMeter * standoff.Section.Width.Meters * standoff.Section.Thickness.Meters;
            if (i > 0 && IsAlike(i))
            {
                Stiffness[i] = Stiffness[i - 1];
            }
            else
            {
                Stiffness[i] = ReferenceEquals(standoff, place.Standoff) ? Part.Ring.Bars[i].Bar.Stiffness : BarStiffness.Of(place with { Standoff = standoff });
                Stiffness[i].CopyTo(k);
            }
            ReadOnlySpan<double> motion = Part.Motions.AsSpan(i * Entries, Entries);
            Congruence.Add(k, motion, sum);
            double mass = perLength * Part.Ring.Bars[i].Bar.Stiffness.Length;
            PointMass.Add(0.5 * mass, place.TowerEnd - Part.LevelNode, LevelMass);
            PointMass.Add(0.5 * mass, place.SkinEnd - Part.BandNode, BandMass);
            AddMass(mass, 0.5 * (place.TowerEnd + place.SkinEnd));
        }
        foreach (BarPlacement loose in Part.Ring.Loose)
        {
            Vector3D middle = 0.5 * (loose.TowerEnd + loose.SkinEnd);
            PointMass.Add(loose.Mass, middle - Part.LevelNode, LevelMass);
            AddMass(loose.Mass, middle);
        }
        foreach (PlacedBracket bracket in Part.Ring.Brackets)
        {
            PointMass.Add(bracket.Mass, bracket.Middle - Part.LevelNode, LevelMass);
            AddMass(bracket.Mass, bracket.Middle);
        }
        RigidPair.AddTo(sum, Part.Link, Matrix);
    }

    private void AddMass(double mass, Vector3D at)
    {
        Kilograms += mass;
        Moment += mass * at;
    }

    /// <summary>Whether a bar has the stiffness of the one before it, but for rounding.</summary>
    private bool IsAlike(int i)
    {
        if (!ReferenceEquals(Standoffs[i], Standoffs[i - 1]))
            return false;
        PlacedBar own = Part.Ring.Bars[i].Bar, before = Part.Ring.Bars[i - 1].Bar;
        double length = own.Stiffness.Length;
        return own.Place.Bracket is null && before.Place.Bracket is null
            && Math.Abs(before.Stiffness.Length - length) <= Alike * length
            && (own.Place.Axes.ToLocal(own.Place.Slide) - before.Place.Axes.ToLocal(before.Place.Slide)).Length <= Alike;
    }
}
