using System.Runtime.CompilerServices;

namespace StatueFrame;

/// <summary>
/// How a calculation tells a <see cref="Working"/> its steps. Each returns the value it is told, so that the step stands
/// where the value is computed:
/// <code>
/// double sigma = w.Let("sigma", Math.Abs(N) / A + Math.Abs(M) / W, Dimension.Stress, elasticStress);
/// </code>
/// </summary>
public static class WorkingExtensions
{
    /// <summary>A value the calculation starts from, under the name it has in the code.</summary>
    /// <param name="w">The listener; null when nobody listens.</param>
    /// <param name="value">The value in SI units.</param>
    /// <param name="dimension">What it measures.</param>
    /// <param name="meaning">What it is, in a few words.</param>
    /// <param name="source">Where it comes from.</param>
    /// <param name="symbol">Its name; the expression of <paramref name="value"/> itself.</param>
    /// <returns>The value.</returns>
    public static double Given(this Working? w, double value, Dimension dimension, string meaning = "", Source? source = null,
        [CallerArgumentExpression(nameof(value))] string symbol = "")
    {
        w?.AddGiven(symbol, value, dimension, meaning, source);
        return value;
    }

    /// <summary>A value the calculation starts from, under a name of its own.</summary>
    /// <param name="w">The listener; null when nobody listens.</param>
    /// <param name="symbol">The name of the variable that takes the value, as in "L".</param>
    /// <param name="value">The value in SI units.</param>
    /// <param name="dimension">What it measures.</param>
    /// <param name="meaning">What it is, in a few words.</param>
    /// <param name="source">Where it comes from.</param>
    /// <returns>The value.</returns>
    public static double Given(this Working? w, string symbol, double value, Dimension dimension, string meaning = "", Source? source = null)
    {
        w?.AddGiven(symbol, value, dimension, meaning, source);
        return value;
    }

    /// <summary>A value that is computed here; its formula is the expression of <paramref name="value"/> itself.</summary>
    /// <param name="w">The listener; null when nobody listens.</param>
    /// <param name="symbol">The name of the variable that takes the value, as in "sigma".</param>
    /// <param name="value">The value in SI units, written as the formula.</param>
    /// <param name="dimension">What it measures.</param>
    /// <param name="source">Where the formula comes from.</param>
    /// <param name="meaning">What it is, in a few words.</param>
    /// <param name="formula">The expression of <paramref name="value"/>.</param>
    /// <param name="listener">The expression of <paramref name="w"/>, which is no part of the formula.</param>
    /// <returns>The value.</returns>
    public static double Let(this Working? w, string symbol, double value, Dimension dimension, Source? source = null, string meaning = "",
        [CallerArgumentExpression(nameof(value))] string formula = "",
        [CallerArgumentExpression(nameof(w))] string listener = "")
    {
        w?.AddComputed(symbol, value, dimension, source, meaning, formula, listener);
        return value;
    }
}
