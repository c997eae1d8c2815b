using StatueFrame.Mechanics;
using StatueFrame.Mechanics.Elements;
using StatueFrame.Mechanics.Sparse;
using StatueFrame.Mechanics.Statics;
using UnitsNet;

namespace StatueFrame.Analysis;

/// <summary>
/// Load cases of a statue with tension-only bracing: for each, the set of braces in tension is found by trial. Braces
/// found in compression go slack, slack ones that would be stretched act again, until nothing changes.
/// </summary>
/// <remarks>Stateless; safe to use from many threads.</remarks>
internal static class TensionOnlyBracing
{
    private const int Rounds = 100;

    /// <summary>After this many rounds only the brace that is most wrong is changed in each round, which cannot cycle long.</summary>
    private const int BoldRounds = 20;

    public static LoadCase[] Solve(StatueModel model, Loads[] loads, double[] nodal)
    {
        int size = model.Frame.FreedomCount;
        var cases = new LoadCase[loads.Length];
        for (int i = 0; i < cases.Length; i++)
            cases[i] = Solve(model, loads[i], nodal.AsSpan(i * size, size));
        return cases;
    }

    private static LoadCase Solve(StatueModel model, Loads loads, ReadOnlySpan<double> nodal)
    {
        Frame frame = model.Frame;
        SegmentModel[] segments = [.. model.Bodies.SelectMany(b => b.Segments).Where(s => s.IsTensionOnly)];
        var elements = new FrameElement[segments.Length];
        var acts = new bool[segments.Length][];
        for (int i = 0; i < segments.Length; i++)
        {
            elements[i] = segments[i].Element;
            acts[i] = new bool[segments[i].Members.Count];
            Array.Fill(acts[i], true);
        }
        double[] u = model.Statics.Solve(nodal);
        var stiffness = new SymmetricMatrix(frame.Stiffness.Pattern);
        var reduced = new double[frame.EquationCount];
        for (int round = 0; round < Rounds; round++)
        {
            if (!Update(segments, loads, elements, acts, u, isFirst: round == 0, single: round >= BoldRounds))
                return new LoadCase(model, loads, u, segments.Zip(elements).ToDictionary());
            for (int i = 0; i < segments.Length; i++)
                elements[i] = segments[i].WithActing(acts[i]);
            frame.Stiffness.Values.CopyTo(stiffness.Values);
            for (int i = 0; i < segments.Length; i++)
                Exchange(frame, segments[i].Element, elements[i], stiffness);
            frame.Reduce(nodal, reduced);
            Pivots.FactorPositive(frame, stiffness).Solve(reduced);
            frame.Expand(reduced, u);
        }
        throw new FrameException(new FrameProblem(
            $"The tension-only braces do not settle{(loads.Heading is { } h ? $" for {Headings.Describe(h)}" : "")}; the loads leave several pairs of braces at the point of going slack."));
    }

    /// <summary>Puts one element in the place of another in an assembled stiffness.</summary>
    internal static void Exchange(Frame frame, FrameElement element, FrameElement replacement, SymmetricMatrix stiffness)
    {
        Span<double> difference = stackalloc double[FrameElement.Size * FrameElement.Size];
        element.AddStiffness(difference);
        for (int i = 0; i < difference.Length; i++)
            difference[i] = -difference[i];
        replacement.AddStiffness(difference);
        int index = 0;
        while (!ReferenceEquals(frame.Elements[index], element))
            index++;
        frame.Topology.ScatterElement(index, difference, stiffness.Values);
    }

    /// <summary>Takes the acting set from the forces; false when nothing changes.</summary>
    private static bool Update(SegmentModel[] segments, Loads loads, FrameElement[] elements, bool[][] acts, double[] u, bool isFirst, bool single)
    {
        bool changed = isFirst;
        (int Segment, int Member, double Wrong) worst = (-1, -1, 0);
        Span<double> own = stackalloc double[FrameElement.Size];
        var all = new double[segments.Length][];
        for (int i = 0; i < segments.Length; i++)
        {
            elements[i].Gather(u, own);
            segments[i].AxialForces(elements[i], own, all[i] = new double[segments[i].Members.Count], loads.Between(segments[i]));
        }
        // Rounding is that of the whole frame: a panel may carry nothing else.
        double noise = 1e-9 * all.Max(forces => forces.Length == 0 ? 0 : forces.Max(Math.Abs));
        for (int i = 0; i < segments.Length; i++)
        {
            double[] axial = all[i];
            for (int m = 0; m < axial.Length; m++)
            {
                if (segments[i].Members[m].Pair < 0)
                    continue;
                bool wanted = acts[i][m] ? axial[m] >= -noise : axial[m] > noise;
                if (wanted == acts[i][m])
                    continue;
                changed = true;
                if (!single)
                    acts[i][m] = wanted;
                else if (Math.Abs(axial[m]) > worst.Wrong)
                    worst = (i, m, Math.Abs(axial[m]));
            }
        }
        if (single && worst.Segment >= 0)
            acts[worst.Segment][worst.Member] = !acts[worst.Segment][worst.Member];
        return changed;
    }
}
