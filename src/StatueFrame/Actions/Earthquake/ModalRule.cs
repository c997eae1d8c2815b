namespace StatueFrame;

/// <summary>How the peaks of several modes, which do not come at one time, make one peak.</summary>
public enum ModalRule
{
    /// <summary>Complete quadratic combination: modes of near frequencies are correlated. Source: Der Kiureghian 1981.</summary>
    Cqc,

    /// <summary>Square root of the sum of squares: modes are independent; right only when their frequencies lie well apart.</summary>
    Srss,
}
