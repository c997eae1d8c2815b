using StatueFrame.Analysis;
using UnitsNet;
using static System.FormattableString;

namespace StatueFrame.Reporting;

/// <summary>
/// Where the demands of a package come from: the wind band by band, its sum with the other actions as the ground carries it,
/// reactions by heading, and the forces that tower and bars get from it.
/// </summary>
internal sealed class PackageForces
{
    private readonly CalculationPackage package;
    private readonly HtmlText html;
    private readonly Response[] responses;
    private readonly Response governing;

    public PackageForces(CalculationPackage package, HtmlText html)
    {
        (this.package, this.html) = (package, html);
        var model = StatueModel.Build(package.Statue);
        responses = [.. package.Situations.Select(model.Respond)];
        governing = responses.MaxBy(r => r.OverturningGoverns.Base.Overturning.NewtonMeters)!;
    }

    private string Governing => $"{governing.Situation.Name}{(governing.OverturningGoverns.When is { Length: > 0 } when ? $", {when}" : "")}";

    /// <summary>Force = load factor · gust factor · peak pressure · coefficient · area, for every band, and the sums.</summary>
    public void WriteWind()
    {
        LoadCase worst = governing.OverturningGoverns;
        if (worst.Wind is null)
        {
            html.Element("p", "No wind acts in the situation that overturns most.");
            return;
        }
        html.Element("p", $"In the case that overturns most: {Governing}. Along the wind each band gets F = γ G q c A, with the load factor γ, the gust factor G of the band, the peak velocity pressure q at the height z_e above ground (that of the band's highest point by EN 1991-1-4, 7.6 (3), from memory; of its center of pressure by other winds), the force coefficient c and the area A that it shows to the wind; z is the height of its center of pressure.");
        var rows = new List<string[]>();
        Force along = Force.Zero, across = Force.Zero;
        foreach (BandWindForce b in worst.BandWindForces())
        {
            (along, across) = (along + b.Along, across + b.Across);
            rows.Add(
            [
                b.Band, Value(b.Elevation.Meters + package.Statue.BaseAboveGround.Meters, Dimension.Length), Value(b.ReferenceHeight.Meters, Dimension.Length), Value(b.PeakPressure.Pascals, Dimension.Pressure), Invariant($"{b.Coefficient:0.00#}"), Invariant($"{b.GustFactor:0.00#}"),
                Invariant($"{b.LoadFactor:0.###}"), Value(b.Area.SquareMeters, Dimension.Area), Value(b.Along.Newtons, Dimension.Force), Value(b.Across.Newtons, Dimension.Force),
            ]);
        }
        // Bare members meet wind along its heading alone.
        double bare = Math.Sqrt(worst.WindForce.Newtons * worst.WindForce.Newtons - across.Newtons * across.Newtons) - along.Newtons;
        rows.Add(["all bands", "", "", "", "", "", "", "", Value(along.Newtons, Dimension.Force), Value(across.Newtons, Dimension.Force)]);
        rows.Add(["bare tower and limbs, fittings", "", "", "", "", "", "", "", Value(Math.Abs(bare) < 1e-9 * worst.WindForce.Newtons ? 0 : bare, Dimension.Force), ""]);
        rows.Add(["all wind", "", "", "", "", "", "", "", Value(worst.WindForce.Newtons, Dimension.Force), ""]);
        Table(["band", "z", "z_e", "q", "c", "G", "γ", "A", "F along", "F across"], 1, rows);
        WriteHeadings(worst.Wind.Factor);
    }

    /// <summary>The wind on every band in every heading, which the tables of what acts in workings call by its heading.</summary>
    private void WriteHeadings(double factor)
    {
        if (factor == 0 || governing.Cases.Count < 2)
            return;
        html.Element("h3", "Wind by band and heading").Line();
        html.Element("p", $"Along the wind, at the load factor 1, in {Dimension.Force.Unit(package.Units)}; in the wind of {governing.Situation.Name}; wind off the middle of the figure and lift come from the same forces.");
        BandWindForce[][] all = [.. governing.Cases.Select(c => c.BandWindForces().ToArray())];
        Table(
            ["band", .. governing.Cases.Select(c => Invariant($"{c.Heading!.Value.Degrees:0.#}°"))], 1,
            Enumerable.Range(0, all[0].Length).Select(band => (string[])[all[0][band].Band, .. all.Select(heading => Number(heading[band].Along.Newtons / factor))])
                .Append(["all wind", .. governing.Cases.Select(c => Number(c.WindForce.Newtons / factor))]));

        string Number(double newtons) => Dimension.Force.FormatNumber(newtons, package.Units).Replace('-', '−');
    }

    /// <summary>What acts and what the ground carries, situation by situation.</summary>
    public void WriteEquilibrium()
    {
        html.Element("h3", "What acts and what the ground carries").Line();
        html.Element("p", "In the case of each situation that overturns most: weights, wind and what else acts, their sum, and the moments about the center of the base. The last column is what the ground carries by the forces in elements and springs of the model, less what acts, over what acts, in the situation's first case: rounding alone.");
        var rows = new List<string[]>();
        foreach (Response r in responses)
        {
            LoadCase c = r.OverturningGoverns;
            double weight = c.WeightFactor * r.Model.Masses.Total.Kilograms * SelfWeight.Gravity, other = -c.Base.ForceZ.Newtons - weight;
            rows.Add(
            [
                r.Situation.Name, c.When, Value(weight, Dimension.Force), Value(c.WindForce.Newtons, Dimension.Force), Math.Abs(other) < 1e-6 * weight ? "–" : Value(other, Dimension.Force),
                Value(c.Base.Shear.Newtons, Dimension.Force), Value(-c.Base.ForceZ.Newtons, Dimension.Force), Value(c.Base.Overturning.NewtonMeters, Dimension.Moment), Value(c.Base.MomentZ.NewtonMeters, Dimension.Moment),
                r.Balance is { } balance ? Invariant($"{balance.Force / Math.Max(balance.Applied, 1):0.0e+0}") : "braces go slack",
            ]);
        }
        Table(["situation", "case", "weight", "wind", "other, down", "shear", "down", "overturning", "twist", "left over"], 2, rows);
        html.Element("h3", "Reactions by heading").Line();
        html.Element("p", $"What the statue puts on its base in {governing.Situation.Name}, about the center of the base; z is up.");
        Table(["case", "F x", "F y", "F z", "M x", "M y", "M z", "overturning"], 1, governing.Cases.Select(c => new[]
        {
            c.When, Value(c.Base.ForceX.Newtons, Dimension.Force), Value(c.Base.ForceY.Newtons, Dimension.Force), Value(c.Base.ForceZ.Newtons, Dimension.Force),
            Value(c.Base.MomentX.NewtonMeters, Dimension.Moment), Value(c.Base.MomentY.NewtonMeters, Dimension.Moment), Value(c.Base.MomentZ.NewtonMeters, Dimension.Moment), Value(c.Base.Overturning.NewtonMeters, Dimension.Moment),
        }));
    }

    /// <summary>Forces in cuts, in the worst members of each segment, and in the worst bar of each ring.</summary>
    public void WriteInside()
    {
        LoadCase worst = governing.OverturningGoverns;
        html.Element("h3", "Tower and limbs").Line();
        html.Element("p", $"In {Governing}: axial force (tension positive), shear, bending and torsion in the cuts at both ends of every segment, in the axes of its body; of lattices the members that are pulled and pushed most.");
        Dictionary<string, MemberForce[]> members = worst.LatticeMembers().GroupBy(m => m.Segment).ToDictionary(g => g.Key, g => g.ToArray());
        Table(["segment", "N bottom", "V bottom", "M bottom", "T", "N top", "V top", "M top", "most pulled", "most pushed"], 1, worst.Segments().Select(s =>
        {
            MemberForce[] own = members.GetValueOrDefault(s.Segment) ?? [];
            return new[]
            {
                s.Segment, Value(s.Bottom.Axial.Newtons, Dimension.Force), Value(double.Hypot(s.Bottom.ShearX.Newtons, s.Bottom.ShearY.Newtons), Dimension.Force), Value(double.Hypot(s.Bottom.MomentX.NewtonMeters, s.Bottom.MomentY.NewtonMeters), Dimension.Moment),
                Value(s.Bottom.Torsion.NewtonMeters, Dimension.Moment), Value(s.Top.Axial.Newtons, Dimension.Force), Value(double.Hypot(s.Top.ShearX.Newtons, s.Top.ShearY.Newtons), Dimension.Force), Value(double.Hypot(s.Top.MomentX.NewtonMeters, s.Top.MomentY.NewtonMeters), Dimension.Moment),
                Member(own.MaxBy(m => m.Axial)), Member(own.MinBy(m => m.Axial)),
            };
        }));
        if (governing.Bars.Count == 0)
            return;
        html.Element("h3", "Standoffs").Line();
        html.Element("p", $"In {governing.Situation.Name}, over all its cases: of each ring the bar with the greatest stress, under the bound on the skin that stresses it most. Checks add what their rules ask for, as fixings, second order and local wind.");
        Table(["ring", "bar", "wind towards", "skin", "N", "stress", "deflection"], 1, governing.Bars.GroupBy(b => (b.Level, b.Band)).Select(g =>
        {
            BarResult bar = g.MaxBy(b => b.Stress)!;
            return new[]
            {
                $"{bar.Band} on {bar.Level}", Invariant($"{bar.Number}"), bar.StressHeading is { } h ? Invariant($"{h.Degrees:0.#}°") : "–", bar.StressAssumption.InWords(),
                Value(bar.Forces.Axial.Newtons, Dimension.Force), Value(bar.Stress.Pascals, Dimension.Stress), Value(bar.Deflection.Meters, Dimension.SmallLength),
            };
        }));

        string Member(MemberForce? m) => m is null ? "–" : $"{m.Member}: {Value(m.Axial.Newtons, Dimension.Force)}";
    }

    private string Value(double si, Dimension dimension) => dimension.Format(si, package.Units).Replace('-', '−');

    /// <summary>A table whose first columns are words and whose others are numbers.</summary>
    private void Table(ReadOnlySpan<string> heads, int words, IEnumerable<string[]> rows)
    {
        using (html.Element("div", ("class", "wide")))
        using (html.Element("table", ("class", "forces")))
        {
            using (html.Element("thead"))
            using (html.Element("tr"))
            {
                foreach ((string text, int i) in heads.ToArray().Select((text, i) => (text, i)))
                    html.Element("th", text, ("scope", "col"), ("class", i < words ? null : "number"));
            }
            using var body = html.Element("tbody");
            foreach (string[] row in rows)
            {
                using (html.Element("tr"))
                {
                    for (int i = 0; i < row.Length; i++)
                        html.Element(i == 0 ? "th" : "td", row[i], ("scope", i == 0 ? "row" : null), ("class", i < words ? null : "number"));
                }
                html.Line();
            }
        }
        html.Line();
    }
}
