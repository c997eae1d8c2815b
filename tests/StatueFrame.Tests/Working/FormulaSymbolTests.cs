namespace StatueFrame.Tests;

public class FormulaSymbolTests
{
    [Theory]
    [InlineData("sigma", "σ", "σ", "")]
    [InlineData("sigma_b", "σ_b", "σ", "b")]
    [InlineData("gammaM1", "γ_M1", "γ", "M1")]
    [InlineData("psi0", "ψ0", "ψ", "0")]
    [InlineData("Delta", "Δ", "Δ", "")]
    [InlineData("Iy", "Iy", "I", "y")]
    [InlineData("N_cr", "N_cr", "N", "cr")]
    [InlineData("chip", "chip", "chip", "")]
    [InlineData("betamax", "betamax", "betamax", "")]
    [InlineData("width", "width", "width", "")]
    [InlineData("σ_b", "σ_b", "σ", "b")]
    public void A_name_is_split_into_letter_and_index(string name, string print, string letter, string index)
    {
        Assert.Equal(print, FormulaSymbol.Print(name));
        Assert.Equal((letter, index), FormulaSymbol.Split(name));
    }
}
