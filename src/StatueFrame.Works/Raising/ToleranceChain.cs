using StatueFrame.Checks;
using UnitsNet;

namespace StatueFrame.Works;

/// <summary>
/// Whether holes of two parts meet: the deviations from template to rivet hole, against the play of the fastener in both holes
/// and what may be reamed.
/// </summary>
/// <remarks>Immutable and safe to share between threads.</remarks>
public sealed record ToleranceChain
{
    private static readonly Source practice = Source.CommonPractice;

    /// <summary>Name of the joint, as in "seam of sheets 12 and 13".</summary>
    public required string Name { get; init; }

    /// <summary>The steps, each on its own; those that both parts go through are listed twice.</summary>
    public required ValueList<ToleranceLink> Links { get; init; }

    /// <summary>Diameter of the fastener before it is driven, 1 to 100 mm.</summary>
    public required Length Fastener { get; init; }

    /// <summary>Diameter of the holes, at least that of the fastener.</summary>
    public required Length Hole { get; init; }

    /// <summary>How much larger the hole may be reamed, zero by default.</summary>
    public Length Reaming { get; init; }

    /// <summary>Greatest offset of two holes when all deviations add up.</summary>
    public Length WorstCase => Length.FromMeters(Links.Sum(l => l.Tolerance.Meters));

    /// <summary>Root of the sum of squares: the offset that few joints exceed when the deviations are independent and each tolerance is three standard deviations.</summary>
    public Length Statistical => Length.FromMeters(Math.Sqrt(Links.Sum(l => l.Tolerance.Meters * l.Tolerance.Meters)));

    /// <summary>Two checks: all fasteners go in with hardly an exception (by the root of squares), and every one (by the sum).</summary>
    /// <exception cref="InvalidStatueException">An input is out of range; all are listed.</exception>
    public IReadOnlyList<Check> Checks()
    {
        var v = new Validator();
        v.Named(Name);
        v.Positive(Fastener, Fastener.Meters, 1e-3, 0.1);
        v.Within(Hole, Hole.Meters, Fastener.Meters, Fastener.Meters + 0.1);
        v.NotNegative(Reaming, Reaming.Meters, 0.05);
        for (int i = 0; i < Links.Count; i++)
            v.At(nameof(Links), i).NotNegative(Links[i].Tolerance, Links[i].Tolerance.Meters, 0.1, nameof(ToleranceLink.Tolerance));
        v.ThrowIfAny();
        return [One("fit.most", "holes meet, hardly an exception", Statistical, "root of the sum of squares"), One("fit.all", "holes meet, every one", WorstCase, "sum of all deviations")];

        Check One(string id, string title, Length offset, string rule) => Check.Of(new CheckSubject(id, title, Name), Dimension.SmallLength, practice, w =>
        {
            double e = w.Given("e", offset.Meters, Dimension.SmallLength, $"offset of the two holes, {rule}"), d_0 = w.Given("d_0", Hole.Meters, Dimension.SmallLength, "hole"),
                d = w.Given("d", Fastener.Meters, Dimension.SmallLength, "fastener"), r = w.Given("r", Reaming.Meters, Dimension.SmallLength, "reaming of the diameter");
            return (e, w.Let("play", d_0 + r - d, Dimension.SmallLength, practice));
        });
    }
}
