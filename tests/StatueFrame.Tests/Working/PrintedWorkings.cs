using StatueFrame.Checks;

namespace StatueFrame.Tests;

/// <summary>
/// Reads every printed line of the workings of a sheet as a checking engineer would: mathematics only, each symbol given or computed before
/// it is used, the numbers in it giving the result beside it, and the check's own two numbers among the results.
/// </summary>
internal static class PrintedWorkings
{
    /// <summary>Fails with what is wrong, one line a kind.</summary>
    public static void CanBeFollowed(IEnumerable<Check> checks)
    {
        string[] faults = [.. checks.Where(check => check.Utilization is not null).SelectMany(check => FaultsOf(check).Select(fault => $"{check.Id}: {fault}")).Distinct().Order(StringComparer.Ordinal)];
        Assert.True(faults.Length == 0, string.Join('\n', faults));
    }

    private static IEnumerable<string> FaultsOf(Check check)
    {
        Working working = check.Working();
        var values = new HashSet<double> { 0, 1, double.PositiveInfinity };
        foreach (WorkingLine line in working.Lines)
        {
            if (line is WorkingLine.Given given)
                values.Add(Math.Abs(given.Value));
            foreach (string fault in line is WorkingLine.Superposition sums ? FaultsOf(sums) : [])
                yield return fault;
            if (line is not WorkingLine.Computed computed)
                continue;
            values.Add(Math.Abs(computed.Value));
            if (HasCode(computed.Formula))
                yield return $"code in {computed.Symbol} = {computed.Formula}";
            else if (computed.Substituted is null && Parts(computed.Formula).Any(part => part is FormulaNode.Symbol))
                yield return $"no numbers that give it for {computed.Symbol} = {computed.Formula}";
            else if (computed.Substituted is { } numbers && Parts(numbers).FirstOrDefault(part => part is FormulaNode.Symbol) is { } unknown)
                yield return $"{unknown} is not given in {computed.Symbol} = {computed.Formula}";
            else if (FormulaValue.Of(computed.Substituted ?? computed.Formula) is not { } again || !(Math.Abs(again - computed.Value) <= 1e-9 * Math.Abs(computed.Value)) && !again.Equals(computed.Value))
                yield return $"another value than printed for {computed.Symbol} = {computed.Formula}";
        }
        if (!values.Contains(Math.Abs(check.Demand ?? 0)))
            yield return "the demand is no line of its working";
        if (!values.Contains(Math.Abs(check.Capacity ?? 0)))
            yield return "the capacity is no line of its working";
    }

    /// <summary>Terms times factors add up, and what comes beside is named.</summary>
    private static IEnumerable<string> FaultsOf(WorkingLine.Superposition sums)
    {
        for (int i = 0; i < sums.Quantities.Count; i++)
        {
            double sum = sums.Terms.Sum(term => term.Factor * term.Values[i]), scale = sums.Terms.Sum(term => Math.Abs(term.Factor * term.Values[i]));
            if (!(Math.Abs(sum - sums.Quantities[i].Value) <= 1e-6 * scale + 1e-6))
                yield return $"terms of {sums.Quantities[i].Symbol} that do not add up";
        }
        if (sums.Terms.Any(term => term.Cause == "what comes beside"))
            yield return $"a part of {string.Join(", ", sums.Quantities.Select(q => q.Symbol))} that nobody names";
        if (sums.Terms.Select(term => term.Cause).Distinct().Count() < sums.Terms.Count)
            yield return "two causes of one name";
    }

    /// <summary>Whether a formula has C# in it that is no mathematics.</summary>
    public static bool HasCode(FormulaNode formula) => Parts(formula).Any(IsCode);

    private static bool IsCode(FormulaNode part) => part switch
    {
        FormulaNode.Verbatim or FormulaNode.Member or FormulaNode.Index => true,
        FormulaNode.Symbol symbol => symbol.Name.Contains('.'),
        FormulaNode.Call call => FormulaFunctions.Value(call.Function, new double[call.Arguments.Count]) is null,
        _ => false,
    };

    private static IEnumerable<FormulaNode> Parts(FormulaNode node)
    {
        FormulaNode[] inner = node switch
        {
            FormulaNode.Member m => [m.Target],
            FormulaNode.Index i => [i.Target, .. i.Arguments],
            FormulaNode.Call c => [.. c.Arguments],
            FormulaNode.Unary u => [u.Operand],
            FormulaNode.Binary b => [b.Left, b.Right],
            FormulaNode.Conditional c => [c.Condition, c.Then, c.Else],
            _ => [],
        };
        return inner.SelectMany(Parts).Prepend(node);
    }
}
