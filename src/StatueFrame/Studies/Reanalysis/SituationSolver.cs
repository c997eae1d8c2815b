using StatueFrame.Analysis;
using StatueFrame.Checks;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What a situation does to a variant, in room that is used again. SI units.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class SituationSolver
{
    private const int Node = Frame.NodeSize, Size = FrameElement.Size;

    private readonly ReanalysisBasis basis;
    private readonly VariantParts parts;
    private readonly VariantFrame frame;
    private readonly LoadTable loads;
    private readonly double[] buckledShapes, nodal, reduced, displacements;
    private readonly UtilizationTally tally = new();
    private readonly BarNumbers bars;
    private readonly double[] axial, motions;
    private readonly double[] current, next;
    private readonly SymmetricMatrix geometric, tangent;
    private readonly LdlFactorization tangentFactors;
    private readonly SubspaceIteration? buckling;
    private readonly Resultant[] resultants;

    public SituationSolver(ReanalysisBasis basis, VariantParts parts, VariantFrame frame, int situation)
    {
        (this.basis, this.parts, this.frame) = (basis, parts, frame);
        loads = basis.Loads[situation];
        buckledShapes = basis.BucklingShapes[situation];
        Frame model = basis.Model.Frame;
        int full = model.FreedomCount, n = model.EquationCount;
        (nodal, reduced, displacements) = (new double[loads.Cases * full], new double[loads.Cases * n], new double[loads.Cases * full]);
        bars = new BarNumbers(basis, parts, loads, tally);
        axial = new double[basis.Segments.Max(s => s.Part.Members.Length)];
        motions = new double[Size * loads.Stride];
        (current, next) = (new double[full], new double[full]);
        (geometric, tangent) = (new SymmetricMatrix(model.Topology.Pattern), new SymmetricMatrix(model.Topology.Pattern));
        tangentFactors = new LdlFactorization(model.Symbolic);
        buckling = buckledShapes.Length > n ? new SubspaceIteration(model.Symbolic, buckledShapes.Length / n) : null;
        resultants = new Resultant[loads.Cases];
    }

    public SituationNumbers Solve(double firstFrequency)
    {
        tally.Clear();
        SolveCases();
        int governs = FirstGreatest(resultants.Length, i => Overturning(resultants[i]));
        bars.Find(displacements);
        (double? amplification, double? factor) = (null, null);
        if (loads.Situation.LimitState == LimitState.Strength)
        {
            ReadOnlySpan<double> first = Case(displacements, governs);
            geometric.Values.Clear();
            frame.AddGeometricStiffness(first, 1, geometric);
            amplification = Amplification(first, Case(nodal, governs));
            factor = BucklingFactor();
            tally.Add("stability.second-order", basis.Criteria.LeastBucklingFactor, factor ?? (amplification is null ? 1 : Stability.GreatestFactor));
            AddMembers(amplification);
        }
        if (loads.Situation.Wind is not null)
            tally.Add("wind.rigid", firstFrequency < DynamicChecks.RigidFrequency ? null : DynamicChecks.RigidFrequency, firstFrequency);
        return new SituationNumbers
        {
            Situation = loads.Situation.Name,
            BaseShear = Force.FromNewtons(Math.Sqrt(Square(resultants[governs].Force.X) + Square(resultants[governs].Force.Y))),
            BaseVertical = Force.FromNewtons(-resultants[governs].Force.Z),
            BaseOverturning = Torque.FromNewtonMeters(Overturning(resultants[governs])),
            Sways = Sways(),
            BarStress = parts.Rings.Length == 0 ? null : Pressure.FromPascals(bars.GreatestStress),
            BarDeflection = parts.Rings.Length == 0 ? null : Length.FromMeters(bars.GreatestDeflection),
            Amplification = amplification,
            BucklingFactor = factor,
            Utilizations = tally.ToList(),
        };
    }

    private static double Square(double x) => x * x;

    private static double Overturning(in Resultant r) => Math.Sqrt(Square(r.Moment.X) + Square(r.Moment.Y));

    /// <summary>The first of the indices with the greatest value, those that are equal but for rounding passed over.</summary>
    private static int FirstGreatest(int count, Func<int, double> value)
    {
        int at = 0;
        for (int i = 1; i < count; i++)
        {
            if (Extremes.Exceeds(value(i), value(at)))
                at = i;
        }
        return at;
    }

    private Span<double> Case(double[] vectors, int i)
    {
        int full = basis.Model.Frame.FreedomCount;
        return vectors.AsSpan(i * full, full);
    }

    private void SolveCases()
    {
        Frame model = basis.Model.Frame;
        int n = model.EquationCount;
        var weight = Resultant.Of(new Vector3D(0, 0, -loads.WeightFactor * frame.Kilograms * SelfWeight.Gravity), frame.Center - basis.Model.BaseCenter);
        loads.Nodal.CopyTo(nodal.AsSpan());
        for (int i = 0; i < loads.Cases; i++)
        {
            DenseVector.AddScaled(Case(nodal, i), loads.WeightFactor, frame.Weights);
            resultants[i] = loads.Resultants[i] + weight;
            model.Reduce(Case(nodal, i), reduced.AsSpan(i * n, n));
        }
        frame.Factors.Solve(reduced);
        for (int i = 0; i < loads.Cases; i++)
            model.Expand(reduced.AsSpan(i * n, n), Case(displacements, i));
    }

    private ValueList<Length> Sways()
    {
        ValueList<NamedPoint> points = basis.Statue.Points;
        var sways = new Length[points.Count];
        for (int p = 0; p < sways.Length; p++)
        {
            Place place = basis.Model.PlaceOf(points[p].On);
            Vector3D at = basis.Model.PositionOf(points[p]);
            double greatest = double.NegativeInfinity;
            for (int i = 0; i < loads.Cases; i++)
            {
                (Vector3D moved, _) = basis.Model.Motion(Case(displacements, i), place, at);
                double sway = Math.Sqrt(Square(moved.X) + Square(moved.Y));
                if (i == 0 || Extremes.Exceeds(sway, greatest))
                    greatest = sway;
            }
            sways[p] = Length.FromMeters(greatest);
            AddSwayLimits(points[p].Name, greatest);
        }
        return ValueList.Create<Length>(sways);
    }

    private void AddSwayLimits(string point, double sway)
    {
        if (loads.Situation.LimitState != LimitState.Service)
            return;
        foreach (SwayLimit limit in basis.Criteria.Sway.AsSpan())
        {
            if (limit.Point == point)
                tally.Add("sway.limit", sway, limit.Limit.Meters);
        }
    }

    /// <summary>As <see cref="SecondOrder"/>; null when the loads are at or beyond buckling.</summary>
    private double? Amplification(ReadOnlySpan<double> first, ReadOnlySpan<double> load)
    {
        Frame model = basis.Model.Frame;
        Span<double> x = reduced.AsSpan(0, model.EquationCount);
        (double[] now, double[] then) = (current, next);
        first.CopyTo(now);
        int most = new SecondOrderOptions().MaximumIterations;
        for (int iteration = 1; iteration <= most; iteration++)
        {
            frame.Stiffness.Values.CopyTo(tangent.Values);
            if (iteration == 1)
                DenseVector.AddScaled(tangent.Values, 1, geometric.Values);
            else
                frame.AddGeometricStiffness(now, 1, tangent);
            if (!tangentFactors.Factor(tangent) || tangentFactors.NegativePivots > 0)
                return null;
            model.Reduce(load, x);
            tangentFactors.Solve(x);
            model.Expand(x, then);
            double change = SecondOrder.LargestChange(now, then);
            (now, then) = (then, now);
            if (change <= Stability.Settled * DenseVector.LargestMagnitude(now))
                return SecondOrder.Amplification(first, now);
        }
        return null;
    }

    private double? BucklingFactor()
    {
        DenseVector.Scale(geometric.Values, -1);
        const double Least = 1 / Stability.GreatestFactor;
        if (buckling is not null && buckling.Solve(frame.Stiffness, geometric, frame.Factors, buckledShapes, 1))
            return buckling.Value(0) > Least ? 1 / buckling.Value(0) : null;
        using var lanczos = new GeneralizedLanczos(frame.Stiffness, geometric, frame.Factors);
        if (lanczos.CountAbove(Least) == 0)
            return null;
        lanczos.Solve(1);
        return lanczos.Found > 0 ? 1 / lanczos.Value(0) : null;
    }

    private void AddMembers(double? amplification)
    {
        for (int s = 0; s < parts.Segments.Length; s++)
        {
            SegmentPart part = parts.Segments[s];
            if (part.Members.Length == 0)
                continue;
            string family = MemberSheet.FamilyOf(basis.Model.Bodies[basis.Segments[s].Body]);
            if (amplification is null)
            {
                tally.Add("tower.compression", null);
                return;
            }
            FindAxial(part, basis.Segments[s].Model.Element);
            for (LatticeRole role = LatticeRole.Leg; role <= LatticeRole.Horizontal; role++)
                AddWorst(part, role, Math.Max(1, amplification.Value), family == "tower");
        }
    }

    /// <summary>The greatest and the least axial force of every member of a segment.</summary>
    private readonly List<(double Greatest, double Least)> extremes = [];

    private void FindAxial(SegmentPart part, FrameElement element)
    {
        extremes.Clear();
        Span<double> u = stackalloc double[Size], forces = axial.AsSpan(0, part.Members.Length);
        for (int i = 0; i < loads.Cases; i++)
        {
            VariantFrame.Gather(element, Case(displacements, i), u);
            for (int m = 0; m < forces.Length; m++)
            {
                double N = DenseVector.Dot(part.AxialRows.AsSpan(m * Size, Size), u);
                if (i == 0)
                    extremes.Add((N, N));
                (double greatest, double least) = extremes[m];
                extremes[m] = (Extremes.Exceeds(N, greatest) ? N : greatest, Extremes.Exceeds(-N, -least) ? N : least);
            }
        }
    }

    /// <summary>The worst of the like members of a segment, once in compression and once in tension.</summary>
    private void AddWorst(SegmentPart part, LatticeRole role, double amplification, bool isTower)
    {
        (int pressed, int pulled) = (-1, -1);
        double worstPressed = 0, worstPulled = 0;
        for (int m = 0; m < part.Members.Length; m++)
        {
            if (part.Members[m].Role != role)
                continue;
            (double greatest, double least) = extremes[m];
            double ofPressed = -least * Square(part.Members[m].Length);
            if (least < 0 && (pressed < 0 || Extremes.Exceeds(ofPressed, worstPressed)))
                (pressed, worstPressed) = (m, ofPressed);
            if (greatest > 0 && (pulled < 0 || Extremes.Exceeds(greatest, worstPulled)))
                (pulled, worstPulled) = (m, greatest);
        }
        if (pressed >= 0)
        {
            tally.Add(isTower ? "tower.compression" : "limbs.compression", -amplification * extremes[pressed].Least, part.Members[pressed].Compression);
            tally.Add(isTower ? "tower.slenderness" : "limbs.slenderness", part.Members[pressed].Slenderness);
        }
        if (pulled >= 0)
            tally.Add(isTower ? "tower.tension" : "limbs.tension", amplification * worstPulled, part.Members[pulled].Tension);
    }
}
