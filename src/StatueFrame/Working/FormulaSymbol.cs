namespace StatueFrame;

/// <summary>
/// How a name in the code is printed as a symbol: a Greek name becomes its letter and the rest of the name an index, so
/// that <c>sigma</c> is σ, <c>sigma_b</c> and <c>sigmaB</c> are σ with index b and B, and <c>gammaM1</c> is γ with index M1.
/// </summary>
public static class FormulaSymbol
{
    private static readonly Dictionary<string, string> greek = new(StringComparer.Ordinal)
    {
        ["alpha"] = "α",
        ["beta"] = "β",
        ["gamma"] = "γ",
        ["delta"] = "δ",
        ["epsilon"] = "ε",
        ["zeta"] = "ζ",
        ["eta"] = "η",
        ["theta"] = "θ",
        ["kappa"] = "κ",
        ["lambda"] = "λ",
        ["mu"] = "μ",
        ["nu"] = "ν",
        ["xi"] = "ξ",
        ["pi"] = "π",
        ["rho"] = "ρ",
        ["sigma"] = "σ",
        ["tau"] = "τ",
        ["phi"] = "φ",
        ["chi"] = "χ",
        ["psi"] = "ψ",
        ["omega"] = "ω",
        ["Gamma"] = "Γ",
        ["Delta"] = "Δ",
        ["Theta"] = "Θ",
        ["Lambda"] = "Λ",
        ["Xi"] = "Ξ",
        ["Pi"] = "Π",
        ["Sigma"] = "Σ",
        ["Phi"] = "Φ",
        ["Psi"] = "Ψ",
        ["Omega"] = "Ω",
    };

    /// <summary>
    /// The letter and the index of a name: "sigma_b" gives ("σ", "b"), "Iy" gives ("I", "y"), "q" gives ("q", ""). A
    /// name that is a word, as "width", is left whole.
    /// </summary>
    /// <param name="name">One name without a path.</param>
    public static (string Letter, string Index) Split(string name)
    {
        int head = 0;
        while (head < name.Length && char.IsAsciiLetterLower(name[head]) | (head == 0 && char.IsAsciiLetterUpper(name[head])))
            head++;
        if (greek.TryGetValue(name[..head], out string? letter))
            return (letter, name[head..].TrimStart('_'));
        int underscore = name.IndexOf('_');
        if (underscore > 0 && underscore < name.Length - 1)
            return (name[..underscore], name[(underscore + 1)..]);
        bool isLetterWithIndex = name.Length is 2 or 3 && char.IsAsciiLetterUpper(name[0]) && !char.IsAsciiLetterUpper(name[1]);
        return isLetterWithIndex ? (name[..1], name[1..]) : (name, "");
    }

    /// <summary>
    /// The name in plain text: Greek letters, with an underscore before an index of letters, as "σ_b" and "α1"; other
    /// names, and each name of a path, as they are written.
    /// </summary>
    /// <param name="name">A name or a path of names.</param>
    public static string Print(string name) =>
        name.Contains('.') ? string.Join('.', name.Split('.').Select(PrintOne)) : PrintOne(name);

    private static string PrintOne(string name)
    {
        (string letter, string index) = Split(name);
        bool isGreek = letter.Length == 1 && letter[0] > 127 && name[0] <= 127;
        return !isGreek ? name
            : index.Length == 0 || char.IsAsciiDigit(index[0]) && !name.Contains('_') ? letter + index
            : $"{letter}_{index}";
    }
}
