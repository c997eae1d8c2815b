namespace StatueFrame;

/// <summary>The value of a formula whose symbols are all replaced by values.</summary>
internal static class FormulaValue
{
    /// <summary>
    /// The value in floating arithmetic; a condition is 1 or 0. Null when a symbol is left or a function is not known.
    /// </summary>
    public static double? Of(FormulaNode node) => node switch
    {
        FormulaNode.Number n => n.Value,
        FormulaNode.Quantity q => q.Value,
        FormulaNode.Unary { Operator: FormulaOperator.Negate } u => -Of(u.Operand),
        FormulaNode.Unary u => Of(u.Operand) is { } x ? Truth(x == 0) : null,
        FormulaNode.Binary b => Of(b.Left) is { } x && Of(b.Right) is { } y ? Of(b.Operator, x, y) : null,
        FormulaNode.Conditional c => Of(c.Condition) is { } x ? Of(x != 0 ? c.Then : c.Else) : null,
        FormulaNode.Call c => OfCall(c),
        _ => null,
    };

    private static double? OfCall(FormulaNode.Call call)
    {
        var x = new double[call.Arguments.Count];
        for (int i = 0; i < x.Length; i++)
        {
            if (Of(call.Arguments[i]) is not { } value)
                return null;
            x[i] = value;
        }
        return FormulaFunctions.Value(call.Function, x);
    }

    private static double? Of(FormulaOperator op, double x, double y) => op switch
    {
        FormulaOperator.Add => x + y,
        FormulaOperator.Subtract => x - y,
        FormulaOperator.Multiply => x * y,
        FormulaOperator.Divide => x / y,
        FormulaOperator.Remainder => x % y,
        FormulaOperator.Power => Math.Pow(x, y),
        FormulaOperator.And => Truth(x != 0 && y != 0),
        FormulaOperator.Or => Truth(x != 0 || y != 0),
        FormulaOperator.Equal => Truth(x == y),
        FormulaOperator.NotEqual => Truth(x != y),
        FormulaOperator.Less => Truth(x < y),
        FormulaOperator.LessOrEqual => Truth(x <= y),
        FormulaOperator.Greater => Truth(x > y),
        FormulaOperator.GreaterOrEqual => Truth(x >= y),
        _ => null,
    };

    private static double Truth(bool holds) => holds ? 1 : 0;
}
