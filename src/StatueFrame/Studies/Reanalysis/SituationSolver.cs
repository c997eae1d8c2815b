using StatueFrame.Analysis;
using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Studies;

/// <summary>What a situation does to a variant, in room that is used again. SI units.</summary>
/// <remarks>For one thread.</remarks>
internal sealed class SituationSolver
{
    private readonly ReanalysisBasis basis;
    private readonly VariantFrame frame;
    private readonly LoadTable loads;
    private readonly double[] buckledShapes, nodal, reduced, displacements;
    private readonly double[] current, next;
    private readonly SymmetricMatrix geometric, tangent;
    private readonly LdlFactorization tangentFactors;
    private readonly SubspaceIteration? buckling;
    private readonly Resultant[] resultants;

    public SituationSolver(ReanalysisBasis basis, VariantFrame frame, int situation)
    {
        (this.basis, this.frame) = (basis, frame);
        loads = basis.Loads[situation];
        buckledShapes = basis.BucklingShapes[situation];
        Frame model = basis.Model.Frame;
        int full = model.FreedomCount, n = model.EquationCount;
        (nodal, reduced, displacements) = (new double[loads.Cases * full], new double[loads.Cases * n], new double[loads.Cases * full]);
        (current, next) = (new double[full], new double[full]);
        (geometric, tangent) = (new SymmetricMatrix(model.Topology.Pattern), new SymmetricMatrix(model.Topology.Pattern));
        tangentFactors = new LdlFactorization(model.Symbolic);
        buckling = buckledShapes.Length > n ? new SubspaceIteration(model.Symbolic, buckledShapes.Length / n) : null;
        resultants = new Resultant[loads.Cases];
    }

    public SituationNumbers Solve(int number, SheetOnDemand sheet)
    {
        SolveCases();
        int governs = FirstGreatest(resultants.Length, i => Overturning(resultants[i]));
        (double? amplification, double? factor) = (null, null);
        if (loads.Situation.LimitState == LimitState.Strength)
        {
            (amplification, factor) = WhereItBucklesFirst();
        }
        return new SituationNumbers
        {
            Situation = loads.Situation.Name,
            BaseShear = Force.FromNewtons(Math.Sqrt(Square(resultants[governs].Force.X) + Square(resultants[governs].Force.Y))),
            BaseVertical = Force.FromNewtons(-resultants[governs].Force.Z),
            BaseOverturning = Torque.FromNewtonMeters(Overturning(resultants[governs])),
            Sways = Sways(),
            Amplification = amplification,
            BucklingFactor = factor,
            Sheet = sheet,
            Number = number,
        };
    }

    /// <summary>As <see cref="Stability"/>.</summary>
    private (double? Amplification, double? Factor) WhereItBucklesFirst()
    {
        int least = 0;
        double? factor = Of(0);
        for (int i = 1; i < loads.Cases; i++)
        {
            if (BucklesBelow((1 - Stability.Earlier) * (factor ?? Stability.GreatestFactor), i))
                (least, factor) = (i, Of(i));
        }
        Soften(least);
        return (Amplification(Case(displacements, least), Case(nodal, least)), factor);

        double? Of(int i)
        {
            Soften(i);
            return BucklingFactor();
        }
    }

    private void Soften(int i)
    {
        geometric.Values.Clear();
        frame.AddGeometricStiffness(Case(displacements, i), 1, geometric);
    }

    private bool BucklesBelow(double factor, int i)
    {
        Soften(i);
        frame.Stiffness.Values.CopyTo(tangent.Values);
        DenseVector.AddScaled(tangent.Values, factor, geometric.Values);
        tangentFactors.Factor(tangent);
        return tangentFactors.NegativePivots > 0;
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
        }
        return ValueList.Create<Length>(sways);
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
}
